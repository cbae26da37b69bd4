// Did-you-mean.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cahier {

// The candidate nearest to `word` by edit distance (letters case-insensitive, a swap of
// neighbours counts one), if it is close enough to be a typing error.
std::optional<std::string> nearest(std::string_view word,
                                   const std::vector<std::string>& candidates);

// "; did you mean \"tempo\"?" or empty.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates);

}  // namespace cahier
