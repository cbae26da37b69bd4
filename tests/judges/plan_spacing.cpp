#include "plan_spacing.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "plan_rules.h"

namespace judge {
namespace {

using WhichChunk = std::pair<int, int>;  // piece and chunk
using DayNumbers = std::set<int>;        // days from the first of the plan

// Of every chunk that is learned: the days of the plan, after that one, on which it is played from
// memory.
std::map<WhichChunk, DayNumbers> recalled(const Plan& plan) {
  static const std::set<std::string> kFromMemory = {"recall", "cue_starts", "slow_pass",
                                                    "counted_pass", "run_through"};
  std::map<WhichChunk, int> learned;
  std::map<WhichChunk, DayNumbers> found;
  for (int day = 0; day < static_cast<int>(plan.days.size()); ++day)
    for (const Task& task : plan.days[day].tasks)
      for (const int chunk : task.chunks) {
        const WhichChunk which{task.piece, chunk};
        if (task.drill == "learn" && learned.emplace(which, day).second) found[which];
        if (!kFromMemory.contains(task.drill) || !learned.contains(which) || learned[which] >= day)
          continue;
        if (day >= plan.first) found[which].insert(day);
      }
  return found;
}

class SpacingJudge {
 public:
  explicit SpacingJudge(const Plan& plan) : plan_(plan), end_(static_cast<int>(plan.days.size())) {}

  std::vector<std::string> faults(double least_share) {
    std::set<WhichChunk> told;
    const auto days = recalled(plan_);
    for (const ChunkSpacing& line : plan_.spacing.chunks) {
      const WhichChunk which{line.piece, line.chunk};
      if (!told.insert(which).second || !days.contains(which)) {
        say(line, "is told twice, or never learned");
        continue;
      }
      judge_chunk(line, days.at(which));
    }
    if (told.size() != days.size()) say("learned chunks are missing");
    if (forced_ != plan_.spacing.forced_by_days_off)
      say(std::to_string(forced_) + " gaps are forced by days off");
    const double share = gaps_ == 0 ? 1 : static_cast<double>(near_) / gaps_;
    // Printed with four decimals.
    if (std::abs(share - plan_.spacing.near_share) > 1e-4)
      say("the share is " + std::to_string(share));
    if (share < least_share) say("too few gaps are near, " + std::to_string(share));
    return faults_;
  }

 private:
  void say(const std::string& what) { faults_.push_back("spacing: " + what); }
  void say(const ChunkSpacing& line, const std::string& what) {
    say(plan_.pieces[line.piece].chunks[line.chunk].id + " " + what);
  }

  bool practises(int day) const { return plan_.days[day].allowance > 0; }

  void judge_chunk(const ChunkSpacing& line, const DayNumbers& days) {
    if (line.recalls != dates(days)) say(line, "has other recalls");
    if (line.ideal != dates(ideal(days))) say(line, "has other ideal days");
    const Tally best = best_way({days.begin(), days.end()});
    const int near = best.near;
    const int gaps = best.near + best.off + best.forced;
    forced_ += best.forced;
    if (near != line.near || gaps != line.gaps)
      say(line, "has " + std::to_string(near) + " of " + std::to_string(gaps) + " gaps near");
    near_ += near;
    gaps_ += gaps;
  }

  struct Tally {
    int near = 0;
    int off = 0;
    int forced = 0;
    int too_long = 0;

    // The lower the better.
    std::tuple<int, int, int> rank() const { return {too_long, off, -near}; }
  };

  bool rests_between(int last, int day) const {
    for (int between = last + 1; between < day; ++between)
      if (practises(between)) return false;
    return true;
  }

  bool too_long(int last, int day) const {
    int limit = last + static_cast<int>(std::floor(2 * best_gap(end_ - last) + 0.5));
    // What is overdue when a later edition begins comes back within its first week.
    if (limit < plan_.first) limit = plan_.first + 6;
    return day >= plan_.first && day > limit &&
           !rests_between(std::max(last, plan_.first - 1), day);
  }

  Tally with_gap(Tally tally, int last, int day) const {
    if (day < plan_.first) return tally;
    const double best = best_gap(end_ - last);
    const int gap = day - last;
    if (2 * gap >= best && gap <= 2 * best)
      ++tally.near;
    else if (gap > best && rests_between(last, day))
      ++tally.forced;
    else
      ++tally.off;
    tally.too_long += too_long(last, day) ? 1 : 0;
    return tally;
  }

  // Of all ways from the first recall to one from which the date is not too far, stepping over what
  // is played more often: the one with the fewest gaps off the best. A step that is too long is
  // taken only from one recall to the very next.
  Tally best_way(const std::vector<int>& days) const {
    if (days.empty()) return {};
    std::vector<Tally> way(days.size());
    for (std::size_t to = 1; to < days.size(); ++to) {
      way[to] = with_gap(way[to - 1], days[to - 1], days[to]);
      if (too_long(days[to - 1], days[to])) continue;
      for (std::size_t from = to - 1; from-- > 0;) {
        const Tally one = with_gap(way[from], days[from], days[to]);
        if (one.rank() < way[to].rank()) way[to] = one;
        if (too_long(days[from], days[to])) break;
      }
    }
    Tally best = way.back();
    best.too_long += too_long(days.back(), end_) ? 1 : 0;
    for (std::size_t at = 0; at + 1 < days.size(); ++at)
      if (!too_long(days[at], end_) && way[at].rank() < best.rank()) best = way[at];
    return best;
  }

  // The nearest practice day to each best gap, outwards from it, the later day first.
  DayNumbers ideal(const DayNumbers& days) const {
    DayNumbers found;
    if (days.empty()) return found;
    for (int last = *days.begin(); last >= 0;) {
      found.insert(last);
      const int best = last + static_cast<int>(std::floor(best_gap(end_ - last) + 0.5));
      int next = -1;
      for (int off = 0; best < end_ && next < 0 && off < end_; ++off)
        for (const int day : {best + off, best - off})
          if (next < 0 && day > last && day < end_ && practises(day)) next = day;
      last = next;
    }
    return found;
  }

  std::vector<Date> dates(const DayNumbers& days) const {
    std::vector<Date> found;
    for (const int day : days) found.push_back(plan_.days[day].date);
    return found;
  }

  const Plan& plan_;
  int end_;
  int near_ = 0;
  int gaps_ = 0;
  int forced_ = 0;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> spacing_faults(const Plan& plan, double least_share) {
  return SpacingJudge(plan).faults(least_share);
}

}  // namespace judge
