#!/usr/bin/env bash
# Fills the oldest kept schema (tests/fixtures/first-schema) with very many reeds and their logs on both engines, starts the published
# program on it as whoever updates a studio would, and writes to docs/measurement/migrations.md how long that took.
#   tests/migrations.sh [REEDS]   (100,000 unless said)
# REEDCLINIC_TEST_PUBLISHED names a folder with a published program; else it is published anew. Needs sqlite3, curl and PostgreSQL's programs.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

reeds=${1:-100000}
few=12 # in the kept copy
copies=$(((reeds + few - 1) / few - 1))
folder=$(mktemp -d)
app=''
say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }
# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
# shellcheck source=tests/lib/postgres.sh
. tests/lib/postgres.sh
# shellcheck source=tests/lib/many-reeds.sh
. tests/lib/many-reeds.sh

end_app() {
  [ -z "$app" ] || { kill -KILL "$app" 2> /dev/null; wait "$app" 2> /dev/null; }
  app=''
}
clean_up() { end_app; stop_postgres; rm -rf "$folder"; }
trap clean_up EXIT
trap 'exit 130' INT TERM HUP

command -v sqlite3 > /dev/null || stop_here 'sqlite3 is lacking.'
published=${REEDCLINIC_TEST_PUBLISHED:-}
if [ -z "$published" ]; then
  published=$folder/published
  dotnet publish src/ReedClinic.Web -c Release -r linux-x64 --no-self-contained -o "$published" --nologo -v quiet || stop_here 'it could not be published.'
fi
postgres_speed='' # what is measured here ends on the disk, as it does in a studio
start_postgres
port=$(sed -E 's/.*Port=([0-9]+).*/\1/' <<< "$REEDCLINIC_TEST_POSTGRES")
PGPASSWORD=$(cat "$cluster/password") && export PGPASSWORD
psql() { "$(postgres_bin)/psql" -h 127.0.0.1 -p "$port" -U reedclinic "$@"; }

now() { date +%s%N; }
seconds() { awk -v from="$1" -v to="$2" 'BEGIN { printf "%.1f", (to - from) / 1e9 }'; }

# Starts the program on a database and waits until it is ready. $1: a name for its row; $2: engine; $3: connection; $4: false for no back-up before.
measure() {
  local began ready rows web size
  web=$(free_port) || stop_here 'no free port.'
  size=$5
  began=$(now)
  Database__Engine=$2 ConnectionStrings__Clinic=$3 Backups__BeforeMigrations=$4 Backups__Folder=$folder/backups-$2-$4 Media__Folder=$folder/media-$2-$4 \
    Backups__PostgresTools=$(postgres_bin) ASPNETCORE_URLS=http://127.0.0.1:$web dotnet "$published/ReedClinic.Web.dll" > "$folder/app.log" 2>&1 &
  app=$!
  until [ "$(curl -s -o /dev/null -w '%{http_code}' "http://127.0.0.1:$web/health/ready")" = 200 ]; do
    kill -0 "$app" 2> /dev/null || stop_here "the program ended: $(tail -n 5 "$folder/app.log")"
    sleep 0.1
  done
  ready=$(now)
  rows=$(awk '/^VmHWM/ { printf "%.0f", $2 / 1024 }' "/proc/$app/status")
  end_app
  say "| $1 | $([ "$4" = true ] && say yes || say no) | $size | $(seconds "$began" "$ready") | $rows |" | tee -a "$folder/rows.txt"
}

# The same program on what it has migrated already: what a start costs by itself.
for backup in true false; do
  file=$folder/clinic-$backup.db
  if [ "$backup" = true ]; then
    cp tests/fixtures/first-schema/sqlite.db "$file"
    many_in_sqlite "$file" "$copies" || stop_here 'SQLite could not be filled.'
    made=$(sqlite3 -separator ' ' "$file" 'SELECT (SELECT COUNT(*) FROM "Reeds"), (SELECT COUNT(*) FROM "BenchLog"), (SELECT COUNT(*) FROM "FindingSheet"), (SELECT COUNT(*) FROM "LetterVersions")')
    cp "$file" "$folder/kept.db"
  else
    cp "$folder/kept.db" "$file"
  fi
  sync
  measure "SQLite" sqlite "Data Source=$file" "$backup" "$(du -m "$file" | cut -f 1)"
  [ "$(sqlite3 "$file" 'SELECT COUNT(*) FROM "BenchLog"')" = "$(cut -d ' ' -f 2 <<< "$made")" ] || stop_here 'entries of the log are lacking.'
done
measure "SQLite, started again" sqlite "Data Source=$file" true "$(du -m "$file" | cut -f 1)"

psql -q postgres -c 'CREATE DATABASE first' || stop_here 'the database could not be made.'
psql -q -v ON_ERROR_STOP=1 first -f tests/fixtures/first-schema/postgres.sql > /dev/null || stop_here 'the copy could not be read.'
many_in_postgres "$copies" psql first || stop_here 'PostgreSQL could not be filled.'
psql -q postgres -c 'CREATE DATABASE second TEMPLATE first' || stop_here 'the database could not be copied.'
for backup in true false; do
  name=$([ "$backup" = true ] && say first || say second)
  psql -q "$name" -c 'CHECKPOINT'
  measure "PostgreSQL $postgres_major" postgres "${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=$name}" "$backup" "$(psql -At "$name" -c "SELECT pg_database_size('$name') / 1048576")"
  [ "$(psql -At "$name" -c 'SELECT COUNT(*) FROM "BenchLog"')" = "$(cut -d ' ' -f 2 <<< "$made")" ] || stop_here 'entries of the log are lacking.'
done
measure "PostgreSQL $postgres_major, started again" postgres "${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=second}" true "$(psql -At second -c "SELECT pg_database_size('second') / 1048576")"

read -r made_reeds made_entries made_sheet made_letters <<< "$made"
cat > docs/measurement/migrations.md << END
# How long an update of a very large studio takes

\`tests/migrations.sh\` writes this file. The oldest schema that is kept (\`tests/fixtures/first-schema\`) is filled with $made_reeds reeds,
$made_entries entries of the log, $made_sheet rows of the sheet and $made_letters versions of letters: copies of the demo’s rows under other ids.
Then the published program is started on it, as whoever updates does. Measured is the time from the start of the process until
\`/health/ready\` says yes: the start, the back-up that is made before the schema changes (where it says so), and all migrations.
PostgreSQL writes through to the disk. Wanted: at most 60 s. No studio is so large: it is what many would have in many years.

* command: \`tests/migrations.sh${*:+ $*}\`
* date: $(date -u +%Y-%m-%dT%H:%M:%SZ)
* commit: $(git rev-parse HEAD)$(git diff --quiet HEAD -- src tests || say ' with changes')
* machine: $(nproc) cores; load average after: $(cut -d ' ' -f 1-3 /proc/loadavg)

| engine | back-up before | size before (MB) | until ready (s) | most memory of the program (MB) |
|---|---|---|---|---|
$(cat "$folder/rows.txt")
END
say 'Written to docs/measurement/migrations.md.'
