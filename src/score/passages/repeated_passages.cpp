#include "score/passages/repeated_passages.h"

#include <algorithm>
#include <map>

namespace cahier {
namespace {

struct FactorState {
  int length = 0;     // of its longest factor
  int link = -1;      // the state of its longest suffix that is elsewhere, too
  int first_end = 0;  // where it first ends
  std::map<int, int> next;
};

class SuffixAutomaton {
 public:
  SuffixAutomaton() : states_(1) {}

  // The longest suffix of the row so far that occurred before, and where it first ended.
  struct Earlier {
    int length = 0;
    int end = 0;
  };
  Earlier add(int item) {
    const int at = states_[last_].length;
    const int added = make({at + 1, -1, at, {}});
    int state = last_;
    for (; state >= 0 && !states_[state].next.contains(item); state = states_[state].link)
      states_[state].next[item] = added;
    states_[added].link = state < 0 ? 0 : split(state, item);
    last_ = added;
    const FactorState& earlier = states_[states_[added].link];
    return {earlier.length, earlier.first_end};
  }

 private:
  int make(FactorState state) {
    states_.push_back(std::move(state));
    return static_cast<int>(states_.size()) - 1;
  }

  // The state that `state` leads to by `item` with nothing longer in it.
  int split(int state, int item) {
    const int target = states_[state].next[item];
    if (states_[target].length == states_[state].length + 1) return target;
    FactorState shorter = states_[target];
    shorter.length = states_[state].length + 1;
    const int clone = make(std::move(shorter));
    for (; state >= 0; state = states_[state].link) {
      const auto found = states_[state].next.find(item);
      if (found == states_[state].next.end() || found->second != target) break;
      found->second = clone;
    }
    states_[target].link = clone;
    return clone;
  }

  std::vector<FactorState> states_;
  int last_ = 0;
};

// Where a passage overlaps what it repeats, it is a period that comes again and again.
void add_periods(const RepeatedPassage& passage, int least, std::vector<RepeatedPassage>& all) {
  const int period = std::min(passage.first - passage.source, passage.length);
  for (int at = 0; at < passage.length; at += period) {
    const int length = std::min(period, passage.length - at);
    if (length >= least) all.push_back({passage.first + at, passage.source, length});
  }
}

}  // namespace

std::vector<RepeatedPassage> repeated_passages(const std::vector<int>& row, int least) {
  SuffixAutomaton automaton;
  std::vector<SuffixAutomaton::Earlier> earlier;
  for (const int item : row) earlier.push_back(automaton.add(item));
  std::vector<RepeatedPassage> all;
  for (std::size_t end = 0; end < row.size(); ++end) {
    const auto [length, first_end] = earlier[end];
    const bool goes_on = end + 1 < row.size() && earlier[end + 1].length == length + 1;
    if (length < least || goes_on) continue;
    add_periods({static_cast<int>(end) - length + 1, first_end - length + 1, length}, least, all);
  }
  return all;
}

}  // namespace cahier
