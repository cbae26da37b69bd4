// Bar lines of every kind.
#pragma once

#include <vector>

#include "paper/canvas.h"

namespace cahier {

// In staff spaces: SMuFL 1.4, engraving defaults of its reference font. The two figures of the
// repeat's dots are values from memory.
inline constexpr double kThinBarLine = 0.16;
inline constexpr double kThickBarLine = 0.5;
inline constexpr double kBarLineSeparation = 0.4;
inline constexpr double kRepeatDot = 0.4;  // diameter
inline constexpr double kRepeatDotSeparation = 0.16;

enum class BarLine {
  thin,
  two_thin,  // before a change of key
  final,
  closes_repeat,
  opens_repeat,
  closes_and_opens,
};

// From the left edge of the leftmost line or dot to the right edge of the rightmost, staff spaces.
double bar_line_width(BarLine kind);

// The part of it that belongs to the bar behind it, staff spaces: what opens a repeat stands at the
// beginning of that bar. 0 for the other kinds, whose right edge is where the bar begins.
double bar_line_lead(BarLine kind);

// A stretch of staves that a bar line runs through unbroken; millimetres, outer edges.
struct BarLineRun {
  double top = 0;
  double bottom = 0;
};

// Draws it with its left edge at `left` through each of the runs. `middles` are the middle lines of
// the staves, about which the dots of repeats stand.
void draw_bar_line(Canvas& canvas, BarLine kind, double left, const std::vector<BarLineRun>& runs,
                   const std::vector<double>& middles, double space);

}  // namespace cahier
