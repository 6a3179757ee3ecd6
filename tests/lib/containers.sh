# The tests in containers: made ready in the background, run in a lane of their own. Part of tests/run.sh.
# shellcheck shell=bash

# shellcheck source=tests/lib/engine.sh
. tests/lib/engine.sh

container_tests=tests/ReedClinic.Containers.Tests
container_settings=tests/artifacts/containers.env
containers_said=tests/artifacts/containers.said
preparing=''

begin_containers() {
  rm -f "$container_settings"* "$containers_said"
  setsid bash tests/lib/prepare-containers.sh "$container_settings" "$$" > tests/artifacts/containers.log 2>&1 < /dev/null &
  preparing=$!
}

# A lane of its own: they wait for other processes more than they work. Where an engine answers, runs them; leaves word of
# which, or why not. Only where no engine can be had is that no failure.
container_lane() {
  local name value
  tail --pid="$preparing" -f /dev/null
  if [ ! -e "$container_settings" ]; then
    containers_failed 'their preparation broke off'
  elif grep -q '^broken=' "$container_settings"; then
    containers_failed "$(sed -n 's/^broken=//p' "$container_settings")"
  elif grep -q '^none=' "$container_settings"; then
    say "none, because $(sed -n 's/^none=//p' "$container_settings")" > "$containers_said"
  else
    while IFS='=' read -r name value; do export "$name=$value"; done < "$container_settings"
    run_project "$container_tests"
    say "${REEDCLINIC_POSTGRES_IMAGE:-postgres:17}; compose $(docker-compose version --short) on Docker $(docker version --format '{{.Server.Version}}')" > "$containers_said"
  fi
}

# Counts as one failure; what the preparation said is shown with the rest (tests/artifacts/containers.log).
containers_failed() {
  say "failed, because $1" > "$containers_said"
  say '0 1 0' > "$sums/containers.sum"
}

# Once their lane is over, nothing is left to be ended early: the number may soon be another process's.
containers_are_ready() {
  wait "$preparing"
  preparing=''
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
