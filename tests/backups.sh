#!/usr/bin/env bash
# Measures how long a large studio takes to be backed up, checked and restored on each engine, and writes it to
# docs/measurement/backups.md.
#   tests/backups.sh [REEDS] [MEGABYTES]   (10,000 reeds and 2,048 MB of sound)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

reeds=${1:-10000} megabytes=${2:-2048}
command="tests/backups.sh $reeds $megabytes"
# shellcheck source=tests/lib/measuring.sh
. tests/lib/measuring.sh
for name in backup_from backup_to; do
  make_database "$name"
done

measure() { # ENGINE FROM TO
  mkdir -p "$folder/$1"
  dotnet run -c Release --no-build --project tests/ReedClinic.Benchmarks -- backups "$1" "$2" "$3" "$folder/$1" "$reeds" "$megabytes" | tee -a "$folder/rows.txt"
  [ "${PIPESTATUS[0]}" -eq 0 ] || stop_here "measuring $1 failed."
  rm -rf "${folder:?}/$1"
}

measure sqlite "Data Source=$folder/from.db" "Data Source=$folder/to.db"
measure postgres "${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=backup_from}" "${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=backup_to}"

cat > docs/measurement/backups.md << END
# How long a back-up and the way back take

\`tests/backups.sh\` writes this file. An invented studio is filled, one sound of random bytes for each reed, backed up into a folder on
the same disk, read from end to end, and restored into an empty database and folder; rows and sums are compared. PostgreSQL $postgres_major
runs with fsync off. Wanted: at most 300 s for the back-up and 600 s for the restore of 10,000 reeds and 2 GB.

* command: \`$command\`
* date: $(date -u +%Y-%m-%dT%H:%M:%SZ)
* commit: $(git rev-parse HEAD)
* machine: $(nproc) cores; load average before: $load

| engine | reeds | rows | sounds | back-up (s) | reading it from end to end (s) | restore, reading included (s) |
|---|---|---|---|---|---|---|
$(cat "$folder/rows.txt")
END
say "Written to docs/measurement/backups.md."
