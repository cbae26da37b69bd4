// Empty staves for writing by hand, engraved as in a score.
#pragma once

#include "paper/bar_line.h"
#include "paper/canvas.h"
#include "paper/music_glyphs.h"
#include "paper/signature.h"
#include "paper/staff_system.h"

namespace cahier {

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
