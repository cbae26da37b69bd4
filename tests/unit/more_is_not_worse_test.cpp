// More time makes no plan worse: one more minute a day, a day off taken back, a date a week later.
#include <fmt/format.h>

#include <iostream>
#include <map>

#include "catch.h"
#include "long_checks.h"
#include "plan/quality/quality.h"
#include "roomy_work.h"

namespace cahier {
namespace {

// Of the figures met before.
constexpr double kLost = .01;
// With hardly enough minutes a plan is the first that fits, and the next one may be another: 1.9 of
// 100 were lost when this was written.
constexpr double kLostWhenTight = .025;
constexpr double kHalved = .005;  // none should; 10 of 2261 did with hardly enough minutes

// Of pairs of a plan and the one with more time, by figure.
struct Kept {
  int met = 0;     // before, and asked after
  int lost = 0;    // of those: no longer met
  int halved = 0;  // of all that are asked in both: at most half as good as before
};

struct Compared {
  std::map<FigureKind, Kept> figures;
  int pairs = 0;
  int misfits = 0;  // plans that no longer fit
  std::vector<std::string> worse;

  Kept all() const {
    Kept sum;
    for (const auto& [kind, kept] : figures) {
      sum.met += kept.met;
      sum.lost += kept.lost;
      sum.halved += kept.halved;
    }
    return sum;
  }
};

// How good a figure is, from its row: 1 within its bounds, the share of what is wanted where it is
// short, and for a count that should be nothing the less the more there are.
double goodness(const QualityFigure& figure) {
  return 1 / std::max(1.0, figure.wanted.shortness(figure.figure));
}

// A figure is a share, or counts days or chunks: one such count more than wanted is no fall by
// half.
bool fell_by_half(const QualityFigure& before, const QualityFigure& after) {
  return goodness(after) < goodness(before) / 2 - 1e-9;
}

void compare(Compared& sums, const Plan& before, const Plan& after, const std::string& which) {
  if (!before.fits) return;
  ++sums.pairs;
  if (!after.fits) {
    ++sums.misfits;
    return;
  }
  const std::vector<QualityFigure> then = quality(before);
  const std::vector<QualityFigure> now = quality(after);
  for (const QualityFigure& one : then)
    for (const QualityFigure& other : now) {
      if (one.name != other.name) continue;
      Kept& kept = sums.figures[one.name];
      const bool lost = one.met && !other.met;
      const bool halved = fell_by_half(one, other);
      kept.met += one.met ? 1 : 0;
      kept.lost += lost ? 1 : 0;
      kept.halved += halved ? 1 : 0;
      if (lost || halved)
        sums.worse.push_back(fmt::format("{} {}: {:.4g} to {:.4g}", figure_word(one.name), which,
                                         one.figure, other.figure));
    }
}

constexpr std::array<std::string_view, 3> kMore = {"one more minute a day", "a day off taken back",
                                                   "a week later"};

using Changes = std::array<Compared, 3>;

void compare_all(Changes& changes, unsigned seed, double slack) {
  const auto work = sample::roomy_work(seed, slack);
  if (!work) return;
  const Terms& terms = work->terms;
  const std::string which = fmt::format("seed {} at {}", seed, slack);
  const Plan plan = make_plan(work->pieces, terms);
  Terms more = terms;
  for (double& minutes : more.minutes) minutes += 1;
  compare(changes[0], plan, make_plan(work->pieces, more), which);
  Terms fewer_days = terms;
  const int length = static_cast<int>((terms.by - terms.from).count());
  const Date off = terms.from + days{static_cast<int>(seed * 7u + 3u) % length};
  fewer_days.days_off.dates.push_back({off, off});
  compare(changes[1], make_plan(work->pieces, fewer_days), plan, which);
  Terms later = terms;
  later.by += days{7};
  compare(changes[2], plan, make_plan(work->pieces, later), which);
}

std::string table_of(const Changes& changes) {
  std::string text;
  const auto add = [&](std::string_view word, const Kept& kept) {
    text += fmt::format("  {:<22}{:>6} met {:>4} lost {:>4} halved {:.4f}\n", word, kept.met,
                        kept.lost, kept.halved, 1 - 1.0 * kept.lost / std::max(1, kept.met));
  };
  for (std::size_t change = 0; change < changes.size(); ++change) {
    const Compared& sums = changes[change];
    text +=
        fmt::format("{}: {} pairs, {} no longer fit\n", kMore[change], sums.pairs, sums.misfits);
    for (const auto& [kind, kept] : sums.figures) add(figure_word(kind), kept);
    add("all figures", sums.all());
    for (const std::string& which : sums.worse) text += "    " + which + "\n";
  }
  return text;
}

}  // namespace

TEST_CASE("more time makes no plan worse") {
  for (const double slack : {2.0, 1.0}) {
    // The fewest minutes show nothing in a few cases.
    if (slack == 1 && !sample::in_long_checks()) continue;
    Changes changes;
    const unsigned seeds = sample::in_long_checks() ? 300 : 14;
    for (unsigned seed = 1000; seed < 1000 + seeds; ++seed) compare_all(changes, seed, slack);
    const std::string table =
        fmt::format("with {} times the least minutes\n", slack) + table_of(changes);
    if (sample::in_long_checks()) std::cout << table;
    INFO(table);
    Kept sum;
    for (const Compared& sums : changes) {
      const Kept all = sums.all();
      CHECK(sums.misfits == 0);
      CHECK(all.met > 5 * static_cast<int>(seeds));
      if (sample::in_long_checks())
        CHECK(all.lost <= (slack > 1 ? kLost : kLostWhenTight) * all.met);
      sum.met += all.met;
      sum.lost += all.lost;
      sum.halved += all.halved;
    }
    CHECK(sum.lost <= (slack > 1 ? kLost : kLostWhenTight) * sum.met);
    CHECK(sum.halved <= kHalved * sum.met);
  }
}

}  // namespace cahier
