# A Docker engine of our own, for a machine where none answers. Part of tests/run.sh and tests/lib/prepare-containers.sh.
# shellcheck shell=bash
#
# Everything it keeps stands in one folder outside the clone: REEDCLINIC_ENGINE, or /var/cache/reedclinic/engine. Images
# stay there from run to run (a few gigabytes; delete the folder to begin anew). Debian's packages of Docker, which
# prepare-containers.sh installs where they are lacking, stay on the machine. Its network is left as it is: no packet
# filter, no forwarding, and the bridge that the engine makes goes with it.

engine_folder=${REEDCLINIC_ENGINE:-/var/cache/reedclinic/engine}

engine_answers() { DOCKER_HOST=${1:-${DOCKER_HOST:-}} timeout 10 docker info > /dev/null 2>&1; }

# Waits a quarter of an hour for another run that has the engine; what a killed run left going is ended.
lock_engine() { # OWNER
  local other
  mkdir -p "$engine_folder"
  exec 9>> "$engine_folder/lock"
  for _ in $(seq 180); do
    if flock --wait 5 9; then
      printf '%s\n' "$1" > "$engine_folder/owner"
      return 0
    fi
    other=$(cat "$engine_folder/owner" 2> /dev/null)
    kill -0 "$other" 2> /dev/null || end_engine "$other"
  done
  return 1
}

# Whether the process with this number is the engine of our folder: numbers in old files may long belong to others.
is_our_engine() {
  case "${1:-}" in '' | *[!0-9]*) return 1 ;; esac
  [ "$(cat "/proc/$1/comm" 2> /dev/null)" = dockerd ] &&
    tr '\0' '\n' 2> /dev/null < "/proc/$1/cmdline" | grep -qxF -- "$engine_folder/docker.pid"
}

# (One that has ended and that nobody has taken leave of keeps its name, but has no command line.)
any_engine_runs() {
  local file
  for file in $(grep -lxs dockerd /proc/[0-9]*/comm); do
    [ -z "$(tr -d '\0' 2> /dev/null < "${file%comm}cmdline")" ] || return 0
  done
  return 1
}

# The engine holds the lock (file 9) until it ends. Its number is kept at once, in a file of our own: Docker writes its own
# later. Whoever calls this must not be ended in the middle of it.
launch_engine() {
  local options=(--iptables=false --ip-masq=false --ip-forward=false --userland-proxy=true)
  ! dockerd --help 2> /dev/null | grep -q -- '--ip6tables' || options+=(--ip6tables=false)
  rm -f "$engine_folder/docker.pid"
  [ -e /sys/class/net/docker0 ] || touch "$engine_folder/made-bridge"
  setsid dockerd "${options[@]}" \
    --data-root "$engine_folder/data" --exec-root "$engine_folder/run" --pidfile "$engine_folder/docker.pid" \
    --host "unix://$engine_folder/docker.sock" > "$engine_folder/log" 2>&1 < /dev/null &
  launched=$!
  printf '%s\n' "$launched" > "$engine_folder/launched.pid"
  for _ in $(seq 100); do
    if is_our_engine "$launched" || ! kill -0 "$launched" 2> /dev/null; then break; fi
    sleep 0.05
  done
}

launched_engine_answers() {
  for _ in $(seq 150); do
    ! engine_answers "unix://$engine_folder/docker.sock" || return 0
    kill -0 "$launched" 2> /dev/null || return 1
    sleep 0.2
  done
  return 1
}

# Ends the engine of this owner, and no other run's that has taken over since: so first the numbers, then whose they are.
end_engine() { # OWNER
  local pid pids
  pids=$(cat "$engine_folder/launched.pid" "$engine_folder/docker.pid" 2> /dev/null)
  [ "$(cat "$engine_folder/owner" 2> /dev/null)" = "$1" ] || return 0
  for pid in $pids; do
    is_our_engine "$pid" || continue
    kill "$pid" 2> /dev/null
    for _ in $(seq 150); do is_our_engine "$pid" || break; sleep 0.2; done
    # The numbers stay, so that the next run tries again.
    ! is_our_engine "$pid" || return 1
  done
  tidy_engine_folder
}

# Not when another run had been waiting: then all this is its own already.
tidy_engine_folder() (
  exec 8>> "$engine_folder/lock"
  flock --nonblock 8 || exit 0
  umount "$engine_folder"/run/netns/* 2> /dev/null
  # Another engine on this machine may use the bridge too.
  if [ -e "$engine_folder/made-bridge" ] && ! any_engine_runs; then
    ip link delete docker0 2> /dev/null
    rm -f "$engine_folder/made-bridge"
  fi
  rm -f "$engine_folder/launched.pid" "$engine_folder/docker.pid"
  exit 0
)
