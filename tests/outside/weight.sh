#!/usr/bin/env bash
# weight.sh SITE_DIR [LIMIT=61440]: bytes a reader's browser fetches for a pattern's page, pictures aside: the page, its
# style sheets and scripts under gzip -9, and the fonts those name, as they are. Every pattern's page must be within LIMIT.
set -euo pipefail
SITE="$(cd "${1:?usage: weight.sh SITE_DIR [LIMIT]}" && pwd)"
limit="${2:-61440}" passed=0 failed=0 heaviest=0
packed() { gzip -9 -n -c "$1" | wc -c; }
# at PAGE ADDRESS: the file of an address as the page at PAGE would fetch it.
at() { case "$2" in /*) echo "$SITE$2" ;; *) echo "$(dirname "$1")/$2" ;; esac }

for page in "$SITE"/patterns/*/index.html; do
  grep -q '<article' "$page" || continue # a list of patterns is no pattern's page
  html="$(packed "$page")" css=0 js=0 fonts=0
  while read -r address; do
    file="$(at "$page" "${address%%\?*}")"
    css=$((css + $(packed "$file")))
    while read -r font; do fonts=$((fonts + $(wc -c < "$(at "$file" "$font")"))); done \
      < <(grep -oE 'url\([^)]*\.woff2' "$file" | sed -E "s/url\\([\"']?//" | sort -u)
  done < <(grep -oE '<link[^>]*rel="?stylesheet[^>]*>' "$page" | sed -E 's/.*href="?([^" >]*).*/\1/' | sort -u)
  while read -r address; do js=$((js + $(packed "$(at "$page" "${address%%\?*}")"))); done \
    < <(grep -oE '<script[^>]* src="?[^" >]*' "$page" | sed -E 's/.*src="?//' | sort -u)
  sum=$((html + css + js + fonts))
  if [ "$css" = 0 ]; then echo "BAD ${page#"$SITE"/}: no style sheet found, so this weighs nothing"; failed=$((failed + 1)); continue; fi
  if [ "$sum" -le "$limit" ]; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "BAD ${page#"$SITE"/}: $sum bytes, of which page $html, style $css, script $js, fonts $fonts"; fi
  if [ "$sum" -gt "$heaviest" ]; then heaviest="$sum" which="${page#"$SITE"/}: page $html, style $css, script $js, fonts $fonts"; fi
done
echo "heaviest: $heaviest of $limit bytes, ${which:-none}"
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 0 ]
