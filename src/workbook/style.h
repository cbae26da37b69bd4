// The few sizes, weights and spaces that every sheet is set in.
#pragma once

#include "paper/canvas.h"
#include "paper/margins.h"

namespace cahier::style {

// Two holes 80 mm apart, 12 mm from the edge (ISO 838): 20 mm keep clear of them.
inline constexpr Margins kMargins{20, 12, 12, 12};

inline constexpr double kDark = 0.0;
inline constexpr double kGrey = 0.35;  // secondary text, still well above half contrast
inline constexpr double kPale = 0.75;  // fills and guide lines

// Read at the desk, 40 cm.
inline constexpr TextStyle kTitle{Face::sans_bold, 20, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kHeading{Face::sans_bold, 12, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kBody{Face::sans, 10, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kStrong{Face::sans_bold, 10, kDark, TextRole::desk, Turn::none};
inline constexpr TextStyle kSmall{Face::sans, 8.5, kGrey, TextRole::desk, Turn::none};
// Page numbers and the like.
inline constexpr TextStyle kFine{Face::sans, 7.5, kGrey, TextRole::fine_print, Turn::none};
// Read from the music desk, 70 cm: what to play.
inline constexpr TextStyle kStandBars{Face::sans_bold, 16, kDark, TextRole::stand, Turn::none};
inline constexpr TextStyle kStandText{Face::sans, 12.75, kDark, TextRole::stand, Turn::none};
// Read on the wall, 100 cm.
inline constexpr TextStyle kWallBars{Face::sans_bold, 19, kDark, TextRole::wall, Turn::none};
inline constexpr TextStyle kWallText{Face::sans, 18.75, kDark, TextRole::wall, Turn::none};

inline constexpr Stroke kRule{0.25, kDark, 0, 0, false};      // under headings, around boxes
inline constexpr Stroke kHairline{0.15, 0.5, 0, 0, false};    // between rows
inline constexpr Stroke kWritingLine{0.2, 0.4, 0, 0, false};  // to write on

inline constexpr double kBaseline = 5;    // of the page's grid, millimetres
inline constexpr double kWritingRow = 8;  // least height of a line to write on
inline constexpr double kTick = 4.6;      // diameter of a circle to tick
inline constexpr double kTickStep = 6;    // from circle to circle

}  // namespace cahier::style
