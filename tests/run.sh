#!/bin/sh
# Installs what is missing, builds with warnings as errors, checks the format, runs every test.
#   sh tests/run.sh              the tests
#   sh tests/run.sh --debug      the same, built for a debugger
#   sh tests/run.sh --sanitize   the same, with the address and undefined-behaviour sanitizers
#   sh tests/run.sh --long       sanitizers, longer fuzzing, the bench
# Ends with "N passed, N failed"; the exit code is 0 only when nothing failed.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh
# shellcheck disable=SC2086
need $build_packages $test_packages

kind=Release
folder=build
sanitize=OFF
long=no
for option in "$@"; do
  case "$option" in
    --debug) kind=Debug folder=build-debug ;;
    --sanitize) kind=Debug folder=build-sanitize sanitize=ON ;;
    --long) kind=Debug folder=build-sanitize sanitize=ON long=yes ;;
    *)
      echo "tests/run.sh knows --debug, --sanitize and --long, not $option" >&2
      exit 2
      ;;
  esac
done

passed=0
failed=0
finish() {
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
  exit
}

if ! cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=$kind -DCAHIER_TESTS=ON \
  -DCAHIER_SANITIZE=$sanitize >"$folder.log" 2>&1 || ! cmake --build "$folder" >>"$folder.log" 2>&1; then
  tail -n 60 "$folder.log"
  failed=1
  finish
fi
mv "$folder.log" "$folder/build.log"

# The format of every source file counts as one test.
if find src tests -name '*.cpp' -o -name '*.h' | xargs clang-format --dry-run --Werror 2>"$folder/format.log"; then
  passed=1
else
  head -n 20 "$folder/format.log"
  echo "clang-format would change files: run it on them"
  failed=1
fi

[ "$long" = yes ] && export CAHIER_LONG=1
# The outside judges read what the program prints: that is the same with sanitizers, only slower.
# So are the search for remedies, which the unit tests watch, and the sweeps of all sheets: each
# has tests of its own besides. Brute force takes three gigabytes with sanitizers, and runs at length
# without them.
skip='^$'
[ "$sanitize" = ON ] &&
  skip='^judge:|^scenario: (every|no) remedy|^every sheet keeps its layout|^brute force'
ctest --test-dir "$folder" -E "$skip" -j "$(nproc)" --output-on-failure --timeout 900 >"$folder/tests.log" 2>&1 || true
grep -q "tests passed," "$folder/tests.log" || { tail -n 40 "$folder/tests.log"; failed=$((failed + 1)); finish; }
counts=$(sed -n 's/.*tests passed, \([0-9]*\) tests failed out of \([0-9]*\).*/\1 \2/p' "$folder/tests.log")
bad=${counts% *}
all=${counts#* }
if [ "$bad" != 0 ]; then
  grep -v "Passed" "$folder/tests.log" | tail -n 200
fi
passed=$((passed + all - bad))
failed=$((failed + bad))
if [ "$long" = yes ]; then
  cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DCAHIER_TESTS=ON >/dev/null
  cmake --build build --target cahier_bench brute_force search_check >/dev/null
  for brute in brute_force search_check; do
    if "build/tests/brute/$brute" >"build/$brute.log" 2>&1; then
      passed=$((passed + 1))
    else
      tail -n 40 "build/$brute.log"
      failed=$((failed + 1))
    fi
  done
  build/tests/bench/cahier_bench
fi
finish
