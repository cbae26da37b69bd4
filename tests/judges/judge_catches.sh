#!/bin/sh
# judge_catches.sh CAHIER JUDGE SOURCE: the judge of plans finds what is wrong in a plan that was
# sound, once for each rule, what the plan says wrongly of its gaps, and what is no plan at all.
set -u
cahier=$1
judge=$2
source=$3
failed=0

"$cahier" plan "$source/examples/winter-fantasy.yaml" --from 2027-01-04 --by 2027-05-20 --json >sound.json ||
  exit 1
"$judge" <sound.json || exit 1

# caught RULE SCRIPT-FOR-SED; RULE may go on to the words of the breach.
caught() {
  sed -E "$2" sound.json >spoilt.json
  if cmp -s sound.json spoilt.json; then
    echo "$2 spoils nothing"
    failed=1
  elif "$judge" <spoilt.json >breaches.txt || ! grep -qE "^(rule )?$1(:|$)" breaches.txt; then
    echo "$2: no breach of rule $1 was found"
    cat breaches.txt
    failed=1
  fi
}

caught 1 's/("chunks": \[\{"id": "A1", "first": 0, "last": )[0-9]+/\12/'
caught 2 '0,/"times": 5/s//"times": 4/'
caught 2 's/"drill": "learn"(, "first": 49)/"drill": "join"\1/'
caught 3 's/"allowance": 20, /"allowance": 3, /'
caught '3: .*: tempi' '0,/"tempi": \[\[[0-9]+, /s//"tempi": [[99, /'
caught 4 's/"drill": "(join|recall|slow_pass|counted_pass)"(, "first": [0-9]+, "last": 9[0-9])/"drill": "cue_starts"\2/g'
caught '5: .* is left alone for .*' 's/"drill": "(recall|slow_pass|counted_pass)"/"drill": "join"/g'
caught 6 's/"drill": "run_through"/"drill": "slow_pass"/g'
caught 3 's/"by": "2027-05-20"/"by": "2027-05-21"/'
caught 7 's/(\{"number": [0-9]+, "bar": )17,/\118,/'
caught '7: cue start 2 is before the one before it' 's/(\{"number": 1, "bar": )[0-9]+/\116/'
caught '7: cue start 2 is at the bar of another' 's/(\{"number": 2, "bar": )[0-9]+/\10/'
caught '7: cue start 3 was there before one that is new' 's/(\{"number": 2, "bar": [0-9]+)/\1, "new": true/'
caught 7 '0,/("outcomes": \[)\[[0-9], [0-9]\], /s//\1/'
caught 7 's/"dice": "2d6"/"dice": "1d36"/'
caught 8 's/"fork": \[13, 49, 85\]/"fork": [7, 49, 85]/'
caught 8 's/"drill": "cue_starts"/"drill": "recall"/g'
caught 8 's/("ways": \[\[[0-9]+, )[0-9]+\]/\140]/'
caught 8 's/"rejoin": \[/"rejoin": [10, /'
caught 9 's/("first": 2[0-9], "last": [0-9]+, "section": "B", "level": )[45]/\13/'
caught '9: .*: steps' '0,/"say": "right hand"/s//"say": "left hand"/'
caught '9: .* comes before a slow or counted pass' 's/"drill": "(slow_pass|counted_pass)"/"drill": "recall"/g'
caught '9: .* before the weaker B6' 's/("first": 33, "last": 36, "section": "B", "level": )4/\15/'
caught 10 's/"unplaced": \[\]/"unplaced": [{"piece": 0, "drill": "join", "first": 1, "last": 2, "why": "no room"}]/'
caught spacing 's/"near_share": [0-9.]+/"near_share": 0.5/'
caught spacing 's/"forced_by_days_off": [0-9]+/"forced_by_days_off": 99/'
caught spacing '0,/("recalls": \["[-0-9]+"), "[-0-9]+"/s//\1/'
caught spacing '0,/("ideal": \["[-0-9]+"), "[-0-9]+"/s//\1/'
caught spacing '0,/"near": [0-9]+/s//"near": 0/'
caught spacing '/"piece": 0, "chunk": "A2", "recalls"/d'
caught 'no plan' 's/"fits": true/"fits": true, "fits": true/'
caught 'no plan' 's/"fits": true/"fits": 1/'
caught 'no plan' 's/"allowance": 20, /"allowance": true, /'
caught 'no plan' 's/"times": 5/"times": 5.5/'
caught 'no plan' 's/"parts": \["right hand"\]/"parts": "right hand"/'
caught 'no plan' '$s/$/ {}/'

# By bars: a start inside a chunk recalls the bars from there on, and one at its end no others.
printf 'title: Inside\nbars: 8\ncues: [5]\n' >inside.yaml
"$cahier" plan inside.yaml --from 2027-01-04 --by 2027-03-01 --json >sound.json || exit 1
"$judge" <sound.json || exit 1
alone='s/"stage": "[a-z]+", "drill": "(recall|slow_pass|counted_pass|run_through)"/"stage": "build", "drill": "join"/g'
caught '5: A2 from bar 5 is first recalled only on .*' "$alone"
caught '5: A2 from bar 5 is never recalled' "$alone; s/(\"number\": 2, \"bar\": )5/\18/"
caught '5: A2 from bar 8 is first recalled only on .*' "$alone; s/(\"number\": 2, \"bar\": )5/\18/"
caught '5: .* names A2 but does not play bar 7' 's/("number": 2, "bar": )5/\18/'
caught '5: .* names A2 but does not play bar 8' 's/("drill": "(join|recall)", "first": 1, "last": )8/\17/'
rm -f inside.yaml sound.json spoilt.json breaches.txt
exit $failed
