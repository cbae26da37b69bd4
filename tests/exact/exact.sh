#!/bin/sh
# What the program calls impossible, put to an exact solver: is there really no plan?
#   sh tests/exact/exact.sh BUILD N [FIRST]   N small cases, from case FIRST on (1)
# Each case is a piece of up to 10 chunks on up to 21 days. The least minutes a day that fit are
# found, and half a minute less, 0.95 and 0.8 of them are asked about, for every way of cutting the
# piece into chunks:
#   confirmed     the solver proves that there is no plan
#   missed        the solver has a plan that the program did not find; the judge of plans agrees
#   between       the model, which is relaxed in places, has a plan; the rules may have none
#   not decided   the solver had no answer in EXACT_SECONDS (20) for one way of cutting
#   odd           it does fit, though half a minute less than the least found does not
# Besides, the minutes of every task are compared with those worked out here; the program's own plan
# must keep the model's rules; and one that is made to break a rule must break just that one. Fails
# when any of these fails, or when more than one question in 10 was missed, or more than one in 5
# was not decided.
set -u
seconds=${EXACT_SECONDS:-20}
here=$(cd "$(dirname "$0")" && pwd)
method=$here/../../templates/methods/steady.yaml
most_halves=480

# solve WAIVED STRICT DATA: prints sat, unsat or unknown. Half of the time goes into a proof that
# there is no plan, and only then the other half into finding one.
solve() {
  for by_chance in false true; do
    minizinc --solver gecode --time-limit $((seconds * 500)) \
      -D "waived = {$1}; strict = $2; by_chance = $by_chance;" "$here/rules.mzn" "$3" \
      >answer 2>solver.err
    if grep -q '^=====UNSAT' answer; then
      echo unsat
    elif grep -q '^-----' answer; then
      echo sat
    elif grep -q '^=====UNKNOWN' answer; then
      [ $by_chance = true ] || continue
      echo unknown
    else
      echo "no answer: $(tail -n 1 solver.err)"
    fi
    return
  done
}

# plan HALVES: the program's exit code.
plan() {
  # shellcheck disable=SC2046
  "$cahier" plan piece.yaml $("$cases" options "$number" "$1") --json >plan.json 2>plan.err
}

# The least half minutes a day that fit, in $least; empty when none do.
find_least() {
  least=
  plan $most_halves || return 0
  low=0
  least=$most_halves
  while [ $((least - low)) -gt 1 ]; do
    middle=$(((least + low) / 2))
    if plan $middle; then least=$middle; else low=$middle; fi
  done
}

# ask HALVES SHARE: says what the solver thinks of a plan that does not fit.
ask() {
  plan "$1"
  code=$?
  if [ $code = 0 ]; then
    echo "ODD case $number: $1 half minutes fit, $((least - 1)) do not"
    return
  fi
  if [ $code != 1 ]; then
    echo "FAULT case $number: cahier ends with $code: $(head -n 1 plan.err)"
    return
  fi
  "$cases" compare "$method" "$number" "$1" <plan.json >compared 2>&1 ||
    sed "s/^/FAULT case $number: /" compared
  outcome=confirmed
  way=0
  while [ $way -lt "$ways" ]; do
    "$cases" data "$method" "$number" "$1" $way >free.dzn
    answer=$(solve "" false free.dzn)
    if [ "$answer" = sat ]; then
      # Without look-alikes nothing is relaxed that a plan could make use of.
      grep -q '^pairs = 0;' free.dzn || answer=$(solve "" true free.dzn)
      if [ "$answer" = sat ]; then
        outcome="missed, way $way to cut it"
        "$cases" judge "$method" "$number" $way answer <plan.json >breaches 2>&1 ||
          sed "s/^/FAULT case $number: the solver's plan breaks /" breaches
        break
      fi
      outcome=between
    elif [ "$answer" != unsat ] && [ "$outcome" = confirmed ]; then
      outcome="not decided"
      [ "$answer" = unknown ] || echo "FAULT case $number: $answer"
    fi
    way=$((way + 1))
  done
  echo "ASKED case $number, $2: $1 half minutes of ${least:-none}: $outcome"
}

# bite HOW RULE WAIVED: a plan made to break the rule has a place in the model only without it.
# WAIVED are rules that may break along with it.
bite() {
  "$cases" given "$method" "$number" "$least" "$1" <fits.json >broken.dzn 2>/dev/null || return 0
  with=$(solve "$3" false broken.dzn)
  without=$(solve "$3${3:+,}$2" false broken.dzn)
  # A plan learned in a day or two and then played through needs no recall.
  if [ "$with$without" = unsatsat ]; then
    echo "BIT $1"
  elif [ "$1$with" != recallssat ]; then
    echo "FAULT case $number: a plan that breaks rule $2 ($1) is $with, without the rule $without"
  fi
}

one_case() {
  mkdir -p "$folder/$number" && cd "$folder/$number" || exit 3
  "$cases" piece "$number" >piece.yaml
  ways=$("$cases" cuts "$method" "$number")
  echo "case $number: $("$cases" about "$number")"
  find_least
  if [ -z "$least" ]; then
    ask $most_halves "whatever the minutes"
    return
  fi
  plan "$least"
  cp plan.json fits.json
  "$cases" compare "$method" "$number" "$least" <fits.json >compared 2>&1 ||
    sed "s/^/FAULT case $number: /" compared
  "$cases" given "$method" "$number" "$least" <fits.json >given.dzn
  answer=$(solve "" false given.dzn)
  if [ "$answer" = sat ]; then
    echo "ALLOWED"
  else
    echo "FAULT case $number: the program's own plan is $answer"
  fi
  if [ $((number % 5)) = 1 ]; then
    bite minutes 3 "" && bite join 4 5 && bite recalls 5 3,4 && bite night 5 3,4,6,8 &&
      bite runs 6 5 && bite late 6 3,4,5,8 && bite twins 8 3,4,5,6 && bite fork 8 5
  fi
  before=
  for share in 100 95 80; do
    halves=$((least * share / 100))
    [ $halves = "$least" ] && halves=$((least - 1))
    [ $halves -lt 1 ] || [ "$halves" = "$before" ] && continue
    before=$halves
    ask $halves "share $share"
  done
}

command -v minizinc >/dev/null || {
  echo "minizinc is missing: Debian's package of that name brings it, with Gecode" >&2
  exit 3
}
build=$(cd "${1:?the folder of the build}" && pwd)
cahier=$build/cahier
cases=$build/tests/exact/exact_case
if [ "${2:?how many cases}" = case ]; then
  folder=$4
  number=$3
  one_case
  exit
fi
first=${3:-1}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
seq "$first" $((first + $2 - 1)) |
  xargs -P "$(nproc)" -I '{}' sh -c 'sh "$1" "$2" case "$3" "$4" >"$4/$3.out" 2>&1' \
    one_case "$here/exact.sh" "$build" '{}' "$folder"
for number in $(seq "$first" $((first + $2 - 1))); do cat "$folder/$number.out"; done >"$folder/all"
grep -v -e '^ALLOWED' -e '^BIT' "$folder/all"
awk '
  /^ASKED/ { ++asked; if (/confirmed$/) ++confirmed; else if (/missed/) ++missed;
             else if (/between$/) ++between; else ++open }
  /^ODD/ { ++odd }
  /^ALLOWED/ { ++allowed }
  /^BIT/ { ++bit[$2] }
  /^FAULT/ { ++faults }
  END {
    printf "%d questions: %d confirmed, %d missed, %d between, %d not decided\n",
           asked, confirmed, missed, between, open
    if (odd) printf "%d times less time fits and more does not\n", odd
    printf "%d plans of the program kept the rules of the model\n", allowed
    printf "broken plans refused:"
    all_bite = split("minutes join recalls night runs late twins fork", ways, " ")
    for (way = 1; way in ways; ++way) {
      printf " %s %d", ways[way], bit[ways[way]]
      if (!bit[ways[way]]) all_bite = 0
    }
    print ""
    printf "%d faults\n", faults
    exit !(faults == 0 && asked > 0 && missed * 10 <= asked && open * 5 <= asked &&
           allowed > 0 && all_bite)
  }' "$folder/all"
