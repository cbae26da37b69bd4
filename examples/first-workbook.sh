#!/bin/sh
# Installs what is missing, builds cahier, and prints a first workbook into out/.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh
writable .
# shellcheck disable=SC2086
need $build_packages

cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DCAHIER_TESTS=OFF >build.log 2>&1 &&
  cmake --build build >>build.log 2>&1 || {
  tail -n 30 build.log >&2
  echo "The build failed; build.log has the whole of it." >&2
  exit 3
}
rm -f build.log

by=$(date -d "+11 weeks" +%Y-%m-%d)
mkdir -p out
build/cahier print examples/lantern-study.yaml --by "$by" -o out/lantern-study.pdf
