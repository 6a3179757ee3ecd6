#!/usr/bin/env bash
# Builds once, checks formatting, runs every test of every test project on SQLite and on a throw-away PostgreSQL, then
# those that need containers where a Docker engine answers or can be started, and closes with the sum. Fails when anything
# failed, was skipped, or did not run at all.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# No build server outlives the run.
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=false
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 LC_ALL=C.UTF-8
started=$SECONDS

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before any test: %s\n' "$*" >&2; exit 1; }

# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
# shellcheck source=tests/lib/postgres.sh
. tests/lib/postgres.sh
# shellcheck source=tests/lib/containers.sh
. tests/lib/containers.sh

build() {
  dotnet restore ReedClinic.sln --locked-mode --verbosity quiet || stop_here "the packages could not be restored."
  dotnet build ReedClinic.sln --no-restore --verbosity quiet -warnaserror || stop_here "the solution does not build without warnings."
  # Code style is an error in the build; what is left to check is layout.
  dotnet format whitespace --verify-no-changes --folder . || stop_here "the formatting is off: run 'dotnet format whitespace --folder .'"
}

number_after() { sed -nE "s/^ *$1: ([0-9]+).*/\1/p" "$2" | tail -n 1; }

run_project() { # prints the project's output only when something is wrong with it
  local project=$1 name output before code total failed succeeded skipped
  name=$(basename "$project")
  output="tests/artifacts/$name.log"
  before=$SECONDS
  dotnet test --project "$project" --no-build --no-restore --no-progress --no-ansi > "$output" 2>&1 < /dev/null
  code=$?
  total=$(number_after total "$output") failed=$(number_after failed "$output")
  succeeded=$(number_after succeeded "$output") skipped=$(number_after skipped "$output")
  printf '%-34s %4d passed %3d failed %3d skipped  %4d s\n' "$name" "${succeeded:-0}" "${failed:-0}" "${skipped:-0}" "$((SECONDS - before))"
  passed_sum=$((passed_sum + ${succeeded:-0}))
  skipped_sum=$((skipped_sum + ${skipped:-0}))
  if [ "${failed:-0}" -eq 0 ] && { [ "$code" -ne 0 ] || [ "${total:-0}" -eq 0 ]; }; then
    failed=1 # it did not run, crashed, or ran no test: that counts as a failure too
    say "  ($name ended with code $code and ran ${total:-0} tests)"
  fi
  failed_sum=$((failed_sum + ${failed:-0}))
  [ "$code" -eq 0 ] || sed 's/^/  | /' "$output"
  sed -nE "s/^failed (.*)/$name: \1/p" "$output" >> tests/artifacts/failed.txt
}

clean_up() {
  end_containers
  stop_postgres
}

main() {
  command -v dotnet > /dev/null || stop_here "the .NET SDK (global.json names the version) is not installed."
  mkdir -p tests/artifacts
  rm -rf tests/artifacts/published tests/artifacts/failed.txt
  install_lacking
  install_quicker_browser
  fetch_proxy
  trap clean_up EXIT
  trap 'exit 130' INT TERM HUP
  begin_containers
  build
  say "Built and checked in $((SECONDS - started)) s."
  start_postgres
  passed_sum=0 failed_sum=0 skipped_sum=0
  local project visits
  for project in tests/*.Tests; do
    [ "$project" = "$container_tests" ] || run_project "$project"
  done
  visits=$(postgres_visits)
  if [ "$visits" -eq 0 ]; then
    say 'PostgreSQL was started, but no test opened a database on it: that counts as a failure.'
    failed_sum=$((failed_sum + 1))
  fi
  run_container_tests
  say "local PostgreSQL $postgres_major ($visits connections to test databases); $((SECONDS - started)) s in all"
  say "engines: sqlite, postgresql-local; containers: $containers"
  [ ! -s tests/artifacts/failed.txt ] || { say 'These failed; what they said stands above:'; sed 's/^/  /' tests/artifacts/failed.txt; }
  say "$passed_sum passed, $failed_sum failed, $skipped_sum skipped"
  [ "$failed_sum" -eq 0 ] && [ "$skipped_sum" -eq 0 ] && [ "$passed_sum" -gt 0 ]
}

main "$@"
