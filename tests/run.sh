#!/usr/bin/env bash
# Builds once, checks formatting, runs every test of every test project on SQLite and on a throw-away PostgreSQL, two
# projects at a time, beside them those that need containers where a Docker engine answers or can be started, and closes
# with the sum. Fails when anything failed, was skipped, or did not run at all.
#   REEDCLINIC_TEST_LANES=1 tests/run.sh   (one project after the other, beside the containers)
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# No build server outlives the run: the compiler's is one of its own, and is sent away (tests/lib/build.sh).
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=true SharedCompilationId=reedclinic-$$
# What lives for minutes is slower for watching itself to compile anew what it does most, and for locking each page that it compiles to.
export DOTNET_TieredPGO=0 DOTNET_EnableWriteXorExecute=0
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
# shellcheck source=tests/lib/build.sh
. tests/lib/build.sh
# shellcheck source=tests/lib/lanes.sh
. tests/lib/lanes.sh

clean_up() {
  end_lanes
  end_containers
  end_compiler
  stop_postgres
}

main() {
  command -v dotnet > /dev/null || stop_here "the .NET SDK (global.json names the version) is not installed."
  mkdir -p tests/artifacts
  rm -rf tests/artifacts/published "$sums"
  install_lacking
  install_quicker_browser
  fetch_proxy
  trap clean_up EXIT
  trap 'exit 130' INT TERM HUP
  begin_containers
  build
  say "Built and checked in $((SECONDS - started)) s."
  start_postgres
  failed_besides=0
  local visits passed failed skipped
  run_lanes
  containers_are_ready
  visits=$(postgres_visits)
  if [ "$visits" -eq 0 ]; then
    say 'PostgreSQL was started, but no test opened a database on it: that counts as a failure.'
    failed_besides=$((failed_besides + 1))
  fi
  show_failed
  read -r passed failed skipped < <(add_up)
  failed=$((failed + failed_besides))
  say "local PostgreSQL $postgres_major ($visits connections to test databases); $((SECONDS - started)) s in all"
  say "engines: sqlite, postgresql-local; containers: $(cat "$containers_said")"
  say "$passed passed, $failed failed, $skipped skipped"
  [ "$failed" -eq 0 ] && [ "$skipped" -eq 0 ] && [ "$passed" -gt 0 ]
}

main "$@"
