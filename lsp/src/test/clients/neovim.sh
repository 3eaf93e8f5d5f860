#!/bin/sh
# Drives the server from Neovim's built-in client, without a screen: sh neovim.sh [SERVER]
# The last line is "N passed, N failed"; fails if anything did. Without nvim it says so and passes.
here=$(CDPATH='' cd -P -- "$(dirname "$0")" && pwd -P) || exit 1
top=$(CDPATH='' cd -P -- "$here/../../../.." && pwd -P) || exit 1
command -v nvim >/dev/null 2>&1 || { echo "no nvim here: skipped"; exit 0; }
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
# Names beyond ASCII, in a locale that has none: the launcher sees to it.
class=$work/Übungsraum-Größe
mkdir "$class"
TABOR_SERVER=${1:-$top/lsp/bin/tabor-lsp}
TABOR_PLUGIN=$top/lsp/editors/neovim/tabor.lua
TABOR_WORK=$class
TABOR_EDITORS=$top/lsp/editors
TABOR_EXAMPLES=$top/examples
export TABOR_SERVER TABOR_PLUGIN TABOR_WORK TABOR_EDITORS TABOR_EXAMPLES
XDG_CONFIG_HOME=$work XDG_DATA_HOME=$work XDG_CACHE_HOME=$work XDG_STATE_HOME=$work \
  LC_ALL=C timeout 180 nvim --headless --clean -n -c "luafile $here/neovim.lua" >"$work/out" 2>&1
tr -d '\r' <"$work/out"
grep -q ' passed, 0 failed' "$work/out"
