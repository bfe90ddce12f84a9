#!/usr/bin/env bash
# kill.sh [TIMES=60]: a make that is killed at any moment leaves only whole pages, and the next one puts all right.
# Two studios are made in turn into one folder, each make being killed after a random wait. After each, every page
# must be, byte for byte, the page of one of the two.
set -euo pipefail
. "$(dirname "$0")/studios.sh"
times="${1:-60}"
RANDOM="${SEED:-20261125}" # the waits can be had again, though not the moments they hit

changed_studio "$WORK/b-studio"
ln -s "$DEMO" "$WORK/a-studio"
make() { "$BALLBAND" make --studio "$WORK/$1-studio" --to "$2" --as-of "$AS_OF"; }
# What waits in our own folder is no page yet.
pages() { (cd "$1" && find . -path ./.ballband -prune -o -name '*.html' -type f -print0 | LC_ALL=C sort -z | xargs -0r sha256sum); }

make a "$WORK/a" > "$WORK/said"
cp -r "$WORK/a" "$WORK/b" # for its photos, which take most of the time
make b "$WORK/b" > "$WORK/said"
for s in a b; do
  pages "$WORK/$s" > "$WORK/$s-pages"
  # Every page found later is equal to one of these, so its end need be looked at only here.
  while read -r page; do
    if [ "$(tail -c 16 "$page" | tr -d '[:space:]' | tail -c 7)" = '</html>' ]; then good; else bad "$page does not end with </html>"; fi
  done < <(find "$WORK/$s" -name '*.html')
done
LC_ALL=C sort -u "$WORK/a-pages" "$WORK/b-pages" > "$WORK/both"

# How long does the whole take? The waits are spread over as much, and it is measured anew whenever a make gets through,
# as the machine may have other things to do.
cp -r "$WORK/a" "$WORK/site"
now() { echo "${EPOCHREALTIME/[.,]/}"; }
start="$(now)"
make b "$WORK/site" > "$WORK/said"
whole=$(($(now) - start))
make a "$WORK/site" > "$WORK/said"

# Pages are moved into place in the last moments of a make. Every other pair of waits is spread over the whole of it; the
# others creep up on those moments, longer after a kill that came too early and shorter after one that came too late.
killed=0 mixed=0 aim="$whole"
for ((i = 1; i <= times; i++)); do
  s=$([ $((i % 2)) = 0 ] && echo a || echo b)
  if [ $((i / 2 % 2)) = 0 ]; then wait=$(((RANDOM * 32768 + RANDOM) % whole)); else wait=$((aim * (95 + RANDOM % 11) / 100)); fi
  status=0 start="$(now)"
  # The command is the child of timeout here, and bash says nothing of its end.
  { timeout -s KILL "$(printf '%d.%06d' $((wait / 1000000)) $((wait % 1000000)))" \
    "$BALLBAND" make --studio "$WORK/$s-studio" --to "$WORK/site" --as-of "$AS_OF" > "$WORK/said" 2>&1; } 2> "$WORK/shell" || status=$?
  case "$status" in
    0) whole=$(($(now) - start)) ;;
    137) killed=$((killed + 1)) ;;
    *) bad "make $i ended with $status: $(head -3 "$WORK/said")" ;;
  esac
  pages "$WORK/site" > "$WORK/now"
  LC_ALL=C sort "$WORK/now" | LC_ALL=C comm -23 - "$WORK/both" > "$WORK/odd"
  if [ -s "$WORK/now" ] && [ ! -s "$WORK/odd" ]; then good; else bad "after make $i ($wait µs): $(head -3 "$WORK/odd")"; fi
  cmp -s "$WORK/a-pages" "$WORK/now" || cmp -s "$WORK/b-pages" "$WORK/now" || mixed=$((mixed + 1))
  if cmp -s "$WORK/$s-pages" "$WORK/now"; then aim=$((aim * 15 / 16)); else aim=$((aim * 17 / 16)); fi
done
echo "$killed of $times makes were killed (a whole one takes $((whole / 1000)) ms), $mixed left a mixture of both sites"
# A kill that never hits shows nothing.
if [ "$killed" -ge $((times / 3)) ]; then good; else bad "only $killed of $times makes were killed"; fi

make a "$WORK/site" > "$WORK/said"
same "the site after all that is not a clean one" "$WORK/a" "$WORK/site"
finish
