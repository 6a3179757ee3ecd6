#!/usr/bin/env bash
# Makes the secrets that docker-compose.yml reads, with random values, in deploy/secrets (git and images leave it out).
# What is there already stays: the database keeps the password it was made with.
#
#   deploy/make-secrets.sh [FOLDER]     in another folder; docker-compose then wants its name in SECRETS_FOLDER
set -euo pipefail
folder=${1:-$(dirname "${BASH_SOURCE[0]}")/secrets}

# The folder keeps other accounts of this machine out; the file itself must be readable by the containers' accounts.
mkdir -p -m 700 "$folder"
if [ -s "$folder/database-password" ]; then
  echo "$folder/database-password is there already."
else
  head -c 32 /dev/urandom | base64 | tr '+/' '-_' | tr -d '=\n' > "$folder/database-password"
  chmod 444 "$folder/database-password"
  echo "Made $folder/database-password."
fi
