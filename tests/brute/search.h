// Every way of spreading the work over the calendar, tried until one keeps the rules.
#pragma once

#include <array>
#include <optional>
#include <unordered_set>
#include <vector>

#include "deadlines.h"
#include "menu.h"

namespace cahier::brute {

inline constexpr int kMostChunks = 6;

// One practice day of a plan that was found.
struct Choice {
  Mask learn = 0;
  Dish memory;
  Dish joins;
  int runs = 0;
  bool alone = false;  // a run-through that no day could hold
};

class Search {
 public:
  // `runs` are the run-throughs asked for. REQUIRES: facts and deadlines outlive this object.
  Search(const Facts& facts, const Deadlines& deadlines, const Terms& terms,
         const Freedom& freedom = {});

  // One choice for each practice day; nullopt when no plan keeps the rules.
  std::optional<std::vector<Choice>> plan();

 private:
  struct State {
    std::array<std::int8_t, kMostChunks> due{};  // position of the next recall; -1 before learning
    Mask joins = 0;                              // not yet played
    Mask forks = 0;                              // not yet drilled
    std::int8_t runs = 0;                        // not yet played
    std::int8_t run_days = 0;                    // not yet used
    bool operator==(const State&) const = default;
  };
  struct Hash {
    std::size_t operator()(const State& state) const;
  };
  struct Candidate {
    Choice choice;
    Effect effect = 0;
  };

  bool finish(int at, const State& state);
  bool hopeless(int at, const State& state, Mask learned);
  bool complete(const State& state) const;
  std::vector<Mask> learnable(int at, Mask learned) const;
  void add_candidates(int at, const State& state, Mask learned, Mask today,
                      std::vector<Candidate>& candidates);
  State after(int at, State state, Mask learned, const Candidate& candidate) const;
  Mask learned_in(const State& state) const;

  const Facts& facts_;
  const Deadlines& deadlines_;
  Freedom freedom_;
  Menu menu_;
  bool runs_stand_alone_;
  int runs_a_day_;
  State start_;
  std::vector<int> room_left_;        // from each position to the end
  std::vector<int> learn_room_left_;  // the same, of days on which something may be new
  std::vector<std::unordered_set<State, Hash>> failed_;  // by position
  std::vector<Choice> choices_;
};

}  // namespace cahier::brute
