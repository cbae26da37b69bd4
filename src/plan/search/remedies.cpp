#include "plan/search/remedies.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <utility>

#include "plan/search/least_step.h"
#include "plan/search/levers.h"
#include "plan/search/planner.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

constexpr double kPairWork = 20000;  // bars times days
// For each change that is tried; a plan has more, so that what fits here fits when it is typed.
constexpr double kTryEffort = kMostEffort / 3;
constexpr double kPairEffort = kMostEffort / 3;  // for all pairs together

bool looks_for_pairs(const std::vector<Piece>& pieces, const Terms& terms) {
  double bars = 0;
  for (const Piece& piece : pieces) bars += piece.bars;
  return bars * static_cast<double>((terms.by - terms.from).count()) <= kPairWork;
}

// Levers pulled together: the step of each, by its index.
using Change = std::map<int, int>;

class Search {
 public:
  Search(const std::vector<Piece>& pieces, const Terms& terms, std::vector<Lever> levers,
         Effort& effort)
      : pieces_(pieces), terms_(terms), levers_(std::move(levers)), effort_(effort) {}

  // The least change of each lever by itself.
  std::vector<Remedy> singles() {
    std::vector<Remedy> found;
    for (int lever = 0; lever < count(); ++lever) {
      const auto step = least({}, lever, levers_[lever].steps);
      alone_.push_back(step ? levers_[lever].asks(*step) : std::numeric_limits<double>::infinity());
      if (step) found.push_back(told({{lever, *step}}));
    }
    return found;
  }

  // Pairs that ask less than either by itself. REQUIRES: singles() was called.
  std::vector<Remedy> pairs() {
    std::vector<Remedy> found;
    for (int first = 0; first < count(); ++first)
      for (int second = first + 1; second < count(); ++second)
        if (const auto change = best_pair(first, second)) found.push_back(told(*change));
    return found;
  }

  // Whether what was found may ask more than needed.
  bool was_cut_short() const { return cut_short_ || on_pairs_ >= kPairEffort; }

 private:
  int count() const { return static_cast<int>(levers_.size()); }

  bool fits(const Change& change) {
    const auto known = asked_.find(change);
    if (known != asked_.end()) return known->second;
    if (effort_.used_up() || on_pairs_ >= kPairEffort) return false;
    Terms terms = terms_;
    for (const auto& [lever, step] : change) levers_[lever].pull(terms, step);
    if (effort_.watch()) effort_.watch()->tries(told(change).say);
    Effort once(kTryEffort, effort_.watch());
    const bool does = plan_that_fits(pieces_, terms, once).has_value();
    effort_.spend(once.spent());
    if (change.size() > 1) on_pairs_ += once.spent();
    cut_short_ = cut_short_ || once.used_up();
    return asked_[change] = does;
  }

  // The least step of a lever, at most `most`, that fits on top of another change.
  std::optional<int> least(const Change& besides, int lever, int most) {
    return least_step(most, std::min(most, levers_[lever].ripple), [&](int step) {
      Change change = besides;
      change[lever] = step;
      return fits(change);
    });
  }

  double asks(const Change& change) const {
    double squares = 0;
    for (const auto& [lever, step] : change) squares += std::pow(levers_[lever].asks(step), 2);
    return std::sqrt(squares);
  }

  Remedy told(const Change& change) const {
    Remedy remedy{"", asks(change)};
    for (const auto& [lever, step] : change)
      remedy.say += (remedy.say.empty() ? "" : " ") + levers_[lever].words(step);
    return remedy;
  }

  // The largest step that asks less than `limit`; 0 when there is none.
  int largest_below(int lever, double limit) const {
    int step = levers_[lever].steps;
    while (step > 0 && levers_[lever].asks(step) >= limit) --step;
    return step;
  }

  // Steps at which the first lever of a pair is tried: all of a coarse one, else that at which both
  // ask alike when the pair asks as much as it may.
  std::vector<int> tries(int lever, double limit) const {
    std::vector<int> steps;
    if (levers_[lever].steps <= numbers::kCoarseLever)
      for (int step = 1; step <= largest_below(lever, limit); ++step) steps.push_back(step);
    else if (const int step = largest_below(lever, limit / std::sqrt(2.0)); step > 0)
      steps.push_back(step);
    return steps;
  }

  std::optional<Change> best_pair(int first, int second) {
    if (levers_[second].steps < levers_[first].steps) std::swap(first, second);
    double limit = std::min(alone_[first], alone_[second]);
    std::optional<Change> best;
    for (const int step : tries(first, limit)) {
      const double spent = levers_[first].asks(step);
      if (spent >= limit) break;
      const int most = largest_below(second, std::sqrt(limit * limit - spent * spent));
      const auto other = most > 0 ? least({{first, step}}, second, most) : std::nullopt;
      if (!other) continue;
      const Change change{{first, least({{second, *other}}, first, step).value_or(step)},
                          {second, *other}};
      if (asks(change) >= limit || !both_needed(change)) continue;
      limit = asks(change);
      best = change;
    }
    return best;
  }

  bool both_needed(const Change& pair) {
    return std::none_of(pair.begin(), pair.end(), [&](const auto& part) { return fits({part}); });
  }

  const std::vector<Piece>& pieces_;
  const Terms& terms_;
  std::vector<Lever> levers_;
  Effort& effort_;
  std::vector<double> alone_;  // by lever: what it asks by itself; infinite when it is not enough
  std::map<Change, bool> asked_;
  double on_pairs_ = 0;
  bool cut_short_ = false;  // a change
};

void put_in_order(std::vector<Remedy>& remedies) {
  std::stable_sort(remedies.begin(), remedies.end(),
                   [](const Remedy& a, const Remedy& b) { return a.asks < b.asks; });
}

}  // namespace

std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms,
                             std::optional<Date> earliest_start) {
  Effort effort;
  return remedies(pieces, terms, earliest_start, effort);
}

std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms,
                             std::optional<Date> earliest_start, Effort& effort) {
  Search search(pieces, terms, levers(terms, earliest_start), effort);
  std::vector<Remedy> found = search.singles();
  if (looks_for_pairs(pieces, terms)) {
    std::vector<Remedy> pairs = search.pairs();
    put_in_order(pairs);
    const std::size_t room =
        numbers::kMostRemedies - std::min<std::size_t>(numbers::kMostRemedies, found.size());
    pairs.resize(std::min(pairs.size(), room));
    found.insert(found.end(), pairs.begin(), pairs.end());
  }
  put_in_order(found);
  if (search.was_cut_short()) effort.spend(kMostEffort);  // so that it is said
  return found;
}

}  // namespace cahier
