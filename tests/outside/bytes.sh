#!/usr/bin/env bash
# bytes.sh: the same studio gives the same bytes, wherever it stands and however often it is made.
set -euo pipefail
. "$(dirname "$0")/studios.sh"

make() { "$BALLBAND" make --studio "$1" --to "$2" --as-of "$AS_OF"; }

# The second studio is a copy with new times, made from inside itself, on one thread, into a folder that was used before.
mkdir -p "$WORK/elsewhere/deeper"
cp -r "$DEMO" "$WORK/elsewhere/deeper/studio"
changed_studio "$WORK/changed"
make "$DEMO" "$WORK/one" > "$WORK/said"
make "$WORK/changed" "$WORK/two" > "$WORK/said"
(cd "$WORK/elsewhere/deeper/studio" && RAYON_NUM_THREADS=1 LC_ALL=C TZ=Asia/Tokyo "$BALLBAND" make --to "$WORK/two" --as-of "$AS_OF") > "$WORK/said"
same "two makes of one studio differ" "$WORK/one" "$WORK/two"

# A site that is up to date is left alone: nothing is said to have changed, and no file has a new time.
find "$WORK/one" -type f -printf '%p %T@\n' | grep -v '/\.ballband/lock ' | sort > "$WORK/before"
make "$DEMO" "$WORK/one" > "$WORK/said"
find "$WORK/one" -type f -printf '%p %T@\n' | grep -v '/\.ballband/lock ' | sort > "$WORK/after"
if grep -q ': 0 changed' "$WORK/said"; then good; else bad "a make of what is there says: $(cat "$WORK/said")"; fi
if cmp -s "$WORK/before" "$WORK/after"; then good; else bad "a make of what is there wrote: $(comm -13 "$WORK/before" "$WORK/after" | head -3)"; fi

# No path of this machine is in the site.
if grep -rlF -e "$WORK" -e "$ROOT" "$WORK/one" > "$WORK/found"; then bad "a path of this machine is in $(head -3 "$WORK/found")"; else good; fi
finish
