#!/usr/bin/env bash
# Adds one migration to both engines, so that they never drift apart.
#
#   deploy/add-migration.sh NAME        a new migration, from the second release on
#   deploy/add-migration.sh --initial   until the first release: writes the single initial migration of both engines anew.
#                                       After a rebase that clashes under Migrations/, take either side and run this.
#   deploy/add-migration.sh --check     says whether the model has changes without a migration
set -euo pipefail
cd "$(dirname "$0")/.."

project=src/ReedClinic.Data
initial=20261125000000_Initial
engines=(Sqlite Postgres)

usage() { sed -n '2,8s/^# \{0,1\}//p' "$0" >&2; exit 64; }
[[ $# -eq 1 ]] || usage

ef() { dotnet ef "$@" --project "$project" --startup-project "$project" --no-build; }

dotnet tool restore >/dev/null

if [[ $1 == --initial ]]; then
  rm -f "$project"/Migrations/{Sqlite,Postgres}/*.cs
elif [[ $1 == -* && $1 != --check ]]; then
  usage
fi

dotnet build "$project" --nologo --verbosity quiet

for engine in "${engines[@]}"; do
  context=${engine}ClinicDb
  folder=$project/Migrations/$engine
  case $1 in
    --check)
      ef migrations has-pending-model-changes --context "$context" ;;
    --initial)
      ef migrations add Initial --context "$context" --output-dir "Migrations/$engine"
      # A fixed id keeps the file names, and so the history, still while the model settles.
      made=$(basename "$folder"/*_Initial.cs .cs)
      if [[ $made != "$initial" ]]; then
        mv "$folder/$made.cs" "$folder/$initial.cs"
        mv "$folder/$made.Designer.cs" "$folder/$initial.Designer.cs"
        sed -i "s/$made/$initial/" "$folder/$initial.Designer.cs"
      fi ;;
    *)
      ef migrations add "$1" --context "$context" --output-dir "Migrations/$engine" ;;
  esac
  # The tool writes a byte-order mark; the house doesn't.
  sed -i '1s/^\xEF\xBB\xBF//' "$folder"/*.cs
done

if [[ $1 != --check ]]; then
  echo 'Now run tests/fixtures/make-schema-fixture.sh first-schema, unless it belongs to a release.'
fi
