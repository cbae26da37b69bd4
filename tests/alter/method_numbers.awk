# The numbers of a method file, each by its key and its place among the numbers of the key.
#   awk -f method_numbers.awk FILE                                    lists KEY#PLACE VALUE, with tabs
#   awk -f method_numbers.awk -v set=KEY#PLACE -v to=VALUE FILE       the file with that one changed
{
  line = $0
  if (line ~ /^[a-z][a-z ]*:/) {
    key = line
    sub(/:.*/, "", key)
    place = 0
  }
  at = match(line, /value: /)
  if (at == 0 || line ~ /^#/) {
    if (set != "") print line
    next
  }
  # The value ends where its source begins, or with its line.
  head = substr(line, 1, at + 6)
  rest = substr(line, at + 7)
  tail = ""
  if (match(rest, /, source:/)) {
    tail = substr(rest, RSTART)
    rest = substr(rest, 1, RSTART - 1)
  }
  built = head
  while (match(rest, /[0-9]+(\.[0-9]+)?/)) {
    number = substr(rest, RSTART, RLENGTH)
    ++place
    if (set == "") print key "#" place "\t" number
    built = built substr(rest, 1, RSTART - 1) (set == key "#" place ? to : number)
    rest = substr(rest, RSTART + RLENGTH)
  }
  if (set != "") print built rest tail
}
