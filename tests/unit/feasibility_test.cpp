#include "plan/search/remedies.h"

#include <cmath>

#include "catch.h"
#include "sample_plan.h"
#include "typed_remedy.h"

namespace cahier {
namespace {

struct Misfit {
  std::vector<Piece> pieces;
  Terms terms;
  std::vector<Remedy> found;

  Misfit(const std::string& yaml, const std::string& from, const std::string& by)
      : pieces({sample::piece(yaml)}),
        terms(settle(sample::date(from), sample::date(by), pieces.front().practice,
                     sample::steady())),
        found(remedies(pieces, terms)) {}

  bool fits(const Terms& changed) const { return plan_that_fits(pieces, changed).has_value(); }
  bool fits(const std::string& say) const { return fits(sample::typed(terms, say)); }

  // The remedy of one option; nullptr when it is not offered.
  const Remedy* single(const std::string& option) const {
    for (const Remedy& remedy : found)
      if (remedy.say.starts_with(option) && sample::options_of(remedy.say).size() == 1)
        return &remedy;
    return nullptr;
  }
};

// Each differs from the others in what helps: pairs of all kinds, uneven weekdays and days off,
// repetitions, larger chunks. Of the first every bar is asked for in Temper.
const std::vector<Misfit>& misfits() {
  static const std::vector<Misfit> all = {
      {"title: A\nbars: 64\ntempo: 96\nlevel: 4\n", "2027-03-06", "2027-03-20"},
      {"title: B\nbars: 48\ntempo: 96\nlevel: 3\n"
       "practice: {minutes: {mon: 15, wed: 15, sat: 30}}\n",
       "2027-01-04", "2027-01-25"},
      {"title: C\nbars: 96\ntempo: 96\nlevel: 3\npractice: {days off: [sun, 2027-01-12]}\n",
       "2027-01-04", "2027-01-20"},
      {"title: D\nbars: 60\ntempo: 160\nlevel: 3\npractice: {minutes: 20}\n", "2027-01-04",
       "2027-01-12"}};
  return all;
}

}  // namespace

// One test, for the works are searched once for all of it.
TEST_CASE("remedies of works that do not fit") {
  SECTION("every remedy fits when it is typed, and the easiest comes first") {
    for (const Misfit& misfit : misfits()) {
      REQUIRE_FALSE(misfit.fits(misfit.terms));
      CHECK(misfit.found.size() >= 3);
      CHECK(misfit.found.size() <= 8);
      for (std::size_t i = 1; i < misfit.found.size(); ++i)
        CHECK(misfit.found[i - 1].asks <= misfit.found[i].asks);
      for (const Remedy& remedy : misfit.found) {
        INFO(misfit.pieces[0].title << ": " << remedy.say);
        CHECK(misfit.fits(remedy.say));
      }
    }
  }

  SECTION("of each kind the least that fits is offered") {
    int kinds = 0;
    for (const Misfit& misfit : misfits()) {
      const auto least = [&](const std::string& option, const auto& less) {
        const Remedy* remedy = misfit.single(option);
        if (!remedy) return;
        INFO(misfit.pieces[0].title << ": " << remedy->say);
        ++kinds;
        for (Terms terms = sample::typed(misfit.terms, remedy->say); less(terms);)
          CHECK_FALSE(misfit.fits(terms));
      };
      // All that lies between what was asked for and the remedy. Where every weekday has the same
      // minutes, a minute less a day; where not, the minutes are proportional and rounded up.
      least("--by", [&](Terms& terms) { return (terms.by -= days{1}) > misfit.terms.by; });
      least("--from", [&](Terms& terms) { return (terms.from += days{1}) < misfit.terms.from; });
      least("--repetitions", [&](Terms& terms) {
        return ++terms.method.repetitions < misfit.terms.method.repetitions;
      });
      least("--chunk-bars", [&](Terms& terms) {
        terms.method = terms.method.with_chunks_up_to(terms.method.chunk_most - 1);
        return terms.method.chunk_most > misfit.terms.method.chunk_most;
      });
      least("--minutes", [&](Terms& terms) {
        for (double& each : terms.minutes) each = std::max(0.0, each - 1);
        return terms.minutes[0] > misfit.terms.minutes[0] && misfit.pieces[0].title != "B";
      });
    }
    CHECK(kinds >= 14);
  }

  SECTION("a pair needs both its parts, and asks less than either by itself") {
    int pairs = 0;
    for (const Misfit& misfit : misfits())
      for (const Remedy& remedy : misfit.found) {
        const std::vector<std::string> parts = sample::options_of(remedy.say);
        if (parts.size() == 1) continue;
        ++pairs;
        REQUIRE(parts.size() == 2);
        INFO(misfit.pieces[0].title << ": " << remedy.say);
        for (const std::string& part : parts) {
          CHECK_FALSE(misfit.fits(part));
          if (const Remedy* alone = misfit.single(part.substr(0, part.find(' '))))
            CHECK(remedy.asks < alone->asks);
        }
      }
    CHECK(pairs >= 6);
  }

  SECTION("what a remedy asks is the share that it changes, and of a pair the root of squares") {
    const Misfit& misfit = misfits().front();
    const Terms& asked = misfit.terms;
    const auto share_of = [&](const std::string& part) {
      const Terms terms = sample::typed(asked, part);
      const double planned = static_cast<double>((asked.by - asked.from).count());
      return (terms.minutes[0] - asked.minutes[0]) / asked.minutes[0] +
             static_cast<double>((terms.by - asked.by).count()) / planned +
             static_cast<double>((asked.from - terms.from).count()) / planned +
             (1 - terms.method.repetitions / static_cast<double>(asked.method.repetitions)) +
             (terms.method.chunk_most / static_cast<double>(asked.method.chunk_most) - 1);
    };
    for (const Remedy& remedy : misfit.found) {
      INFO(remedy.say);
      double squares = 0;
      for (const std::string& part : sample::options_of(remedy.say))
        squares += share_of(part) * share_of(part);
      CHECK(remedy.asks == Approx(std::sqrt(squares)));
    }
  }

  SECTION("no remedy begins before the earliest start") {
    const Misfit& misfit = misfits().front();
    REQUIRE(misfit.single("--from"));
    const auto starts = [&](int days_before) {
      std::vector<std::string> said;
      for (const Remedy& remedy :
           remedies(misfit.pieces, misfit.terms, misfit.terms.from - days{days_before}))
        for (const std::string& part : sample::options_of(remedy.say))
          if (part.starts_with("--from")) said.push_back(part.substr(7));
      return said;
    };
    CHECK(starts(0).empty());
    for (const std::string& start : starts(9))
      CHECK(sample::date(start) >= misfit.terms.from - days{9});
    CHECK(starts(60).size() >= 1);
  }

  SECTION("nothing is offered that changes nothing") {
    // Spoken and written work gives way by itself.
    for (const Misfit& misfit : misfits()) {
      for (const Remedy& remedy : misfit.found)
        CHECK(remedy.say.find("--temper") == std::string::npos);
      Terms without = misfit.terms;
      without.temper = Temper::no;
      CHECK_FALSE(misfit.fits(without));
    }
  }
}

}  // namespace cahier
