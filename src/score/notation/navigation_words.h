// Words of a score that say where to go on.
#pragma once

#include <string>
#include <string_view>

namespace cahier {

enum class NavigationWord { none, dacapo, dalsegno, fine, to_coda };

// What a direction's words mean when they are nothing but such a word: "D.C. al Fine", "Dal Segno",
// "Fine", "To Coda"; tags like <b>, line ends and full stops are passed over. "al Fine" alone is
// none.
NavigationWord navigation_word(std::string_view words);

// Without tags, its blanks single.
std::string plain_words(std::string_view words);

}  // namespace cahier
