#!/usr/bin/env bash
# Makes ready what the container tests need, in the background of tests/run.sh: an engine, images, the program's own image.
#
#   tests/lib/prepare-containers.sh RESULT OWNER
#
# RESULT gets the settings for the tests, or one line: `none=REASON` where no engine can be had, `broken=REASON` where
# something of ours went wrong although there is one. OWNER is the process that ends the engine again.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
# shellcheck source=tests/lib/engine.sh
. tests/lib/engine.sh
result=$1 owner=$2 ended='' quiet=''

none() { printf 'none=%s\n' "$*" > "$result"; exit 0; }
broken() { printf 'broken=%s\n' "$*" > "$result"; exit 1; }
setting() { export "$1=$2"; printf '%s=%s\n' "$1" "$2" >> "$result.part"; }
step() { printf '%s %s\n' "$(date -u +%T)" "$*"; }

# An early end of the run sends TERM to the whole process group. What must not be cut in two is held together by these.
hold_end() { trap 'ended=yes' TERM; }
allow_end() { trap 'exit 143' TERM; [ -z "$ended" ] || exit 143; }
trap '[ -z "$quiet" ] || rm -f "$quiet"' EXIT
allow_end

# A file that a killed run left is known by this line.
quiet_mark='# Put here by tests/run.sh while it installs Docker; it can be deleted.'

install_lacking() {
  local packages=() policy=/usr/sbin/policy-rc.d code
  command -v dockerd > /dev/null || packages+=(docker.io)
  command -v docker-compose > /dev/null || packages+=(docker-compose)
  command -v debootstrap > /dev/null || packages+=(debootstrap)
  [ "${#packages[@]}" -gt 0 ] || return 0
  command -v apt-get > /dev/null || return 1
  step "installing ${packages[*]}"
  # The package must not start an engine of its own.
  hold_end
  if [ ! -e "$policy" ] || grep -qsF "$quiet_mark" "$policy"; then
    quiet=$policy
    printf '#!/bin/sh\n%s\nexit 101\n' "$quiet_mark" > "$quiet"
    chmod +x "$quiet"
  fi
  # In a session of its own, out of reach of that TERM: an installation is never broken off, its end is waited for.
  DEBIAN_FRONTEND=noninteractive UCF_FORCE_CONFFOLD=1 setsid --wait bash -c \
    'apt-get -qq update && exec apt-get -qq install --yes --no-install-recommends "$@"' install "${packages[@]}" 9>&-
  code=$?
  [ -z "$quiet" ] || rm -f "$quiet"
  quiet=''
  allow_end
  return "$code"
}

# An engine that was there is used as it is, with the official images unless others are named.
use_engine_that_answers() {
  command -v docker-compose > /dev/null || none 'docker-compose is not installed'
  step 'using the engine that answers'
}

use_engine_of_our_own() {
  [ "$(id -u)" -eq 0 ] || none 'no Docker engine answers, and only root can start one'
  lock_engine "$owner" || none 'another run has had the engine for a quarter of an hour'
  touch "$result.engine"
  install_lacking || none "Debian's packages of Docker could not be installed (tests/artifacts/containers.log)"
  step 'starting an engine'
  hold_end
  launch_engine
  allow_end
  launched_engine_answers || none "Docker does not start: $(tail -n 1 "$engine_folder/log")"
  setting DOCKER_HOST "unix://$engine_folder/docker.sock"
  setting DOCKER_API_VERSION "$(docker version --format '{{.Server.APIVersion}}')"
  setting DOCKER_BUILDKIT 0
  setting TESTCONTAINERS_RYUK_DISABLED true
  setting TESTCONTAINERS_HOST_OVERRIDE 127.0.0.1
  # What a killed run left behind.
  docker ps --all --quiet | xargs --no-run-if-empty docker rm --force --volumes > /dev/null
  docker volume prune --force > /dev/null
  docker network prune --force > /dev/null

  step 'making images'
  local images name value code=0
  images=$(nice deploy/debian/make-images.sh) || code=$?
  [ "$code" -ne 3 ] || none 'this machine has nothing to make images of (tests/artifacts/containers.log)'
  [ "$code" -eq 0 ] || broken 'the images could not be made'
  while IFS='=' read -r name value; do setting "$name" "$value"; done <<< "$images"
  setting REEDCLINIC_POSTGRES_IMAGE "$POSTGRES_IMAGE"
}

rm -f "$result" "$result".*
if engine_answers; then use_engine_that_answers; else use_engine_of_our_own; fi

step "building the program's images"
# Under names of the tests: the engine may be a studio's own. So the settings in a file `.env` aren't read either.
setting WEB_IMAGE reedclinic-web-test
setting TOOLS_IMAGE reedclinic-tools-test
setting PROXY_IMAGE reedclinic-proxy-test
touch "$result.images"
: > "$result.empty"
# The tagged first stage keeps its layers, so that the next build only does what has changed.
docker build --quiet --network "${BUILD_NETWORK:-default}" ${SDK_IMAGE:+--build-arg "SDK_IMAGE=$SDK_IMAGE"} \
  --target build --tag "$WEB_IMAGE-build" --file deploy/Dockerfile . &&
  docker-compose --env-file "$PWD/$result.empty" build --quiet web tools proxy || broken "the program's images could not be built"
[ ! -e "$result.engine" ] || docker image prune --force > /dev/null
step 'ready'
mv "$result.part" "$result"
