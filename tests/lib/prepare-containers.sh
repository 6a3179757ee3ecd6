#!/usr/bin/env bash
# Makes ready what the container tests need, in the background of tests/run.sh: an engine, images, the program's own image.
#
#   tests/lib/prepare-containers.sh RESULT OWNER
#
# RESULT gets the settings for the tests, or one line `none=REASON`. OWNER is the process that ends the engine again.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
# shellcheck source=tests/lib/engine.sh
. tests/lib/engine.sh
result=$1 owner=$2

none() { printf 'none=%s\n' "$*" > "$result"; exit 0; }
setting() { export "$1=$2"; printf '%s=%s\n' "$1" "$2" >> "$result.part"; }
step() { printf '%s %s\n' "$(date -u +%T)" "$*"; }

install_lacking() {
  local packages=() quiet=/usr/sbin/policy-rc.d made=''
  command -v dockerd > /dev/null || packages+=(docker.io)
  command -v docker-compose > /dev/null || packages+=(docker-compose)
  command -v debootstrap > /dev/null || packages+=(debootstrap)
  [ "${#packages[@]}" -gt 0 ] || return 0
  command -v apt-get > /dev/null || return 1
  step "installing ${packages[*]}"
  # The package must not start an engine of its own.
  if [ ! -e "$quiet" ]; then
    made=$quiet
    printf '#!/bin/sh\nexit 101\n' > "$quiet"
    chmod +x "$quiet"
  fi
  export DEBIAN_FRONTEND=noninteractive UCF_FORCE_CONFFOLD=1
  apt-get -qq update && apt-get -qq install --yes --no-install-recommends "${packages[@]}"
  local code=$?
  [ -z "$made" ] || rm -f "$made"
  return "$code"
}

# An engine that was there is used as it is, with the official images unless others are named.
use_engine_that_answers() {
  command -v docker-compose > /dev/null || none 'docker-compose is not installed'
  step 'using the engine that answers'
}

use_engine_of_our_own() {
  [ "$(id -u)" -eq 0 ] || none 'no Docker engine answers, and only root can start one'
  install_lacking || none "Debian's packages of Docker could not be installed (tests/artifacts/containers.log)"
  step 'starting an engine'
  lock_engine "$owner" || none 'another run has had the engine for a quarter of an hour'
  touch "$result.engine"
  start_engine || none "Docker does not start: $(tail -n 1 "$engine_folder/log")"
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
  local images name value
  images=$(nice deploy/debian/make-images.sh) || none 'the images could not be made (tests/artifacts/containers.log)'
  while IFS='=' read -r name value; do setting "$name" "$value"; done <<< "$images"
  setting REEDCLINIC_POSTGRES_IMAGE "$POSTGRES_IMAGE"
}

rm -f "$result" "$result.part" "$result.engine"
if engine_answers; then use_engine_that_answers; else use_engine_of_our_own; fi

step "building the program's image"
# The tagged first stage keeps its layers, so that the next build only does what has changed.
docker build --quiet --network "${BUILD_NETWORK:-default}" ${SDK_IMAGE:+--build-arg "SDK_IMAGE=$SDK_IMAGE"} \
  --target build --tag reedclinic-web-build --file deploy/Dockerfile . &&
  docker-compose build --quiet web || none "the program's image could not be built (tests/artifacts/containers.log)"
[ ! -e "$result.engine" ] || docker image prune --force > /dev/null
step 'ready'
touch "$result.part"
mv "$result.part" "$result"
