// Checks that a sheet can be printed, read and written on.
#pragma once

#include <string>
#include <vector>

#include "paper/margins.h"
#include "paper/recording_canvas.h"

namespace cahier {

// The least x-height in millimetres for a text of this role; 0 for fine print, which has a least
// type size instead (kLeastFinePrint). About 0.2 degrees of visual angle at 40, 70 and 100 cm:
// Legge, Bigelow 2011, Journal of Vision 11(5):8 (value from memory).
double least_x_height(TextRole role);
inline constexpr double kLeastFinePrint = 9;     // points
inline constexpr double kLeastTickDiameter = 4;  // millimetres

// The type size in points at which `face` just reaches the role's x-height; for fine print the
// least type size.
double least_size(const Typefaces& typefaces, Face face, TextRole role);

// Every fault, in words, each beginning with "page N: "; empty when there are none. Faults are:
// a text that leaves its box or meets another text; a text crossed by a line, by the edge of a
// rectangle, by a circle or by a shape (none of which is a backdrop), or painted over; an item
// outside the margins; a text too small for its reading distance or too pale (less than half the
// contrast of black on white); a text that ends in an ellipsis; a tick circle under 4 mm; a link to
// a page that is not there.
std::vector<std::string> faults(const RecordingCanvas& canvas, const Margins& margins);

}  // namespace cahier
