// How long the planner looks for a plan or for what would make one: 200 random pieces of up to 400
// bars whose days are too short, within a year, each refused with its remedies; and programmes of
// twelve pieces of 100 bars. Every answer should come within 5 seconds on two cores, most within
// half a second.
//   cahier_search_bench [CASES]       200 when not given
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <optional>
#include <string>
#include <vector>

#include "plan/search/planner.h"
#include "plan/search/remedies.h"
#include "plan/search/sensitivity.h"
#include "practice/read_method.h"
#include "random_work.h"
#include "text/templates.h"

namespace {

using namespace cahier;

constexpr int kMostBars = 400;
constexpr double kMostMinutes = 480;
constexpr double kRemedyEffort = 2 * kMostEffort / 3;  // as the command has
constexpr double kTypical = 0.5;                       // seconds
constexpr double kLongest = 5;                         // seconds

struct Case {
  std::vector<Piece> pieces;
  Terms terms;
};

struct Answer {
  std::string what;
  double seconds = 0;
};

const Method& steady() {
  static const Method method = [] {
    Diagnostics diagnostics;
    return read_method(Templates().read("methods", "steady"), "steady", diagnostics);
  }();
  return method;
}

Terms with_minutes(Wishes wishes, Date from, Date by, double minutes) {
  wishes.minutes.emplace();
  wishes.minutes->fill(minutes);
  return settle(from, by, wishes, steady());
}

// Hardly too few minutes a day, or down to six tenths of that; nothing where any are enough.
std::optional<Case> random_misfit(unsigned seed) {
  sample::RandomWork random(seed);
  Case made{{random.piece(kMostBars)}, {}};
  const Date from = *parse_date("2027-01-04");
  const Date by = from + days{random.number(14, 365)};
  const Wishes wishes = random.wishes(from);
  const auto fits = [&](double minutes) {
    made.terms = with_minutes(wishes, from, by, minutes);
    return plan_that_fits(made.pieces, made.terms).has_value();
  };
  // From above, since a plan that fits is found sooner than that there is none.
  double minutes = kMostMinutes;
  while (minutes >= 1 && fits(minutes)) minutes = std::floor(minutes / 1.25);
  if (minutes < 1) return std::nullopt;
  minutes = std::max(1.0, std::floor(minutes * random.number(60, 100) / 100));
  if (fits(minutes)) return std::nullopt;
  return made;
}

// As the command does: the plan, and where it does not fit, what would make it fit; else how late
// it gets when learning takes longer.
Answer answer(const Case& work) {
  const std::clock_t begin = std::clock();
  const Plan plan = make_plan(work.pieces, work.terms);
  std::string what;
  if (plan.fits) {
    sensitivity(work.pieces, work.terms);
    what = "fits";
  } else {
    Effort effort(kRemedyEffort);
    what =
        fmt::format("{} remedies", remedies(work.pieces, work.terms, std::nullopt, effort).size());
  }
  return {what, static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC};
}

void print_misfits(int cases) {
  std::vector<Answer> answers;
  for (unsigned seed = 1; static_cast<int>(answers.size()) < cases; ++seed) {
    const auto misfit = random_misfit(seed);
    if (!misfit) continue;
    Answer one = answer(*misfit);
    one.what = fmt::format("seed {}: {} bars, {} days, {:g} minutes, {}", seed,
                           misfit->pieces[0].bars, (misfit->terms.by - misfit->terms.from).count(),
                           longest_day(misfit->terms), one.what);
    answers.push_back(std::move(one));
  }
  std::sort(answers.begin(), answers.end(),
            [](const Answer& a, const Answer& b) { return a.seconds > b.seconds; });
  const auto over = [&](double limit) {
    return std::count_if(answers.begin(), answers.end(),
                         [&](const Answer& one) { return one.seconds > limit; });
  };
  fmt::print("{} random misfits up to {} bars, refused with their remedies\n", answers.size(),
             kMostBars);
  fmt::print("  median {:.3f} s, {} above {} s, {} above {} s\n",
             answers[answers.size() / 2].seconds, over(kTypical), kTypical, over(kLongest),
             kLongest);
  for (std::size_t at = 0; at < std::min<std::size_t>(5, answers.size()); ++at)
    fmt::print("  {:.3f} s  {}\n", answers[at].seconds, answers[at].what);
  std::fflush(stdout);
}

// Twelve pieces of 100 bars in sections of 16, within `length` days.
void print_programme(int length, double minutes) {
  Case work;
  for (int number = 1; number <= 12; ++number) {
    Piece piece;
    piece.title = fmt::format("Number {}", number);
    piece.bars = 100;
    piece.level = 1 + number % 5;
    piece.tempo = Tempo{120, Beat::quarter};
    for (int first = 1; first <= piece.bars; first += 16) {
      Section section;
      section.name = fmt::format("S{}", first);
      section.bars = {first, std::min(first + 15, piece.bars)};
      if (first == 49) section.same_as = BarRange{17, 32};
      piece.sections.push_back(section);
    }
    work.pieces.push_back(std::move(piece));
  }
  const Date from = *parse_date("2027-01-04");
  work.terms = with_minutes({}, from, from + days{length}, minutes);
  const Answer one = answer(work);
  fmt::print("12 pieces of 100 bars, {} days, {:g} minutes a day: {:.3f} s, {}\n", length, minutes,
             one.seconds, one.what);
  std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
  print_misfits(argc > 1 ? std::atoi(argv[1]) : 200);
  print_programme(180, 120);
  print_programme(180, 30);
  print_programme(365, 60);
  print_programme(365, 40);
  return 0;
}
