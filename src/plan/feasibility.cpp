#include "plan/feasibility.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "plan/planner.h"

namespace cahier {
namespace {

constexpr double kMostMinutes = 240;
constexpr int kMostDays = 366;

// The smallest step in [1, most] that fits, when larger steps fit no worse: doubled until one
// fits, then halved towards the last that did not. nullopt when even `most` does not fit.
std::optional<int> smallest(int most, const std::function<bool(int)>& fits) {
  int too_small = 0;
  int step = 1;
  while (!fits(step)) {
    if (step == most) return std::nullopt;
    too_small = step;
    step = std::min(most, step * 2);
  }
  while (step - too_small > 1) {
    const int middle = (too_small + step) / 2;
    (fits(middle) ? step : too_small) = middle;
  }
  return step;
}

std::string minutes_words(const WeekMinutes& minutes) {
  const bool even = std::all_of(minutes.begin(), minutes.end(),
                                [&](double each) { return each == minutes.front(); });
  if (even) return fmt::format("--minutes {:g}", minutes.front());
  std::string words;
  for (int weekday = 0; weekday < 7; ++weekday)
    if (minutes[weekday] > 0)
      words += fmt::format("{}{}:{:g}", words.empty() ? "--minutes " : ",", kWeekdays[weekday],
                           minutes[weekday]);
  return words;
}

class Search {
 public:
  Search(const std::vector<Piece>& pieces, const Terms& terms) : pieces_(pieces), terms_(terms) {}

  std::vector<Remedy> all() {
    more_minutes();
    later_date();
    earlier_start();
    without_temper();
    fewer_repetitions();
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Remedy& a, const Remedy& b) { return a.asks < b.asks; });
    return std::move(found_);
  }

 private:
  bool fits(const Terms& terms) const { return plan_that_fits(pieces_, terms).has_value(); }

  // Every practice weekday's minutes grow alike, in whole minutes of the longest day.
  Terms with_longest_day(double minutes) const {
    Terms terms = terms_;
    const double longest = *std::max_element(terms_.minutes.begin(), terms_.minutes.end());
    for (double& each : terms.minutes) each = std::ceil(each * minutes / longest);
    return terms;
  }

  void more_minutes() {
    const double longest = *std::max_element(terms_.minutes.begin(), terms_.minutes.end());
    if (longest <= 0) return;
    const int most = static_cast<int>(kMostMinutes - std::floor(longest));
    if (most < 1) return;
    const auto more = smallest(
        most, [&](int step) { return fits(with_longest_day(std::floor(longest) + step)); });
    if (!more) return;
    const Terms terms = with_longest_day(std::floor(longest) + *more);
    found_.push_back({minutes_words(terms.minutes), *more / longest});
  }

  void later_date() {
    const auto later = smallest(kMostDays, [&](int step) {
      Terms terms = terms_;
      terms.by += days{step};
      return fits(terms);
    });
    if (later) found_.push_back({"--by " + iso(terms_.by + days{*later}), share_of_time(*later)});
  }

  void earlier_start() {
    const auto earlier = smallest(kMostDays, [&](int step) {
      Terms terms = terms_;
      terms.from -= days{step};
      return fits(terms);
    });
    if (earlier)
      found_.push_back({"--from " + iso(terms_.from - days{*earlier}), share_of_time(*earlier)});
  }

  double share_of_time(int more_days) const {
    return static_cast<double>(more_days) / static_cast<double>((terms_.by - terms_.from).count());
  }

  void without_temper() {
    if (terms_.temper == Temper::no) return;
    Terms terms = terms_;
    terms.temper = Temper::no;
    if (fits(terms)) found_.push_back({"--temper no", 0.2});
  }

  void fewer_repetitions() {
    for (int repetitions = terms_.method.repetitions - 1; repetitions >= 2; --repetitions) {
      Terms terms = terms_;
      terms.method.repetitions = repetitions;
      if (!fits(terms)) continue;
      found_.push_back({fmt::format("--repetitions {}", repetitions),
                        1.0 - static_cast<double>(repetitions) / terms_.method.repetitions});
      return;
    }
  }

  const std::vector<Piece>& pieces_;
  const Terms& terms_;
  std::vector<Remedy> found_;
};

}  // namespace

std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms) {
  return Search(pieces, terms).all();
}

}  // namespace cahier
