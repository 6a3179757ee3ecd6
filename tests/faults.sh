#!/usr/bin/env bash
# Runs the fault tests at full count, through the same code as the quick suite, and writes what came of it to
# docs/operations/faults.md: a section for each part that was run; the others stay as they are.
#   tests/faults.sh [ROUNDS [SEED]]   (200 kills on each engine unless said)
# REEDCLINIC_FAULT_PARTS names what is run: "steps server bench database" unless said. Counts can be changed by the variables below.
# Needs PostgreSQL's programs; "bench" a Chromium; the full disks of "database" are made by root alone.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

all_parts='steps server bench database'
parts=${REEDCLINIC_FAULT_PARTS:-$all_parts}
for part in $parts; do
  case " $all_parts " in *" $part "*) ;; *) printf 'There is no part “%s”: %s.\n' "$part" "$all_parts" >&2; exit 2 ;; esac
done
rounds=${1:-200}
export REEDCLINIC_KILL_ROUNDS=$rounds
[[ $# -lt 2 ]] || export REEDCLINIC_KILL_SEED=$2
export REEDCLINIC_STEP_STRIDE=${REEDCLINIC_STEP_STRIDE:-1}
export REEDCLINIC_HOSTILE_EVENTS=${REEDCLINIC_HOSTILE_EVENTS:-2000} REEDCLINIC_MAILS=${REEDCLINIC_MAILS:-1000}
export REEDCLINIC_LETTERS=${REEDCLINIC_LETTERS:-1000} REEDCLINIC_LETTER_KILLS=${REEDCLINIC_LETTER_KILLS:-50}
export REEDCLINIC_BENCH_ROUNDS=${REEDCLINIC_BENCH_ROUNDS:-20}
export REEDCLINIC_DATABASE_FAULTS=${REEDCLINIC_DATABASE_FAULTS:-8} REEDCLINIC_DATABASE_AWAY=${REEDCLINIC_DATABASE_AWAY:-60}
export REEDCLINIC_MIGRATION_KILLS=${REEDCLINIC_MIGRATION_KILLS:-20}

report=docs/operations/faults.md
folder=$(mktemp -d)
export REEDCLINIC_FAULT_LOG=$folder/log
trap 'rm -rf "$folder"' EXIT

about() {
  case $1 in
    steps) cat << 'END' ;;
Something goes wrong at the first, second, third … statement or commit of everything that people do, from the intake to the next one
and from an invitation to an erasure, until a whole way is gone without: the step isn’t taken, or its answer is lost, by a trouble that
stays or by a server that was away for a moment. After each, what stands is as before or as done; whoever presses again has it once;
no file lies about. A form that is sent to a page is answered in one sentence.
END
    server) cat << 'END' ;;
A separate process posts notes to the published app, kills it with signal 9 at a random moment after an acknowledgement,
starts it again and compares what was acknowledged with what is stored. Hostile events are sent over circuits (forged, repeated, late,
malformed) while two teachers are at work; what they did is counted. Two mail workers send mails on each engine, each once; other
servers put mails off, refuse them or hang up. Letters are sent on each engine while the mail server is away, puts off, refuses, hangs
up or falls silent and the program is killed with a mail in its hand; every letter has to be told of, and a letter whose save was
taken back must not be.
END
    bench) cat << 'END' ;;
A teacher says things at the bench in a real tab while the program is killed and the connection is cut; each has to stand once.
END
    database) cat << 'END' ;;
Three people write at the bench while PostgreSQL is started anew (fast, immediate, signal 9), away, held still by what is between,
or while the disk of either engine is full; who gets no yes sends the same again. The program is killed while it brings a database of
the first schema up to date, and started again.
END
  esac
}

counts() {
  case $1 in
    steps) printf 'every step from the first on in strides of %s' "$REEDCLINIC_STEP_STRIDE" ;;
    server) printf '%s kills, %s hostile events, %s mails, %s letters with %s kills' "$rounds" "$REEDCLINIC_HOSTILE_EVENTS" "$REEDCLINIC_MAILS" "$REEDCLINIC_LETTERS" "$REEDCLINIC_LETTER_KILLS" ;;
    bench) printf '%s kills and as many lost connections' "$REEDCLINIC_BENCH_ROUNDS" ;;
    database) printf '%s of each fault, %s s away, %s kills of a migration' "$REEDCLINIC_DATABASE_FAULTS" "$REEDCLINIC_DATABASE_AWAY" "$REEDCLINIC_MIGRATION_KILLS" ;;
  esac
}

tests_of() {
  case $1 in
    steps)
      dotnet test --project tests/ReedClinic.Data.Tests -- --filter-class '*EveryStepTests' '*OnceOnlyTests' || return
      dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*FaultyFormTests' ;;
    server) dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*.KillTests' '*HostileEventsTests' '*MailDeliveryTests' '*HostilePostTests' ;;
    bench) dotnet test --project tests/ReedClinic.Browser.Tests -- --filter-class '*BenchKillTests' ;;
    database) dotnet test --project tests/ReedClinic.Web.Tests -- --filter-class '*DatabaseFaultTests' '*MigrationKillTests' ;;
  esac
}

# The section of a part as the report has it. $1: part.
kept() { [ ! -r "$report" ] || awk -v wanted="## $1" '/^## / { within = ($0 == wanted) } within' "$report"; }

code=0
for part in $all_parts; do
  kept "$part" > "$folder/$part"
done
for part in $parts; do
  : > "$REEDCLINIC_FAULT_LOG"
  began=$SECONDS ended=0
  tests_of "$part" || ended=$?
  [ "$ended" -eq 0 ] || code=$ended
  {
    printf '## %s\n\n' "$part"
    about "$part"
    printf '\n* command: `REEDCLINIC_FAULT_PARTS=%s tests/faults.sh%s`\n' "$part" "${*:+ $*}"
    printf '* counts: %s\n' "$(counts "$part")"
    printf '* date: %s, after %s minutes\n' "$(date --utc +%FT%TZ)" "$(((SECONDS - began + 30) / 60))"
    printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
    printf '* machine: %s processors; load average after: %s\n' "$(nproc)" "$(cut -d ' ' -f 1-3 /proc/loadavg)"
    printf '* exit code: %s\n\n```\n' "$ended"
    grep -E '^(engine|settled|summary|mails|letters|database|migration|step)' "$REEDCLINIC_FAULT_LOG"
    printf '```\n\n'
  } > "$folder/$part"
  # Written after each part, so that nothing is lost of what was run when a later one is broken off.
  {
    printf '# The last full run of each part of the fault tests\n\n`tests/faults.sh` writes this file.\n\n'
    for written in $all_parts; do cat "$folder/$written"; done
  } | sed -e '${/^$/d}' > "$folder/report"
  cp "$folder/report" "$report"
done
cat "$report"
exit "$code"
