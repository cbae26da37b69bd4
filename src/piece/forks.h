// Where a piece goes on in more than one way from the same bars, or from bars that look the same.
#pragma once

#include <string_view>
#include <vector>

#include "piece/piece.h"

namespace cahier {

enum class ForkFrom {
  look_alikes,  // named in the piece file
  return_,      // a section that comes back is left another way than at first
  repeat,       // back, or on
  ending        // into one ending or another
};

// "return", "repeat", "ending", "look_alikes".
std::string_view fork_word(ForkFrom from);

struct WayOn {
  BarRange alike;  // bars that lead there, as they are played; of look-alikes the whole passage
  int at = 1;      // the last bar before the fork; the fork itself where nothing is alike
  int to = 1;      // the first of the way on
  // Of repeats and endings: at which times this way is taken, and of how many.
  std::vector<int> times{};
  int of = 1;
};

struct Fork {
  ForkFrom from = ForkFrom::look_alikes;
  std::vector<WayOn> ways;  // one alone where a repeat goes back, or the piece ends
  // Of endings: the ways back from them, which are no fork but a seam to be played.
  std::vector<WayOn> back{};
};

// The most ways of found forks that are taken up, the first of the piece: more are no help to
// anybody.
inline constexpr std::size_t kMostFoundWays = 200;

// Those of the piece file first, then those that follow from its returns, repeats and endings, by
// bar. What the file names is not found again.
std::vector<Fork> forks_of(const Piece& piece);

}  // namespace cahier
