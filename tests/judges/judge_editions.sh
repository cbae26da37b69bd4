#!/bin/sh
# judge_editions.sh CAHIER JUDGE SOURCE: later editions, planned from logs as a player fills them in,
# each judged by the ten rules from its JSON alone, with what was done before.
set -u
cahier=$1
judge=$2
source=$3
plans=0
added=0
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

# What was printed once stays valid: the starts of the last edition keep their numbers, whatever
# this one adds.
numbers_stay() {
  grep -oE '"number": [0-9]+, "bar": [0-9]+' plan.json >starts.txt
  if [ -s numbered.txt ]; then
    if ! head -n "$(wc -l <numbered.txt)" starts.txt | cmp -s - numbered.txt; then
      failed=$((failed + 1))
      echo "$1: cue starts are numbered anew"
      diff numbered.txt starts.txt
    fi
    [ "$(wc -l <starts.txt)" -gt "$(wc -l <numbered.txt)" ] && added=$((added + 1))
  fi
  mv starts.txt numbered.txt
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
    # The last bar of the day's recalls slips: starts inside are added where it lies.
    ends) awk '/^#/ { if (match($0, /recall [0-9]+–[0-9]+/)) { bar = substr($0, RSTART, RLENGTH)
          sub(/.*–/, "", bar) } }
        /date:/ { sub(/done: \[\]/, "done: all"); sub(/slips: ,/, "slips: none,") }
        /date:/ && bar != "" { sub(/slips: \[\]/, "slips: [" bar "]") }
        { print } /date:/ { bar = "" }' ;;
  esac
}

days="2027-01-04 2027-01-11 2027-01-18 2027-01-25"
[ -z "${CAHIER_LONG:-}" ] || days="$days 2027-02-01 2027-02-08 2027-02-15 2027-02-22"
for piece in "$source"/examples/lantern-study.yaml "$source"/examples/winter-fantasy.yaml; do
  for player in all gaps slips ends; do
    rm -f log.yaml numbered.txt
    "$cahier" plan "$piece" --from 2027-01-04 --by 2027-03-20 --minutes 25 --json >plan.json
    numbers_stay "$player"
    from=2027-01-04
    for day in $days; do
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
      numbers_stay "$player"
    done
  done
done
echo "$plans later editions; $failed with breaches, $added with more cue starts"
rm -f numbered.txt plan.json plan.err breaches.txt week.yaml log.yaml
[ "$failed" = 0 ] && [ "$plans" -ge 32 ] && [ "$added" -ge 4 ]
