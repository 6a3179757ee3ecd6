#!/usr/bin/env bash
# Measures how long it takes from a sound to its note on the screen of the bench, in Chromium with a file as its microphone, and writes it into
# docs/measurement/sound.md.
#   tests/tuner.sh [NOTES]     (80 notes unless said, half of them out of silence)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

export REEDCLINIC_TUNER_NOTES=${1:-80} MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0
REEDCLINIC_TUNER_LOG=$(mktemp) && export REEDCLINIC_TUNER_LOG
trap 'rm -f "$REEDCLINIC_TUNER_LOG"' EXIT
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

say() { printf '%s\n' "$*"; }
# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
[ -n "${REEDCLINIC_TUNER_BUILT:-}" ] || dotnet build tests/ReedClinic.Browser.Tests --verbosity quiet || stop_here 'the tests do not build.'
before=$(cut -d ' ' -f 1-3 /proc/loadavg)
tests/ReedClinic.Browser.Tests/bin/Debug/net10.0/ReedClinic.Browser.Tests -noLogo -class '*TunerLatencyTests' < /dev/null || stop_here 'a note was not seen.'

report=docs/measurement/sound.md figures=$(mktemp)
{
  printf '* command: `tests/tuner.sh %s`\n' "$REEDCLINIC_TUNER_NOTES"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
  printf '* %s, drawing in software; %s cores that the program, the browser and other work share; load average before: %s\n\n' "$("$(browser)" --version 2> /dev/null | head -n 1 | sed 's/ *$//')" "$(nproc)" "$before"
  printf '| a note | notes | median (ms) | 95th percentile (ms) | longest (ms) |\n|---|---|---|---|---|\n'
  cat "$REEDCLINIC_TUNER_LOG"
} > "$figures"
sed -i -e '/^<!-- tuner.sh -->$/,/^<!-- end -->$/{/^<!-- tuner.sh -->$/r '"$figures" -e '/^<!-- tuner.sh -->$/b;/^<!-- end -->$/b;d}' "$report"
cat "$figures"
rm -f "$figures"
