#!/usr/bin/env bash
# templates.sh SITE_DIR: pages.txt names one page for each template that makes pages, and the page is in the site.
set -euo pipefail
HERE="$(cd "$(dirname "$0")" && pwd)"
SITE="$(cd "${1:?usage: templates.sh SITE_DIR}" && pwd)"
passed=0 failed=0
for file in "$HERE"/../../themes/leaflet/templates/*.html; do
  name="$(basename "$file" .html)"
  case "$name" in block | figures | frame | parts | rows | text) continue ;; esac # what pages are put together from
  page="$(awk -v name="$name" '$1 == name { print $2 }' "$HERE/pages.txt")"
  path="$SITE$page"
  if [ -d "$path" ]; then path="$path/index.html"; fi
  if [ -z "$page" ]; then echo "BAD pages.txt has no page for $name.html"; failed=$((failed + 1));
  elif [ ! -f "$path" ]; then echo "BAD $page, for $name.html, is not in the site"; failed=$((failed + 1));
  else passed=$((passed + 1)); fi
done
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 0 ]
