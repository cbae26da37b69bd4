// What a piece is called where room is short.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "piece/piece.h"

namespace cahier {

inline constexpr std::size_t kLongestShortTitle =
    24;  // characters, so many as a narrow column holds

// A title of at most kLongestShortTitle characters is short. Of a longer one what stands before the
// first comma, colon, semicolon, bracket or dash, before "in" (a key) and before an opus number;
// and of that as many whole words as are short. Of a longer word only its beginning.
std::string shortened_title(std::string_view title);

// The short title that the file gives, else the shortened one.
std::string short_title(const Piece& piece);

// Of the pieces of a programme; those that would be called the same have their numbers as well.
std::vector<std::string> short_titles(const std::vector<const Piece*>& pieces);

}  // namespace cahier
