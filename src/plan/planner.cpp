#include "plan/planner.h"

#include <algorithm>
#include <cmath>

#include "plan/anatomy.h"
#include "plan/check_plan.h"
#include "plan/day_order.h"
#include "plan/schedule.h"

namespace cahier {
namespace {

// Minutes a chunk should take: the method's, less where the days are short.
double chunk_load(const Terms& terms) {
  const double most = *std::max_element(terms.minutes.begin(), terms.minutes.end());
  return std::min(terms.method.chunk_minutes, 0.6 * most);
}

class Planner {
 public:
  Planner(const std::vector<Piece>& pieces, const Terms& terms)
      : terms_(terms), days_(calendar(terms)) {
    for (const Piece& piece : pieces)
      anatomies_.push_back(dissect(piece, terms_.method, chunk_load(terms_)));
    work_.order = learning_order(anatomies_, terms.order);
    for (int day = 0; day < static_cast<int>(days_.size()); ++day)
      if (days_[day].allowance > 0) practice_days_.push_back(day);
  }

  // A plan that places everything, the most comfortable found; nullopt when none is found.
  std::optional<Plan> that_fits() const {
    const int all = static_cast<int>(work_.order.size());
    for (const bool catch_up : {true, false})
      for (const int until : last_learning_days()) {
        Plan plan = finished(lay_out(work_, {until, catch_up, false, true, true, all}));
        if (plan.fits && breaches(plan).empty()) return plan;
      }
    for (const int until : last_learning_days(1)) {
      Plan plan = finished(lay_out(work_, {until, false, true, true, true, all}));
      if (plan.fits && breaches(plan).empty()) return plan;
    }
    return std::nullopt;
  }

  // The most that can be placed, by minutes: with run-throughs and without, then with as many
  // chunks as can be learned and kept.
  Plan what_fits() const {
    const int all = static_cast<int>(work_.order.size());
    Plan best = finished(lay_out(work_, {-1, false, true, false, false, 0}));
    const auto take_if_better = [&](Plan plan) {
      if (!sound(plan)) return false;
      if (unplaced_minutes(plan) < unplaced_minutes(best)) best = std::move(plan);
      return true;
    };
    const std::vector<int> candidates = last_learning_days();
    if (candidates.empty()) return best;
    for (const bool runs : {true, false})
      for (const int until : candidates)
        take_if_better(finished(lay_out(work_, {until, false, true, false, runs, all})));
    const int until = practice_days_[latest_position()];
    int fewest = 0;
    int most = all;
    while (fewest < most) {
      const int chunks = (fewest + most + 1) / 2;
      if (take_if_better(finished(lay_out(work_, {until, false, true, false, false, chunks}))))
        fewest = chunks;
      else
        most = chunks - 1;
    }
    return best;
  }

 private:
  // Candidates for the last day of learning, the most comfortable first: leaving the method's share
  // of the days to prove, then later, then earlier.
  std::vector<int> last_learning_days(int least_step = 0) const {
    std::vector<int> positions;
    const int latest = latest_position();
    if (latest < 0) return positions;
    const int comfortable = std::clamp(comfortable_position(), 0, latest);
    const int step =
        least_step > 0 ? least_step : std::max(1, static_cast<int>(practice_days_.size()) / 12);
    positions.push_back(comfortable);
    for (int later = comfortable + step; later < latest; later += step) positions.push_back(later);
    if (latest != comfortable) positions.push_back(latest);
    for (int earlier = comfortable - step; earlier >= 0; earlier -= step)
      positions.push_back(earlier);
    std::vector<int> result;
    for (const int position : positions) result.push_back(practice_days_[position]);
    return result;
  }

  int latest_position() const {
    const int end = static_cast<int>(days_.size());
    int latest = -1;
    for (int i = 0; i < static_cast<int>(practice_days_.size()); ++i)
      if (end - practice_days_[i] > terms_.method.quiet_days) latest = i;
    return latest;
  }

  int comfortable_position() const {
    const double practice = static_cast<double>(practice_days_.size());
    double learning = 0;
    for (const Work::Item& item : work_.order)
      learning += anatomies_[item.piece].learn_minutes[item.chunk];
    double allowance = 0;
    for (const int day : practice_days_) allowance += days_[day].allowance;
    if (practice > 0) allowance /= practice;
    // About one chunk for every quarter of an hour, six days in seven, and never more than six
    // tenths of the time for new bars: common practice.
    const double chunks_a_day = std::max(1.0, allowance / 15);
    const double needed = std::max(learning / std::max(1.0, 0.6 * allowance),
                                   static_cast<double>(work_.order.size()) / chunks_a_day);
    return static_cast<int>(
        std::min(needed * 7 / 6 + 1, practice * (1 - terms_.method.prove_share)));
  }

  Plan finished(Draft draft) const {
    Plan plan;
    plan.from = terms_.from;
    plan.by = terms_.by;
    plan.method = terms_.method;
    plan.temper = terms_.temper;
    plan.order = terms_.order;
    plan.new_to_performing = terms_.new_to_performing;
    plan.blocks = terms_.blocks;
    for (const Anatomy& anatomy : anatomies_) plan.pieces.push_back(anatomy.planned);
    plan.days = std::move(draft.days);
    number_tasks(plan.days);
    plan.unplaced = std::move(draft.unplaced);
    plan.fits = plan.unplaced.empty();
    return plan;
  }

  static double unplaced_minutes(const Plan& plan) {
    double minutes = 0;
    for (const Unplaced& one : plan.unplaced) minutes += one.minutes;
    return minutes;
  }

  // Whether what is placed keeps the rules, leaving out only whole kinds of work.
  static bool sound(Plan& plan) {
    plan.fits = false;
    const bool recalls_kept =
        std::none_of(plan.unplaced.begin(), plan.unplaced.end(), [](const Unplaced& one) {
          return one.why == Why::no_room_to_recall || one.why == Why::no_room_to_join;
        });
    return recalls_kept && !plan.unplaced.empty() && breaches(plan).empty();
  }

  const Terms& terms_;
  std::vector<Day> days_;
  std::vector<Anatomy> anatomies_;
  Work work_{terms_, anatomies_, days_, {}};
  std::vector<int> practice_days_;
};

}  // namespace

std::optional<Plan> plan_that_fits(const std::vector<Piece>& pieces, const Terms& terms) {
  return Planner(pieces, terms).that_fits();
}

Plan make_plan(const std::vector<Piece>& pieces, const Terms& terms) {
  const Planner planner(pieces, terms);
  if (auto plan = planner.that_fits()) return *std::move(plan);
  return planner.what_fits();
}

}  // namespace cahier
