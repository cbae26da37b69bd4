// Blank staves set up for bars of a piece.
#pragma once

#include <vector>

#include "paper/staff.h"
#include "piece/piece.h"
#include "workbook/book.h"

namespace cahier {

// For handwriting; `height` of a staff in millimetres. More than a staff's height lies between two
// staves, for dynamics and fingering, and the numbers clear everything that stands below them.
StaffMeasures writing_measures(const Typefaces& typefaces, const Piece& piece, double height);

// The clear height below a system: room for notes under its last staff and over the next one.
double below_system(const StaffMeasures& measures);

// From the numbers of a system to the bottom line of its last staff.
double system_height(const Piece& piece, const StaffMeasures& measures);

// Of the height asked for, or as large as `room` millimetres allow for a system and the clear
// height below it, down to 4 mm: the space between staves grows smaller first, to a little more
// than a staff's height, then the staves.
StaffMeasures fitting_measures(const Typefaces& typefaces, const Piece& piece, double height,
                               double room);
// The same for a page of write-outs, below a heading.
StaffMeasures fitting_measures(const Typefaces& typefaces, const Piece& piece, const Print& print);

// `bars` on as many systems as they need in `width`, spread evenly, every bar numbered, with the
// key and meter of the bars and the changes and repeats inside them; the meter stands on the first
// system.
std::vector<StaffSystem> systems_for(const Typefaces& typefaces, const Piece& piece, BarRange bars,
                                     const StaffMeasures& measures, double width);

// A system in the piece's first key and meter, with as many bars as fit and no numbers.
StaffSystem blank_system(const Typefaces& typefaces, const Piece& piece,
                         const StaffMeasures& measures, double width);

}  // namespace cahier
