#!/bin/sh
# Sets every number of src/practice/numbers.h and of the built-in method to a far other value, one
# at a time, and asks whether a test notices.
#   sh tests/alter/alter.sh [COUNT [SEED [up | down]]]   a sample; all, 1 and up when not given
#   sh tests/alter/alter.sh NAME…                        only these: kEve, "passes#1"
# Up is two and a half times the value, down a third of it; where the method does not take that, the
# nearest that it takes. One build serves all (build-alter, with CAHIER_ALTER); the tests named
# [numbers] go first, then the other unit tests and at last the scenarios, unless ALTER_QUICK is set.
# Says of every number what caught it, or "SURVIVED", and ends with how many were caught; the exit
# code is 0 only when all were. What survives lacks a test, or is dead.
set -eu
cd "$(dirname "$0")/../.."
folder=${ALTER_FOLDER:-build-alter}
way=up
count=all
seed=1
names=""
case "${1:-all}" in
  all | [0-9]*) count=${1:-all} seed=${2:-1} way=${3:-up} ;;
  *) names=$(printf '%s\n' "$@") ;;
esac
mkdir -p "$folder"
folder=$(realpath "$folder")
cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCAHIER_TESTS=ON -DCAHIER_ALTER=ON \
  >"$folder/alter.log"
cmake --build "$folder" --target cahier cahier_tests run_scenario >>"$folder/alter.log" 2>&1 || {
  tail -n 40 "$folder/alter.log"
  exit 1
}
tab=$(printf '\t')
method=templates/methods/steady.yaml

# KIND NAME VALUE of every number, with tabs; a value may be written as a quotient.
{
  sed -n 's/^inline constexpr \([a-z:_]*\) \(k[A-Za-z]*\) = \([^;]*\);.*/\1 \2 \3/p' src/practice/numbers.h |
    awk -v OFS="$tab" '{ print ($1 == "double" ? "real" : "whole"), $2, $4 == "/" ? $3 / $5 : $3 }'
  awk -f tests/alter/method_numbers.awk $method | sed "s/^/method$tab/"
} >"$folder/numbers.txt"

# Lehmer's generator, the same everywhere; each at most once.
awk -F "$tab" -v count="$count" -v seed="$seed" -v names="$names" '
  BEGIN { wanted = split(names, name, "\n"); for (i in name) asked[name[i]] }
  wanted > 0 { if ($2 in asked) print; next }
  count == "all" { print; next }
  { line[++all] = $0 }
  END {
    if (count == "all" || wanted > 0) exit
    for (drawn = 0; drawn < count && all > 0; ++drawn) {
      seed = (seed * 48271) % 2147483647
      at = seed % all + 1
      print line[at]
      line[at] = line[all--]
    }
  }' "$folder/numbers.txt" >"$folder/drawn.txt"

# values KIND VALUE: from the farthest on.
values() {
  awk -v kind="$1" -v value="$2" -v way="$way" '
    function say(number) {
      if (kind == "whole" || (kind == "method" && value !~ /\./)) number = int(number + 0.5)
      if (number != value && number >= 0) print number
    }
    BEGIN {
      far = way == "up" ? 2.5 : 1 / 3
      other = way == "up" ? 1 / 3 : 2.5
      say(value * far); say(way == "up" ? value + 1 : value - 1); say(way == "up" ? value * 1.25 : value * 0.8)
      say(value * other); say(way == "up" ? value - 1 : value + 1)
      say(way == "up" ? value * 0.8 : value * 1.25)
    }'
}

# Sets other and the environment; fails where the method takes no other value.
alter() {
  unset CAHIER_NUMBER CAHIER_METHOD
  if [ "$1" != method ]; then
    other=$(values "$1" "$3" | head -n 1)
    export CAHIER_NUMBER="$2=$other"
    return
  fi
  for other in $(values "$1" "$3"); do
    awk -f tests/alter/method_numbers.awk -v set="$2" -v to="$other" $method >"$folder/steady.yaml"
    if "$folder/cahier" check "$folder/steady.yaml" >/dev/null 2>&1; then
      export CAHIER_METHOD="$folder/steady.yaml"
      return
    fi
  done
  return 1
}

# caught: sets by; tests that do not end count as failed.
caught() {
  by="the tests of numbers"
  timeout 60 "$folder/tests/cahier_tests" --abort -w NoTests "[numbers]" >"$folder/tests.log" 2>&1 || return 0
  [ -z "${ALTER_QUICK:-}" ] || return 1
  by="other unit tests"
  timeout 900 "$folder/tests/cahier_tests" --abort -w NoTests "~[numbers]~[.]" >"$folder/tests.log" 2>&1 || return 0
  by=scenarios
  ctest --test-dir "$folder" -R '^scenario' -j "$(nproc)" --timeout 120 --stop-on-failure \
    >"$folder/tests.log" 2>&1 || return 0
  return 1
}

unset CAHIER_NUMBER CAHIER_METHOD
"$folder/tests/cahier_tests" -w NoTests "[numbers]" >"$folder/tests.log" 2>&1 || {
  tail -n 40 "$folder/tests.log"
  echo "the tests of numbers fail before anything is altered"
  exit 1
}
tried=0 killed=0
while IFS="$tab" read -r kind name value; do
  if ! alter "$kind" "$name" "$value"; then
    echo "has no other value: $name $value"
    continue
  fi
  tried=$((tried + 1))
  if caught; then
    killed=$((killed + 1))
    echo "caught by $by: $name $value -> $other"
  else
    echo "SURVIVED: $name $value -> $other"
  fi
done <"$folder/drawn.txt"
echo "$killed of $tried caught"
[ $killed = $tried ]
