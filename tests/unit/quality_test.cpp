// Figures of real plans: what is true of all of them, how they are said, and the share that is met.
#include <fmt/format.h>

#include <filesystem>
#include <iostream>
#include <map>
#include <set>

#include "catch.h"
#include "later_edition.h"
#include "paths.h"
#include "quality_plan.h"
#include "random_case.h"
#include "report/plan_text.h"
#include "report/teacher_text.h"
#include "roomy_work.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

struct Share {
  int asked = 0;
  int met = 0;
};
using Shares = std::map<FigureKind, Share>;

void count(Shares& shares, const Plan& plan) {
  for (const QualityFigure& figure : quality(plan)) {
    ++shares[figure.name].asked;
    shares[figure.name].met += figure.met ? 1 : 0;
  }
}

// The random plans that fit, of these seeds.
std::vector<Plan> random_plans(unsigned first, unsigned count) {
  std::vector<Plan> plans;
  for (unsigned seed = first; seed < first + count; ++seed) {
    const sample::RandomCase random = sample::random_case(seed);
    if (!random.any_practice_day()) continue;
    Plan plan = make_plan(random.pieces, random.terms);
    if (plan.fits) plans.push_back(std::move(plan));
  }
  return plans;
}

std::vector<std::filesystem::path> examples() {
  std::vector<std::filesystem::path> found;
  for (const auto& file : std::filesystem::directory_iterator(EXAMPLES))
    if (file.path().extension() == ".yaml") found.push_back(file.path());
  std::sort(found.begin(), found.end());
  return found;
}

// Eleven weeks.
Plan plan_of_example(const std::filesystem::path& path) {
  Diagnostics diagnostics;
  const auto piece = read_piece(Source::from_file(path.string()), diagnostics);
  REQUIRE(piece.has_value());
  return make_plan({*piece}, settle(sample::date("2027-01-04"), sample::date("2027-03-22"),
                                    piece->practice, sample::steady()));
}

std::string one_line(FigureKind kind, const std::string& text) {
  return fmt::format("{:<22}{}\n", figure_word(kind), text);
}

}  // namespace

TEST_CASE("a figure is met where it lies within its bounds, and else says why") {
  std::set<Lack> lacks;
  for (const Plan& plan : random_plans(0, 100))
    for (const QualityFigure& figure : quality(plan)) {
      INFO(figure_word(figure.name) << " " << figure.figure);
      REQUIRE(figure.met == figure.wanted.holds(figure.figure));
      REQUIRE(figure.met == figure.why.empty());
      REQUIRE((figure.wanted.at_least || figure.wanted.at_most));
      for (const Shortfall& shortfall : figure.why) {
        lacks.insert(shortfall.lack);
        REQUIRE((shortfall.mend == Mend::unsaid || shortfall.mend == Mend::later_date ||
                 shortfall.window.has_value()));
      }
    }
  CHECK(lacks.size() > 20);
}

TEST_CASE("figures come in their order, each once, and each has a word of its own") {
  std::set<std::string_view> words;
  for (const FigureKind kind : every_figure()) words.insert(figure_word(kind));
  CHECK(words.size() == every_figure().size());
  CHECK(words.size() == 16);
  for (const Plan& plan : random_plans(200, 20)) {
    const std::vector<QualityFigure> all = quality(plan);
    for (std::size_t at = 1; at < all.size(); ++at) REQUIRE(all[at - 1].name < all[at].name);
  }
}

TEST_CASE("a bound holds exactly at it and not past it") {
  CHECK(Wanted{{}, 10}.holds(10));
  CHECK_FALSE(Wanted{{}, 10}.holds(10.01));
  CHECK(Wanted{{}, 0}.holds(0));
  CHECK_FALSE(Wanted{{}, 0}.holds(1));
  CHECK(Wanted{0.5, {}}.holds(0.5));
  CHECK_FALSE(Wanted{0.5, {}}.holds(0.49));
  CHECK_FALSE(Wanted{0.5, {}}.holds(0));
  CHECK_FALSE(Wanted{0.3, 0.5}.holds(0.29));
  CHECK_FALSE(Wanted{0.3, 0.5}.holds(0.51));
}

TEST_CASE("every way to fall short is said in words of the catalogue") {
  const Plan plan = sound_plan();
  std::set<std::string> said;
  for (std::size_t at = 0; at < lack_words().size(); ++at) {
    Shortfall shortfall;
    shortfall.lack = static_cast<Lack>(at);
    shortfall.bars = {{5, 8}};
    shortfall.dates = {plan.from};
    said.insert(say_shortfall(english_words(), plan, shortfall));
  }
  CHECK(said.size() == lack_words().size());
  CHECK(said.contains("No slow pass: bars 5–8."));
  std::set<std::string> keys;
  for (const std::string& key : english_words().keys())
    if (key.starts_with("teacher_asks.")) keys.insert(key.substr(13));
  CHECK(keys == std::set<std::string>(lack_words().begin(), lack_words().end()));
}

TEST_CASE("a shortfall is said with its bars, its dates and what would make room") {
  const Plan plan = sound_plan();
  Shortfall shortfall{.lack = Lack::seam_late, .bars = {{9, 10}, {4, 5}}, .wanted = 7};
  shortfall.mend = Mend::more_minutes;
  shortfall.window = DateSpan{plan.from, plan.from + days{7}};
  CHECK(say_shortfall(english_words(), plan, shortfall) ==
        "Seams that are not played within 7 days of both sides being learned: bars 4–5 and 9–10. "
        "More minutes from 4 January to 11 January would make room.");
  shortfall.bars.clear();
  for (int bar = 1; bar <= 10; ++bar) shortfall.bars.push_back({bar, bar});
  shortfall.mend = Mend::later_date;
  CHECK(
      say_shortfall(english_words(), plan, shortfall) ==
      "Seams that are not played within 7 days of both sides being learned: bars 1, 2, 3, 4, 5, 6, "
      "7, 8 and 2 more. A later date would make room.");
  // What is short never looks as if it were not.
  CHECK(say_shortfall(english_words(), plan, {.lack = Lack::gaps_off, .found = 94.99, .wanted = 95})
            .starts_with("94.9 %"));
  CHECK(say_shortfall(english_words(), plan,
                      {.lack = Lack::temper_share, .found = 25.01, .wanted = 25})
            .find("25.1 %") != std::string::npos);
}

TEST_CASE("a plan's text ends with what a teacher would ask, and with nothing where all is met") {
  const auto text = [](const Plan& plan) { return plan_text(plan, english_words(), false); };
  Plan plan = sample::learned_plan(40);
  REQUIRE_FALSE(sample::figure_of(plan, FigureKind::first_run_through)->met);
  const std::string asked = "\nWhat a teacher would ask\n  There is no run-through;";
  CHECK(text(plan).find(asked) != std::string::npos);
  CHECK(text(plan).ends_with(teacher_text(plan, english_words())));
  Plan misfit = plan;
  misfit.fits = false;
  CHECK(teacher_text(misfit, english_words()).empty());
  // Too near a date for nearly all of the figures.
  Plan met = sample::empty_plan(6);
  for (const QualityFigure& figure : quality(met)) CHECK(figure.met);
  CHECK(teacher_text(met, english_words()).empty());
}

TEST_CASE("a kept piece and a later edition have figures too") {
  const Plan later = sample::later_edition(sound_plan(), sample::date("2027-01-11"));
  for (const QualityFigure& figure : quality(later)) CHECK(figure.met == figure.why.empty());
  CHECK(sample::figure_of(later, FigureKind::seams).has_value());
}

// For looking at: name it to see it. Before and after a change of the planner they tell what it is
// worth.
TEST_CASE("table of every figure", "[.table]") {
  for (const double slack : {2.0, 1.0}) {
    Shares shares;
    Share all;
    int plans = 0;
    for (unsigned seed = 0; seed < 300; ++seed) {
      const auto work = sample::roomy_work(seed, slack, 120);
      if (!work) continue;
      ++plans;
      count(shares, make_plan(work->pieces, work->terms));
    }
    std::cout << "of " << plans << " plans with " << slack
              << " times the least minutes: asked, met, share\n";
    for (const FigureKind kind : every_figure()) {
      const Share& share = shares[kind];
      all.asked += share.asked;
      all.met += share.met;
      std::cout << one_line(
          kind,
          fmt::format("{:>6}{:>6}{:>6}", share.asked, share.met,
                      share.asked > 0 ? fmt::format("{:.2f}", 1.0 * share.met / share.asked) : ""));
    }
    std::cout << "all figures " << fmt::format("{:.3f}", 1.0 * all.met / all.asked) << "\n";
  }
  for (const auto& path : examples()) {
    std::cout << "\n" << path.filename().string() << ", eleven weeks\n";
    for (const QualityFigure& figure : quality(plan_of_example(path)))
      std::cout << one_line(
          figure.name, fmt::format("{:>8.4g}  {}", figure.figure, figure.met ? "met" : "short"));
  }
}
