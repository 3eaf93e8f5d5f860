#!/bin/sh
# Types every example in VS Code's editor widget, in Chromium, with the server on: sh monaco.sh [SERVER]
# The last line is "N passed, N failed"; fails if anything did. Without what it needs it says so and passes.
# The widget is fetched once, by npm, into the user's cache: never into the repository.
here=$(CDPATH='' cd -P -- "$(dirname "$0")" && pwd -P) || exit 1
top=$(CDPATH='' cd -P -- "$here/../../../.." && pwd -P) || exit 1
version=0.52.2
for tool in node npm chromium chromedriver; do
  command -v "$tool" >/dev/null 2>&1 || { echo "no $tool here: skipped"; exit 0; }
done
cache=${XDG_CACHE_HOME:-${HOME:-/tmp}/.cache}/tabor-tests/monaco-editor-$version
if [ ! -f "$cache/node_modules/monaco-editor/min/vs/loader.js" ]; then
  mkdir -p "$cache" &&
    npm install --silent --no-save --no-audit --no-fund --ignore-scripts --prefix "$cache" \
      "monaco-editor@$version" >/dev/null 2>&1
fi
[ -f "$cache/node_modules/monaco-editor/min/vs/loader.js" ] || { echo "no monaco-editor to be had: skipped"; exit 0; }
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
timeout 420 node "$here/monaco.mjs" "${1:-$top/lsp/bin/tabor-lsp}" "$cache/node_modules/monaco-editor" \
  "$top/examples" "$top/lsp/editors/vscode" "$work" >"$work/out" 2>&1
cat "$work/out"
grep -q ' passed, 0 failed' "$work/out"
