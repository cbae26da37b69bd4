#!/bin/sh
# judge_play_order.sh CAHIER FOLDER SOURCE: the play orders of scores are those of verovio, which npm
# installs into FOLDER; skipped where node or npm is missing, or the package cannot be had. The real
# scores are those of CAHIER_SCORES, or of shared/scores beside the SOURCE; skipped where they are not
# there. For the long checks: it takes about ten seconds.
set -eu
cahier=$1
mkdir -p "$2"
folder=$(realpath "$2")
scores=${CAHIER_SCORES:-$3/../shared/scores}
version=6.3.0

for program in node npm; do
  command -v $program >/dev/null || {
    echo "play orders: skipped, $program is not here"
    exit 0
  }
done
verovio="$folder/node_modules/verovio"
if ! grep -qs "\"version\": \"$version\"" "$verovio/package.json"; then
  timeout 120 npm install --silent --no-audit --no-fund --no-save --ignore-scripts \
    --prefix "$folder" "verovio@$version" >"$folder/npm.log" 2>&1 || {
    echo "play orders: skipped, npm does not bring verovio $version; see $folder/npm.log"
    exit 0
  }
fi
set --
for score in "$scores"/*.mxl; do
  [ ! -f "$score" ] || set -- "$@" "$score"
done
[ $# != 0 ] || echo "the real scores are not here, and skipped"
here=$(dirname "$0")
# What verovio says of ties and beams has nothing to do with the order.
node "$here/judge_play_order.mjs" "$cahier" "$verovio" "$folder" "$@" 2>"$folder/verovio.log" || {
  grep -v -e '^\[Warning\]' -e '^$' "$folder/verovio.log" | tail -n 20
  exit 1
}
