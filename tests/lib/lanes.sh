# Test projects, several at a time: many of them wait as much as they work. Part of tests/run.sh.
# shellcheck shell=bash

# What each project came to: a line "passed failed skipped" in NAME.sum, the names of its failed tests in NAME.failed.
sums=tests/artifacts/sums
lanes=()
containers_lane=''

# The longest first, so that no lane is left with one of them at the end; whatever isn't named here follows. The browser comes third:
# it waits for the containers.
projects_by_length() {
  local name project
  for name in Web Data Browser Domain Documents; do say "tests/ReedClinic.$name.Tests"; done
  for project in tests/*.Tests; do
    case $project in
      "$container_tests" | */ReedClinic.Web.Tests | */ReedClinic.Browser.Tests | */ReedClinic.Data.Tests | */ReedClinic.Domain.Tests | */ReedClinic.Documents.Tests) ;;
      *) say "$project" ;;
    esac
  done
}

number_after() { sed -nE "s/^ *$1: ([0-9]+).*/\1/p" "$2" | tail -n 1; }

run_project() { # PROJECT; its output goes to tests/artifacts/NAME.log
  local project=$1 name output before=$SECONDS code=0 total failed succeeded skipped note=''
  name=$(basename "$project")
  output="tests/artifacts/$name.log"
  mkdir -p "$sums"
  dotnet test --project "$project" --no-build --no-restore --no-progress --no-ansi > "$output" 2>&1 < /dev/null || code=$?
  total=$(number_after total "$output") failed=$(number_after failed "$output")
  succeeded=$(number_after succeeded "$output") skipped=$(number_after skipped "$output")
  if [ "${failed:-0}" -eq 0 ] && { [ "$code" -ne 0 ] || [ "${total:-0}" -eq 0 ]; }; then
    failed=1 # it did not run, crashed, or ran no test: that counts as a failure too
    note="  ($name ended with code $code and ran ${total:-0} tests)"
  fi
  printf '%-34s %4d passed %3d failed %3d skipped  %4d s\n' "$name" "${succeeded:-0}" "${failed:-0}" "${skipped:-0}" "$((SECONDS - before))"
  [ -z "$note" ] || say "$note"
  [ "$code" -eq 0 ] || first_words "$name" "$output" > "$sums/$name.failed"
  say "${succeeded:-0} ${failed:-0} ${skipped:-0}" > "$sums/$name.sum"
}

# Takes one project after the other that no other lane has taken. The browser's begins when the containers are gone: each that comes
# or goes changes the machine's network, and a browser breaks off whatever it is just loading then (net::ERR_NETWORK_CHANGED).
lane() {
  local project
  while read -r project; do
    mkdir "$sums/$(basename "$project").taken" 2> /dev/null || continue
    case $project in */ReedClinic.Browser.Tests) tail --pid="$containers_lane" -f /dev/null ;; esac
    run_project "$project"
  done < <(projects_by_length)
}

# Each lane is a group of its own, so that whatever it started can be ended with it.
run_lanes() {
  local lane
  mkdir -p "$sums"
  set -m
  container_lane < /dev/null &
  containers_lane=$!
  lanes+=($!)
  for _ in $(seq "${REEDCLINIC_TEST_LANES:-2}"); do
    lane < /dev/null &
    lanes+=($!)
  done
  set +m
  for lane in "${lanes[@]}"; do wait "$lane"; done
  lanes=()
  count_lacking
}

# A lane that was ended from outside, or couldn't write, leaves a project without a sum: that counts as a failure.
count_lacking() {
  local project
  while read -r project; do
    [ ! -s "$sums/$(basename "$project").sum" ] || continue
    say "  ($(basename "$project") was broken off)"
    say '0 1 0' > "$sums/$(basename "$project").sum"
  done < <(projects_by_length)
  # The containers' lane leaves word of what came of it, whatever that is.
  [ -s "$containers_said" ] || { say '0 1 0' > "$sums/containers.sum"; say 'failed, because their lane was broken off' > "$containers_said"; }
}

end_lanes() {
  local lane
  for lane in "${lanes[@]}"; do kill -TERM -- "-$lane" 2> /dev/null; done
  for lane in "${lanes[@]}"; do wait "$lane" 2> /dev/null; done
  lanes=()
}

# A sum that is empty even so, because the disk is full, is a failure all the same.
add_up() { for sum in "$sums"/*.sum; do if [ -s "$sum" ]; then cat "$sum"; else say '0 1 0'; fi; done | awk '{ passed += $1; failed += $2; skipped += $3 } END { print passed + 0, failed + 0, skipped + 0 }'; }

# Of an output each test that failed or was skipped, with so many lines at most of what it said. What it says is indented; whatever
# a program under test writes isn't.
failed_words() { # LINES [BEFORE]
  awk -v most="$1" -v before="${2:-}" '
    /^(failed|skipped) / { print "  " before substr($0, 1, 400); left = most; next }
    /^[^ \t]/ { left = 0 }
    /^  from .*\.dll / { next }
    left > 0 && NF { print "  " substr($0, 1, 400); left-- }'
}

# For the very end: each failed test with the beginning of what it said, or how the project ended that names none.
first_words() { # NAME LOG
  grep -qE '^(failed|skipped) ' "$2" && failed_words 12 "$1: " < "$2" || { say "  $1 names no test, and ended so:"; tail -n 12 "$2" | sed 's/^/    /'; }
}

# What an output tells of its failed tests, and its sum; where it names none, how it ended: it may have crashed. All of it is in
# tests/artifacts: a program under test writes thousands of lines.
told_by() { # LOG
  if grep -qE '^(failed|skipped) ' "$1"; then
    failed_words 60 < "$1" | head -n 400
    sed -n '/^Test run summary/,$p' "$1" | head -n 20
  else
    tail -n 60 "$1"
  fi
}

# What failed: project by project, and at the very end, for whoever sees no more than that, each test with the beginning of its words.
show_failed() {
  local sum failed skipped name
  for sum in "$sums"/*.sum; do
    read -r _ failed skipped < "$sum"
    name=$(basename "$sum" .sum)
    [ "$failed" -eq 0 ] && [ "$skipped" -eq 0 ] || { say "$name (all of it: tests/artifacts/$name.log):"; told_by "tests/artifacts/$name.log" | sed 's/^/  | /'; }
  done
  ! cat "$sums"/*.failed > "$sums/failed" 2> /dev/null || { say 'These failed:'; head -n 150 "$sums/failed"; }
}
