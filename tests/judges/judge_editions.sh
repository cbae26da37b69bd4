#!/bin/sh
# judge_editions.sh CAHIER JUDGE SOURCE: later editions, planned from logs as a player fills them in,
# each judged by the ten rules from its JSON alone, with what was done before.
set -u
cahier=$1
judge=$2
source=$3
plans=0
failed=0

# judged NAME ARGUMENT…: the plan with that much of a log.
judged() {
  name=$1
  shift
  "$cahier" plan "$@" --json >plan.json 2>plan.err
  code=$?
  plans=$((plans + 1))
  if [ $code -gt 1 ] || ! "$judge" --temper weak <plan.json >breaches.txt; then
    failed=$((failed + 1))
    echo "$name: cahier plan $* (exit code $code)"
    head -n 5 plan.err breaches.txt
  fi
}

# week PIECE FROM BY DAY: the log of the week of DAY is added to log.yaml.
week() {
  if [ -s log.yaml ]; then
    "$cahier" report "$1" - --log log.yaml --from "$2" --by "$3" --week "$4" --minutes 25 >week.yaml
  else
    "$cahier" report "$1" - --from "$2" --by "$3" --week "$4" --minutes 25 >week.yaml
  fi || failed=$((failed + 1))
}

# The player of $1 does everything but what $2 names, and says so.
filled() {
  case $1 in
    all) sed 's/done: \[\]/done: all/; s/slips: ,/slips: none,/' ;;
    # In the middle of the week nothing, and of the days after it only what began the day.
    gaps) awk '/date:/ { day++ } /date:/ && day < 3 { sub(/done: \[\]/, "done: all") } { print }' ;;
    # The first bar of the day's recalls slips where it lies in the first sixteen.
    slips) awk '/^#/ { bar = match($0, /recall [0-9]+/) ? substr($0, RSTART + 7, RLENGTH - 7) : bar }
        /date:/ { sub(/done: \[\]/, "done: all"); sub(/slips: ,/, "slips: [3],") }
        /date:/ && bar != "" && bar <= 16 { sub(/slips: \[\]/, "slips: [" bar "]") }
        { print } /date:/ { bar = "" }' ;;
  esac
}

for piece in "$source"/examples/lantern-study.yaml "$source"/examples/winter-fantasy.yaml; do
  for player in all gaps slips; do
    rm -f log.yaml
    from=2027-01-04
    for day in 2027-01-04 2027-01-11 2027-01-18 2027-01-25 2027-02-01 2027-02-08 2027-02-15 2027-02-22; do
      week "$piece" "$from" 2027-03-20 "$day"
      filled $player <week.yaml >>log.yaml
      from=$(sed -n "s/^ *$day //p" <<DAYS
2027-01-04 2027-01-11
2027-01-11 2027-01-18
2027-01-18 2027-01-25
2027-01-25 2027-02-01
2027-02-01 2027-02-08
2027-02-08 2027-02-15
2027-02-15 2027-02-22
2027-02-22 2027-03-01
DAYS
)
      judged "$player" "$piece" --from "$from" --by 2027-03-20 --minutes 25 --log log.yaml
    done
  done
done
echo "$plans later editions; $failed with breaches"
rm -f plan.json plan.err breaches.txt week.yaml log.yaml
[ "$failed" = 0 ] && [ "$plans" -ge 48 ]
