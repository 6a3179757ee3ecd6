#!/usr/bin/env bash
# Measures what one student's page of reeds over time costs among many students on PostgreSQL, and writes it to
# docs/measurement/history.md.
#   tests/history.sh [STUDENTS...]   (1,000, 10,000 and 100,000 students, ten findings each)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

[ $# -gt 0 ] || set -- 1000 10000 100000
command="tests/history.sh $*"
# shellcheck source=tests/lib/measuring.sh
. tests/lib/measuring.sh
for students in "$@"; do
  make_database "history$students"
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
