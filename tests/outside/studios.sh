# Sourced by the checks that make sites: where things are, and how a check counts. Not run by itself.
# BALLBAND is the command to try; AS_OF is the day that every make is for.
ROOT="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
BALLBAND="${BALLBAND:-${CARGO_TARGET_DIR:-$ROOT/target}/release/ballband}"
DEMO="$ROOT/demo-data"
AS_OF="${AS_OF:-2026-11-25}"
[ -x "$BALLBAND" ] || { echo "no command at $BALLBAND: cargo build --release"; exit 2; }

WORK="$(mktemp -d)"
trap 'chmod -R u+w "$WORK"; rm -rf "$WORK"' EXIT
passed=0 failed=0

# good WHAT / bad WHAT: counts one thing that was as it should be, or says what was not.
good() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "BAD $*"; }
# same WHAT A B: two folders hold the same names and bytes.
same() { if diff -rq "$2" "$3" > "$WORK/diff"; then good; else bad "$1"; head -5 "$WORK/diff"; fi; }
# changed_studio DIR: the demo studio with another title, so that every page differs, one page more, and one note on
# another day, so that a page goes and another comes.
changed_studio() {
  cp -r "$DEMO" "$1"
  sed -i 's/^title: .*/title: The other studio/' "$1/studio.yaml"
  # A note nobody refers to goes, and its like comes on another day.
  mv "$1/journal/2026-08-21.md" "$1/journal/2026-08-22.md"
  sed -i 's/^date: .*/date: 2026-08-22/; s/^title: .*/title: The other note/' "$1/journal/2026-08-22.md"
  printf -- '---\ntitle: Another page\n---\n\nOnly this studio has it.\n' > "$1/pages/another.md"
}
finish() { echo "$passed passed, $failed failed"; [ "$failed" = 0 ] && [ "$passed" -gt 0 ]; }
