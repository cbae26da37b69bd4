#include "plan_spacing.h"

#include <cmath>
#include <cstdlib>
#include <map>
#include <set>
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
    int near = 0;
    int gaps = 0;
    int last = -1;
    for (const int day : days) {
      if (last >= 0) {
        const double best = best_gap(end_ - last);
        near += 2 * (day - last) >= best && day - last <= 2 * best ? 1 : 0;
        bool rests = true;
        for (int between = last + 1; between < day; ++between) rests = rests && !practises(between);
        forced_ += day - last > 2 * best && rests ? 1 : 0;
        ++gaps;
      }
      last = day;
    }
    if (near != line.near || gaps != line.gaps)
      say(line, "has " + std::to_string(near) + " of " + std::to_string(gaps) + " gaps near");
    near_ += near;
    gaps_ += gaps;
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
