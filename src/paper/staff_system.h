// One line of music across the page, to be written by hand.
#pragma once

#include <optional>
#include <vector>

#include "paper/canvas.h"
#include "paper/signature.h"

namespace cahier {

// Thickness in staff spaces: SMuFL 1.4, engraving defaults of its reference font.
inline constexpr double kStaffLine = 0.13;

struct StaffBar {
  double length = 1;          // to the other bars of the system, a meter's length for instance
  std::optional<int> number;  // printed above its beginning
  std::optional<int> fifths;  // a new key signature from this bar on
  std::optional<StaffMeter> meter;  // a new meter from this bar on
  bool opens_repeat = false;        // from its beginning
  bool closes_repeat = false;       // at its end
};

// One line of music across the page. A change that stands on the first bar is drawn in place of
// the opening signature, without naturals: they belong to the end of the system before, where
// next_fifths announces the change (common practice).
struct StaffSystem {
  std::vector<StaffClef> staves = {StaffClef::treble, StaffClef::bass};
  int braced = 2;                   // how many of the first staves a brace joins; 0 or 1 for none
  int bracketed = 0;                // or a bracket; one of the two at most
  int fifths = 0;                   // key signature, sharps positive, -7 … 7
  std::optional<StaffMeter> meter;  // drawn only when given: on the first system, as a rule
  std::vector<StaffBar> bars = {StaffBar{}};
  std::optional<int> next_fifths;        // a change announced at the end of the system
  std::optional<StaffMeter> next_meter;  // a change announced at the end of the system
  bool final_bar_line = false;
};

// Millimetres.
struct StaffMeasures {
  double height = 8;       // of a staff, from its bottom line to its top line
  double gap = 10;         // between neighbouring staves of a system; larger than a staff
  double number_room = 7;  // above the top staff, for bar numbers
  double least_bar = 22;   // width of a bar of the usual length
  TextStyle number_style{Face::serif_italic, 9.5, 0, TextRole::desk, Turn::none};

  double space() const { return height / 4; }
};

}  // namespace cahier
