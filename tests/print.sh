#!/usr/bin/env bash
# Measures how long a letter of three reeds takes to print, beside a browser that prints the same letter's page, and writes it to
# docs/measurement/print.md.
#   tests/print.sh [ROUNDS [BROWSER_ROUNDS]]   (200 by the program, 5 by the browser)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=false
export REEDCLINIC_PRINT_ROUNDS=${1:-200}
rounds=${2:-5}
folder=$(mktemp -d) && export REEDCLINIC_PRINT_LOG=$folder/print.txt
trap 'rm -rf "$folder"' EXIT

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh

dotnet build tests/ReedClinic.Documents.Tests --configuration Release --verbosity quiet || stop_here 'the tests do not build.'
before=$(cut -d ' ' -f 1-3 /proc/loadavg)
tests/ReedClinic.Documents.Tests/bin/Release/net10.0/ReedClinic.Documents.Tests -noLogo -class '*PrintSpeedTests' < /dev/null || stop_here 'the letter did not print.'
for _ in $(seq "$rounds"); do
  begun=$(date +%s%N)
  "$(browser)" --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --disable-component-update --disable-sync \
    --user-data-dir="$folder/browser" --no-pdf-header-footer --print-to-pdf="$folder/letter.pdf" "file://$folder/print.html" > /dev/null 2>&1 || stop_here 'the browser did not print.'
  printf '%s\n' $((($(date +%s%N) - begun) / 1000000))
done | sort -n > "$folder/browser.txt"

middle=$(sed -n "$((rounds / 2 + 1))p" "$folder/browser.txt")
own=$(cut -d '|' -f 4 "$folder/print.txt" | tr -d ' ')
report=docs/measurement/print.md
{
  printf '# How long a letter takes to print\n\n'
  printf '`tests/print.sh` writes this file. The letter is the one of the golden pictures: three reeds, four pages of A4, four reed maps, three ways of the\n'
  printf 'crow and a stroke. It is printed again and again in one process (Release), after a first time that reads the faces. The browser prints the\n'
  printf 'letter’s page, without drawings, from its start to its end: the way that was not taken ([decision 28](../decisions/0028-letters-are-printed-by-our-own-setter.md)). Wanted: at most 60 ms in the middle.\n\n'
  printf '* command: `tests/print.sh %s`\n' "$*"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
  printf '* machine: %s cores; load average before: %s\n\n' "$(nproc)" "$before"
  printf '| what | rounds | median (ms) | 95th percentile (ms) | shortest (ms) |\n|---|---|---|---|---|\n'
  cat "$folder/print.txt"
  printf '| the same letter’s page by %s | %s | %s | %s | %s |\n\n' "$(basename "$(browser)")" "$rounds" "$middle" "$(tail -n 1 "$folder/browser.txt")" "$(head -n 1 "$folder/browser.txt")"
  printf 'The browser takes %s times as long.\n' "$(awk -v a="$middle" -v b="$own" 'BEGIN { printf "%.0f", a / b }')"
} > "$report"
cat "$report"
