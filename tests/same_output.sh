#!/bin/sh
# Whether two builds of the program say the same: plans as text and JSON, workbooks and logs of the
# examples and the sample pieces, byte for byte. For changes that are meant to move code only:
#   git worktree add /tmp/before COMMIT, build it there, and
#   sh tests/same_output.sh /tmp/before/build/cahier build/cahier
# Ends with "N the same (N of them refused), N differ"; the exit code is 0 only when nothing differs.
set -u
[ $# = 2 ] || { echo "usage: sh tests/same_output.sh BEFORE AFTER (two programs)" >&2; exit 2; }
before=$(realpath "$1") after=$(realpath "$2")
[ -x "$before" ] && [ -x "$after" ] || { echo "both must be programs" >&2; exit 2; }
cd "$(dirname "$0")/.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
same=0 differ=0 failed=0

# compare WORDS…: both programs with the same arguments; PDF stands for a workbook to be written.
compare() {
  for program in before after; do
    eval "path=\$$program"
    # The same file name for both: it is part of what is said.
    out="$folder/out.pdf" arguments=""
    rm -f "$out"
    for word in "$@"; do
      [ "$word" = PDF ] && word="$out"
      arguments="$arguments '$word'"
    done
    eval "\"\$path\" $arguments" >"$folder/$program.out" 2>"$folder/$program.err"
    echo "exit $?" >>"$folder/$program.err"
    rm -f "$folder/$program.pdf"
    [ -f "$out" ] && mv "$out" "$folder/$program.pdf" || : >"$folder/$program.pdf"
  done
  for kind in out err pdf; do
    if ! cmp -s "$folder/before.$kind" "$folder/after.$kind"; then
      echo "differs ($kind): $*"
      differ=$((differ + 1))
      return
    fi
  done
  same=$((same + 1))
  tail -n 1 "$folder/after.err" | grep -q "exit 0" || failed=$((failed + 1))
}

season="--from 2027-01-04 --by 2027-03-20"
for piece in examples/*.yaml tests/judges/pieces/*.yaml; do
  compare plan "$piece" $season --json
  compare plan "$piece" $season --why --spacing
  compare plan "$piece" --from 2027-01-04 --by 2027-02-03 --json --minutes 30 --temper yes
  compare plan "$piece" --from 2027-01-04 --by 2027-01-16 --json
  compare plan "$piece" --from 2027-01-04 --by 2027-12-20 --json --order backward --days-off sun
  compare print "$piece" $season -o PDF
  compare print "$piece" $season -o PDF --paper a5 --packet student
  compare print "$piece" $season -o PDF --paper letter --large-print --dice d20
  compare print "$piece" $season -o PDF --paper a4 --booklet --dice coins
  compare report "$piece" - $season --week 2027-01-10
  # A later edition: a week of which every day was done, slowly, and each recall slipped.
  "$before" report "$piece" - $season --week 2027-01-10 2>/dev/null | awk '
    /^#/ { slip = match($0, /recall [0-9]+/) ? substr($0, RSTART + 7, RLENGTH - 7) : "" }
    /^- [{]date/ {
      sub(/done: \[\], minutes: *,/, "done: all, minutes: 17,")
      sub(/slips: \[\]/, "slips: [" slip "]")
    }
    { print }' >"$folder/log.yaml"
  compare plan "$piece" --from 2027-01-11 --by 2027-03-20 --log "$folder/log.yaml" --json
  compare print "$piece" --from 2027-01-11 --by 2027-03-20 --log "$folder/log.yaml" -o PDF
  compare plan "$piece" --by 2027-03-20 --keep 2027-06-20 --json
  compare print "$piece" --by 2027-03-20 --keep 2027-06-20 -o PDF
done
echo "$same the same ($failed of them refused), $differ differ"
[ "$differ" = 0 ]
