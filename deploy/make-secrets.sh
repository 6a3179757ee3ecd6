#!/usr/bin/env bash
# Makes the secrets that docker-compose.yml reads, in deploy/secrets (git and images leave it out): a random password for the
# database, and an empty file for the mail server's, to be filled by whoever has one.
# What is there already stays: the database keeps the password it was made with.
#
#   deploy/make-secrets.sh [FOLDER]     in another folder; docker-compose then wants its name in SECRETS_FOLDER
set -euo pipefail
folder=${1:-$(dirname "${BASH_SOURCE[0]}")/secrets}

# The folder keeps other accounts of this machine out; the files themselves must be readable by the containers' accounts.
mkdir -p -m 700 "$folder"
if [ -s "$folder/database-password" ]; then
  echo "$folder/database-password is there already."
else
  head -c 32 /dev/urandom | base64 | tr '+/' '-_' | tr -d '=\n' > "$folder/database-password"
  chmod 444 "$folder/database-password"
  echo "Made $folder/database-password."
fi

if [ -e "$folder/mail-password" ]; then
  echo "$folder/mail-password is there already."
else
  : > "$folder/mail-password"
  chmod 644 "$folder/mail-password"
  echo "Made $folder/mail-password, empty: write the mail server's password into it, if it asks for one."
fi
