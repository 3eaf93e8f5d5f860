#!/bin/sh
# Makes the pictures in README.md and docs/*.md again, from the repository's top folder: those of blocks of notation by
# tabor weave --in-place, the two photographs of the README's lesson with pdftoppm and Chromium.
#   TABOR   the program, compiler/bin/tabor if not set
set -eu
cd "$(dirname "$0")/.."
tabor=${TABOR:-compiler/bin/tabor}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

rm -f docs/pictures/*.svg
$tabor weave docs/*.md --in-place >/dev/null
$tabor weave README.md --in-place --pictures docs/pictures >/dev/null

# A photograph is named after the lesson's text: another lesson, another name.
awk '/^```tabor/ { on = 1; next } /^```/ { on = 0 } on' README.md >"$work/lesson.tabor"
sum=$(sha256sum "$work/lesson.tabor" | cut -c1-16)
$tabor build "$work/lesson.tabor" -o "$work" --as pdf,html >/dev/null
pdftoppm -r 60 -png -singlefile "$work/lesson.pdf" "$work/printed"
chromium --headless --no-sandbox --hide-scrollbars --window-size=760,700 --screenshot="$work/practice.png" \
  "file://$work/lesson.html" >/dev/null 2>&1
rm -f docs/pictures/printed-*.png docs/pictures/practice-*.png
cp "$work/printed.png" "docs/pictures/printed-$sum.png"
cp "$work/practice.png" "docs/pictures/practice-$sum.png"
sed -i "s|docs/pictures/[a-z-]*PRINTED|docs/pictures/printed-$sum.png|; s|docs/pictures/PRACTICE|docs/pictures/practice-$sum.png|
  s|printed-[0-9a-f]*\\.png|printed-$sum.png|; s|practice-[0-9a-f]*\\.png|practice-$sum.png|" README.md
