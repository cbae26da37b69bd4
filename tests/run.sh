#!/bin/sh
# Installs what is missing, builds with warnings as errors, checks the format, runs the tests.
#   sh tests/run.sh              the tests
#   sh tests/run.sh --debug      the same, built for a debugger
#   sh tests/run.sh --sanitize   the tests again, with the address and undefined-behaviour sanitizers
#   sh tests/run.sh --long       sanitizers, longer fuzzing and brute force, the bench
# Ends with "N passed, N failed"; the exit code is 0 only when nothing failed.
set -eu
cd "$(dirname "$0")/.."
kind=Release
folder=build
sanitize=OFF
long=no
for option in "$@"; do
  case "$option" in
    --debug) kind=Debug folder=build-debug ;;
    --sanitize) sanitize=ON ;;
    --long) sanitize=ON long=yes ;;
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

passed=0
failed=0
finish() {
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
  exit
}

if ! cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=$kind -DCAHIER_TESTS=ON \
  -DCAHIER_WERROR=ON -DCAHIER_SANITIZE=$sanitize >"$folder.log" 2>&1 ||
  ! cmake --build "$folder" >>"$folder.log" 2>&1; then
  tail -n 60 "$folder.log"
  failed=1
  finish
fi
mv "$folder.log" "$folder/build.log"

# run_tests OPTIONS…: those that ctest selects by these options.
run_tests() {
  ctest --test-dir "$folder" "$@" -j "$(nproc)" --output-on-failure --timeout 900 \
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

# run_alone NAME PROGRAM: counts as one test.
run_alone() {
  if "$2" >"$folder/$1.log" 2>&1; then
    passed=$((passed + 1))
  else
    tail -n 40 "$folder/$1.log"
    failed=$((failed + 1))
  fi
}

if [ $sanitize = OFF ]; then
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

# With sanitizers the search for remedies and the sweeps of all sheets are left out: each has tests
# of its own besides. So are the scenarios that limit the memory, of which the sanitizer reserves
# terabytes. The outside judges read the same output either way.
[ $long = yes ] && export CAHIER_LONG=1
run_tests -L sanitized \
  -E 'scenario: (every|no) remedy|every sheet keeps its layout|ten thousand bars are|two million'
if [ $long = yes ]; then
  run_alone brute_force "$folder/tests/brute/brute_force"
  run_alone search_check "$folder/tests/brute/search_check"
  "$folder/tests/bench/cahier_bench"
fi
finish
