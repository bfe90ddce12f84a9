#!/usr/bin/env bash
# run.sh [ENTRIES=10000] [TIMES=5]: what making a whole site costs, beside the least it could.
# Generates a studio in memory-backed storage and runs the bare floor (see floor.rs) and `make` in turn, each into a new
# folder. Prints the middle of each, their ratio and the most memory that a make held, and exits with 1 over a limit
# (RATIO_LIMIT, MEMORY_LIMIT in MB). Then the time of one make at a tenth of the entries, to see that cost is linear, and how
# long a save takes until an open page is told (see save.rs; SAVE_LIMIT in ms for the median, 2.5 times that for 95 in 100;
# WATCH_LIMIT in MB).
set -euo pipefail
ROOT="$(cd "$(dirname "$0")/../.." && pwd)"
entries="${1:-10000}" times="${2:-5}"
ratio_limit="${RATIO_LIMIT:-3.0}" memory_limit="${MEMORY_LIMIT:-400}"
save_limit="${SAVE_LIMIT:-20}" watch_limit="${WATCH_LIMIT:-300}"
built="${CARGO_TARGET_DIR:-$ROOT/target}/release"
if [ "${BUILT:-no}" != yes ]; then cargo build --quiet --release --locked --bins --examples --manifest-path "$ROOT/Cargo.toml"; fi

store=/dev/shm
[ -w "$store" ] || { echo "no memory-backed storage at $store"; exit 2; }
WORK="$(mktemp -d "$store/ballband-bench.XXXXXX")"
trap 'rm -rf "$WORK"' EXIT
now() { echo "${EPOCHREALTIME/[.,]/}"; }
middle() { sort -n | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'; }

# make STUDIO OUT: prints milliseconds and the most memory held, in MB; what was said goes to $WORK/said.
make() {
  local start end
  start="$(now)"
  /usr/bin/time -f %M -o "$WORK/memory" "$built/ballband" make --studio "$1" --to "$2" --as-of 2026-11-25 > "$WORK/said" 2>&1 \
    || { echo "make failed: $(head -5 "$WORK/said")" >&2; return 1; }
  end="$(now)"
  grep -q 'no findings' "$WORK/said" || { echo "the studio is not clean: $(head -20 "$WORK/said")" >&2; return 1; }
  awk -v us=$((end - start)) '{ printf "%.1f %.1f\n", us / 1000, $1 / 1024 }' "$WORK/memory"
}

echo "$entries entries, $(nproc) processors, load $(cut -d' ' -f1 /proc/loadavg)"
"$built/examples/generate" "$WORK/studio" "$entries"
make "$WORK/studio" "$WORK/site" > "$WORK/first"
for ((i = 0; i < times; i++)); do
  "$built/examples/floor" "$WORK/studio" "$WORK/site" "$WORK/out" | tee "$WORK/floor" | awk '{ print $1 }' >> "$WORK/floors"
  rm -rf "$WORK/out"
  make "$WORK/studio" "$WORK/out" >> "$WORK/makes"
  rm -rf "$WORK/out"
done
echo "floor: $(cat "$WORK/floor")"
floor="$(middle < "$WORK/floors")" made="$(awk '{ print $1 }' "$WORK/makes" | middle)" memory="$(awk '{ print $2 }' "$WORK/makes" | sort -n | tail -1)"
ratio="$(awk -v a="$made" -v b="$floor" 'BEGIN { printf "%.2f", a / b }')"
echo "make: $made ms, floor: $floor ms (medians of $times), ratio $ratio of at most $ratio_limit, memory $memory MB of at most $memory_limit"

tenth=$((entries / 10))
"$built/examples/generate" "$WORK/tenth" "$tenth" > "$WORK/generated"
for ((i = 0; i < times; i++)); do make "$WORK/tenth" "$WORK/out" >> "$WORK/tenths"; rm -rf "$WORK/out"; done
small="$(awk '{ print $1 }' "$WORK/tenths" | middle)"
awk -v n="$entries" -v m="$tenth" -v t="$made" -v s="$small" 'BEGIN {
  printf "%d entries: %.1f ms, %.3f ms each; %d entries: %.1f ms, %.3f ms each\n", m, s, s / m, n, t, t / n }'
make "$WORK/studio" "$WORK/site" > "$WORK/again"
echo "$entries entries with nothing changed: $(cut -d' ' -f1 "$WORK/again") ms"
"$built/examples/save" "$WORK/studio" 50 | tee "$WORK/saves"
awk -v r="$ratio" -v rl="$ratio_limit" -v m="$memory" -v ml="$memory_limit" -v sl="$save_limit" -v wl="$watch_limit" '
  /median/ { gsub(/,/, ""); for (i = 1; i < NF; i++) { if ($i == "median") half = $(i + 1); if ($i == "percentile") most = $(i + 1) }
    bad += (half > sl) + (most > 2.5 * sl); all += 2 }
  /^memory/ { bad += $2 > wl; all++ }
  END { bad += (r > rl) + (m > ml); all += 2; if (all < 7) bad++; printf "%d passed, %d failed\n", all - bad, bad; exit bad > 0 }' "$WORK/saves"
