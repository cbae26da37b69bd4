#!/bin/sh
# judge_workbooks.sh CAHIER FACTS SOURCE PAPER: printed workbooks, judged by poppler and qpdf. All of
# them on A4; on other paper a piece and a programme, with CAHIER_LONG=1 every example.
set -u
cahier=$1
facts=$2
source=$3
paper=$4
LC_ALL=C.UTF-8
export LC_ALL
failed=0

# ISO 216 and ANSI sizes in points of 1/72 inch, 25.4 mm each inch: 210 x 297, 148 x 210 mm,
# 8.5 x 11 inches.
case $paper in
  a4) width=595.276 height=841.890 ;;
  a5) width=419.528 height=595.276 ;;
  letter) width=612 height=792 ;;
esac

wrong() {
  echo "$name on $paper: $*"
  failed=1
}

judge_form() {
  qpdf --check book.pdf >check.txt 2>&1 || { wrong "qpdf --check"; cat check.txt; }
  pdfinfo -l 9999 book.pdf >info.txt 2>info.err
  pages=$(sed -n 's/^Pages: *//p' info.txt)
  sizes=$(grep -c 'size: .* pts' info.txt)
  [ "$pages" = "$sizes" ] || wrong "$pages pages, but $sizes sizes"
  # Landscape pages are turned.
  awk -v w=$width -v h=$height '
    function near(a, b) { return a - b < 0.01 && b - a < 0.01 }
    / size: .* pts/ {
      for (i = 1; i <= NF; ++i) if ($i == "x") { a = $(i - 1); b = $(i + 1) }
      if (!(near(a, w) && near(b, h)) && !(near(a, h) && near(b, w))) { print; bad = 1 }
    }
    END { exit bad }' info.txt || wrong "these pages are of another size"
  grep -q "^Title: .*$title" info.txt || wrong "no title in its metadata"
  [ -z "$composer" ] || grep -q "^Author: .*$composer" info.txt || wrong "no author in its metadata"
  pdffonts book.pdf 2>/dev/null | tail -n +3 >fonts.txt
  [ -s fonts.txt ] || wrong "no fonts"
  # The last five columns: embedded, subset, unicode, object.
  awk '$(NF - 4) != "yes" || $(NF - 3) != "yes" || $(NF - 2) != "yes" { print; bad = 1 }
       END { exit bad }' fonts.txt || wrong "a font is not embedded, subset and readable"
  qpdf --json --json-key=outlines book.pdf >outline.json 2>/dev/null
  entries=$(grep -c '"title"' outline.json)
  [ "$entries" -ge 8 ] || wrong "the outline has only $entries entries"
}

judge_content() {
  pdftotext -layout book.pdf book.txt 2>/dev/null
  "$facts" <plan.json >facts.txt || wrong "no plan"
  [ "$(wc -l <facts.txt)" -ge 10 ] || wrong "few facts to look for"
  { sed -n 's/^date //p' facts.txt | date -f - '+%-d %B'
    sed -n 's/^bars //p' facts.txt; } | while read -r fact; do
    grep -qP "(?<![0-9–])$fact(?![0-9–])" book.txt || echo "$fact;"
  done >missing.txt
  [ ! -s missing.txt ] || wrong "not in the book: $(tr '\n' ' ' <missing.txt)"
}

examples='*' own=evening
if [ "$paper" = a4 ]; then
  own='[eu]*'
elif [ -z "${CAHIER_LONG:-}" ]; then
  examples=lantern-study
fi
for piece in "$source"/examples/$examples.yaml "$source"/tests/judges/pieces/$own.yaml; do
  name=$(basename "$piece" .yaml)
  title=$(sed -n 's/^\(title\|programme\): *//p' "$piece")
  composer=$(sed -n 's/^composer: *//p' "$piece" | sed 's/ *#.*//')
  set -- "$piece" --from 2026-12-21 --by 2027-04-10 --minutes 40 --temper yes
  "$cahier" plan "$@" --json >plan.json 2>plan.err || wrong "no plan that fits"
  "$cahier" print "$@" --paper "$paper" -o book.pdf >said.txt 2>plan.err || {
    wrong "not printed"
    cat said.txt plan.err
    continue
  }
  judge_form
  judge_content
  TZ=Pacific/Kiritimati LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 \
    "$cahier" print "$@" --paper "$paper" -o again.pdf >said.txt 2>plan.err
  cmp -s book.pdf again.pdf || wrong "printed twice, it has other bytes"
done
exit $failed
