#!/bin/sh
# judge_staves.sh CAHIER SOURCE: the staves of a printed page, read from the PDF by qpdf and measured
# in its picture by poppler, against the published figures that staves.awk names.
set -u
cahier=$1
source=$2
LC_ALL=C
export LC_ALL
failed=0

wrong() {
  echo "$name: $*"
  failed=1
}

judge() {
  awk -v staff="$height" -v clefs="$clefs" -v fifths="$fifths" -f "$source/tests/judges/staves.awk" "$1"
}

# print KEY HEIGHT INSTRUMENT STAVES
print() {
  name="$1 at $2 mm on staves $4"
  height=$2
  clefs=$(echo "$4" | sed 's/ //g')
  case $1 in
    *flat*) fifths=-${1%% *} ;;
    *) fifths=${1%% *} ;;
  esac
  printf 'title: Staves\nbars: 8\nlevel: 5\nkey: %s\ninstrument: %s\nstaves: [%s]\npractice: {temper: yes, minutes: 60}\n' \
    "$1" "$3" "$4" >staves.yaml
  "$cahier" print staves.yaml --from 2027-01-04 --by 2027-03-20 --packet staves --staff "$2mm" \
    -o staves.pdf >said.txt 2>&1 || { wrong "not printed"; cat said.txt; }
  qpdf --qdf --object-streams=disable staves.pdf staves.qdf 2>said.txt || wrong "qpdf"
}

for key in "7 flats" "7 sharps" "4 sharps"; do
  print "$key" 8 organ "treble, bass, alto, tenor"
  judge staves.qdf || wrong "the PDF is not as published"
done
for height in 6 10 14; do
  print "3 flats" $height viola "alto, treble"
  judge staves.qdf || wrong "the PDF is not as published"
done

# The picture: 50 dots a millimetre, a column 5 mm from the right ends of the staves.
print "3 flats" 8 piano "treble, bass"
judge staves.qdf >said.txt || { cat said.txt; wrong "the PDF is not as published"; }
pdftoppm -r 1270 -f 1 -l 1 -x 9650 -y 0 -W 8 -H 14850 -mono staves.pdf column 2>said.txt
tail -c 14850 column*.pbm | od -An -v -tu1 -w1 | awk '
  $1 == 255 { black++; next }
  black { ++lines; thick[lines] = black; middle[lines] = NR - 1 - black / 2; black = 0 }
  END {
    for (i = 1; i + 4 <= lines; ++i) {
      even = 1
      for (k = 1; k < 5; ++k) even = even && middle[i + k] - middle[i + k - 1] < 150
      if (!even) continue
      ++staves
      for (k = 0; k < 5; ++k) {
        ++dots[thick[i + k]]
        # .26 mm are 13 dots, 2 mm are 100.
        if (thick[i + k] < 12 || thick[i + k] > 14) { print "a line of " thick[i + k] " dots"; bad = 1 }
        apart = middle[i + k] - middle[i]
        if (apart - 100 * k > 1 || 100 * k - apart > 1) { print "line " k + 1 " lies " apart " dots below the first"; bad = 1 }
      }
      i += 4
    }
    for (each in dots) print "measured in the picture: " dots[each] " lines " each / 50 " mm thick"
    if (staves < 8) { print staves " staves in the picture"; bad = 1 }
    exit bad
  }' || wrong "the picture is not as published"

# caught WHAT SCRIPT-FOR-SED: the judge finds what is wrong in a page that was sound.
caught() {
  sed -E "$2" staves.qdf >spoilt.qdf
  if cmp -s staves.qdf spoilt.qdf; then
    wrong "$1: spoils nothing"
  elif judge spoilt.qdf >said.txt; then
    wrong "$1 was not found"
  fi
}
# In points: .26 mm are 0.73701, .32 mm 0.90709, 1 mm 2.83465.
caught "thinner staff lines" 's/^0\.73701 w/0.70866 w/'
caught "thicker bar lines" 's/^0\.90709 w/1.1 w/'
caught "a thinner end" 's/^2\.83465 w/2.5 w/'
fifths=3
judge staves.qdf >said.txt && wrong "flats for sharps were not found"
fifths=-3 clefs=bass,treble
judge staves.qdf >said.txt && wrong "clefs on wrong staves were not found"
height=8.1 clefs=treble,bass
judge staves.qdf >said.txt && wrong "staves of another height were not found"
exit $failed
