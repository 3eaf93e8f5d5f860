#!/bin/sh
# Types every example in Emacs with company and Eglot, without a screen: sh company.sh [SERVER]
# The last line is "N passed, N failed"; fails if anything did. Without emacs, eglot or company it says so and passes.
here=$(CDPATH='' cd -P -- "$(dirname "$0")" && pwd -P) || exit 1
top=$(CDPATH='' cd -P -- "$here/../../../.." && pwd -P) || exit 1
command -v emacs >/dev/null 2>&1 || { echo "no emacs here: skipped"; exit 0; }
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
emacs --batch --eval "(progn (package-initialize) (require 'eglot) (require 'company))" >/dev/null 2>&1 ||
  { echo "no eglot or company here: skipped"; exit 0; }
cp -R "$top/examples" "$work/examples" || exit 1
TABOR_SERVER=${1:-$top/lsp/bin/tabor-lsp}
TABOR_WORK=$work/examples
export TABOR_SERVER TABOR_WORK
HOME=$work timeout 420 emacs --batch --eval "(package-initialize)" -L "$top/lsp/editors/emacs" \
  -l "$here/company.el" >"$work/out" 2>&1
cat "$work/out"
grep -q ' passed, 0 failed' "$work/out"
