// Empty staves for writing by hand, engraved as in a score.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "paper/bar_line.h"
#include "paper/canvas.h"
#include "paper/music_glyphs.h"
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
  int bracketed = 0;                // likewise a bracket; one of the two at most
  int fifths = 0;                   // key signature, sharps positive, -7 … 7
  std::optional<StaffMeter> meter;  // drawn only when given: on the first system, as a rule
  std::vector<StaffBar> bars = {StaffBar{}};
  std::optional<int> next_fifths;        // a change announced at the end of the system
  std::optional<StaffMeter> next_meter;  // likewise
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

// From the top of the bar numbers to the bottom line of the last staff. Leave at least a staff's
// height to the next system.
double system_height(const StaffSystem& system, const StaffMeasures& measures);

// The least number_room for the system: the numbers clear what they stand over (a clef, a change, a
// bracket's hook), and the highest sign keeps below its upper edge. Without numbers the signs only.
double number_room_for(const Typefaces& typefaces, const StaffSystem& system,
                       const StaffMeasures& measures);

// The room in front of the first bar and behind the last: brace, clef, signatures.
double system_head_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures);
double system_tail_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures);

// How many of `system.bars`, from the first on, fit in `width` when a bar of the usual (most
// frequent) length is at least `least_bar` wide, the others in proportion, a short one at least
// half of it; at least 1.
int bars_that_fit(const Typefaces& typefaces, const StaffSystem& system,
                  const StaffMeasures& measures, double width);

// Draws the system in the width of `box`, from its top. Returns the box of the music: first staff's
// top line to last staff's bottom line, first bar line to last.
Box draw_system(Canvas& canvas, const Box& box, const StaffSystem& system,
                const StaffMeasures& measures);

}  // namespace cahier
