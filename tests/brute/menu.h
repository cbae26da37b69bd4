// What a day can hold besides learning and run-throughs, at the least cost.
#pragma once

#include <map>
#include <unordered_map>
#include <vector>

#include "facts.h"

namespace cahier::brute {

// What recalls, cue starts and joins achieve in a day: chunks retrieved, joins played, forks
// drilled, as one bit set. More is never worse.
using Effect = std::uint32_t;

struct Dish {
  int cost = 0;  // half minutes
  Effect effect = 0;
  std::uint64_t ranges = 0;  // by index in the facts
  int starts = -1;           // index in the facts
};

// What the search may be forbidden, to see what a plan hangs on.
struct Freedom {
  bool any_order = true;          // chunks learned in another order than the piece has them
  bool wide_recalls = true;       // recalls over section boundaries
  bool recalls_at_return = true;  // a chunk recalled where it comes back
  bool starts_recall = true;      // cue starts in place of recalls
  bool starts_by_day = true;      // a fork drill on the day of a passage's last learning
  bool more_runs = true;          // more run-throughs than are asked for
  bool late_joins = true;         // joins on a later day than the learning of both
};

class Menu {
 public:
  // REQUIRES: the facts outlive this object; ranges are at most 64.
  Menu(const Facts& facts, const Freedom& freedom);

  Effect retrieving(Mask chunks) const { return chunks; }
  Effect joining(Mask joins) const { return joins << facts_.chunks; }
  Effect drilling(Mask forks) const { return forks << (facts_.chunks + facts_.join_count); }
  Mask retrieved(Effect effect) const { return effect & facts_.all; }
  Mask joined(Effect effect) const { return effect >> facts_.chunks & facts_.joins; }
  Mask drilled(Effect effect) const {
    return effect >> (facts_.chunks + facts_.join_count) & facts_.forks;
  }

  // Recalls and cue starts over chunks learned on earlier days: for every useful effect within
  // `needed` the cheapest way, cheapest first; nothing that is dearer and does no more.
  const std::vector<Dish>& from_memory(Mask learned, Effect needed);
  // Joins over chunks of which some are new today.
  const std::vector<Dish>& joins(Mask learned, Mask today, Effect needed);
  // The least cost of playing these joins, once everything is learned.
  int least_for(Mask joins);
  // The least cost of drilling these forks.
  int least_for_forks(Mask forks) const;

 private:
  std::vector<Dish> all_from_memory(Mask learned) const;
  std::vector<Dish> all_joins(Mask learned, Mask today) const;
  std::vector<Dish> cheapest(const std::vector<int>& items, const std::vector<Effect>& effects,
                             const std::vector<int>& costs) const;

  const Facts& facts_;
  Freedom freedom_;
  std::unordered_map<std::uint64_t, std::vector<Dish>> memory_, memory_within_;
  std::unordered_map<std::uint64_t, std::vector<Dish>> joins_, joins_within_;
};

// Those of which no other does as much for as little, cut down to `needed`, cheapest first.
std::vector<Dish> useful(const std::vector<Dish>& dishes, Effect needed);

}  // namespace cahier::brute
