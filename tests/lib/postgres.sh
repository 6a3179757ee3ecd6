# One throw-away PostgreSQL for the whole run. Part of tests/run.sh.
# shellcheck shell=bash

cluster='' cluster_user='' postgres_major=''
# A cluster that nobody keeps needn't outlive the machine; whoever measures what goes to the disk says otherwise.
postgres_speed='-c fsync=off -c synchronous_commit=off -c full_page_writes=off'

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
      --options="-c listen_addresses=127.0.0.1 -c port=$port -c unix_socket_directories='' ${postgres_speed} \
        -c max_connections=400 -c log_connections=on" < /dev/null; then
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
