#!/usr/bin/env bash
# Builds once, checks formatting, runs every test of every test project on SQLite and on a throw-away
# PostgreSQL, and closes with the sum. Fails when anything failed, was skipped, or did not run at all.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 LC_ALL=C.UTF-8
started=$SECONDS
cluster='' cluster_user=''

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before any test: %s\n' "$*" >&2; exit 1; }
postgres_bin() { find /usr/lib/postgresql -mindepth 3 -maxdepth 3 -name initdb 2>/dev/null | sort -V | tail -n 1 | xargs -r dirname; }
browser() { printf '%s' "${REEDCLINIC_TEST_BROWSER:-/usr/bin/chromium}"; }
symbols_font() { find /usr/share/fonts -name 'DejaVuSerif.ttf' 2>/dev/null | head -n 1; }

# --- What the machine needs ---------------------------------------------------------------------

lacking_packages() {
  [ -x "$(browser)" ] || say chromium
  [ -n "$(postgres_bin)" ] || say postgresql
  [ -n "$(symbols_font)" ] || say fonts-dejavu-core
}

install_lacking() {
  local packages
  packages=$(lacking_packages | tr '\n' ' ')
  [ -n "$packages" ] || return 0
  if [ "$(id -u)" -ne 0 ] || ! command -v apt-get > /dev/null; then
    stop_here "this machine lacks the Debian packages: ${packages}(as root this script installs them)."
  fi
  say "Installing: $packages"
  # The package must not start a server of its own: the tests bring their own cluster.
  if [ ! -e /etc/postgresql-common/createcluster.conf ]; then
    mkdir -p /etc/postgresql-common
    say 'create_main_cluster = false' > /etc/postgresql-common/createcluster.conf
  fi
  export DEBIAN_FRONTEND=noninteractive UCF_FORCE_CONFFOLD=1
  # shellcheck disable=SC2086
  { apt-get -qq update && apt-get -qq install --yes --no-install-recommends $packages; } > tests/artifacts/apt.log 2>&1 ||
    stop_here "apt-get could not install: $packages(see tests/artifacts/apt.log)"
  packages=$(lacking_packages | tr '\n' ' ')
  [ -z "$packages" ] || stop_here "still lacking after the installation: $packages"
}

# --- One throw-away PostgreSQL for the whole run --------------------------------------------------

as_cluster_user() {
  if [ -n "$cluster_user" ]; then (cd / && runuser -u "$cluster_user" -- "$@"); else "$@"; fi
}

free_port() {
  local port
  for _ in 1 2 3 4 5 6 7 8 9 10; do
    port=$((20000 + RANDOM % 12000))
    (exec 3<> "/dev/tcp/127.0.0.1/$port") 2> /dev/null || { say "$port"; return 0; }
  done
  return 1
}

start_postgres() {
  local bin port password
  bin=$(postgres_bin)
  if [ "$(id -u)" -eq 0 ]; then # PostgreSQL refuses to run as root
    cluster_user=postgres
    id "$cluster_user" > /dev/null 2>&1 || useradd --system --no-create-home "$cluster_user"
  fi
  cluster=$(mktemp -d "${TMPDIR:-/tmp}/reedclinic-postgres.XXXXXX")
  password=$(cat /proc/sys/kernel/random/uuid)
  say "$password" > "$cluster/password"
  [ -z "$cluster_user" ] || chown -R "$cluster_user" "$cluster"
  as_cluster_user "$bin/initdb" --pgdata="$cluster/data" --username=reedclinic --pwfile="$cluster/password" \
    --auth=scram-sha-256 --encoding=UTF8 --locale=C.UTF-8 --no-sync > "$cluster/initdb.log" 2>&1 ||
    stop_here "initdb failed: $(tail -n 3 "$cluster/initdb.log")"
  for _ in 1 2 3; do
    port=$(free_port) || stop_here "no free port for PostgreSQL."
    if as_cluster_user "$bin/pg_ctl" start --wait --silent --pgdata="$cluster/data" --log="$cluster/data/server.log" \
      --options="-c listen_addresses=127.0.0.1 -c port=$port -c unix_socket_directories='' -c fsync=off \
        -c synchronous_commit=off -c full_page_writes=off -c max_connections=200 -c log_connections=on" < /dev/null; then
      export REEDCLINIC_TEST_POSTGRES="Host=127.0.0.1;Port=$port;Username=reedclinic;Password=$password;Database=postgres"
      postgres_major=$("$bin/postgres" --version | sed -E 's/.* ([0-9]+)\..*/\1/')
      return 0
    fi
  done
  stop_here "PostgreSQL did not start: $(tail -n 3 "$cluster/data/server.log")"
}

stop_postgres() {
  local pid
  [ -n "$cluster" ] || return 0
  if [ -r "$cluster/data/postmaster.pid" ]; then
    pid=$(head -n 1 "$cluster/data/postmaster.pid")
    kill -INT "$pid" 2> /dev/null
    for _ in $(seq 100); do kill -0 "$pid" 2> /dev/null || break; sleep 0.1; done
  fi
  rm -rf "$cluster"
  cluster=''
}

# What the server itself saw: connections to any database but its own.
postgres_visits() { grep 'connection authorized: ' "$cluster/data/server.log" | grep -vcE 'database=(postgres|template1)( |$)'; }

# --- Build and run --------------------------------------------------------------------------------

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
}

main() {
  command -v dotnet > /dev/null || stop_here "the .NET SDK (global.json names the version) is not installed."
  mkdir -p tests/artifacts
  install_lacking
  trap stop_postgres EXIT
  trap 'exit 130' INT TERM HUP
  build
  say "Built and checked in $((SECONDS - started)) s."
  start_postgres
  passed_sum=0 failed_sum=0 skipped_sum=0
  local project
  for project in tests/*.Tests; do run_project "$project"; done
  local visits
  visits=$(postgres_visits)
  if [ "$visits" -eq 0 ]; then
    say 'PostgreSQL was started, but no test opened a database on it: that counts as a failure.'
    failed_sum=$((failed_sum + 1))
  fi
  say "engines: sqlite, postgresql-local; PostgreSQL $postgres_major ($visits connections to test databases); $((SECONDS - started)) s in all"
  say "$passed_sum passed, $failed_sum failed, $skipped_sum skipped"
  [ "$failed_sum" -eq 0 ] && [ "$skipped_sum" -eq 0 ] && [ "$passed_sum" -gt 0 ]
}

main "$@"
