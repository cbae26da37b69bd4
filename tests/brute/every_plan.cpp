#include "every_plan.h"

#include <fmt/format.h>

#include "plan/due/task_maker.h"
#include "plan/rules/rules.h"

namespace cahier::brute {
namespace {

constexpr double kSliver = 1e-9;

class EveryPlan {
 public:
  EveryPlan(const Analysis& analysis, const Terms& terms, long most)
      : analysis_(analysis), make_(analysis, terms.method, 0), left_(most) {
    plan_.from = terms.from;
    plan_.by = terms.by;
    plan_.method = terms.method;
    plan_.temper = Temper::no;  // a plan without it fits as well
    plan_.new_to_performing = terms.new_to_performing;
    plan_.pieces = {analysis.planned};
    plan_.pieces[0].dice = weighted_dice_tables(plan_.pieces[0].thrown_cues());
    plan_.days = calendar(terms);
    for (const Day& day : plan_.days) longest_ = std::max(longest_, day.allowance);
    gather(terms);
    for (const DrillFacts& facts : every_drill())
      all_missing_.push_back(
          {0, facts.drill, analysis.planned.piece.whole(), 1, Why::no_room_to_learn});
  }

  std::optional<bool> any() {
    const bool found = fill(0, 0);
    if (left_ < 0) return std::nullopt;
    return found;
  }

 private:
  // In the order in which a day takes them: cold first, what is new, its joins, the rest.
  void gather(const Terms& terms) {
    const int chunks = static_cast<int>(analysis_.planned.chunks.size());
    for (int run = 0; run < terms.method.runs_a_day; ++run) pool_.push_back(make_.run_through());
    each_range([&](BarRange bars) { pool_.push_back(make_.recall(bars)); });
    for (int chunk = 0; chunk < chunks; ++chunk) pool_.push_back(make_.learn(chunk));
    each_range([&](BarRange bars) { pool_.push_back(make_.join(bars)); });
    const auto& cues = analysis_.planned.cues;
    for (unsigned chosen = 1; chosen < 1u << cues.size(); ++chosen) {
      std::vector<int> numbers;
      for (const CueStart& cue : cues)
        if (chosen >> (cue.number - 1) & 1) numbers.push_back(cue.number);
      pool_.push_back(make_.cue_starts(numbers, 0));
    }
  }

  template <typename Take>
  void each_range(Take take) const {
    const auto& passages = analysis_.passages;
    for (std::size_t first = 0; first < passages.size(); ++first)
      for (std::size_t last = first; last < passages.size(); ++last)
        take(BarRange{passages[first].bars.first, passages[last].bars.last});
  }

  // The rest of the plan, when `day` holds some of the tasks before `next` in the pool.
  bool fill(std::size_t day, std::size_t next) {
    if (day == plan_.days.size()) return passes(true);
    Day& today = plan_.days[day];
    if (next == pool_.size() || today.allowance <= 0) return fill(day + 1, 0);
    const double minutes = today.minutes() + pool_[next].minutes;
    const bool alone = pool_[next].drill == Drill::run_through && today.tasks.empty() &&
                       minutes > longest_ + kSliver;
    if (minutes <= today.allowance + kSliver || alone) {
      today.tasks.push_back(pool_[next]);
      if (alone) today.note = DayNote::run_alone;
      // What breaks a rule now breaks it whatever follows.
      if (passes(false) && fill(day, alone ? pool_.size() : next + 1)) return true;
      today.tasks.pop_back();
      today.note = DayNote::none;
    }
    return left_ >= 0 && fill(day, next + 1);
  }

  // The plan as it stands: as the whole of it, or as a beginning of which the rest is missing.
  bool passes(bool whole) {
    if (--left_ < 0) return false;
    plan_.fits = whole;
    plan_.unplaced = whole ? std::vector<Unplaced>{} : all_missing_;
    for (Day& day : plan_.days) {
      const std::chrono::year_month_day date(day.date);
      int number = 0;
      for (Task& task : day.tasks)
        task.id = fmt::format("{:02}{:02}-{}", static_cast<unsigned>(date.month()),
                              static_cast<unsigned>(date.day()), ++number);
    }
    return violations(plan_).empty();
  }

  const Analysis& analysis_;
  TaskMaker make_;
  std::vector<Task> pool_;
  std::vector<Unplaced> all_missing_;
  Plan plan_;
  double longest_ = 0;
  long left_;  // plans that may yet be checked
};

}  // namespace

std::optional<bool> any_plan_at_all(const Analysis& analysis, const Terms& terms, long most) {
  return EveryPlan(analysis, terms, most).any();
}

}  // namespace cahier::brute
