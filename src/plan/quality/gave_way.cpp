#include "plan/quality/gave_way.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "practice/numbers.h"
#include "text/rows.h"

namespace cahier {
namespace {

struct KindRow {
  GaveWay kind;
  std::string_view word;
};

constexpr std::optional<KindRow> kind_row_of(GaveWay kind) {
  switch (kind) {
    case GaveWay::write_outs:
      return KindRow{kind, "write_outs"};
    case GaveWay::spoken_parts:
      return KindRow{kind, "spoken_parts"};
    case GaveWay::recalls:
      return KindRow{kind, "recalls"};
    case GaveWay::second_passes:
      return KindRow{kind, "second_passes"};
    case GaveWay::fewer_passes:
      return KindRow{kind, "fewer_passes"};
    case GaveWay::fork_drills:
      return KindRow{kind, "fork_drills"};
    case GaveWay::sections:
      return KindRow{kind, "sections"};
    case GaveWay::more_run_throughs:
      return KindRow{kind, "more_run_throughs"};
    case GaveWay::fewer_run_throughs:
      return KindRow{kind, "fewer_run_throughs"};
    case GaveWay::fewer_joins:
      return KindRow{kind, "fewer_joins"};
    case GaveWay::passes:
      return KindRow{kind, "passes"};
    case GaveWay::run_throughs:
      return KindRow{kind, "run_throughs"};
    case GaveWay::forks:
      return KindRow{kind, "forks"};
    case GaveWay::joins:
      return KindRow{kind, "joins"};
    case GaveWay::gaps:
      return KindRow{kind, "gaps"};
  }
  return std::nullopt;
}

constexpr auto kKindRows = rows<GaveWay, kind_row_of>();

std::optional<GaveWay> kind_of(const Unplaced& work) {
  switch (work.why) {
    case Why::no_room_to_temper:
      return work.drill == Drill::write_out ? GaveWay::write_outs : GaveWay::spoken_parts;
    case Why::no_room_to_run:
      return GaveWay::run_throughs;
    case Why::no_room_to_prove:
      return GaveWay::forks;
    case Why::no_room_to_join:
      return GaveWay::joins;
    case Why::no_room_to_recall:
      return GaveWay::gaps;
    case Why::no_room_to_learn:
      return std::nullopt;  // never given up
  }
  return std::nullopt;
}

std::optional<GaveWay> kind_of(Lack lack) {
  switch (lack) {
    case Lack::few_recalls:
      return GaveWay::recalls;
    case Lack::one_slow_pass:
    case Lack::one_counted_pass:
      return GaveWay::second_passes;
    case Lack::no_slow_pass:
    case Lack::no_counted_pass:
      return GaveWay::passes;
    case Lack::fork_seldom:
      return GaveWay::fork_drills;
    case Lack::section_not_whole:
    case Lack::half_not_whole:
      return GaveWay::sections;
    case Lack::first_run_late:
    case Lack::first_run_missing:
    case Lack::runs_far_apart:
      return GaveWay::more_run_throughs;
    default:
      return std::nullopt;
  }
}

// Rounded down, so that the one that is missing of a few says nothing.
bool is_much_less(int now, int before, double kept) { return now < std::floor(kept * before); }

void add_what_is_less(const Plan& plan, std::set<GaveWay>& kinds) {
  if (plan.upkeep || !plan.record.last || !plan.record.last->ahead) return;
  const TaskCounts& before = *plan.record.last->ahead;
  const TaskCounts now = plan.counts_from(plan.from);
  if (is_much_less(now.passes, before.passes, numbers::kPassesKept))
    kinds.insert(GaveWay::fewer_passes);
  if (is_much_less(now.run_throughs, before.run_throughs, numbers::kPassesKept))
    kinds.insert(GaveWay::fewer_run_throughs);
  if (is_much_less(now.joins, before.joins, numbers::kJoinsKept))
    kinds.insert(GaveWay::fewer_joins);
}

}  // namespace

std::string_view gave_way_word(GaveWay kind) {
  return kKindRows[static_cast<std::size_t>(kind)].word;
}

std::vector<GaveWay> what_gave_way(const Plan& plan, const std::vector<QualityFigure>& figures) {
  std::set<GaveWay> kinds;
  for (const Unplaced& work : plan.let_go)
    if (const auto kind = kind_of(work)) kinds.insert(*kind);
  for (const QualityFigure& figure : figures)
    for (const Shortfall& shortfall : figure.why)
      if (const auto kind = kind_of(shortfall.lack)) kinds.insert(*kind);
  add_what_is_less(plan, kinds);
  return {kinds.begin(), kinds.end()};
}

}  // namespace cahier
