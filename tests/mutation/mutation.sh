#!/bin/sh
# Changes one operator or constant of src/plan, src/text and src/cli at a time and asks whether a
# test notices.
#   sh tests/mutation/mutation.sh [COUNT [SEED]]      30 and 1 when not given
# Works on a copy in build-mutation, which it builds once and then file by file: about a minute for
# each change. Says of every one where it was and whether it was caught, by which tests, and ends
# with the share caught. What survives is a test that is missing, or a change that means nothing.
set -eu
cd "$(dirname "$0")/../.."
count=${1:-30} seed=${2:-1}
copy=build-mutation
mkdir -p $copy/source
cp -r CMakeLists.txt README.md DEVELOPERS.md LICENSE src templates tests examples $copy/source
cmake -S $copy/source -B $copy/build -G Ninja -DCMAKE_BUILD_TYPE=Release -DCAHIER_TESTS=ON >$copy/log
echo "building once …"
cmake --build $copy/build >>$copy/log
cd $copy/source

find src/plan src/text src/cli -name '*.cpp' | LC_ALL=C sort | xargs awk -f tests/mutation/places.awk >../places
# Lehmer's generator, the same everywhere; more than are needed, since not every change compiles.
awk -v seed="$seed" -v wanted=$((count * 2)) '
  { places[NR] = $0 }
  END {
    for (drawn = 0; drawn < wanted; ++drawn) {
      seed = (seed * 48271) % 2147483647
      print places[seed % NR + 1]
    }
  }' ../places >../drawn
echo "$(wc -l <../places) places; $count are tried"

# caught: whether a test fails; says which kind.
caught() {
  if ! timeout 300 ../build/tests/cahier_tests --abort >../tests.log 2>&1; then
    echo "unit tests"
  elif ! ctest --test-dir ../build -R '^(scenario|judge: many)' -j "$(nproc)" --timeout 120 \
    >../tests.log 2>&1; then
    echo "scenarios and judges"
  else
    return 1
  fi
}

tried=0 killed=0
tab=$(printf '\t')
while IFS="$tab" read -r file line column length replacement && [ $tried -lt "$count" ]; do
  cp "$file" ../original
  awk -v line="$line" -v column="$column" -v n="$length" -v by="$replacement" '
    NR == line { $0 = substr($0, 1, column - 1) by substr($0, column + n) }
    { print }' ../original >"$file"
  changed=$(sed -n "${line}p" "$file")
  if cmake --build ../build >../build.log 2>&1; then
    tried=$((tried + 1))
    if by=$(caught); then
      killed=$((killed + 1))
      echo "caught by $by: $file:$line:$changed"
    else
      echo "SURVIVED: $file:$line:$changed"
    fi
  fi
  cp ../original "$file"
done <../drawn
echo "$killed of $tried caught"
