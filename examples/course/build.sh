#!/bin/sh
# Checks the lessons and makes the site of the course from them: sh build.sh [FOLDER]; FOLDER counts from this folder and is
# out if none is named. It is run by hand, or by a server for every change. TABOR names the program where tabor is not on the PATH.
set -eu
tabor=${TABOR:-tabor}
cd "$(dirname "$0")"
out=${1:-out}

"$tabor" format --check .
"$tabor" check .
"$tabor" build saturday-*.tabor small-kit.tabor --as pdf -o "$out"
"$tabor" weave site --lessons . -o "$out"
