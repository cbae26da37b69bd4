// The one system that every sheet is set in: seven type sizes (and one for a
// child), three greys, four lines, one grid.
#pragma once

#include "paper/canvas.h"
#include "paper/margins.h"
#include "paper/text_fitting.h"

namespace cahier::style {

// Two holes 80 mm apart, 12 mm from the edge (ISO 838): 20 mm keep clear of them.
inline constexpr Margins kMargins{20, 12, 12, 12};

inline constexpr double kDark = 0.0;
inline constexpr double kGrey = 0.35;  // what may be missed, still well above half contrast
inline constexpr double kPale = 0.75;  // fills and guide lines

// The sizes grow by about a quarter each (preferred numbers of ISO 3, series R10: 10, 12.5, 16, 20,
// 25, 31.5, from memory) above the smallest; 12.5 is left out for the sake of the music desk. In
// large print, 1.8 times as large, the smallest is 16.2 and body type 18; in clear print 12.7 and
// 14 (clear print: 12 at least, ideally 14, large print 16 at least, ideally 18: UKAAF G003, 2019;
// 18: ACB 2022).
inline constexpr double kSize1 = 9;
inline constexpr double kSize2 = 10;
inline constexpr double kSize3 = 12.75;
inline constexpr double kSize4 = 16;
inline constexpr double kSize5 = 20;
inline constexpr double kSize6 = 25;
inline constexpr double kSize7 = 31.5;  // only on the wall
// Between two of them, for a child alone: on small paper, where 16 leaves a week no room.
inline constexpr double kSizeChild = 14;

// Text that must be squeezed goes no further down than this: at the desk, on the music desk, on
// the wall.
inline constexpr double kLeast = kSize1;
inline constexpr double kLeastStand = kSize3;
inline constexpr double kLeastWall = 18.75;

// Read at the desk, 40 cm.
inline constexpr TextStyle kGreat{Face::sans_bold, kSize6, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kTitle{Face::sans_bold, kSize5, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kSubtitle{Face::sans_bold, kSize4, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kHeading{Face::sans_bold, kSize3, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kLead{Face::sans, kSize3, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kBody{Face::sans, kSize2, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kStrong{Face::sans_bold, kSize2, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kNote{Face::sans, kSize1, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kNoteStrong{Face::sans_bold, kSize1, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kSmall{Face::sans, kSize1, kDark, TextRole::desk, Turn::none};
// What a foot repeats.
inline constexpr TextStyle kFine{Face::sans, kSize1, kGrey, TextRole::fine_print, Turn::none};
// Read from the music desk, 70 cm: what to play.
inline constexpr TextStyle kStandBars{Face::sans_bold, kSize4, kDark, TextRole::stand, Turn::none};
inline constexpr TextStyle kStandText{Face::sans, kSize3, kDark, TextRole::stand, Turn::none};
// Read on the wall, 100 cm; larger where a week leaves room.
inline constexpr TextStyle kWallBars{Face::sans_bold, kSize5, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallLarge{Face::sans_bold, kSize6, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallGreat{Face::sans_bold, kSize7, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallText{Face::sans, kSize5, kDark, TextRole::wall, Turn::none};

// At 80 dots an inch a dot is 0.32 mm wide: thinner lines hold as greys of one dot.
inline constexpr Stroke kRule{0.35, kDark, 0, 0, false};          // under headings, around boxes
inline constexpr Stroke kHairline{0.2, 0.3, 0, 0, false};         // between rows
inline constexpr Stroke kWritingLine{0.3, 0.3, 0, 0, false};      // to write on
inline constexpr Stroke kCutLine{0.35, kDark, 0.35, 1.4, false};  // to cut along

// Everything that follows below something else begins on the grid (kGrid, 1.5 mm), and lines of
// text are a whole number of its steps apart (line_pitch): text side by side stands on one line.
inline constexpr double kWritingRow = 6 * kGrid;  // a line to write on, 8 mm at least
inline constexpr double kRow = 4 * kGrid;         // a row to read
inline constexpr double kTick = 4.6;              // diameter of a circle to tick
inline constexpr double kTickStep = 4 * kGrid;    // from circle to circle

}  // namespace cahier::style
