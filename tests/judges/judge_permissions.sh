#!/bin/sh
# judge_permissions.sh CAHIER ROOT: a file that may not be written is refused and stays as it is. The
# superuser may write everything, so that a superuser runs this as nobody.
set -eu
cahier=$1
root=$2
if [ "$(id -u)" = 0 ]; then
  folder=$(mktemp -d)
  trap 'rm -rf "$folder"' EXIT
  # Where nobody can read them, wherever the build stands.
  cp "$cahier" "$folder/cahier"
  cp "$root/examples/lantern-study.yaml" "$0" "$folder"
  mkdir "$folder/examples" "$folder/work"
  mv "$folder/lantern-study.yaml" "$folder/examples"
  chmod -R a+rX "$folder"
  chown 65534:65534 "$folder/work"
  cd "$folder/work"
  setpriv --reuid 65534 --regid 65534 --clear-groups \
    sh "$folder/$(basename "$0")" "$folder/cahier" "$folder"
  exit
fi
folder=$(mktemp -d "$PWD/permissions-XXXXXX")
trap 'chmod -R u+w "$folder"; rm -rf "$folder"' EXIT
cd "$folder"
piece=$root/examples/lantern-study.yaml
dates='--from 2027-01-04 --by 2027-02-15'
wrong=0

# refuses WHAT CODE FILE ARGUMENTS…: the command ends with CODE, says WHAT, and leaves FILE alone.
refuses() {
  what=$1 expected=$2 file=$3
  shift 3
  before=$(cksum <"$file")
  code=0
  "$cahier" "$@" >said.txt 2>&1 || code=$?
  if [ "$code" != "$expected" ] || ! grep -q "$what" said.txt || [ "$(cksum <"$file")" != "$before" ]; then
    echo "wrong: $* ended with $code and said: $(cat said.txt)"
    wrong=$((wrong + 1))
  fi
}

# shellcheck disable=SC2086
{
  "$cahier" print "$piece" $dates --packet staves -o own.pdf >/dev/null
  printf 'mine\n' >mine.yaml
  chmod a-w own.pdf mine.yaml
  refuses "own.pdf: not written: it is write-protected" 3 own.pdf \
    print "$piece" $dates --packet staves -o own.pdf
  refuses "own.pdf: not written: it is write-protected" 3 own.pdf \
    print "$piece" $dates --packet staves -o own.pdf --replace
  refuses "mine.yaml: not written: it is write-protected" 3 mine.yaml \
    report "$piece" mine.yaml $dates --week 2027-01-04 --replace
  refuses "mine.yaml: not written: it is write-protected" 3 mine.yaml new -o mine.yaml --replace
  chmod u+w own.pdf
  "$cahier" print "$piece" $dates --packet staves -o own.pdf >/dev/null || wrong=$((wrong + 1))
}
echo "$wrong wrong"
[ "$wrong" = 0 ]
