// The one system that every sheet is set in: eight type sizes, three greys, four lines, one grid.
#pragma once

#include "paper/canvas.h"
#include "paper/margins.h"
#include "paper/text_fitting.h"

namespace cahier::style {

// Two holes 80 mm apart, 12 mm from the edge (ISO 838): 20 mm keep clear of them.
inline constexpr Margins kMargins{20, 12, 12, 12};

inline constexpr double kDark = 0.0;
inline constexpr double kGrey = 0.35;  // secondary text, still well above half contrast
inline constexpr double kPale = 0.75;  // fills and guide lines

// The sizes grow by about a quarter each (preferred numbers of ISO 3, series R10: 8, 10, 12.5, 16,
// 20, 25, 31.5, from memory), with one between the two smallest; 12.5 is left out for the sake of
// the music desk.
inline constexpr double kSize1 = 8;
inline constexpr double kSize2 = 9;
inline constexpr double kSize3 = 10;
inline constexpr double kSize4 = 12.75;
inline constexpr double kSize5 = 16;
inline constexpr double kSize6 = 20;
inline constexpr double kSize7 = 25;
inline constexpr double kSize8 = 31.5;  // only on the wall

// Text that must be squeezed goes no further down than this: at the desk, on the music desk, on
// the wall.
inline constexpr double kLeast = 7.5;
inline constexpr double kLeastStand = kSize4;
inline constexpr double kLeastWall = 18.75;

// Read at the desk, 40 cm.
inline constexpr TextStyle kGreat{Face::sans_bold, kSize7, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kTitle{Face::sans_bold, kSize6, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kSubtitle{Face::sans_bold, kSize5, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kHeading{Face::sans_bold, kSize4, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kLead{Face::sans, kSize4, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kBody{Face::sans, kSize3, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kStrong{Face::sans_bold, kSize3, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kNote{Face::sans, kSize2, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kNoteStrong{Face::sans_bold, kSize2, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kSmall{Face::sans, kSize2, kGrey, TextRole::desk, Turn::none};
// Page numbers, codes and the like.
inline constexpr TextStyle kFine{Face::sans, kSize1, kGrey, TextRole::fine_print, Turn::none};
// Read from the music desk, 70 cm: what to play.
inline constexpr TextStyle kStandBars{Face::sans_bold, kSize5, kDark, TextRole::stand, Turn::none};
inline constexpr TextStyle kStandText{Face::sans, kSize4, kDark, TextRole::stand, Turn::none};
// Read on the wall, 100 cm; larger where a week leaves room.
inline constexpr TextStyle kWallBars{Face::sans_bold, kSize6, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallLarge{Face::sans_bold, kSize7, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallGreat{Face::sans_bold, kSize8, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallText{Face::sans, kSize6, kDark, TextRole::wall, Turn::none};

inline constexpr Stroke kRule{0.25, kDark, 0, 0, false};         // under headings, around boxes
inline constexpr Stroke kHairline{0.15, 0.5, 0, 0, false};       // between rows
inline constexpr Stroke kWritingLine{0.2, 0.4, 0, 0, false};     // to write on
inline constexpr Stroke kCutLine{0.3, kDark, 0.35, 1.4, false};  // to cut along

// Everything that follows below something else begins on the grid (kGrid, 1.5 mm), and lines of
// text are a whole number of its steps apart (line_pitch): text side by side stands on one line.
inline constexpr double kWritingRow = 6 * kGrid;  // a line to write on, 8 mm at least
inline constexpr double kRow = 4 * kGrid;         // a row to read
inline constexpr double kTick = 4.6;              // diameter of a circle to tick
inline constexpr double kTickStep = 4 * kGrid;    // from circle to circle

}  // namespace cahier::style
