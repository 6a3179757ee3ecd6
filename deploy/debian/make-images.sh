#!/usr/bin/env bash
# Makes the images that the program's own image and docker-compose.yml begin with, out of Debian's packages and this
# machine's .NET, for a machine that has no registry of images. Needs root, debootstrap and a Docker engine.
#
#   deploy/debian/make-images.sh     makes what isn't there yet and prints their names as settings for docker-compose:
#                                    deploy/debian/make-images.sh > .env
#
# They take the Debian release of this machine, from the mirror that its own apt uses. A name carries what it was made of,
# so that a change makes a new image. Ends with 3 where the machine lacks what they are made of.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
export LC_ALL=C.UTF-8 DOCKER_BUILDKIT=0

say() { printf '%s\n' "$*" >&2; }
stop_here() { say "No images: $*"; exit 3; }

# shellcheck disable=SC1091
. /etc/os-release
[ "${ID:-}" = debian ] && [ -n "${VERSION_CODENAME:-}" ] || stop_here 'this machine is not a release of Debian.'
[ "$(id -u)" -eq 0 ] || stop_here 'only root can make them.'
command -v debootstrap > /dev/null || stop_here 'debootstrap is not installed.'
command -v dotnet > /dev/null || stop_here '.NET is not installed.'
dotnet_folder=$(dirname "$(readlink -f "$(command -v dotnet)")")
sdk_version=$(cd / && dotnet --version)

short_hash() { cat "$@" | sha256sum | cut -c1-12; }
is_there() { docker image inspect "$1" > /dev/null 2>&1; }

recipe=$(short_hash make-images.sh)
base=reedclinic-debian/base:$VERSION_CODENAME-$recipe
postgres=reedclinic-debian/postgres:$VERSION_CODENAME-$(short_hash make-images.sh postgres.Dockerfile postgres-start.sh)
caddy=reedclinic-debian/caddy:$VERSION_CODENAME-$(short_hash make-images.sh caddy.Dockerfile)
runtime=reedclinic-debian/dotnet-runtime:$sdk_version-$(short_hash make-images.sh dotnet.Dockerfile)
sdk=reedclinic-debian/dotnet-sdk:$sdk_version-$(short_hash make-images.sh dotnet.Dockerfile)

# What apt on this machine reads its packages of Debian from: address and release.
sources() {
  apt-get indextargets --format '$(ORIGIN) $(COMPONENT) $(REPO_URI) $(RELEASE)' 'Created-By: Packages' |
    awk '$1 == "Debian" && $2 == "main" { print $3, $4 }' | sort -u
}

make_base() {
  local root mirror icu
  mirror=$(sources | awk -v release="$VERSION_CODENAME" '$2 == release { print $1; exit }')
  [ -n "$mirror" ] || stop_here "apt knows no source of Debian $VERSION_CODENAME; run apt-get update."
  icu=$(apt-cache pkgnames libicu | grep -E '^libicu[0-9]+$' | sort -V | tail -n 1)
  root=$(mktemp -d)
  # shellcheck disable=SC2064
  trap "rm -rf --one-file-system '$root'" EXIT
  say "$base from $VERSION_CODENAME"
  debootstrap --variant=minbase --include="ca-certificates,tzdata,$icu" "$VERSION_CODENAME" "$root" "$mirror" >&2
  sources | sed 's/.*/deb & main/' > "$root/etc/apt/sources.list"
  # It trusts whom this machine trusts, and keeps no package files.
  cp /etc/ssl/certs/ca-certificates.crt "$root/etc/ssl/certs/ca-certificates.crt"
  rm -rf "$root"/var/cache/apt/archives/*.deb "$root"/var/lib/apt/lists/*
  tar --create --directory "$root" --numeric-owner . | docker import --change 'ENV LANG=C.UTF-8' --change 'CMD ["bash"]' - "$base" >&2
}

make_from() { # IMAGE RECIPE: out of Debian's packages
  say "$1"
  docker build --network host --build-arg BASE="$base" --tag "$1" --file "$2" . >&2
}

make_dotnet() { # IMAGE BASE PART...: the named parts of this machine's .NET on top of a base
  local image=$1 from=$2
  shift 2
  say "$image"
  tar --create --directory "$dotnet_folder" --transform 's,^,dotnet/,' "$@" --directory "$PWD" --transform 's,^dotnet/dotnet.Dockerfile,Dockerfile,' dotnet.Dockerfile |
    docker build --build-arg BASE="$from" --build-arg NUGET_CERT_REVOCATION_MODE --tag "$image" - >&2
}

# (Not `is_there || make`: after `||` bash lets a function go on past an error.)
if ! is_there "$base"; then make_base; fi
if ! is_there "$postgres"; then make_from "$postgres" postgres.Dockerfile; fi
if ! is_there "$caddy"; then make_from "$caddy" caddy.Dockerfile; fi
if ! is_there "$runtime"; then make_dotnet "$runtime" "$base" dotnet host shared; fi
if ! is_there "$sdk"; then make_dotnet "$sdk" "$runtime" sdk sdk-manifests packs; fi

printf 'SDK_IMAGE=%s\nRUNTIME_IMAGE=%s\nPOSTGRES_IMAGE=%s\nCADDY_IMAGE=%s\nBUILD_NETWORK=host\n' "$sdk" "$runtime" "$postgres" "$caddy"
