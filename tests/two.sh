#!/usr/bin/env bash
# Two processes of one studio at full count, through the same code as the quick suite, and what came of it in
# docs/operations/two-instances.md.   tests/two.sh [ENTRIES [KILLS [MAILS]]]   (50 entries, 10 kills, 60 mails unless said)
# Needs a PostgreSQL in REEDCLINIC_TEST_POSTGRES or the programs to start one, a Chromium, and Caddy.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
say() { printf '%s\n' "$*"; }
stop_here() { printf '%s\n' "$*" >&2; exit 1; }
# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
mkdir -p tests/artifacts
fetch_proxy

export REEDCLINIC_TWO_ENTRIES=${1:-50} REEDCLINIC_TWO_KILLS=${2:-10} REEDCLINIC_TWO_MAILS=${3:-60}
REEDCLINIC_TWO_LOG=$(mktemp) && export REEDCLINIC_TWO_LOG
trap 'rm -f "$REEDCLINIC_TWO_LOG"' EXIT

# Published as it is installed: compiled beforehand, as deploy/make-package.sh and deploy/Dockerfile do it.
published=$PWD/tests/artifacts/published
dotnet publish src/ReedClinic.Web -c Release -r linux-x64 --no-self-contained -p:PublishReadyToRun=true -o "$published" --nologo -v quiet || stop_here 'It could not be published.'
export REEDCLINIC_TEST_PUBLISHED=$published

code=0
dotnet test --project tests/ReedClinic.Browser.Tests -- --filter-class '*TwoProcessesTests' || code=$?
dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*TwoWorkersTests' || code=$?

report=docs/operations/two-instances.md
{
  printf '# The last full run with two processes of one studio\n\n'
  printf 'Two published processes on one PostgreSQL, with the keys in the database and one folder of files, behind the proxy of\n'
  printf '`deploy/systemd/Caddyfile` with a certificate authority of its own. A real tab at each: what is said in one shows in the other;\n'
  printf 'one process is killed (signal 9) under an open bench with a line typed and not sent, and the tab goes on at the other. Then mails,\n'
  printf 'with a mail server for each process, so that it can be told who sent which. The wishes: shown within 1,000 ms, at work again within\n'
  printf '10 s, nothing lost or doubled, each mail once.\n\n'
  printf '* command: `tests/two.sh%s`\n' "${*:+ $*}"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse --short HEAD)" "$(git diff --quiet HEAD -- src tests deploy || echo ' with changes')"
  printf '* machine: %s processors\n' "$(nproc)"
  printf '* exit code: %s\n\n```\n' "$code"
  cat "$REEDCLINIC_TWO_LOG"
  printf '```\n'
} > "$report"
cat "$report"
exit "$code"
