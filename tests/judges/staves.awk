# Reads a PDF as qpdf --qdf writes it and holds its staves against published figures.
#   -v staff=8         height of a staff in millimetres
#   -v clefs=…         clef of each staff of a system, from the top: treble, bass, alto, tenor
#   -v fifths=…        key signature of every system, sharps positive
# Says what is wrong, one fault a line; then what was measured. Ends with 1 when anything is wrong.
#
# Figures: thickness in staff spaces by the engraving defaults of SMuFL 1.4 (staff line .13, thin
# bar line .16, thick .5, separation .4, bracket .5); places of accidentals computed from the
# published orders of sharps and flats; clefs: G on line 2, F on line 4, C on line 3 (alto) or 4
# (tenor), counted from the bottom; the gap between staves larger than a staff: a university
# manuscript hand-out.

function mm(points) { return points * 25.4 / 72 }
function abs(a) { return a < 0 ? -a : a }
function near(a, b, by) { return abs(a - b) <= by }
function wrong(text) { print "page " page ": " text; faults++ }
function measured(what, value, places) {
  value = sprintf("%." places "f", abs(value) < 0.0005 ? 0 : value)
  if (!((what, value) in seen)) { seen[what, value] = 1; order[++kinds] = what " " value }
  count[what, value]++
}

# The smallest box around the current contour grows to hold a point.
function hold(x, y) {
  if (x < left[n]) left[n] = x
  if (x > right[n]) { right[n] = x; right_at[n] = y }
  if (y < low[n]) low[n] = y
  if (y > high[n]) high[n] = y
}
function curve(ax, ay, bx, by, cx, cy, dx, dy,  t, u, i) {
  for (i = 1; i <= 40; i++) {
    t = i / 40; u = 1 - t
    hold(u*u*u*ax + 3*u*u*t*bx + 3*u*t*t*cx + t*t*t*dx, u*u*u*ay + 3*u*u*t*by + 3*u*t*t*cy + t*t*t*dy)
  }
}

/^%% Contents for page/ { finish_page(); page = $5 }
!page { next }
$NF == "w" { width = mm($1) }
$NF == "m" {
  x0 = x = mm($1); y0 = y = mm($2); n++
  left[n] = right[n] = x; low[n] = high[n] = y; right_at[n] = y; curved[n] = 0
}
$NF == "l" { x = mm($1); y = mm($2); hold(x, y) }
$NF == "c" {
  curve(x, y, mm($1), mm($2), mm($3), mm($4), mm($5), mm($6))
  x = mm($5); y = mm($6); curved[n] = 1
}
$NF == "S" && n == 1 && !curved[1] {
  if (near(low[1], high[1], 0.001)) { across++; ax[across] = left[1]; ae[across] = right[1]; ay[across] = low[1]; aw[across] = width }
  else if (near(left[1], right[1], 0.001)) { up++; ux[up] = left[1]; ub[up] = low[1]; ut[up] = high[1]; uw[up] = width }
}
$NF == "f" && n > 0 {
  fills++; first[fills] = contours + 1
  fl[fills] = 1e9
  for (i = 1; i <= n; i++) {
    contours++
    cl[contours] = left[i]; cr[contours] = right[i]; cb[contours] = low[i]; ct[contours] = high[i]
    cat[contours] = right_at[i]; cc[contours] = curved[i]
    if (left[i] < fl[fills]) fl[fills] = left[i]
  }
  last[fills] = contours
}
$NF == "S" || $NF == "f" || $NF == "n" || $NF == "B" { n = 0 }
END {
  finish_page()
  if (staves == 0) { print "no staff at all"; faults++ }
  for (i = 1; i <= kinds; i++) {
    split(order[i], part, " "); value = part[length(part)]; what = substr(order[i], 1, length(order[i]) - length(value) - 1)
    print "measured: " what " " value " (" count[what, value] " times)"
  }
  exit faults > 0
}

function finish_page(  i, s, clef_count, clef_of) {
  if (!page) return
  space = staff / 4
  found = 0
  # Staff lines: five as long as one another, one space apart.
  for (i = 1; i + 4 <= across; i++) {
    if (!near(aw[i], 0.13 * space, 0.001) || ae[i] - ax[i] < 60) continue
    for (s = 1; s < 5; s++) if (!near(ax[i + s], ax[i], 0.001)) break
    if (s < 5) continue
    found++; sx[found] = ax[i]; top[found] = ay[i]; bottom[found] = ay[i + 4]
    for (s = 0; s < 5; s++) measured("thickness of a staff line", aw[i + s], 3)
    for (s = 0; s < 4; s++) {
      measured("from staff line to staff line", ay[i + s] - ay[i + s + 1], 3)
      if (!near(ay[i + s] - ay[i + s + 1], space, 0.001)) wrong("staff lines " ay[i + s] - ay[i + s + 1] " mm apart")
    }
    i += 4
  }
  staves += found
  clef_count = split(clefs, clef_of, ",")
  if (found == 0 || found % clef_count) wrong(found " staves are no whole systems")
  for (s = 2; s <= found; s++) if (bottom[s - 1] - top[s] <= staff) wrong("staves only " bottom[s - 1] - top[s] " mm apart")
  for (s = 1; s <= found; s++) {
    middle = (top[s] + bottom[s]) / 2
    judge_signs(s, clef_of[(s - 1) % clef_count + 1])
    judge_bar_lines(s)
  }
  across = up = fills = contours = n = 0
}

function judge_bar_lines(s,  i, k, beside) {
  for (i = 1; i <= up; i++) {
    if (!(ut[i] > middle && ub[i] < middle)) continue
    if (near(uw[i], 0.16 * space, 0.001)) measured("thickness of a thin bar line", uw[i], 3)
    else if (near(uw[i], 0.5 * space, 0.001)) {
      measured("thickness of a thick bar line", uw[i], 3)
    } else wrong("a bar line " uw[i] " mm thick")
    # From outer edge to outer edge of some staff's lines.
    if (!edge(ut[i], 1)) wrong("a bar line ends " ut[i] " mm up, at no staff's top")
    if (!edge(ub[i], -1)) wrong("a bar line begins " ub[i] " mm up, at no staff's bottom")
  }
  # Every thick line has a thin one beside it.
  for (i = 1; i <= up; i++) {
    if (!near(uw[i], 0.5 * space, 0.001) || !(ut[i] > middle && ub[i] < middle)) continue
    beside = 0
    for (k = 1; k <= up; k++)
      if (near(uw[k], 0.16 * space, 0.001) && near(ub[k], ub[i], 0.001) && near(abs(ux[i] - ux[k]), (0.25 + 0.4 + 0.08) * space, 0.001)) {
        beside = 1; measured("between thin and thick bar line", abs(ux[i] - ux[k]) - 0.25 * space - 0.08 * space, 3)
      }
    if (!beside) wrong("a thick bar line without a thin one .4 of a space away")
  }
}
function edge(y, side,  s, at) {
  for (s = 1; s <= found; s++) {
    at = side > 0 ? top[s] : bottom[s]
    if (near(y, at + side * 0.065 * space, 0.002)) return 1
  }
  return 0
}

# Half-spaces above the middle line.
function position(y) { return (y - middle) / (space / 2) }

function judge_signs(s, clef,  f, i, sign, next_sign, at, dots, sum, wanted, c) {
  # The two first shapes that belong to the staff: clef, then key and meter.
  sign = next_sign = 0
  for (f = 1; f <= fills; f++) {
    lo = 1e9; hi = -1e9
    for (i = first[f]; i <= last[f]; i++) { if (cb[i] < lo) lo = cb[i]; if (ct[i] > hi) hi = ct[i] }
    # A brace or a bracket stands in front of the lines, other staves' signs elsewhere.
    if (fl[f] < sx[s] || lo < bottom[s] - 2.5 * space || hi > top[s] + 2.5 * space) continue
    if (!sign || fl[f] < fl[sign]) { next_sign = sign; sign = f }
    else if (!next_sign || fl[f] < fl[next_sign]) next_sign = f
  }
  if (!sign) { wrong("a staff without a clef"); return }
  if (clef == "bass") {
    dots = sum = 0
    for (i = first[sign]; i <= last[sign]; i++)
      if (cr[i] - cl[i] < 0.6 * space && ct[i] - cb[i] < 0.6 * space) { dots++; sum += (ct[i] + cb[i]) / 2 }
    at = dots ? position(sum / dots) : 99
    if (dots != 2) wrong("an F clef with " dots " dots")
    wanted = 2
  } else if (clef == "treble") {
    c = first[sign]
    for (i = c; i <= last[sign]; i++) if (cr[i] > cr[c]) c = i
    at = position(cat[c])
    wanted = -2
  } else {
    lo = 1e9; hi = -1e9
    for (i = first[sign]; i <= last[sign]; i++) { if (cb[i] < lo) lo = cb[i]; if (ct[i] > hi) hi = ct[i] }
    at = position((lo + hi) / 2)
    wanted = clef == "alto" ? 0 : 2
  }
  # A G clef's bowl is widest where it crosses its line, within a fifth of a half-space.
  if (!near(at, wanted, clef == "treble" ? 0.2 : 0.05)) wrong("a " clef " clef " at " half-spaces above the middle line")
  measured("line of the " clef " clef, half-spaces above the middle", at, 1)
  if (fifths) judge_key(clef, next_sign)
}

function judge_key(clef, sign,  want, wanted, i, got, at, stem) {
  want["treble+"] = "4 1 5 2 -1 3 0"; want["treble-"] = "0 3 -1 2 -2 1 -3"
  want["bass+"] = "2 -1 3 0 -3 1 -2"; want["bass-"] = "-2 1 -3 0 -4 -1 -5"
  want["alto+"] = "3 0 4 1 -2 2 -1"; want["alto-"] = "-1 2 -2 1 -3 0 -4"
  want["tenor+"] = "-2 2 -1 3 0 4 1"; want["tenor-"] = "1 4 0 3 -1 2 -2"
  split(want[clef (fifths > 0 ? "+" : "-")], wanted, " ")
  if (!sign) { wrong("a " clef " staff without a key"); return }
  got = 0
  for (i = first[sign]; i <= last[sign] && got < abs(fifths); i++) {
    # A stem: straight, narrow, longer than two spaces. A flat has one and a bowl behind it, which
    # lies on its line or in its space; a sharp has two, even about its line or space.
    if (cc[i] || cr[i] - cl[i] > 0.2 * space || ct[i] - cb[i] < 2.2 * space) continue
    if (fifths < 0) at = position((ct[i + 1] + cb[i + 1]) / 2)
    else { at = position((ct[i] + cb[i] + ct[i + 1] + cb[i + 1]) / 4); i++ }
    got++
    if (!near(at, wanted[got], fifths < 0 ? 0.3 : 0.01)) wrong("accidental " got " of a " clef " staff stands " at " half-spaces above the middle, not " wanted[got])
    measured((fifths < 0 ? "flats" : "sharps") " off their lines and spaces, half-spaces", at - wanted[got], 2)
  }
  if (got != abs(fifths)) wrong("a key of " got " accidentals")
}
