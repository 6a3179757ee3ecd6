#!/usr/bin/env bash
# Reads the pitch of the same files by this program, by Praat and by aubio, in one run, and writes accuracy and speed to the last part of docs/measurement/sound.md.
#   tests/sound.sh [FOLDER]     (FOLDER: more recordings as WAV, read by this program and by Praat; none unless said)
# As root on Debian it installs praat and aubio-tools. Neither is ever linked to the program. Machines that do other work are slow: all three alike.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
stop_here() { printf 'Stopped before measuring: %s\n' "$*" >&2; exit 1; }

for tool in praat aubiopitch; do
  command -v "$tool" > /dev/null && continue
  { apt-get -qq update && DEBIAN_FRONTEND=noninteractive apt-get -qq install --yes --no-install-recommends praat aubio-tools; } > "$folder/apt.log" 2>&1 ||
    stop_here 'praat and aubio-tools are not installed.'
done
if [ -z "${REEDCLINIC_BENCHMARKS:-}" ]; then
  dotnet build tests/ReedClinic.Benchmarks -c Release -v q > "$folder/build.log" 2>&1 || stop_here "the benchmarks do not build: $(tail -n 3 "$folder/build.log")"
fi
ours() { dotnet "${REEDCLINIC_BENCHMARKS:-tests/ReedClinic.Benchmarks/bin/Release/net10.0}/ReedClinic.Benchmarks.dll" sound "$@"; }

# A frame each 10 ms, floor and ceiling as for the reference pitches of the recorded notes.
cat > "$folder/pitch.praat" <<'P'
form Pitch
  sentence file
  sentence name
endform
Read from file: file$
To Pitch (ac): 0.01, 150, 15, "yes", 0.03, 0.45, 0.01, 0.35, 0.14, 2200
frames = Get number of frames
for frame to frames
  hertz = Get value in frame: frame, "Hertz"
  if hertz <> undefined
    time = Get time from frame number: frame
    appendInfoLine: name$, " ", fixed$ (time, 5), " ", fixed$ (hertz, 5)
  endif
endfor
P
by_praat() { for file in "$@"; do praat --run "$folder/pitch.praat" "$file" "$(basename "$file" .wav)" || stop_here "Praat did not read $file"; done; }
# It tells when a hop begins; the window it looked at ends with that hop, and its middle is 768 samples before.
by_aubio() { for file in "$@"; do aubiopitch -p yinfft -B 2048 -H 256 "$file" 2> /dev/null | awk -v name="$(basename "$file" .wav)" '$2 > 0 { print name, $1 - 768 / 48000, $2 }'; done; }

# Errors in cents against the truth in a name, away from both ends: median, 95th percentile, most, how many beyond 50, how many frames.
against_truth() {
  awk -v kind="$1" 'index($1, kind "_") == 1 && $2 > 0.1 && $2 < 1.9 {
    split($1, part, "_"); cents = 1200 * log($3 / part[2]) / log(2)
    if (kind == "vibrato") cents -= 50 * sin(2 * 3.14159265358979 * 5 * $2)
    print cents < 0 ? -cents : cents }' "$2" | sort -g |
    awk '{ e[NR] = $1; wild += $1 > 50 } END { if (NR) printf "%.3f | %.3f | %.2f | %d | %d", e[int((NR + 1) / 2)], e[int(NR * 0.95)], e[NR], wild, NR; else printf "– | – | – | – | 0" }'
}
medians() { sort -k1,1 -k3,3g "$1" | awk '{ if ($1 != last) { if (n) print last, v[int((n + 1) / 2)]; last = $1; n = 0 } v[++n] = $3 } END { if (n) print last, v[int((n + 1) / 2)] }' | sort; }
beside() { # FILE FILE: differences of medians
  join "$1" "$2" | awk '{ c = 1200 * log($2 / $3) / log(2); print c < 0 ? -c : c }' | sort -g | awk '{ e[NR] = $1; wild += $1 > 50 } END { if (NR) printf "%d | %.3f | %.2f | %d", NR, e[int((NR + 1) / 2)], e[NR], wild }'
}

ours make "$folder" || stop_here 'no clips could be made.'
tones=("$folder"/steady*.wav "$folder"/vibrato*.wav)
notes=("$PWD"/tests/ReedClinic.Measurement.Tests/Sound/Notes/*.wav)
[ -z "${1:-}" ] || notes+=("$(realpath "$1")"/*.wav)
for who in ours praat aubio; do
  if [ $who = ours ]; then read_by='ours read'; else read_by=by_$who; fi
  $read_by "${tones[@]}" > "$folder/$who.tones"
  $read_by "${notes[@]}" > "$folder/$who.notes"
  medians "$folder/$who.notes" > "$folder/$who.medians"
done

minute=$(ls "$folder"/minute*.wav) ten=$(ls "$folder"/ten*.wav)
before=$(cut -d ' ' -f 1-3 /proc/loadavg)
spent() { local t; t=$( { TIMEFORMAT='%U %S'; time "$@" > /dev/null 2>&1; } 2>&1 ); awk '{ print ($1 + $2) * 1000 }' <<< "$t"; }
for _ in 1 2 3 4 5; do spent aubiopitch -p yinfft -B 2048 -H 256 "$minute"; done | sort -g > "$folder/aubio.minute"
for _ in 1 2 3 4 5; do spent by_praat "$minute"; done | sort -g > "$folder/praat.minute"
ours time "$minute" > "$folder/ours.minute"
ours time "$ten" > "$folder/ours.ten"
for _ in 1 2 3 4 5; do spent aubiopitch -p yinfft -B 2048 -H 256 "$minute"; done | sort -g >> "$folder/aubio.minute"
aubio=$(sort -g "$folder/aubio.minute" | sed -n 5p) praat=$(sed -n 3p "$folder/praat.minute")
pitch=$(awk '$1 == "pitch" { print $6 }' "$folder/ours.minute")
least=$(awk '$1 == "pitch" { print $4 }' "$folder/ours.minute") aubio_least=$(sort -g "$folder/aubio.minute" | head -n 1) praat_least=$(head -n 1 "$folder/praat.minute")
ratio() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.1f", a / b }'; }

report=docs/measurement/sound.md
sed '/^## Results$/,$d' "$report" > "$folder/before.md"
{
  cat "$folder/before.md"
  printf '## Results\n\n`tests/sound.sh` writes what follows.\n\n'
  printf '* date: %s\n* commit: %s%s\n' "$(date --utc +%FT%TZ)" "$(git rev-parse HEAD)" "$(git diff --quiet HEAD -- src tests || echo ' with changes')"
  printf '* machine: %s cores, not all ours; load average before the timing: %s\n' "$(nproc)" "$before"
  printf '* %s; %s\n\n' "$(praat --version 2> /dev/null | head -n 1)" "aubio $(dpkg-query -W -f '${Version}' aubio-tools 2> /dev/null)"
  printf '### Made tones, against exact truth\n\nTwelve notes from B♭3 to F6, two seconds each; cents; frames away from both ends. Windows differ: Praat’s is 20 ms, aubio’s 43 ms, ours\n60 ms and more where the tone is steady.\n\n'
  printf '| tones | by | median | 95th percentile | most | over 50 cents | frames |\n|---|---|---|---|---|---|---|\n'
  for kind in steady20 steady10 vibrato; do
    case $kind in steady20) words='steady, 20 dB' ;; steady10) words='steady, 10 dB' ;; *) words='vibrato of ±50 cents, 5 Hz, 40 dB' ;; esac
    for who in ours praat aubio; do printf '| %s | %s | %s |\n' "$words" "$who" "$(against_truth $kind "$folder/$who.tones")"; done
  done
  printf '\n### Made crows, against exact truth\n\nPartials near C4, C5, C6 in breath that is so many decibels weaker; ms. A reading that fails counts as 9,000 ms. 140 of each kind. No real crow was available.\n\n'
  printf '| breath | octaves wrong | entry: median | 95th percentile | most | breath onset: median | 95th percentile | most |\n|---|---|---|---|---|---|---|---|\n'
  ours crows
  printf '\n### Recorded notes, median pitch beside Praat’s\n\nCents. What two programs make of one recording differs by more than either’s noise: no truth is known.\n\n'
  printf '| by | notes | median difference | most | over 50 cents |\n|---|---|---|---|---|\n'
  for who in ours aubio; do printf '| %s | %s |\n' "$who" "$(beside "$folder/$who.medians" "$folder/praat.medians")"; done
  printf '\n### Speed\n\n'
  printf 'Pitch of a clip of 59 seconds at 48 kHz; processor time of all threads. Ours: the mean of 31 rounds, with collecting garbage, without decoding\nand starting. The others: the middle of 10 runs (aubio) and 5 (Praat), with reading the file and starting, which for 59 seconds is little.\nOther work on the machine makes all of them slower, and not evenly; the least of the rounds (ours by the clock) shows what is left without it.\n\n'
  printf '| by | ms | times real time | ours is quicker by | least ms | times real time | ours is quicker by |\n|---|---|---|---|---|---|---|\n'
  row() { printf '| %s | %.0f | %.0f | %s | %.0f | %.0f | %s |\n' "$1" "$2" "$(ratio 59000 "$2")" "${4:+$(ratio "$2" "$pitch")}" "$3" "$(ratio 59000 "$3")" "${4:+$(ratio "$3" "$least")}"; }
  row 'ours, a frame each 5.3 ms' "$pitch" "$least"
  row 'aubio (yinfft, 2048, each 256)' "$aubio" "$aubio_least" beside
  row 'Praat (autocorrelation, each 10 ms)' "$praat" "$praat_least" beside
  printf '\nA clip of 10 seconds (WAV, 16 bits), 31 rounds by the clock:\n\n| what | ms (median) | least | processor time | bytes taken |\n|---|---|---|---|---|\n'
  awk '{ name = $1 == "pitch" ? "pitch" : $1 == "decode" ? "decoding" : $1 == "all" ? "decoding and all readings" : "the same, with the spectrogram and all drawings"; printf "| %s | %s | %s | %s | %s |\n", name, $3, $4, $6, $5 }' "$folder/ours.ten"
} > "$folder/report.md"
mv "$folder/report.md" "$report"
sed -n '/^## Results$/,$p' "$report"
