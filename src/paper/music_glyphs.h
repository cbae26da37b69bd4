// Clefs, accidentals, meters, braces and notes as outlines.
//
// Noto Music draws to a staff whose lines are 250 units apart (an em is 1000 units), the bottom
// line at 0: its five-line staff, U+1D11A, is 1000 units high. The shapes below are scaled from
// that by the staff space in millimetres and stand on the line or space they belong to.
#pragma once

#include <string>
#include <string_view>

#include "paper/canvas.h"

namespace cahier {

enum class StaffClef {
  treble,
  treble_8_below,
  treble_8_above,
  bass,
  bass_8_below,
  alto,
  tenor,
  percussion,
};
enum class Accidental { sharp, flat, natural };
enum class NoteValue { eighth, quarter, half };

// The line a clef names, in half-spaces above the middle line: treble -2 (G on line 2), bass 2
// (F on line 4), alto 0 and tenor 2 (C on lines 3 and 4), percussion 0. An 8 above or below sounds
// an octave away and changes nothing of this.
int clef_line(StaffClef clef);

// A shape whose ink starts at x = 0; y = 0 is the line (or space) it stands on.
struct MusicGlyph {
  Outline outline;
  double width = 0;  // of the ink, millimetres
};

MusicGlyph clef_glyph(const Typefaces& typefaces, StaffClef clef, double space);
// Drawn here, not taken from a typeface; y = 0 is the middle of the note it alters.
MusicGlyph accidental_glyph(Accidental accidental, double space);

// The meter "2+3" over 8, two staff spaces a row, for a staff whose middle line is y = 0.
MusicGlyph meter_glyph(const Typefaces& typefaces, std::string_view count, int unit, double space);

// A brace `height` millimetres high, its point at the left; its top right corner is at (width, 0).
MusicGlyph brace_glyph(double height, double space);

// A square bracket with its hooks, `height` millimetres high, its top left corner at (0, 0); the
// hooks reach kBracketRise staff spaces above and below.
MusicGlyph bracket_glyph(double height, double space);
inline constexpr double kBracketThickness = 0.5;  // staff spaces: SMuFL 1.4, as its lines are
inline constexpr double kBracketRise = 0.75;

// A note with its stem up, and flag and dot where it has them; y = 0 is the middle of its head.
MusicGlyph note_glyph(const Typefaces& typefaces, NoteValue value, bool dotted, double space);

// "♩. = 66" with the note drawn, left in `box`, centred in its height; the figures in `style`.
// Returns the width in millimetres, also that tempo_mark_width() gives beforehand.
double draw_tempo_mark(Canvas& canvas, const Box& box, NoteValue beat, bool dotted,
                       std::string_view number, const TextStyle& style);
double tempo_mark_width(const Typefaces& typefaces, NoteValue beat, bool dotted,
                        std::string_view number, const TextStyle& style);

}  // namespace cahier
