#!/bin/sh
# Lets libFuzzer look for inputs that crash the program, one target after another.
#   fuzz.sh BUILD SECONDS [TARGET…]      BUILD was configured with -DCAHIER_FUZZ=ON
# Each target gets SECONDS; without names, those that print or run whole commands and those of
# scores are tried, two at a time. What they found stays in BUILD/fuzz/TARGET from one run to the next, and an input that
# failed in BUILD/fuzz/found: give it a name, KIND-….txt, and move it to tests/fuzz/kept.
# Ends with one line a target: executions, edges reached, what failed. The exit code is 0 only when
# nothing failed.
set -eu
build=$(realpath "$1") seconds=$2
shift 2
here=$(cd "$(dirname "$0")" && pwd)
targets=${*:-printed-piece printed-programme printed-method printed-log printed-packet printed-words command
  score archive}
folder="$build/fuzz"
mkdir -p "$folder/found"
"$build/tests/fuzz/fuzz_inputs" --seeds "$here/../.." "$folder/seeds"

one() {
  mkdir -p "$folder/$1"
  # A tenth of a second is usual; memory is the sanitizers' own several times over.
  CAHIER_TARGET=$1 "$build/tests/fuzz/libfuzzer" "$folder/$1" "$folder/seeds/$1" \
    -dict="$here/cahier.dict" -max_total_time="$seconds" -timeout=60 -rss_limit_mb=4096 \
    -max_len=50000 -artifact_prefix="$folder/found/$1-" -print_final_stats=1 \
    >"$folder/$1.log" 2>&1 </dev/null && said="nothing failed" || said="FAILED, see $folder/$1.log"
  executions=$(sed -n 's/^stat::number_of_executed_units: *//p' "$folder/$1.log")
  edges=$(sed -n 's/.* cov: \([0-9]*\) .*/\1/p' "$folder/$1.log" | tail -n 1)
  echo "$1: ${executions:-0} executions, ${edges:-0} edges, $said"
}

for target in $targets; do
  # Two at a time.
  one "$target" >"$folder/$target.said" &
  if [ -n "${other:-}" ]; then
    wait
    other=""
  else
    other=$target
  fi
done
wait
failed=0
for target in $targets; do
  cat "$folder/$target.said"
  grep -q "nothing failed" "$folder/$target.said" || failed=1
done
exit $failed
