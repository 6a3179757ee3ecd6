#!/usr/bin/env bash
# Measures how many readings of a sent letter one core answers a second, beside a style sheet and a page that is drawn anew for each
# request, and writes it to docs/measurement/letter.md.
#   tests/letter.sh [ROUNDS [SECONDS [WARMING]]]   (5 rounds of 5 seconds of each by turns, after 60 seconds of warming up)
# REEDCLINIC_LETTER_ENGINES names the engines, "sqlite postgres" unless said. It needs wrk and at least two cores: the program has the
# first for itself, wrk and the database have the others.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

rounds=${1:-5} seconds=${2:-5} warming=${3:-60}
engines=${REEDCLINIC_LETTER_ENGINES:-sqlite postgres}
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0 UseSharedCompilation=false
folder=$(mktemp -d)

say() { printf '%s\n' "$*"; }
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

# shellcheck source=tests/lib/machine.sh
. tests/lib/machine.sh
# shellcheck source=tests/lib/postgres.sh
. tests/lib/postgres.sh

clean_up() {
  [ -z "${running:-}" ] || kill -TERM "$running" 2> /dev/null
  stop_postgres
  rm -rf "$folder"
}
trap clean_up EXIT
trap 'exit 130' INT TERM HUP

command -v wrk > /dev/null || { apt-get -qq update && apt-get -qq install --yes --no-install-recommends wrk; } > "$folder/apt.log" 2>&1 || stop_here 'wrk is not installed.'
cores=$(nproc)
[ "$cores" -ge 2 ] || stop_here 'it needs two cores at least.'

start_program() { # ENGINE
  local port database
  port=$(free_port) || stop_here 'no free port.'
  address=http://127.0.0.1:$port
  if [ "$1" = postgres ]; then
    database=letter$RANDOM
    PGPASSWORD=$(cat "$cluster/password") "$(postgres_bin)/psql" -q -h 127.0.0.1 -p "$(sed -E 's/.*Port=([0-9]+).*/\1/' <<< "$REEDCLINIC_TEST_POSTGRES")" \
      -U reedclinic postgres -c "CREATE DATABASE $database" || stop_here 'the database could not be made.'
    export Database__Engine=postgres ConnectionStrings__Clinic="${REEDCLINIC_TEST_POSTGRES/Database=postgres/Database=$database}"
  else
    export Database__Engine=sqlite ConnectionStrings__Clinic="Data Source=$folder/letter.db"
  fi
  # The demo is there in Development only. The log goes to a file, as it does for a service.
  (cd "$program" && exec env Demo__Seed=true ASPNETCORE_ENVIRONMENT=Development taskset -c 0 ./ReedClinic.Web --urls "$address") > "$folder/$1.log" 2>&1 &
  running=$!
  for _ in $(seq 600); do
    curl -s -o /dev/null "$address/account/sign-in" && return 0
    kill -0 "$running" 2> /dev/null || break
    sleep 0.2
  done
  stop_here "the program did not start: $(tail -n 3 "$folder/$1.log")"
}

sign_in() {
  local token
  rm -f "$folder/jar"
  token=$(curl -s -c "$folder/jar" -b "$folder/jar" "$address/account/sign-in" | grep -o 'name="__RequestVerificationToken" value="[^"]*"' | head -n 1 | sed 's/.*value="//; s/"$//')
  curl -s -o /dev/null -c "$folder/jar" -b "$folder/jar" --data-urlencode _handler=sign-in --data-urlencode "__RequestVerificationToken=$token" \
    --data-urlencode Form.Email=ines@lanternquay.example --data-urlencode 'Form.Password=lantern quay at low tide' "$address/account/sign-in"
  cookie=$(awk '$6 ~ /reedclinic|Antiforgery/ { print $6 "=" $7 }' "$folder/jar" | paste -sd ';')
}

ask() { curl -s -o "$folder/answer" -w '%{http_code} %{size_download}' -H "Cookie: $cookie" "$address$1"; }
worked() { awk '{ print ($14 + $15) * 10 }' "/proc/$running/stat"; }

measure() { # NAME PATH
  local before after
  before=$(worked)
  taskset -c "1-$((cores - 1))" wrk -t1 -c8 -d"${seconds}s" -H "Cookie: $cookie" "$address$2" > "$folder/wrk.txt" || stop_here 'wrk did not run.'
  after=$(worked)
  ! grep -q 'Non-2xx' "$folder/wrk.txt" || stop_here "$2 was refused: $(grep 'Non-2xx' "$folder/wrk.txt")"
  awk -v name="$1" -v spent=$((after - before)) '/requests in/ { n = $1 } /Requests\/sec/ { rate = $2 } END { printf "%s %.1f %.4f\n", name, rate, spent / n }' "$folder/wrk.txt" >> "$folder/$engine.txt"
}

middle() { sort -n | awk '{ a[NR] = $1 } END { print a[int((NR + 1) / 2)] }'; }
row() { # NAME WORDS SIZE
  local rate spent
  rate=$(awk -v n="$1" '$1 == n { print $2 }' "$folder/$engine.txt" | middle)
  spent=$(awk -v n="$1" '$1 == n { print $3 }' "$folder/$engine.txt" | middle)
  printf '| %s | %s | %.0f | %.0f | %.0f | %.2f |\n' "$engine" "$2" "$rate" \
    "$(awk -v n="$1" '$1 == n { print $2 }' "$folder/$engine.txt" | sort -n | head -n 1)" "$(awk -v n="$1" '$1 == n { print $2 }' "$folder/$engine.txt" | sort -n | tail -n 1)" "$spent"
}

program=${REEDCLINIC_TEST_PUBLISHED:-$folder/program} # once is enough
[ -n "${REEDCLINIC_TEST_PUBLISHED:-}" ] || dotnet publish src/ReedClinic.Web --configuration Release --output "$program" --verbosity quiet || stop_here 'the program does not build.'
case " $engines " in *' postgres '*) start_postgres ;; esac
before=$(cut -d ' ' -f 1-3 /proc/loadavg)
for engine in $engines; do
  start_program "$engine"
  sign_in
  letter='' page=''
  for code in $(curl -s -H "Cookie: $cookie" "$address/batches" | grep -oE 'batches/[A-Z0-9]{3}-[A-Z0-9]{4}' | sort -u | cut -d / -f 2); do
    case $(ask "/letters/$code") in 200*) letter=/letters/$code page=/batches/$code; break ;; esac
  done
  [ -n "$letter" ] || stop_here 'there is no letter to read.'
  sheet=/$(grep -oE 'css/[a-z]+\.[a-z0-9]+\.css' "$folder/answer" | head -n 1)
  sizes="$(ask "$letter") $(ask "$sheet") $(ask "$page")"
  case $sizes in 200*200*200*) ;; *) stop_here "an answer is wrong: $sizes" ;; esac
  read -r _ letter_size _ sheet_size _ page_size <<< "$sizes"
  taskset -c "1-$((cores - 1))" wrk -t1 -c8 -d"${warming}s" -H "Cookie: $cookie" "$address$letter" > /dev/null
  for path in "$sheet" "$page"; do taskset -c "1-$((cores - 1))" wrk -t1 -c8 -d"$((warming / 4 + 1))s" -H "Cookie: $cookie" "$address$path" > /dev/null; done
  for _ in $(seq "$rounds"); do
    measure letter "$letter"
    measure sheet "$sheet"
    measure page "$page"
  done
  {
    row letter "the sent letter ($((letter_size / 1000)) kB)"
    row sheet "a style sheet ($((sheet_size / 1000)) kB)"
    row page "the batch’s page, drawn for each request ($((page_size / 1000)) kB)"
  } >> "$folder/rows.txt"
  kill -TERM "$running"
  wait "$running" 2> /dev/null
  running=''
done

report=docs/measurement/letter.md
{
  printf '# How many readings of a letter one core answers\n\n'
  printf '`tests/letter.sh` writes this file. The program is published in Release and held to one core; wrk (one thread, 8 connections) and the database\n'
  printf 'have the rest. A student who is signed in reads a letter of the demo: cookie, session, rights and page are asked for anew with every request\n'
  printf '([decision 33](../decisions/0033-a-sent-letters-page-is-kept.md)). The style sheet, which asks nobody, is the yardstick; the other page shows what drawing costs. %s rounds of\n' "$rounds"
  printf '%s seconds of each by turns, after %s seconds of warming up. Wanted: at least 1,000 readings of the letter a second.\n\n' "$seconds" "$warming"
  printf '* command: `%s`\n' "tests/letter.sh${*:+ $*}"
  printf '* date: %s\n' "$(date --utc +%FT%TZ)"
  printf '* commit: %s%s\n' "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
  printf '* machine: %s cores; load average before: %s\n\n' "$cores" "$before"
  printf '| engine | what | a second (median) | least | most | processor time (ms each, median) |\n|---|---|---|---|---|---|\n'
  cat "$folder/rows.txt"
} > "$report"
cat "$report"
