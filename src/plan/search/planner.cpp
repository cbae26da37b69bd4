#include "plan/search/planner.h"

#include <algorithm>
#include <cmath>

#include "plan/chunks/analyse.h"
#include "plan/chunks/divide_to_fill.h"
#include "plan/chunks/every_division.h"
#include "plan/quality/gave_way.h"
#include "plan/quality/quality.h"
#include "plan/rules/rules.h"
#include "plan/schedule/comfortable.h"
#include "plan/schedule/divided_work.h"
#include "plan/schedule/learning_order.h"
#include "plan/schedule/past_tasks.h"
#include "plan/schedule/runs_aside.h"
#include "plan/schedule/tight.h"
#include "plan/schedule/upkeep.h"
#include "plan/schedule/work.h"
#include "plan/search/beam_search.h"
#include "plan/search/better_plan.h"
#include "plan/search/finish_plan.h"
#include "plan/search/learning_days.h"
#include "plan/search/lower_bound.h"
#include "plan/search/tiny_piece.h"
#include "practice/kept_record.h"
#include "practice/numbers.h"
#include "practice/pace_samples.h"

namespace cahier {
namespace {

constexpr double kAnyLoad = 1e3;  // minutes that no chunk reaches: as large as they may be

// Minutes a chunk should take: the method's, less where the days are short.
double chunk_load(const Terms& terms) {
  return std::min(terms.method.chunk_minutes, numbers::kChunkOfADay * longest_day(terms));
}

Terms at_own_pace(const std::vector<Piece>& pieces, Terms terms) {
  if (terms.upkeep)
    terms.record = as_kept(std::move(terms.record), pieces, terms.method, terms.from);
  terms.method.pace = learn_pace(terms.method, pace_samples(terms.record, pieces, terms.method));
  return terms;
}

enum class Take { first, best };

class Planner {
 public:
  // Whether the best of the first plans that fit is taken, or the first, of which no figures are
  // asked.
  Planner(const std::vector<Piece>& pieces, const Terms& terms, Effort& effort, Take take)
      : pieces_(pieces),
        effort_(effort),
        take_(take),
        terms_(at_own_pace(pieces, terms)),
        histories_(histories_of(terms_.record, pieces)),
        days_(calendar_with_past(terms_)),
        divided_(divide_for_load(chunk_load(terms_)), terms_, days_) {
    divided_.work.effort = &effort_;
    for (int day = 0; day < static_cast<int>(days_.size()); ++day)
      if (days_[day].allowance > 0) practice_days_.push_back(day);
  }

  // A plan that places everything: the best of the first few found, the most comfortable first;
  // nullopt when none is found.
  std::optional<Plan> that_fits() {
    if (terms_.upkeep) return sound_plan(divided_, keep_up(divided_.work));
    // The bound knows nothing of what is done already.
    if (terms_.record.done.empty() && !could_fit(pieces_, terms_)) return std::nullopt;
    // The first last day of learning that fits is kept, or the one after it: better figures are no
    // reason to learn much later.
    int fits = 0;
    for (const int until : learning_days_.last()) {
      for (const Pace& pace :
           {Pace{.more_runs = true}, Pace{.catch_up = false, .more_runs = true}, Pace{}}) {
        if (has_chosen()) return std::move(best_);
        offer(with_pace(pace, until));
      }
      if (best_ && ++fits == 2) return std::move(best_);
    }
    if (best_) return std::move(best_);
    for (const int until : learning_days_.last(1)) {
      for (const bool more_runs : {true, false}) {
        if (has_chosen()) return std::move(best_);
        offer(with_pace({.catch_up = false, .eager = true, .more_runs = more_runs}, until));
      }
      if (best_) return std::move(best_);
    }
    find_tight_plan();
    if (!best_ && divided_.work.order.empty() && !practice_days_.empty()) offer(last_days_plan());
    return std::move(best_);
  }

  // The most that can be placed, by minutes: with run-throughs and without, then with as many
  // chunks as can be learned and kept.
  Plan what_fits() {
    Effort effort(kMostEffort / 4, effort_.watch());
    divided_.work.effort = &effort;
    if (terms_.upkeep) return finished(divided_, keep_up(divided_.work));
    const int all = static_cast<int>(divided_.work.order.size());
    Plan best = finished(divided_, lay_out(divided_.work, learning(0, -1, false, false)));
    const auto take_if_better = [&](Plan plan) {
      if (!sound(plan)) return false;
      if (unplaced_minutes(plan) < unplaced_minutes(best)) best = std::move(plan);
      return true;
    };
    const std::vector<int> candidates = learning_days_.last();
    if (candidates.empty()) return best;
    for (const bool temper : {true, false})
      for (const bool runs : {true, false})
        for (const int until : candidates)
          if (!effort.used_up())
            take_if_better(
                finished(divided_, lay_out(divided_.work, learning(all, until, temper, runs))));
    if (all == 0) return best;
    const int until = practice_days_[learning_days_.latest_position()];
    int fewest = 0;
    int most = all;
    while (fewest < most && !effort.used_up()) {
      const int chunks = (fewest + most + 1) / 2;
      if (take_if_better(
              finished(divided_, lay_out(divided_.work, learning(chunks, until, false, false)))))
        fewest = chunks;
      else
        most = chunks - 1;
    }
    return best;
  }

 private:
  // As much as each day holds.
  static Pace learning(int chunks, int until, bool temper, bool runs) {
    return {.learn_until = until,
            .catch_up = false,
            .eager = true,
            .temper = temper,
            .runs = runs,
            .chunks = chunks};
  }

  std::optional<Plan> with_pace(Pace pace, int until) const {
    pace.learn_until = until;
    pace.chunks = static_cast<int>(divided_.work.order.size());
    pace.all_or_nothing = true;
    Schedule schedule = lay_out(divided_.work, pace);
    if (const auto sooner = with_sooner_runs(divided_.work, pace, schedule))
      if (auto plan = sound_plan(divided_, lay_out(divided_.work, *sooner))) return plan;
    return sound_plan(divided_, std::move(schedule));
  }

  std::vector<Analysis> divide_for_load(double load) const {
    std::vector<Analysis> analyses;
    for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
      analyses.push_back(analyse(pieces_[piece], terms_.method, load, histories_[piece]));
    return analyses;
  }

  // Chunks that fill the days when every day keeps some minutes for what is learned already, and
  // every third more.
  std::vector<Analysis> divide_to_fill_days(double kept, double kept_every_third) const {
    std::vector<double> minutes;
    for (const int day : practice_days_)
      minutes.push_back(days_[day].allowance - (minutes.size() % 3 == 2 ? kept_every_third : kept));
    std::vector<Analysis> analyses;
    for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
      analyses.push_back(analyse(
          pieces_[piece], terms_.method,
          divide_to_fill(pieces_[piece], sections_in_order(divided_.analyses[piece], terms_.order),
                         histories_[piece].learned().at_one_time(), terms_.method, minutes),
          histories_[piece]));
    return analyses;
  }

  // Where everything is learned, what the days can hold of the rest; see rule 11.
  std::optional<Plan> last_days_plan() const {
    for (const bool temper : {true, false}) {
      Pace pace{.learn_until = divided_.work.first - 1, .catch_up = false, .last_days = true};
      pace.temper = temper;
      if (auto plan = sound_plan(divided_, lay_out(divided_.work, pace))) return plan;
    }
    return std::nullopt;
  }

  // Chunks of the usual size first; then those that fill the days, and the largest of all, which
  // take the least time.
  void find_tight_plan() {
    if (practice_days_.empty()) return;
    std::vector<std::vector<int>> tried;
    const auto attempt = [&](std::vector<Analysis> analyses) {
      if (best_ || effort_.used_up()) return;
      DividedWork divided(std::move(analyses), terms_, days_);
      divided.work.effort = &effort_;
      const std::vector<int> sizes = divided.sizes();
      if (std::find(tried.begin(), tried.end(), sizes) != tried.end()) return;
      tried.push_back(sizes);
      find_tight_plan(divided);
    };
    attempt(divide_for_load(chunk_load(terms_)));
    using Minutes = std::vector<double>;
    for (const double kept : is_tiny() ? Minutes{1, 2, 0, 0.5, 1.5, 3} : Minutes{1, 2, 0, 3})
      attempt(divide_to_fill_days(kept, kept));
    for (const double kept : is_tiny() ? Minutes{1.5, 1, 2, 3, 4} : Minutes{1.5, 3})
      attempt(divide_to_fill_days(0, kept));
    attempt(divide_for_load(kAnyLoad));
    if (!is_tiny() || pieces_.size() > 1) return;
    for (auto& chunks :
         every_division(pieces_.front(), histories_.front().learned().at_one_time(), terms_.method))
      attempt({analyse(pieces_.front(), terms_.method, std::move(chunks), histories_.front())});
  }

  bool is_tiny() const { return divided_.work.order.size() <= numbers::kTinyWork; }

  void find_tight_plan(const DividedWork& divided) {
    for (const TightVariant& variant : tight_variants(is_tiny())) {
      if (best_ || effort_.used_up()) return;
      offer(sound_plan(divided, lay_tight(divided.work, variant)));
      if (best_) return offer_fuller(divided, variant);
    }
    if (is_tiny()) find_by_beam(divided);
  }

  void find_by_beam(const DividedWork& divided) {
    const auto piece = tiny_piece(divided.work);
    if (!piece) return;
    for (auto& plan : beam_search(*piece, divided.analyses.front(), effort_)) {
      TightVariant variant;
      variant.chosen = std::move(plan);
      offer(sound_plan(divided, lay_tight(divided.work, variant)));
      if (best_) return offer_fuller(divided, variant);
    }
  }

  // With what no rule asks for besides, where it leaves the rest in its place.
  void offer_fuller(const DividedWork& divided, TightVariant variant) {
    if (take_ == Take::first) return;
    variant.welcome = true;
    for (const RunPlacing runs : {variant.runs, RunPlacing::growing}) {
      variant.runs = runs;
      offer(sound_plan(divided, lay_tight(divided.work, variant)));
    }
  }

  bool has_chosen() const { return (take_ == Take::first && best_) || effort_.used_up(); }

  void offer(std::optional<Plan> plan) {
    if (!plan) return;
    if (take_ == Take::first) {
      best_ = std::move(plan);
      return;
    }
    std::vector<QualityFigure> figures = quality(*plan);
    if (best_ && !is_better(figures, figures_of_best_)) return;
    plan->gave_way = what_gave_way(*plan, figures);
    best_ = std::move(plan);
    figures_of_best_ = std::move(figures);
  }

  std::optional<Plan> sound_plan(const DividedWork& divided, Schedule schedule) const {
    Plan plan = finished(divided, std::move(schedule));
    if (plan.fits && violations(plan).empty()) return plan;
    return std::nullopt;
  }

  Plan finished(const DividedWork& divided, Schedule schedule) const {
    return finish_plan(terms_, divided, std::move(schedule));
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
    return recalls_kept && !plan.unplaced.empty() && violations(plan).empty();
  }

  const std::vector<Piece>& pieces_;
  Effort& effort_;
  Take take_;
  Terms terms_;
  std::vector<History> histories_;  // by piece
  std::vector<Day> days_;           // from the first day of the past on
  DividedWork divided_;
  std::vector<int> practice_days_;
  LearningDays learning_days_{terms_, divided_, days_, practice_days_};
  std::optional<Plan> best_;
  std::vector<QualityFigure> figures_of_best_;
};

}  // namespace

std::optional<Plan> plan_that_fits(const std::vector<Piece>& pieces, const Terms& terms,
                                   Effort& effort) {
  return Planner(pieces, terms, effort, Take::first).that_fits();
}

std::optional<Plan> plan_that_fits(const std::vector<Piece>& pieces, const Terms& terms) {
  Effort effort;
  return plan_that_fits(pieces, terms, effort);
}

Plan make_plan(const std::vector<Piece>& pieces, const Terms& terms, Effort& effort) {
  Planner planner(pieces, terms, effort, Take::best);
  if (auto plan = planner.that_fits()) return *std::move(plan);
  return planner.what_fits();
}

Plan make_plan(const std::vector<Piece>& pieces, const Terms& terms) {
  Effort effort;
  return make_plan(pieces, terms, effort);
}

}  // namespace cahier
