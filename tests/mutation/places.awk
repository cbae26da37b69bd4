# Lists what can be changed in the C++ files given: FILE LINE COLUMN LENGTH REPLACEMENT, with tabs
# between. One operator or one constant each; comments, texts and includes are left alone.
BEGIN {
  # Binary operators stand between blanks, which brackets of templates do not.
  split("< <=|<= <|> >=|>= >|== !=|!= ==|+ -|- +|* +", pairs, "|")
  for (i in pairs) {
    split(pairs[i], pair, " ")
    other[pair[1]] = pair[2]
  }
  other["&&"] = "||"
  other["||"] = "&&"
}
/^ *\/\// || /^#/ || /static_assert/ { next }
{
  text = $0
  sub(/ \/\/ .*/, "", text)
  # Texts and characters become blanks of the same length.
  plain = ""
  inside = ""
  for (i = 1; i <= length(text); ++i) {
    sign = substr(text, i, 1)
    if (inside != "") {
      if (sign == "\\") { plain = plain "  "; ++i; continue }
      if (sign == inside) inside = ""
      plain = plain " "
    } else if (sign == "\"" || sign == "'" && substr(text, i - 1, 1) !~ /[0-9]/) {
      inside = sign
      plain = plain " "
    } else {
      plain = plain sign
    }
  }
  for (i = 1; i <= length(plain); ++i) {
    rest = substr(plain, i)
    before = i > 1 ? substr(plain, i - 1, 1) : ""
    if (before == " " && match(rest, /^(<=|>=|==|!=|&&|\|\||<|>|\+|-|\*) /)) {
      sign = substr(rest, 1, RLENGTH - 1)
      print FILENAME "\t" FNR "\t" i "\t" length(sign) "\t" other[sign]
      i += RLENGTH - 1
    } else if (before !~ /[A-Za-z0-9_.]/ && match(rest, /^(true|false)/) &&
               substr(rest, RLENGTH + 1, 1) !~ /[A-Za-z0-9_]/) {
      word = substr(rest, 1, RLENGTH)
      print FILENAME "\t" FNR "\t" i "\t" RLENGTH "\t" (word == "true" ? "false" : "true")
      i += RLENGTH - 1
    } else if (before !~ /[A-Za-z0-9_.]/ && match(rest, /^[0-9]+(\.[0-9]+)?/) &&
               substr(rest, RLENGTH + 1, 1) !~ /[A-Za-z_0-9'.]/) {
      number = substr(rest, 1, RLENGTH)
      print FILENAME "\t" FNR "\t" i "\t" RLENGTH "\t" (number + 0 == 0 ? 1 : number * 2)
      i += RLENGTH - 1
    }
  }
}
