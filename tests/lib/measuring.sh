# A folder for what comes of it, the built benchmarks and a throw-away PostgreSQL. Part of tests/backups.sh and tests/history.sh.
# shellcheck shell=bash

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

make_database() { # NAME
  PGPASSWORD=$(cat "$cluster/password") "$(postgres_bin)/psql" -q -h 127.0.0.1 -p "$port" -U reedclinic postgres -c "CREATE DATABASE $1" ||
    stop_here 'the database could not be made.'
}
