#!/usr/bin/env bash
# Looks at what the program is made of: the packages that the lock files name, a list of them for machines (SBOM, CycloneDX) and
# one of their licences for people, whether any has a known hole, and whether a secret lies in the repository.
#
#   deploy/supply-chain.sh [FOLDER]     writes bom.json there (artifacts unless said), and docs/licences/packages.md
#
# A gate that has nothing to look things up in finds nothing, and looks as if all were well. So each first has to find something
# that is known to be bad: a package with a published hole, a made-up key in a file. One that doesn't find it says "unknown".
# Ends with 0 when nothing is wrong as far as could be told, with 1 otherwise. Needs the .NET SDK, jq, and npm for the secrets.
set -uo pipefail
out=$(realpath -m "${1:-artifacts}")
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mkdir -p "$out"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
wrong=0
say() { printf '%-12s %s\n' "$1" "$2"; }
bad() { say "$1" "$2"; wrong=1; }

locked() {
  if dotnet restore ReedClinic.sln --locked-mode --verbosity quiet > "$work/restore.log" 2>&1; then say packages 'are those that the lock files name'
  else bad packages "could not be restored as locked: $(tail -n 1 "$work/restore.log")"; fi
}

# Licences that a package names by a file of its own; read there.
read_by_hand() {
  case $1 in
    Concentus) echo BSD-3-Clause ;;
    NVorbis) echo MIT ;;
  esac
}

bom() {
  dotnet tool restore > /dev/null &&
    dotnet dotnet-CycloneDX src/ReedClinic.Web/ReedClinic.Web.csproj --output "$out" --output-format Json --disable-package-restore --exclude-dev \
      > "$work/bom.log" 2>&1 || { bad bom "was not made: $(tail -n 1 "$work/bom.log")"; return; }
  say bom "$(jq '.components | length' "$out/bom.json") packages, in $out/bom.json"
  licences
}

licences() {
  local name version licence without=0
  {
    printf '# The licences of the packages that the program is given out with\n\nMade by `deploy/supply-chain.sh` out of the packages’ own words; where a package names a file instead, the file was read.\n\n'
    printf '| package | version | licence |\n| --- | --- | --- |\n'
    while IFS=$'\t' read -r name version licence; do
      licence=${licence:-$(read_by_hand "$name")}
      [ -n "$licence" ] || without=$((without + 1))
      printf '| %s | %s | %s |\n' "$name" "$version" "${licence:-unknown}"
    done < <(jq -r '.components[] | [.name, .version, ([.licenses[]? | .license.id // .license.name // .expression] | unique | join(" or "))] | @tsv' "$out/bom.json" | LC_ALL=C sort)
    [ "$without" -eq 0 ]
  } > docs/licences/packages.md || { bad licences 'are not known of each package (docs/licences/packages.md)'; return; }
  say licences 'are known of each package (docs/licences/packages.md)'
}

holes() {
  # GHSA-5crp-9r3c-p9vr: Newtonsoft.Json before 13.0.1.
  printf '<Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><TargetFramework>net10.0</TargetFramework><NuGetAudit>false</NuGetAudit></PropertyGroup><ItemGroup><PackageReference Include="Newtonsoft.Json" Version="12.0.1" /></ItemGroup></Project>' > "$work/control.csproj"
  if ! dotnet restore "$work/control.csproj" --verbosity quiet > /dev/null 2>&1 || ! grep -q 'Newtonsoft.Json' <<< "$(dotnet list "$work/control.csproj" package --vulnerable 2> /dev/null)"; then
    say holes 'unknown: where packages come from here, even one with a published hole (Newtonsoft.Json 12.0.1) is said to have none'
    return
  fi
  dotnet list ReedClinic.sln package --vulnerable --include-transitive > "$work/holes.log" 2>&1 || { bad holes 'could not be asked for'; return; }
  if grep -q '^ *> ' "$work/holes.log"; then bad holes "$(grep '^ *> ' "$work/holes.log" | sort -u)"; else say holes 'none is known; the one that was tried first was found'; fi
}

secrets() {
  local scanner=$work/scanner
  mkdir -p "$scanner/planted"
  if ! npm install --silent --no-fund --no-audit --prefix "$scanner" secretlint@10 @secretlint/secretlint-rule-preset-recommend@10 > "$work/npm.log" 2>&1; then
    say secrets 'unknown: the scanner could not be had'
    return
  fi
  # The name of a test may hold "ghs_": a token of that kind has figures or capitals too.
  printf '{"rules":[{"id":"@secretlint/secretlint-rule-preset-recommend","rules":[{"id":"@secretlint/secretlint-rule-github","options":{"allows":["/^gh[a-z]_[a-z_]+$/"]}}]}]}' \
    > "$scanner/.secretlintrc.json"
  # In two parts, so that this file itself is none: a made-up private key.
  printf -- '-----BEGIN RSA PRIVATE %s-----\n%s\n-----END RSA PRIVATE %s-----\n' KEY "$(head -c 600 /dev/urandom | base64)" KEY > "$scanner/planted/key.pem"
  printf 'a made-up token: gh%s\n' "s_$(head -c 200 /dev/urandom | base64 | tr -dc 'A-Za-z0-9' | cut -c1-36)" > "$scanner/planted/token.txt"
  # (Not by how it ends: a scanner that doesn't start ends with an error too.)
  if ! grep -q 'found private key' <<< "$(scan "$scanner" planted/key.pem 2> /dev/null)" || ! grep -q 'GitHub Token' <<< "$(scan "$scanner" planted/token.txt 2> /dev/null)"; then
    say secrets 'unknown: a key and a token that were planted are not found'
    return
  fi
  git ls-files -z | xargs -0 -n 400 printf '%s\n' | grep -vE '\.(png|woff2?|db|wav|ogg|opus|mp3|gz|bin|pdf)$' > "$work/files"
  if xargs -d '\n' -a "$work/files" -n 400 "$scanner/node_modules/.bin/secretlint" --secretlintrc "$scanner/.secretlintrc.json" > "$work/secrets.log" 2>&1; then
    say secrets "none in $(wc -l < "$work/files") files; those that were planted were found"
  else
    bad secrets "$(tail -n 20 "$work/secrets.log")"
  fi
}

# It only looks at what lies under the folder that it is started in.
scan() { (cd "$1" && node_modules/.bin/secretlint --secretlintrc .secretlintrc.json "$2"); }

locked
bom
holes
secrets
exit "$wrong"
