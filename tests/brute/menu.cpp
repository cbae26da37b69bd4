#include "menu.h"

#include <algorithm>
#include <stdexcept>

namespace cahier::brute {
namespace {

// Every effect that some of the items reach, with its least cost.
class Reached {
 public:
  void take(int cost, Effect effect, std::uint64_t range) {
    const std::vector<Dish> before = list();
    for (const Dish& dish : before)
      keep({dish.cost + cost, dish.effect | effect, dish.ranges | range, -1});
  }

  void keep(const Dish& dish) {
    const auto [at, is_new] = best_.emplace(dish.effect, dish);
    if (!is_new && dish.cost < at->second.cost) at->second = dish;
  }

  std::vector<Dish> list() const {
    std::vector<Dish> all;
    for (const auto& [effect, dish] : best_) all.push_back(dish);
    return all;
  }

 private:
  std::unordered_map<Effect, Dish> best_ = {{0, Dish{}}};
};

}  // namespace

std::vector<Dish> useful(const std::vector<Dish>& dishes, Effect needed) {
  std::unordered_map<Effect, Dish> best;
  for (Dish dish : dishes) {
    dish.effect &= needed;
    const auto [at, is_new] = best.emplace(dish.effect, dish);
    if (!is_new && dish.cost < at->second.cost) at->second = dish;
  }
  std::vector<Dish> sorted;
  for (const auto& [effect, dish] : best) sorted.push_back(dish);
  std::sort(sorted.begin(), sorted.end(), [](const Dish& one, const Dish& other) {
    if (one.cost != other.cost) return one.cost < other.cost;
    const int more = __builtin_popcount(one.effect) - __builtin_popcount(other.effect);
    return more != 0 ? more > 0 : one.effect < other.effect;
  });
  std::vector<Dish> kept;
  for (const Dish& dish : sorted)
    if (std::none_of(kept.begin(), kept.end(),
                     [&](const Dish& cheaper) { return holds(cheaper.effect, dish.effect); }))
      kept.push_back(dish);
  return kept;
}

Menu::Menu(const Facts& facts, const Freedom& freedom) : facts_(facts), freedom_(freedom) {
  if (facts.ranges.size() > 64 || facts.chunks + facts.join_count + facts.fork_count > 30)
    throw std::logic_error("too many passages for every plan to be tried");
}

std::vector<Dish> Menu::all_from_memory(Mask learned) const {
  Reached reached;
  for (std::size_t at = 0; at < facts_.ranges.size(); ++at) {
    const Range& range = facts_.ranges[at];
    if (!holds(learned, range.chunks)) continue;
    if (!freedom_.wide_recalls && range.section < 0) continue;
    Effect effect = joining(freedom_.late_joins ? range.joins : 0);
    const bool returns =
        range.section >= 0 && facts_.analysis.planned.sections[range.section].same_as.has_value();
    if (freedom_.recalls_at_return || !returns) effect |= retrieving(range.chunks);
    reached.take(range.recall, effect, std::uint64_t{1} << at);
  }
  const std::vector<Dish> recalls = useful(reached.list(), ~Effect{0});
  std::vector<Dish> all = recalls;
  for (std::size_t at = 0; at < facts_.starts.size(); ++at) {
    const Starts& starts = facts_.starts[at];
    if (!holds(learned, starts.touched)) continue;
    if (!freedom_.starts_recall && starts.forks == 0) continue;
    for (Dish dish : recalls) {
      dish.cost += starts.cost;
      dish.effect |= drilling(starts.forks);
      if (freedom_.starts_recall) dish.effect |= retrieving(starts.chunks);
      dish.starts = static_cast<int>(at);
      all.push_back(dish);
    }
  }
  return useful(all, ~Effect{0});
}

std::vector<Dish> Menu::all_joins(Mask learned, Mask today) const {
  Reached reached;
  for (std::size_t at = 0; at < facts_.ranges.size(); ++at) {
    const Range& range = facts_.ranges[at];
    if (range.joins != 0 && (range.chunks & today) != 0 && holds(learned | today, range.chunks))
      reached.take(range.join, joining(range.joins), std::uint64_t{1} << at);
  }
  return useful(reached.list(), ~Effect{0});
}

const std::vector<Dish>& Menu::from_memory(Mask learned, Effect needed) {
  auto [all, all_new] = memory_.try_emplace(learned);
  if (all_new) all->second = all_from_memory(learned);
  auto [within, within_new] = memory_within_.try_emplace(std::uint64_t{learned} << 32 | needed);
  if (within_new) within->second = useful(all->second, needed);
  return within->second;
}

const std::vector<Dish>& Menu::joins(Mask learned, Mask today, Effect needed) {
  const std::uint64_t both = std::uint64_t{learned} << 8 | today;
  auto [all, all_new] = joins_.try_emplace(both);
  if (all_new) all->second = all_joins(learned, today);
  auto [within, within_new] = joins_within_.try_emplace(both << 32 | needed);
  if (within_new) within->second = useful(all->second, needed);
  return within->second;
}

int Menu::least_for(Mask joins) {
  // A recall is no dearer than a join of the same bars, and everything learned forbids nothing.
  const Effect needed = joining(joins);
  for (const Dish& dish : from_memory(facts_.all, needed))
    if (dish.effect == needed) return dish.cost;
  return 0;
}

int Menu::least_for_forks(Mask forks) const {
  int least = forks == 0 ? 0 : 1 << 20;
  for (const Starts& starts : facts_.starts)
    if ((starts.forks & forks) != 0) least = std::min(least, starts.cost);
  return least;
}

}  // namespace cahier::brute
