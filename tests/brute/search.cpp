#include "search.h"

#include <algorithm>

namespace cahier::brute {

Search::Search(const Facts& facts, const Deadlines& deadlines, const Terms& terms,
               const Freedom& freedom)
    : facts_(facts),
      deadlines_(deadlines),
      freedom_(freedom),
      menu_(facts, freedom),
      runs_stand_alone_(facts.run > deadlines.longest),
      runs_a_day_(terms.method.runs_a_day),
      failed_(deadlines.room.size() + 1) {
  start_.due.fill(-1);
  start_.joins = facts.joins;
  start_.forks = facts.forks;
  start_.runs = static_cast<std::int8_t>(terms.runs_required());
  start_.run_days = static_cast<std::int8_t>(terms.method.run_days);
  room_left_.assign(deadlines.room.size() + 1, 0);
  learn_room_left_ = room_left_;
  for (int at = deadlines.end() - 1; at >= 0; --at) {
    room_left_[at] = room_left_[at + 1] + deadlines.room[at];
    learn_room_left_[at] =
        learn_room_left_[at + 1] + (deadlines.may_learn[at] ? deadlines.room[at] : 0);
  }
}

std::optional<std::vector<Choice>> Search::plan() {
  choices_.clear();
  if (!finish(0, start_)) return std::nullopt;
  std::reverse(choices_.begin(), choices_.end());
  return choices_;
}

std::size_t Search::Hash::operator()(const State& state) const {
  std::size_t hash = state.joins;
  const auto mix = [&](std::size_t value) { hash = hash * 1000003u ^ value; };
  for (const auto due : state.due) mix(static_cast<std::size_t>(due + 1));
  mix(state.forks);
  mix(static_cast<std::size_t>(state.runs * 16 + state.run_days));
  return hash;
}

Mask Search::learned_in(const State& state) const {
  Mask learned = 0;
  for (int chunk = 0; chunk < facts_.chunks; ++chunk)
    if (state.due[chunk] >= 0) learned |= Mask{1} << chunk;
  return learned;
}

bool Search::complete(const State& state) const {
  for (int chunk = 0; chunk < facts_.chunks; ++chunk)
    if (state.due[chunk] != deadlines_.end()) return false;
  return state.joins == 0 && state.forks == 0 && state.runs == 0 && state.run_days == 0;
}

// Whether the work left asks for more minutes than the days left have, or more days.
bool Search::hopeless(int at, const State& state, Mask learned) {
  int learning = 0;
  for (int chunk = 0; chunk < facts_.chunks; ++chunk)
    if (!(learned >> chunk & 1)) learning += facts_.learn[chunk];
  if (learning > learn_room_left_[at]) return true;
  const int days_left = deadlines_.end() - at - (learned == facts_.all ? 0 : 1);
  const int run_days = std::max<int>(state.run_days, (state.runs + runs_a_day_ - 1) / runs_a_day_);
  if (run_days > days_left || (runs_stand_alone_ && state.runs > days_left)) return true;
  int work = learning + menu_.least_for(state.joins) + menu_.least_for_forks(state.forks);
  if (!runs_stand_alone_) work += std::max(state.runs, state.run_days) * facts_.run;
  return work > room_left_[at];
}

std::vector<Mask> Search::learnable(int at, Mask learned) const {
  std::vector<Mask> sets;
  const Mask open = deadlines_.may_learn[at] ? facts_.all & ~learned : 0;
  for (Mask today = open;; today = (today - 1) & open) {
    int cost = 0;
    Mask rivals = 0;
    for (int chunk = 0; chunk < facts_.chunks; ++chunk)
      if (today >> chunk & 1) {
        cost += facts_.learn[chunk];
        rivals |= facts_.rivals[chunk];
      }
    const Mask then = learned | today;
    const bool in_order = freedom_.any_order || (then & (then + 1)) == 0;
    if (cost <= deadlines_.room[at] && (rivals & today) == 0 && in_order) sets.push_back(today);
    if (today == 0) break;
  }
  return sets;
}

void Search::add_candidates(int at, const State& state, Mask learned, Mask today,
                            std::vector<Candidate>& candidates) {
  int learning = 0;
  for (int chunk = 0; chunk < facts_.chunks; ++chunk)
    if (today >> chunk & 1) learning += facts_.learn[chunk];
  const int room = deadlines_.room[at] - learning;
  Mask must = 0;
  Mask may = 0;
  for (int chunk = 0; chunk < facts_.chunks; ++chunk) {
    if (!(learned >> chunk & 1)) continue;
    if (state.due[chunk] == at) must |= Mask{1} << chunk;
    if (state.due[chunk] < deadlines_.end()) may |= Mask{1} << chunk;
  }
  Mask forks = 0;
  const Mask then = freedom_.starts_by_day ? learned | today : learned;
  for (int pair = 0; pair < facts_.fork_count; ++pair)
    if (holds(then, facts_.fork_passages[pair])) forks |= state.forks & Mask{1} << pair;

  int most_runs = learned == facts_.all ? runs_a_day_ : 0;
  if (runs_stand_alone_) most_runs = std::min(most_runs, 1);
  if (!freedom_.more_runs) most_runs = std::min<int>(most_runs, state.runs);
  const std::size_t first = candidates.size();
  for (int runs = most_runs; runs >= 0; --runs) {
    Candidate candidate;
    candidate.choice.learn = today;
    candidate.choice.runs = runs;
    if (runs > 0 && runs_stand_alone_) {
      candidate.choice.alone = true;
      candidate.effect = menu_.retrieving(may);
      candidates.push_back(candidate);
      continue;
    }
    const int after_runs = room - runs * facts_.run;
    if (after_runs < 0) continue;
    const Mask retrieve = runs > 0 ? 0 : may;
    const Effect needed =
        menu_.retrieving(retrieve) | menu_.joining(state.joins) | menu_.drilling(forks);
    for (const Dish& joins : menu_.joins(learned, today, menu_.joining(state.joins))) {
      const int left = after_runs - joins.cost;
      if (left < 0) break;
      candidate.choice.joins = joins;
      for (const Dish& dish : menu_.from_memory(learned, needed)) {
        if (dish.cost > left) break;
        candidate.choice.memory = dish;
        candidate.effect =
            joins.effect | dish.effect | (runs > 0 ? menu_.retrieving(may) : Effect{0});
        if (!holds(menu_.retrieved(candidate.effect), must)) continue;
        candidates.push_back(candidate);
      }
    }
  }
  // What does no more than another of the same learning is left out.
  const auto no_better = [&](const Candidate& one, const Candidate& other) {
    return holds(other.effect, one.effect) && other.choice.runs >= one.choice.runs;
  };
  std::vector<Candidate> kept;
  for (std::size_t one = first; one < candidates.size(); ++one) {
    if (std::any_of(kept.begin(), kept.end(),
                    [&](const Candidate& other) { return no_better(candidates[one], other); }))
      continue;
    std::erase_if(kept, [&](const Candidate& other) { return no_better(other, candidates[one]); });
    kept.push_back(candidates[one]);
  }
  candidates.resize(first);
  candidates.insert(candidates.end(), kept.begin(), kept.end());
}

Search::State Search::after(int at, State state, Mask learned, const Candidate& candidate) const {
  const Mask retrieved = menu_.retrieved(candidate.effect);
  for (int chunk = 0; chunk < facts_.chunks; ++chunk) {
    if (candidate.choice.learn >> chunk & 1)
      state.due[chunk] = static_cast<std::int8_t>(deadlines_.after_learning[at]);
    else if ((retrieved & learned) >> chunk & 1)
      state.due[chunk] = static_cast<std::int8_t>(deadlines_.after_retrieval[at]);
  }
  state.joins &= ~menu_.joined(candidate.effect);
  state.forks &= ~menu_.drilled(candidate.effect);
  state.runs = static_cast<std::int8_t>(std::max(0, state.runs - candidate.choice.runs));
  if (candidate.choice.runs > 0 && state.run_days > 0) --state.run_days;
  return state;
}

bool Search::finish(int at, const State& state) {
  if (at == deadlines_.end()) return complete(state);
  const Mask learned = learned_in(state);
  if (hopeless(at, state, learned)) return false;
  if (failed_[at].count(state) > 0) return false;
  std::vector<Candidate> candidates;
  for (const Mask today : learnable(at, learned))
    add_candidates(at, state, learned, today, candidates);
  for (const Candidate& candidate : candidates)
    if (finish(at + 1, after(at, state, learned, candidate))) {
      choices_.push_back(candidate.choice);
      return true;
    }
  failed_[at].insert(state);
  return false;
}

}  // namespace cahier::brute
