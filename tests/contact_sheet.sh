#!/bin/sh
# Every page of a workbook on one picture, for reviewing changes of the paper by eye.
#   sh tests/contact_sheet.sh                                  the long piano example
#   sh tests/contact_sheet.sh examples/chapel-toccata.yaml --paper letter --large-print
# A piece, then whatever cahier print takes. Writes out/NAME-contact.png and says so; needs the
# program to be built. COLUMNS_ACROSS and PIXELS_WIDE of the environment change the picture.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh
need poppler-utils imagemagick

[ -x build/cahier ] || {
  echo "build/cahier is not there: run sh examples/first-workbook.sh first" >&2
  exit 3
}
piece=examples/winter-fantasy.yaml
case ${1:-} in
  '' | -*) ;;
  *) piece=$1 && shift ;;
esac
name=$(basename "$piece" .yaml)
pages=$(mktemp -d)
trap 'rm -rf "$pages"' EXIT
build/cahier print "$piece" --from 2027-01-04 --by 2027-03-20 "$@" -o "$pages/book.pdf"
# libharu's maps of characters make poppler warn; what it draws is right.
pdftoppm -r 40 -png "$pages/book.pdf" "$pages/page" 2>/dev/null
mkdir -p out
montage -label "%t" "$pages"/page-*.png -tile "${COLUMNS_ACROSS:-8}x" \
  -geometry "${PIXELS_WIDE:-300}x+6+6" -background '#999' "out/$name-contact.png"
echo "out/$name-contact.png"
