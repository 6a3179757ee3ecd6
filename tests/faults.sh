#!/usr/bin/env bash
# Runs the fault tests at full count, through the same code as the quick suite, and writes what came of it to
# docs/operations/faults.md.   tests/faults.sh [ROUNDS [SEED]]   (200 kills on each engine unless said; 2,000 hostile events)
# REEDCLINIC_FAULT_PARTS names what is run: "server bench database" unless said; REEDCLINIC_BENCH_ROUNDS the kills under an open bench, 20.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

rounds=${1:-200}
export REEDCLINIC_KILL_ROUNDS=$rounds
export REEDCLINIC_HOSTILE_EVENTS=${REEDCLINIC_HOSTILE_EVENTS:-2000}
[[ $# -lt 2 ]] || export REEDCLINIC_KILL_SEED=$2
REEDCLINIC_FAULT_LOG=$(mktemp) && export REEDCLINIC_FAULT_LOG
trap 'rm -f "$REEDCLINIC_FAULT_LOG"' EXIT

parts=${REEDCLINIC_FAULT_PARTS:-server bench database}
code=0
export REEDCLINIC_MAILS=1000
export REEDCLINIC_LETTERS=${REEDCLINIC_LETTERS:-1000} REEDCLINIC_LETTER_KILLS=${REEDCLINIC_LETTER_KILLS:-50}
case " $parts " in *' server '*)
  dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*KillTests' --filter-class '*HostileEventsTests' --filter-class '*MailDeliveryTests' --filter-class '*HostilePostTests' || code=$?
esac
# An open bench in a real tab, killed and cut off; 20 rounds are 20 kills and 20 lost connections.
export REEDCLINIC_BENCH_ROUNDS=${REEDCLINIC_BENCH_ROUNDS:-20}
case " $parts " in *' bench '*)
  dotnet test --project tests/ReedClinic.Browser.Tests -- --filter-class '*BenchKillTests' || code=$?
esac
# The database started anew eight times in each way, away for a minute, held still, and full (the last as root alone).
export REEDCLINIC_DATABASE_FAULTS=${REEDCLINIC_DATABASE_FAULTS:-8} REEDCLINIC_DATABASE_AWAY=${REEDCLINIC_DATABASE_AWAY:-60}
export REEDCLINIC_MIGRATION_KILLS=${REEDCLINIC_MIGRATION_KILLS:-20}
case " $parts " in *' database '*)
  dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*DatabaseFaultTests' --filter-class '*MigrationKillTests' || code=$?
esac

report=docs/operations/faults.md
mkdir -p "$(dirname "$report")"
{
  printf '# The last full run of the fault tests\n\n'
  printf 'A separate process posts notes to the published app, kills it with signal 9 at a random moment after an acknowledgement,\n'
  printf 'starts it again and compares what was acknowledged with what is stored.\n\n'
  printf 'Hostile events are sent over circuits (forged, repeated, late, malformed) while two teachers are at work; what they did is counted.\n\n'
  printf 'Two mail workers send a thousand mails on each engine, each once; other servers put mails off, refuse them or hang up.\n\n'
  printf 'A thousand letters are sent on each engine while the mail server is away, puts off, refuses, hangs up or falls silent and the program is\n'
  printf 'killed with a mail in its hand; every letter has to be told of, and a letter whose save was taken back must not be.\n\n'
  printf 'A teacher says things at the bench in a real tab while the program is killed and the connection is cut; each has to stand once.\n\n'
  printf 'Three people write at the bench while PostgreSQL is started anew (fast, immediate, signal 9), away, held still by what is between,\n'
  printf 'or while the disk of either engine is full; who gets no yes sends the same again.\n\n'
  printf '* command: `tests/faults.sh %s`\n' "$*"
  printf '* parts: %s\n' "$parts"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD || echo ' with changes')"
  printf '* exit code: %s\n\n```\n' "$code"
  grep -E '^(engine|settled|summary|mails|letters|database|migration)' "$REEDCLINIC_FAULT_LOG"
  printf '```\n'
} > "$report"
cat "$report"
exit "$code"
