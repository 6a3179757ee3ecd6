#!/usr/bin/env bash
# Measures what one student's page of reeds over time costs among many students on PostgreSQL, and writes it to
# docs/measurement/history.md.
#   tests/history.sh [STUDENTS...]   (1,000, 10,000 and 100,000 students, ten findings each)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

[ $# -gt 0 ] || set -- 1000 10000 100000
command="tests/history.sh $*"
folder=$(mktemp -d)

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
# shellcheck source=tests/lib/postgres.sh
. tests/lib/postgres.sh

clean_up() { stop_postgres; rm -rf "$folder"; }
trap clean_up EXIT
trap 'exit 130' INT TERM HUP

dotnet build tests/ReedClinic.Benchmarks -c Release --nologo --verbosity quiet > "$folder/build.log" 2>&1 || stop_here "the build failed: $(tail -n 3 "$folder/build.log")"
start_postgres
load=$(cut -d ' ' -f 1-3 /proc/loadavg)
port=$(sed -E 's/.*Port=([0-9]+).*/\1/' <<< "$REEDCLINIC_TEST_POSTGRES")
for students in "$@"; do
  PGPASSWORD=$(cat "$cluster/password") "$(postgres_bin)/psql" -q -h 127.0.0.1 -p "$port" -U reedclinic postgres -c "CREATE DATABASE history$students" ||
    stop_here 'the database could not be made.'
  dotnet run -c Release --no-build --project tests/ReedClinic.Benchmarks -- history "${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=history$students}" "$students" |
    tee -a "$folder/rows.txt"
  [ "${PIPESTATUS[0]}" -eq 0 ] || stop_here "measuring $students students failed."
done

cat > docs/measurement/history.md << END
# What one student's history costs among many

\`tests/history.sh\` writes this file. PostgreSQL $postgres_major is filled with invented students, each with two batches of two reeds and ten
findings that were looked for. Then 500 students drawn at random (seeded) are read one after another, after 60 to warm up: "page" is all that
the page of reeds over time asks for and reckons; "evidence" is the same for a batch's common thread with its lessons (no bench log is stored
here). The roll-up is what the daily job takes. Wanted: at most 50 ms at the 95th percentile of the page, and the same however many students.
That indexes are used is a test: \`HistoryPlanTests\`.

* command: \`$command\`
* date: $(date -u +%Y-%m-%dT%H:%M:%SZ)
* commit: $(git rev-parse HEAD)
* machine: $(nproc) cores; load average before: $load

| students | findings | page, median (ms) | page, 95th percentile (ms) | page, processor time of the program (ms each) | evidence, median (ms) | evidence, 95th percentile (ms) | roll-up (s) |
|---|---|---|---|---|---|---|---|
$(cat "$folder/rows.txt")
END
say "Written to docs/measurement/history.md."
