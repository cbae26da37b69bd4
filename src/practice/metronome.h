// The marks of a traditional metronome.
#pragma once

#include <array>

namespace cahier {

// 40–60 by 2, 63–72 by 3, 76–120 by 4, 126–144 by 6, 152–208 by 8 (Grove's Dictionary of Music and
// Musicians, first edition, vol. 2, p. 320, for the range).
inline constexpr std::array<int, 39> kMetronomeMarks = {
    40, 42,  44,  46,  48,  50,  52,  54,  56,  58,  60,  63,  66,  69,  72,  76,  80,  84,  88, 92,
    96, 100, 104, 108, 112, 116, 120, 126, 132, 138, 144, 152, 160, 168, 176, 184, 192, 200, 208};

// The highest mark not above `per_minute`; below the scale a whole number, at least 10.
double metronome_mark(double per_minute);

}  // namespace cahier
