#!/bin/sh
# judge_dates.sh CAHIER: the weekday of every day panel, and the ISO 8601 week above the panels, are
# those that date(1) gives.
set -u
cahier=$1
LC_ALL=C.UTF-8
export LC_ALL
failed=0
mkdir -p own/packets
printf 'title: Dates\nbars: 8\ninstrument: violin\n' >dates.yaml
printf 'sheets: [day panels]\n' >own/packets/days.yaml

# Every line found is expected, and in order; days with nothing to do have no panel, so that some
# may be missing, but not most.
judge() {
  grep -xFf found.txt expected.txt >kept.txt
  cmp -s kept.txt found.txt && [ $(($(wc -l <found.txt) * 2)) -ge "$(wc -l <expected.txt)" ] && return
  echo "from $from to $by"
  diff expected.txt found.txt | head -n 10
  failed=1
}

# Years with 53 weeks, leap days, and weeks that lie in two years (ISO 8601: 2026-W53 holds
# 2027-01-01, 2009-W01 begins on 2008-12-29).
for dates in "2026-12-21 2027-01-20" "2028-02-20 2028-03-10" "2020-12-20 2021-01-15" "2008-12-20 2009-01-12" \
  "2027-03-20 2027-04-10" "2100-02-20 2100-03-10"; do
  from=${dates% *}
  by=${dates#* }
  "$cahier" print dates.yaml --from "$from" --by "$by" --templates own --packet days -o days.pdf >said.txt || {
    echo "not printed from $from to $by"
    failed=1
    continue
  }
  pdftotext -raw days.pdf - 2>/dev/null >days.txt
  # The week stands above its days, the weekday above its date.
  awk '{ if (match($0, /[0-9][0-9][0-9][0-9]-W[0-9][0-9]/)) week = substr($0, RSTART, RLENGTH) }
       /^(Mon|Tue|Wed|Thu|Fri|Sat|Sun)( |$)/ { weekday = $1 }
       /^[0-9]+ (January|February|March|April|May|June|July|August|September|October|November|December)$/ {
         print weekday, $0, week
       }' days.txt >found.txt
  day=$from
  : >expected.txt
  while [ "$day" != "$by" ]; do
    date -d "$day" '+%a %-d %B %G-W%V' >>expected.txt
    day=$(date -d "$day + 1 day" +%Y-%m-%d)
  done
  judge
done
exit $failed
