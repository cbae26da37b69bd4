#!/bin/sh
# judge_hardened.sh CAHIER: what was to be built in stands in the program, as readelf (binutils) reads
# it. The names are those of the ELF and x86-64 psABI documents and of the C library (from memory).
set -u
cahier=$1
failed=0

has() {
  if ! grep -q -- "$2" "$1"; then
    echo "$cahier: $3"
    failed=1
  fi
}

readelf --wide --dynamic "$cahier" >dynamic.txt
readelf --wide --program-headers "$cahier" >segments.txt
readelf --wide --file-header "$cahier" >header.txt
readelf --wide --dyn-syms "$cahier" >symbols.txt
has header.txt 'Type: *DYN' "it stands at the same address every time"
has segments.txt 'GNU_RELRO' "the tables of the linker can be written"
has dynamic.txt 'BIND_NOW\|Flags:.* NOW' "functions are bound only when they are called"
grep -q 'GNU_STACK.* RW ' segments.txt || { echo "$cahier: the stack can be executed"; failed=1; }
has symbols.txt '__stack_chk_fail' "the return address is not guarded"
has symbols.txt '_chk@' "sizes given to the C library are not checked"
if grep -q 'X86-64' header.txt; then
  # The note of the whole file would also need a C library that is built so; Debian's is not.
  objdump --disassemble=main "$cahier" >main.txt
  has main.txt 'endbr64' "jumps into functions are not checked (CET)"
fi
exit $failed
