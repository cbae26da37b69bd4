// A short piece in few numbers, for a search over all of its days.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "plan/schedule/work.h"

namespace cahier {

using Mask = std::uint32_t;  // of chunks, passages, joins or forks: bit i for the i-th

inline constexpr std::size_t kMostInMask = 31;  // one bit less than it has

inline bool holds(Mask mask, int index) { return (mask >> index & 1) != 0; }
inline Mask only(int index) { return Mask{1} << index; }

// Positions count the practice days from 0. All minutes are those of whole tasks.
struct TinyPiece {
  struct Join {
    int left = 0;  // the passage before it
    Mask chunks = 0;
  };
  struct Fork {
    Mask learned = 0;   // that must have been learned on an earlier day
    Mask recalled = 0;  // that its drill plays whole
    double minutes = 0;
  };

  std::vector<double> room;      // by position
  std::vector<bool> may_learn;   // by position
  std::vector<int> first_by;     // by position of learning: the last one for the first recall
  std::vector<int> again_by;     // by position of the last play: the last one for the next
  std::vector<double> learning;  // minutes, by chunk
  std::vector<Mask> rivals;      // by chunk: not to be learned on the same day
  std::vector<int> chunk_at;     // by passage
  std::vector<int> place_of;     // by chunk: the passage where it stands
  Mask whole = 0;                // passages that play all of their chunk
  std::vector<std::vector<double>> recall;  // minutes, by first and last passage
  std::vector<std::vector<double>> join;    // likewise
  std::vector<Join> joins;
  std::vector<Fork> forks;
  double run_through = 0;
  int runs = 0;        // to be made
  int run_days = 0;    // at least
  int runs_a_day = 0;  // at most

  int positions() const { return static_cast<int>(room.size()); }
  int chunks() const { return static_cast<int>(learning.size()); }
  int passages() const { return static_cast<int>(chunk_at.size()); }
  Mask all_chunks() const { return only(chunks()) - 1; }
  BarRange bars(const Analysis& analysis, int first, int last) const {
    return {analysis.passages[first].bars.first, analysis.passages[last].bars.last};
  }
};

// nullopt where the work is no such piece: of more than one piece, begun already, of more than
// `numbers::kTinyWork` chunks or `kMostInMask` passages, or with run-throughs longer than any day.
std::optional<TinyPiece> tiny_piece(const Work& work);

}  // namespace cahier
