// The order in which a score is played.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "score/notation/navigation.h"

namespace cahier {

// Measure elements from 1, inclusive, played one after the other.
struct ElementRun {
  int first = 1;
  int last = 1;
  bool operator==(const ElementRun&) const = default;
};

// A repeat as it is played the first time; measure elements from 1.
struct PlayedRepeat {
  struct Ending {
    int first = 1;
    int last = 1;
    std::vector<int> passes;
  };
  int first = 1;
  int last = 1;  // the last element that it goes back from
  int times = 2;
  std::vector<Ending> endings;  // empty where all passes end alike
};

struct PlayOrder {
  std::vector<ElementRun> runs;
  std::vector<PlayedRepeat> repeats;
};

// What play_order goes by, in one sentence.
inline constexpr std::string_view kPlayOrderPolicy =
    "after D.C. or D.S. repeats are not taken, the last ending is, and Fine and To Coda count only "
    "after the jump";

// Follows repeats, endings and jumps by kPlayOrderPolicy. A new run begins after every jump, and
// after a repeat sign that is passed for the last time. What the score leaves open is a warning
// that says what was taken. `refuse_length` is called with the element at which the order has grown
// beyond kMostUnfoldedBars, and must throw.
PlayOrder play_order(const std::vector<MeasureSigns>& signs,
                     const std::function<std::string(int)>& bar_of,
                     const std::function<void(int)>& refuse_length, ScoreWarnings& warnings);

}  // namespace cahier
