#!/usr/bin/env bash
# Makes a package for a machine without Docker: the program with its own .NET, compiled beforehand, and what systemd and a proxy
# need. Needs the .NET SDK; the machine it is for needs none.
#
#   deploy/make-package.sh [FOLDER]     writes reedclinic-VERSION-linux-x64.tar.gz, and the sum over it, into that folder
#   RUNTIME_ID=linux-arm64 deploy/make-package.sh     for another processor
set -euo pipefail
out=$(realpath -m "${1:-artifacts}")
cd "$(dirname "${BASH_SOURCE[0]}")/.."
runtime=${RUNTIME_ID:-linux-x64}
version=$(git log -1 --format=%cd-%h --date=format:%Y%m%d)
name=reedclinic-$version-$runtime
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

mkdir -p "$out" "$work/$name"
dotnet publish src/ReedClinic.Web --configuration Release --runtime "$runtime" --self-contained -p:PublishReadyToRun=true \
  --output "$work/$name/program" --nologo --verbosity quiet
cp deploy/systemd/* "$work/$name/"
mkdir "$work/$name/docs"
cp -r docs/operations docs/CHANGELOG.md "$work/$name/docs/"
cp LICENSE DEVELOPERS.md "$work/$name/"
printf '%s\n' "$version" > "$work/$name/version"
chmod 755 "$work/$name/install.sh" "$work/$name/reedclinic"
tar --create --gzip --owner=0 --group=0 --directory "$work" --file "$out/$name.tar.gz" "$name"
(cd "$out" && sha256sum "$name.tar.gz" > "$name.tar.gz.sha256")
echo "$out/$name.tar.gz"
