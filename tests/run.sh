#!/bin/sh
# Installs what is missing, builds with warnings as errors, checks the format, runs the tests.
#   sh tests/run.sh              the tests
#   sh tests/run.sh --debug      the same, built for a debugger
#   sh tests/run.sh --sanitize   the tests built by clang, with the address and undefined-behaviour
#                                sanitizers
#   sh tests/run.sh --long       those, the fuzzers, brute force, the exact solver,
#                                altered numbers, play orders and the bench; every fuzz target
#                                gets CAHIER_FUZZ_SECONDS, 10 if it is not set
# Ends with "N passed, N failed"; the exit code is 0 only when nothing failed.
set -eu
cd "$(dirname "$0")/.."
kind=Release
folder=build
what=tests
for option in "$@"; do
  case "$option" in
    --debug) kind=Debug folder=build-debug ;;
    --sanitize) what=sanitize ;;
    --long) what=long ;;
    *)
      echo "unknown option $option: --debug, --sanitize and --long are known" >&2
      exit 2
      ;;
  esac
done

. tests/packages.sh
writable .
# shellcheck disable=SC2086
need $build_packages $test_packages
if [ $what != tests ]; then
  need clang
  need "libclang-rt-$(clang -dumpversion | cut -d. -f1)-dev"  # of the same version
fi
# shellcheck disable=SC2086
[ $what != long ] || need $long_packages

passed=0
failed=0
finish() {
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
  exit
}

# build FOLDER TARGET OPTIONS…: with warnings as errors; what cmake and the compiler say is shown
# only when it failed.
build() {
  folder=$1 target=$2
  shift 2
  if ! cmake -S . -B "$folder" -G Ninja -DCAHIER_TESTS=ON -DCAHIER_WERROR=ON "$@" \
    >"$folder.log" 2>&1 || ! cmake --build "$folder" --target $target >>"$folder.log" 2>&1; then
    tail -n 60 "$folder.log"
    failed=$((failed + 1))
    finish
  fi
  mv "$folder.log" "$folder/build.log"
}

# run_tests OPTIONS…: those that ctest selects by these options.
run_tests() {
  ctest --test-dir "$folder" "$@" -j "$(($(nproc) + 1))" --output-on-failure --timeout 900 \
    >"$folder/tests.log" 2>&1 || true
  grep -q "tests passed," "$folder/tests.log" || {
    tail -n 40 "$folder/tests.log"
    failed=$((failed + 1))
    finish
  }
  counts=$(sed -n 's/.*tests passed, \([0-9]*\) tests failed out of \([0-9]*\).*/\1 \2/p' "$folder/tests.log")
  bad=${counts% *}
  all=${counts#* }
  if [ "$bad" != 0 ]; then
    grep -v "Passed" "$folder/tests.log" | tail -n 200
  fi
  passed=$((passed + all - bad))
  failed=$((failed + bad))
}

# run_alone NAME COMMAND…: counts as one test.
run_alone() {
  name=$1
  shift
  if "$@" >"$folder/$name.log" 2>&1; then
    passed=$((passed + 1))
  else
    tail -n 40 "$folder/$name.log"
    failed=$((failed + 1))
  fi
}

if [ $what = tests ]; then
  build "$folder" all "-DCMAKE_BUILD_TYPE=$kind"
  # The format of every source file counts as one test.
  if find src tests -name '*.cpp' -o -name '*.h' | xargs clang-format --dry-run --Werror 2>"$folder/format.log"; then
    passed=1
  else
    head -n 20 "$folder/format.log"
    echo "clang-format would change files: run it on them"
    failed=1
  fi
  run_tests
  finish
fi

# The fuzzers, and numbers that can be altered, are for the long checks alone.
extra=OFF
[ $what = long ] && extra=ON
build build-sanitized all -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Release \
  -DCAHIER_SANITIZE=ON "-DCAHIER_FUZZ=$extra" "-DCAHIER_ALTER=$extra"
# With sanitizers the search for remedies, the seasons and the sweeps of all sheets are left out:
# each has tests of its own besides; and what takes longest of the sweeps of single sheets and of
# the scenarios of many commands. So are the scenarios that limit the memory, of which the sanitizer
# reserves terabytes.
run_tests -E 'scenario: (every|no) remedy|remedies of works|seasons of a|every edition of random|every sheet keeps its layout|Whatever is thrown|at every size|of thirty pieces|slow week leaves|figure is met where|five thousand bars|the days late|more time makes|nothing is given up|smallest allowance|ten thousand bars|two million|wall sheet keeps|sheets of a later edition keep|sheets of a book that keeps|rejoin card keeps|child.s sheets|bar that stands twice|names and dates in a piece|too many pages|studio of students|student.s name stands|what it writes is read|with an empty value'
if [ $what = long ]; then
  run_alone fuzz sh tests/fuzz/fuzz.sh "$folder" "${CAHIER_FUZZ_SECONDS:-10}"
  cat "$folder/fuzz.log"
  run_alone altered env ALTER_FOLDER="$folder" ALTER_QUICK=1 sh tests/alter/alter.sh 8 2
  tail -n 1 "$folder/altered.log"
  export CAHIER_LONG=1
  build build "all brute_force search_check exact_case cahier_bench cahier_search_bench" -DCMAKE_BUILD_TYPE=Release
  run_alone judges ctest --test-dir build -j "$(nproc)" -R 'judge: (workbooks|many|later)' --output-on-failure
  run_alone play_orders sh tests/judges/judge_play_order.sh build/cahier build/verovio .
  tail -n 1 build/play_orders.log
  run_alone brute_force build/tests/brute/brute_force
  run_alone search_check build/tests/brute/search_check
  run_alone exact env EXACT_SECONDS=6 sh tests/exact/exact.sh build 11 6
  tail -n 4 "$folder/exact.log"
  build/tests/bench/cahier_bench
  build/tests/bench/cahier_search_bench 10
fi
finish
