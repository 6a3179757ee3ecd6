#!/usr/bin/env bash
# Starts PostgreSQL; on an empty data folder it makes the cluster, the user and the database that these name:
#   POSTGRES_USER, POSTGRES_DB     postgres, and a database called like the user, unless said
#   POSTGRES_PASSWORD              or POSTGRES_PASSWORD_FILE, a file that holds it; one of the two must be given
# Arguments that begin with a dash go to the server.
set -euo pipefail

[ "$#" -gt 0 ] && [ "${1#-}" = "$1" ] || set -- postgres "$@"
[ "$1" = postgres ] || exec "$@"

if [ "$(id -u)" -eq 0 ]; then # the server refuses to run as root
  mkdir -p "$PGDATA" /var/run/postgresql
  chown -R postgres:postgres "$PGDATA" /var/run/postgresql
  chmod 700 "$PGDATA"
  exec setpriv --reuid=postgres --regid=postgres --init-groups bash "$0" "$@"
fi

make_cluster() {
  local user=${POSTGRES_USER:-postgres} password=${POSTGRES_PASSWORD:-} database
  database=${POSTGRES_DB:-$user}
  [ -z "${POSTGRES_PASSWORD_FILE:-}" ] || password=$(< "$POSTGRES_PASSWORD_FILE")
  [ -n "$password" ] || { echo 'POSTGRES_PASSWORD or POSTGRES_PASSWORD_FILE must be given.' >&2; exit 1; }
  # What stands here without PG_VERSION and beside this folder is an attempt that was broken off; anything else isn't ours.
  local new=$PGDATA/being-made
  [ ! -d "$new" ] || find "$PGDATA" -mindepth 1 -delete
  [ -z "$(ls -A "$PGDATA")" ] || { echo "$PGDATA holds no cluster, but is not empty." >&2; exit 1; }
  initdb --pgdata="$new" --username="$user" --pwfile=<(printf '%s\n' "$password") --auth-local=trust --auth-host=scram-sha-256 --encoding=UTF8
  echo 'host all all all scram-sha-256' >> "$new/pg_hba.conf"
  # Nobody from outside is let in before the database is there.
  pg_ctl start --pgdata="$new" --wait --silent --options="-c listen_addresses=''"
  [ "$database" = postgres ] ||
    psql --quiet --username="$user" --dbname=postgres --variable=ON_ERROR_STOP=1 --variable=name="$database" <<< 'CREATE DATABASE :"name"'
  pg_ctl stop --pgdata="$new" --wait --silent
  # PGDATA itself may be a volume and can't be renamed. What makes it a cluster comes last.
  find "$new" -mindepth 1 -maxdepth 1 ! -name PG_VERSION -exec mv --target-directory="$PGDATA" {} +
  sync
  mv "$new/PG_VERSION" "$PGDATA/"
  rmdir "$new"
}

# (Not `|| make_cluster`: after `||` bash lets a function go on past an error.)
if [ ! -s "$PGDATA/PG_VERSION" ]; then make_cluster; fi
unset POSTGRES_PASSWORD
exec "$@" -c listen_addresses='*'
