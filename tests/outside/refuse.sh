#!/usr/bin/env bash
# refuse.sh: what cannot be done is refused in one clear sentence, with exit status 2, and the old site stays, byte for byte.
# A full disk is played by a limit on the size of a file (ulimit -f with its signal ignored): that needs no rights and works
# everywhere, where mounting a small file system does not. Both are a write that the system refuses half-way.
set -euo pipefail
. "$(dirname "$0")/studios.sh"

# Everybody may come in here, and the command may be run by everybody: a refusal to write is tried as somebody else if we are root.
chmod 755 "$WORK"
cp "$BALLBAND" "$WORK/ballband"
cp -r "$DEMO" "$WORK/studio"
changed_studio "$WORK/changed"
chmod -R a+rX "$WORK/ballband" "$WORK/studio" "$WORK/changed"
if [ "$(id -u)" = 0 ]; then other=(setpriv --reuid 65534 --regid 65534 --clear-groups --); else other=(); fi
"$WORK/ballband" make --studio "$WORK/studio" --to "$WORK/site" --as-of "$AS_OF" > "$WORK/said"
cp -a "$WORK/site" "$WORK/old"
cp -a "$WORK/changed" "$WORK/changed-old"

# refused NAME WORDS COMMAND...: the command must exit with 2, say one sentence that holds WORDS, and leave the site as it was.
refused() {
  local name="$1" words="$2" status=0
  shift 2
  "$@" > "$WORK/out" 2> "$WORK/err" < /dev/null || status=$?
  if [ "$status" = 2 ]; then good; else bad "$name: exit status $status"; fi
  # One sentence: one line of text, and no colour, panic or path of our source.
  if [ "$(grep -c . "$WORK/err")" = 1 ] && [ ! -s "$WORK/out" ] && ! grep -qE $'\x1b|panicked|src/|os error' "$WORK/err"; then good
  else bad "$name: not one clear sentence: $(head -5 "$WORK/out" "$WORK/err")"; fi
  if grep -qF -- "$words" "$WORK/err"; then good; else bad "$name: \`$words\` is not in: $(head -3 "$WORK/err")"; fi
  same "$name: the site is not as it was" "$WORK/old" "$WORK/site"
  echo "$name: $(head -1 "$WORK/err")"
}
make() { "$WORK/ballband" make --as-of "$AS_OF" "$@"; }
limited() ( trap '' XFSZ; ulimit -f 4; make "$@" ) # 4 KiB a file

mkdir "$WORK/empty" "$WORK/theirs" "$WORK/shut"
echo "Not ours." > "$WORK/theirs/notes.txt"
echo "A file." > "$WORK/file"
chmod 555 "$WORK/shut"
refused "no such folder" "$WORK/nowhere" make --studio "$WORK/nowhere" --to "$WORK/site"
refused "no studio.yaml" "studio.yaml" make --studio "$WORK/empty" --to "$WORK/site"
refused "a file for a studio" "$WORK/file" make --studio "$WORK/file" --to "$WORK/site"
refused "somebody's folder" "$WORK/theirs" make --studio "$WORK/changed" --to "$WORK/theirs"
refused "a file for a target" "$WORK/file" make --studio "$WORK/changed" --to "$WORK/file"
refused "the file size limit" "$WORK/site" limited --studio "$WORK/changed" --to "$WORK/site"
refused "a new folder in one that is shut" "$WORK/shut" "${other[@]}" "$WORK/ballband" make --studio "$WORK/changed" --to "$WORK/shut/site" --as-of "$AS_OF"
[ "${#other[@]}" -gt 0 ] || chmod -R a-w "$WORK/site"
refused "a site of somebody else" "$WORK/site" "${other[@]}" "$WORK/ballband" make --studio "$WORK/changed" --to "$WORK/site" --as-of "$AS_OF"
chmod -R u+w "$WORK/site"

# What was refused is as it was too, and the same make goes through when nothing is in its way.
if [ "$(ls -A "$WORK/theirs")" = notes.txt ] && [ "$(cat "$WORK/theirs/notes.txt")" = "Not ours." ] && [ -f "$WORK/file" ] && [ -z "$(ls -A "$WORK/shut")" ]; then good; else bad "a folder that was refused was touched"; fi
same "a studio was touched" "$WORK/changed-old" "$WORK/changed"
make --studio "$WORK/changed" --to "$WORK/site" > "$WORK/said"
make --studio "$WORK/changed" --to "$WORK/clean" > "$WORK/said"
same "the make after all the refusals is not a clean one" "$WORK/clean" "$WORK/site"
finish
