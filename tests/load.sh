#!/usr/bin/env bash
# Measures how long a press at the bench takes while other benches are open, and writes it to docs/measurement/bench-load.md.
#   tests/load.sh [TABS [ENTRIES]]   (50 other tabs; 208 entries with them and as many without, by turns, on each engine)
# REEDCLINIC_LOAD_ENGINES names the engines, "sqlite postgres" unless said. A throw-away PostgreSQL is started for it.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

export REEDCLINIC_LOAD_TABS=${1:-50} REEDCLINIC_LOAD_ENTRIES=${2:-208} REEDCLINIC_LOAD_LIMIT=${REEDCLINIC_LOAD_LIMIT:-200}
engines=${REEDCLINIC_LOAD_ENGINES:-sqlite postgres}
# No build server outlives the run.
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=false
REEDCLINIC_LOAD_LOG=$(mktemp) && export REEDCLINIC_LOAD_LOG

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
# shellcheck source=tests/lib/postgres.sh
. tests/lib/postgres.sh

clean_up() {
  [ -z "${running:-}" ] || kill -TERM -- "-$running" 2> /dev/null
  stop_postgres
  rm -f "$REEDCLINIC_LOAD_LOG"
}
trap clean_up EXIT
trap 'exit 130' INT TERM HUP

dotnet build tests/ReedClinic.Browser.Tests --verbosity quiet || stop_here 'the tests do not build.'
case " $engines " in *' postgres '*) start_postgres ;; esac
code=0 before=$(cut -d ' ' -f 1-3 /proc/loadavg)
for engine in $engines; do
  # A group of its own, so that whatever it starts can be ended with it.
  REEDCLINIC_LOAD_ENGINE=$engine setsid --wait tests/ReedClinic.Browser.Tests/bin/Debug/net10.0/ReedClinic.Browser.Tests \
    -noLogo -class '*BenchLoadTests' < /dev/null &
  running=$!
  wait "$running" || code=$?
  running=''
  export REEDCLINIC_TEST_PUBLISHED=${REEDCLINIC_TEST_PUBLISHED:-$PWD/tests/artifacts/published} # once is enough
done

report=docs/measurement/bench-load.md
{
  printf '# How long a press at the bench takes while other benches are open\n\n'
  printf '`tests/load.sh` writes this file. The program is published in Release and runs in a process of its own. A teacher works in one tab of\n'
  printf 'Chromium, by the line and by the pick list by turns, 26 entries on each reed, which begins with twelve facts in its log; a first reed warms the program up and isn’t counted. Every second reed is\n'
  printf 'worked on while %s other benches are open: each a page with its own circuit on a reed of its own, held without a browser, where a line is typed\n' "$REEDCLINIC_LOAD_TABS"
  printf 'and said every 20 to 30 seconds, spread out. So both rows of each pair come from the same minutes.\n\n'
  printf '*By the line* and *by the pick list*: from the press in Chromium to the end of the first frame that shows the entry in the log; it is recorded\n'
  printf 'before that. *Without a browser*: the same page held by a program, from the post to its answer (recorded) and to the batch of changes that\n'
  printf 'brings the entry to the screen (sent to the screen): what the server and the wire take, without drawing.\n\n'
  printf 'Program, database, Chromium (drawing in software) and the other benches share one machine of %s cores and %s GB, so the client takes from the\n' "$(nproc)" "$(awk '/MemTotal/ { printf "%.0f", $2 / 1048576 }' /proc/meminfo)"
  printf 'server what it would have to itself in use. Wanted: at most %s ms at the 95th percentile with the other benches open.\n\n' "$REEDCLINIC_LOAD_LIMIT"
  printf '* command: `tests/load.sh %s`\n' "$*"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
  printf '* load average before: %s\n' "$before"
  printf '* exit code: %s\n\n' "$code"
  printf '| engine | way | other benches | entries | median (ms) | 95th percentile (ms) | longest (ms) |\n|---|---|---|---|---|---|---|\n'
  grep '^|' "$REEDCLINIC_LOAD_LOG"
  printf '\nWhat the program’s process worked while the entries were made in Chromium:\n\n'
  sed -n 's/^work /* /p' "$REEDCLINIC_LOAD_LOG"
} > "$report"
cat "$report"
exit "$code"
