#!/bin/sh
# judge_plans.sh CAHIER JUDGE SOURCE: many plans, each judged by the ten rules from its JSON alone;
# with CAHIER_LONG=1 over another half year, too, and without it every second one.
set -u
cahier=$1
judge=$2
source=$3
plans=0
misfits=0
failed=0
turn=0
chunk_bars=4  # the method's own

# judged PIECE TEMPER RUNS ARGUMENT…
judged() {
  turn=$((turn + 1))
  [ -n "${CAHIER_LONG:-}" ] || [ $((turn % 2)) = 1 ] || return
  piece=$1
  temper=$2
  runs=$3
  shift 3
  "$cahier" plan "$piece" --temper "$temper" "$@" --chunk-bars $chunk_bars --json >plan.json 2>plan.err
  code=$?
  plans=$((plans + 1))
  [ $code = 1 ] && misfits=$((misfits + 1))
  if [ $code -gt 1 ] || 
    ! "$judge" --temper "$temper" --runs "$runs" --chunk-bars $chunk_bars <plan.json >breaches.txt; then
    failed=$((failed + 1))
    echo "cahier plan $piece --temper $temper $* (exit code $code)"
    head -n 5 plan.err breaches.txt
  fi
}

for piece in "$source"/examples/*.yaml "$source"/tests/judges/pieces/*.yaml; do
  for dates in "2027-01-04 2027-03-20" ${CAHIER_LONG:+"2026-12-30 2027-06-05"}; do
    from=${dates% *}
    by=${dates#* }
    judged "$piece" weak 5 --from "$from" --by "$by"
    judged "$piece" yes 5 --from "$from" --by "$by" --order backward --minutes 40 --dice one-die
    judged "$piece" no 10 --from "$from" --by "$by" --order hardest-first --minutes mon:25,wed:30,thu:25,sat:60 \
      --days-off sun,2027-02-01..2027-02-09 --new-to-performing yes
    judged "$piece" weak 5 --from "$from" --by "$by" --minutes 25 --days-off sat,sun --blocks 2 --dice coins
  done
  judged "$piece" weak 5 --from 2028-02-20 --by 2028-03-06 --minutes 45 --blocks 3 --dice d20
  # One day a week, and none for two weeks in the middle; the last one lies a week before the date.
  judged "$piece" no 5 --from 2027-01-04 --by 2027-07-03 --minutes sat:90 --days-off 2027-03-08..2027-03-21
  chunk_bars=7
  judged "$piece" yes 5 --from 2027-01-04 --by 2027-05-20 --minutes 40
  chunk_bars=4
  judged "$piece" no 5 --from 2027-01-04 --by 2027-01-10 --minutes 8
  judged "$piece" no 5 --from 2027-01-04 --by 2027-01-05
done
echo "$plans plans, of which $misfits do not fit; $failed with breaches"
rm -f plan.json plan.err breaches.txt
[ "$failed" = 0 ] && [ "$plans" -gt 40 ] && [ "$misfits" -lt "$plans" ]
