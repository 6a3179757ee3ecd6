#!/usr/bin/env bash
# Adds one migration to both engines, so that they never drift apart.
#
#   deploy/add-migration.sh NAME        a new migration; after a rebase that clashes under Migrations/, remove yours and
#                                       run this again
#   deploy/add-migration.sh --check     says whether the model has changes without a migration
set -euo pipefail
cd "$(dirname "$0")/.."

project=src/ReedClinic.Data
engines=(Sqlite Postgres)

usage() { sed -n '2,6s/^# \{0,1\}//p' "$0" >&2; exit 64; }
[[ $# -eq 1 ]] || usage

ef() { dotnet ef "$@" --project "$project" --startup-project "$project" --no-build; }

dotnet tool restore >/dev/null

[[ $1 != -* || $1 == --check ]] || usage

dotnet build "$project" --nologo --verbosity quiet

for engine in "${engines[@]}"; do
  context=${engine}ClinicDb
  folder=$project/Migrations/$engine
  case $1 in
    --check)
      ef migrations has-pending-model-changes --context "$context" ;;
    *)
      ef migrations add "$1" --context "$context" --output-dir "Migrations/$engine" ;;
  esac
  # The tool writes a byte-order mark; the house doesn't.
  sed -i '1s/^\xEF\xBB\xBF//' "$folder"/*.cs
done
