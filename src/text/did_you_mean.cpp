#include "text/did_you_mean.h"

#include <fmt/core.h>

#include <algorithm>

#include "text/small_letters.h"

namespace cahier {
namespace {

constexpr std::size_t kLongestWord = 60;

// Edits (insert, drop, change, swap neighbours) that turn one word into the other.
std::size_t edit_distance(std::string_view from, std::string_view to) {
  std::vector<std::vector<std::size_t>> cost(from.size() + 1,
                                             std::vector<std::size_t>(to.size() + 1));
  for (std::size_t i = 0; i <= from.size(); ++i) cost[i][0] = i;
  for (std::size_t j = 0; j <= to.size(); ++j) cost[0][j] = j;
  for (std::size_t i = 1; i <= from.size(); ++i) {
    for (std::size_t j = 1; j <= to.size(); ++j) {
      const std::size_t change = from[i - 1] == to[j - 1] ? 0 : 1;
      std::size_t best =
          std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + change});
      const bool swapped = i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1];
      if (swapped) best = std::min(best, cost[i - 2][j - 2] + 1);
      cost[i][j] = best;
    }
  }
  return cost[from.size()][to.size()];
}

// A typing error: about one letter in three, and never a whole word replaced.
std::size_t allowed(std::size_t length) {
  return length <= 2 ? 1 : std::min<std::size_t>(3, (length + 2) / 3);
}

}  // namespace

std::optional<std::string> nearest(std::string_view word,
                                   const std::vector<std::string>& candidates) {
  if (word.empty() || word.size() > kLongestWord) return std::nullopt;
  const std::string typed = in_small_letters(word);
  std::optional<std::string> best;
  std::size_t least = 0;
  for (const std::string& candidate : candidates) {
    if (candidate.size() > kLongestWord) continue;
    const std::size_t shortest = std::min(typed.size(), candidate.size());
    const std::size_t longest = std::max(typed.size(), candidate.size());
    // Each letter more is an edit.
    if (longest - shortest > allowed(shortest)) continue;
    const std::size_t distance = edit_distance(typed, in_small_letters(candidate));
    if (distance > allowed(shortest) || distance >= longest) continue;
    if (!best || distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates) {
  const auto found = nearest(word, candidates);
  return found ? fmt::format("; did you mean \"{}\"?", *found) : std::string();
}

}  // namespace cahier
