#!/bin/sh
# completeness.sh CAHIER SOURCE: every option that the commands list and every key that the readers
# of pieces, programmes and logs ask for occurs in a scenario and in README.md.
set -eu
cahier=$1
source=$2
missing=0

say_missing() {
  echo "$1 is not in $2"
  missing=$((missing + 1))
}

options=$(for command in print plan report check import new; do "$cahier" "$command" --help; done |
  grep -o -e '--[a-z][a-z-]*' | sort -u)
keys=$(cat "$source"/src/piece/read_*.cpp "$source"/src/inputs/read_*.cpp "$source"/src/log/read_log*.cpp | tr '\n' ' ' |
  grep -oE '(fields_?|inner)\.(text|whole|number|yes_no|list|node)\("[^"]+"|(require_bars?|read_day|read_word|read_log_date|read_bars_or_none|read_told|read_logged_bars|read_paths)\((fields_?|inner), "[^"]+"' |
  sed 's/.*"\(.*\)"/\1/' | sort -u)

# Nothing found means that this script no longer reads the program aright.
[ "$(echo "$options" | wc -l)" -ge 15 ] || say_missing "a sensible number of options" "the help"
[ "$(echo "$keys" | wc -l)" -ge 45 ] || say_missing "a sensible number of keys" "src/piece and src/log"

for option in $options; do
  [ "$option" = --help ] && continue
  cat "$source"/tests/scenarios/*.txt | grep -q -e "cahier .*$option\\b" ||
    say_missing "$option" "any scenario"
  grep -q -e "$option\\b" "$source/README.md" || say_missing "$option" README.md
done

echo "$keys" | while read -r key; do
  [ "$key" = score ] && continue
  cat "$source"/tests/scenarios/*.txt | grep -qE "(^|[ {])$key:" ||
    echo "the key \"$key\" is not in any scenario"
  grep -qE "\b$key\b" "$source/README.md" || echo "the key \"$key\" is not in README.md"
done >keys_missing.txt
cat keys_missing.txt
[ ! -s keys_missing.txt ] || missing=$((missing + 1))
rm -f keys_missing.txt
[ "$missing" = 0 ]
