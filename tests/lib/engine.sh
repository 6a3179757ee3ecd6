# A Docker engine of our own, for a machine where none answers. Part of tests/run.sh and tests/lib/prepare-containers.sh.
# shellcheck shell=bash
#
# Everything it keeps stands in one folder outside the clone: REEDCLINIC_ENGINE, or /var/cache/reedclinic/engine. Images
# stay there from run to run (a few gigabytes; delete the folder to begin anew). Nothing else of the machine is changed:
# no packet filter, no forwarding, and the bridge that it makes goes with it.

engine_folder=${REEDCLINIC_ENGINE:-/var/cache/reedclinic/engine}

engine_answers() { DOCKER_HOST=${1:-${DOCKER_HOST:-}} timeout 10 docker info > /dev/null 2>&1; }

# Waits a quarter of an hour for another run that has the engine; what a killed run left going is ended.
lock_engine() { # OWNER
  mkdir -p "$engine_folder"
  exec 9>> "$engine_folder/lock"
  for _ in $(seq 180); do
    if flock --wait 5 9; then
      printf '%s\n' "$1" > "$engine_folder/owner"
      return 0
    fi
    kill -0 "$(cat "$engine_folder/owner" 2> /dev/null)" 2> /dev/null || end_engine
  done
  return 1
}

# The engine holds the lock (file 9) until it ends.
start_engine() {
  rm -f "$engine_folder/docker.pid"
  [ -e /sys/class/net/docker0 ] || touch "$engine_folder/made-bridge"
  setsid dockerd --iptables=false --ip-masq=false --ip-forward=false --userland-proxy=true \
    --data-root "$engine_folder/data" --exec-root "$engine_folder/run" --pidfile "$engine_folder/docker.pid" \
    --host "unix://$engine_folder/docker.sock" > "$engine_folder/log" 2>&1 < /dev/null &
  local pid=$!
  for _ in $(seq 150); do
    ! engine_answers "unix://$engine_folder/docker.sock" || return 0
    kill -0 "$pid" 2> /dev/null || return 1
    sleep 0.2
  done
  return 1
}

end_engine() {
  local pid
  pid=$(cat "$engine_folder/docker.pid" 2> /dev/null) || return 0
  kill "$pid" 2> /dev/null
  for _ in $(seq 150); do kill -0 "$pid" 2> /dev/null || break; sleep 0.2; done
  tidy_engine_folder
}

# Not when another run had been waiting: then all this is its own already.
tidy_engine_folder() (
  exec 8>> "$engine_folder/lock"
  flock --nonblock 8 || exit 0
  umount "$engine_folder"/run/netns/* 2> /dev/null
  [ ! -e "$engine_folder/made-bridge" ] || ip link delete docker0 2> /dev/null
  rm -f "$engine_folder/made-bridge" "$engine_folder/docker.pid"
)
