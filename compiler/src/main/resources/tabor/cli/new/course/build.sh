#!/bin/sh
# Checks the lessons and makes everything from them: sh build.sh [FOLDER]; the folder is out if none is named.
#   FOLDER/site      pages for everybody, with players and PDFs to print: put them on any web server
#   FOLDER/students  a handout for each student in the class file: these stay with you
# It is run by hand, or by a server for every change. TABOR names the program where tabor is not on the PATH.
set -eu
tabor=${TABOR:-tabor}
cd "$(dirname "$0")"
out=${1:-out}

if [ ! -f lessons/class.tabor ]; then
  # The class file is not in the repository, so a fresh copy has none.
  cp class-example.tabor lessons/class.tabor
  echo "lessons/class.tabor is made from class-example.tabor: put in your own students"
fi

"$tabor" format --check lessons
"$tabor" check lessons
"$tabor" build lessons/week-*.tabor --as pdf -o "$out/site"
"$tabor" weave site --lessons . -o "$out/site"
"$tabor" build lessons/week-*.tabor --for all --as pdf -o "$out/students"
