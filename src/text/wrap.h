// Plain text for a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cahier {

inline constexpr int kTerminalWidth = 80;

// `lead`, then the items with `separator` between them, broken into lines of at most `width`
// characters; every line after the first begins with `hang` spaces. Breaks fall between items
// where they can, else at spaces, never so that a line begins badly (line_breaks.h) and never
// inside a word: what is to be typed stays whole. A word longer than a line is left so. Each line
// ends in a newline and in no space.
std::string wrap(std::string_view lead, const std::vector<std::string>& items,
                 std::string_view separator, int hang, int width = kTerminalWidth);

}  // namespace cahier
