// Where a text may be broken into lines, on paper and in a terminal.
#pragma once

#include <cstddef>
#include <vector>

namespace cahier {

// Whether a line that begins at `at`, blanks skipped, would begin with what belongs to the word
// before: closing punctuation, a dash, a slash, a per cent sign, a combining mark.
// REQUIRES: `at` is at most the number of characters.
bool begins_badly(const std::vector<char32_t>& characters, std::size_t at);

// Whether a line may end before the character `at`: at a space, or after a hyphen, dash or slash
// that joins two words (not two figures: bars 16–24, 3/4 and 110–/120 stay whole, and so does an
// option, --minutes), and never where the next line begins badly. A no-break space is no space.
// REQUIRES: `at` is neither 0 nor past the last character.
bool may_break_before(const std::vector<char32_t>& characters, std::size_t at);

}  // namespace cahier
