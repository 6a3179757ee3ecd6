# The tests in containers: made ready in the background, run last. Part of tests/run.sh.
# shellcheck shell=bash

# shellcheck source=tests/lib/engine.sh
. tests/lib/engine.sh

container_tests=tests/ReedClinic.Containers.Tests
container_settings=tests/artifacts/containers.env
containers='' preparing=''

begin_containers() {
  rm -f "$container_settings"*
  setsid bash tests/lib/prepare-containers.sh "$container_settings" "$$" > tests/artifacts/containers.log 2>&1 < /dev/null &
  preparing=$!
}

# Runs them where an engine answers; says in $containers which, or why not. Only where no engine can be had is that no failure.
run_container_tests() {
  local began=$SECONDS name value
  wait "$preparing"
  preparing=''
  say "Waited $((SECONDS - began)) s for images and containers."
  if [ ! -e "$container_settings" ]; then
    containers_failed 'their preparation broke off'
  elif grep -q '^broken=' "$container_settings"; then
    containers_failed "$(sed -n 's/^broken=//p' "$container_settings")"
  elif grep -q '^none=' "$container_settings"; then
    containers="none, because $(sed -n 's/^none=//p' "$container_settings")"
  else
    while IFS='=' read -r name value; do export "$name=$value"; done < "$container_settings"
    # What the tests of the pages have published from this build will do.
    [ ! -e tests/artifacts/published/ReedClinic.Web.dll ] || export REEDCLINIC_TEST_PUBLISHED=$PWD/tests/artifacts/published
    run_project "$container_tests"
    containers="${REEDCLINIC_POSTGRES_IMAGE:-postgres:17}; compose $(docker-compose version --short) on Docker $(docker version --format '{{.Server.Version}}')"
  fi
}

containers_failed() {
  containers="failed, because $1 (tests/artifacts/containers.log)"
  failed_sum=$((failed_sum + 1))
  tail -n 20 tests/artifacts/containers.log | sed 's/^/  | /'
}

end_containers() {
  if [ -n "$preparing" ]; then
    kill -TERM -- "-$preparing" 2> /dev/null
    wait "$preparing" # it finishes what must not be broken off
    preparing=''
  fi
  if [ -e "$container_settings.engine" ]; then
    end_engine "$$" || say "The Docker engine of $engine_folder has not ended yet."
  elif [ -e "$container_settings.images" ]; then
    docker image rm --force reedclinic-web-test reedclinic-web-test-build reedclinic-tools-test reedclinic-proxy-test > /dev/null 2>&1
  fi
  rm -f "$container_settings".*
}
