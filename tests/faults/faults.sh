#!/bin/sh
# faults.sh CAHIER LIBRARY: the calls that print, report, import and new make as they read and write
# fail once, in turn; and each is once the last before a signal. Afterwards the file is the old one
# or the new one, whole, and nothing else is in its folder. With CAHIER_LONG=1 for each command, each
# older file and each signal (half a minute of computing), also where files have names from the start.
set -eu
cahier=$1
library=$2
folder=$(mktemp -d "$PWD/faults-XXXXXX")
trap 'rm -rf "$folder"' EXIT
cd "$folder"
wrong=0
faults=0
printf 'title: Lantern\nbars: 4\nmeter: 3/4\ntempo: 96\nkey: C major\n' >piece.yaml
cat >study.musicxml <<'END'
<score-partwise><part-list><score-part id="P1"><part-name>Piano</part-name></score-part></part-list>
<part id="P1"><measure number="1"><note><pitch><step>C</step><octave>4</octave></pitch>
<duration>4</duration></note></measure></part></score-partwise>
END
dates='--from 2027-01-04 --by 2027-01-25'

# run NAME: runs one of the commands, writing into the folder "at".
run() {
  case $1 in
    # shellcheck disable=SC2086
    print) set -- print piece.yaml $dates --packet staves -o at/file ;;
    # shellcheck disable=SC2086
    report) set -- report piece.yaml at/file $dates --week 2027-01-04 ;;
    import) set -- import study.musicxml -o at/file ;;
    new) set -- new -o at/file ;;
  esac
  "$cahier" "$@" $replace >said.txt 2>&1
}

# start: the folder as it is before the command.
start() {
  rm -rf at mark
  mkdir at
  [ "$older" = no ] || cp "old-$older" at/file
}

# complain WHAT: after a fault.
complain() {
  echo "$name, older file: $older, $fault: $1"
  wrong=$((wrong + 1))
}

# look ALLOWED: the file is whole; nothing else is there but, where ALLOWED is "part", one temporary
# file, which the next run sweeps.
look() {
  if [ -e at/file ]; then
    cmp -s at/file new-"$name" || { [ "$older" != no ] && cmp -s at/file "old-$older"; } ||
      complain "the file is neither the old nor the new one"
  else
    [ "$older" = no ] || complain "the old file is gone"
  fi
  rest=$(ls -A at | grep -vx file || true)
  case $1,$rest in
    *,) ;;
    part,.cahier-*.part)
      (run "$name") || true
      [ "$(ls -A at)" = file ] || complain "the next run left $(ls -A at | tr '\n' ' ')"
      ;;
    *) complain "left: $rest" ;;
  esac
}

# each CALL SIGNAL: its first, second … call, until there are no more.
each() {
  at=0
  while at=$((at + 1)); do
    start
    code=0
    fault="$1 $at, signal ${2:-none}${FAULT_NAMED:+, named}"
    # The subshell keeps the shell's own word of a killed program out of the output.
    (
      export LD_PRELOAD="$library" FAULT_CALL="$1" FAULT_AT="$at" FAULT_MARK="$folder/mark"
      [ -z "$2" ] || export FAULT_KILL="$2"
      run "$name"
    ) 2>/dev/null || code=$?
    [ -e mark ] || break
    faults=$((faults + 1))
    if [ -n "$2" ]; then
      [ "$code" = $((128 + $2)) ] || complain "exit code $code"
    else
      case $code in
        0) cmp -s at/file new-"$name" || complain "exit code 0 without the new file" ;;
        3) [ -s said.txt ] || complain "exit code 3 without a word" ;;
        *) complain "exit code $code: $(tail -n 1 said.txt)" ;;
      esac
    fi
    [ "$2" = 9 ] && look part || look nothing
  done
  [ "$code" = 0 ] || complain "exit code $code without a fault"
}

replace=
older=no
for name in print report import new; do
  start
  run "$name"
  mv at/file "new-$name"
done
printf 'my own\n' >old-foreign

sweep() {
  for name in print report import new; do
    for older in no foreign; do
      replace=
      [ "$older" = no ] || replace=--replace
      for call in open write fsync close rename linkat; do each $call ""; done
      for signal in 1 2 9 15; do each any $signal; done
    done
  done
}
if [ -n "${CAHIER_LONG:-}" ]; then
  sweep
  export FAULT_NAMED=1
  sweep
else
  # The four commands write through the same code: the quickest of them meets everything, the others
  # every kind of call, each with another older file.
  name=new
  for older in no foreign; do
    replace=
    [ "$older" = no ] || replace=--replace
    for call in open write fsync close rename linkat; do each $call ""; done
    for signal in 9 15; do each any $signal; done
  done
  name=print older=no replace=
  for call in write fsync close linkat; do each $call ""; done
  name=report older=foreign replace=--replace
  for call in open write fsync close rename; do each $call ""; done
  name=import older=no replace=
  for call in open write close linkat; do each $call ""; done
  # One command where files have names from the start.
  export FAULT_NAMED=1
  name=new older=no replace=
  each any 15
  each write ""
fi
echo "$faults faults, $wrong wrong"
least=80
[ -z "${CAHIER_LONG:-}" ] || least=800
[ "$faults" -ge "$least" ] && [ "$wrong" = 0 ]
