#include "practice/clean_run_odds.h"

#include <cmath>

#include "catch.h"

using namespace cahier;

// Clopper, Pearson 1934, Biometrika 26:404-413; the values computed, for n of n as 0.05^(1/n).

TEST_CASE("clean runs only give the published lower bounds", "[numbers]") {
  const struct {
    int runs;
    double bound;
  } table[] = {{1, .050000},  {2, .223607},  {3, .368403},  {5, .549280},
               {8, .687656},  {10, .741134}, {14, .807364}, {20, .860892},
               {29, .901855}, {59, .950492}, {299, .990031}};
  for (const auto& row : table) {
    INFO(row.runs << " of " << row.runs);
    CHECK(clean_run_bound(row.runs, 0) == Approx(row.bound).margin(6e-7));
  }
}

TEST_CASE("one slip among the runs gives the published lower bounds", "[numbers]") {
  const struct {
    int runs;
    double bound;
  } table[] = {{5, .342592},  {8, .529321},  {10, .605837},
               {20, .783894}, {29, .846608}, {59, .922102}};
  for (const auto& row : table) {
    INFO("one slip in " << row.runs);
    CHECK(clean_run_bound(row.runs, 1) == Approx(row.bound).margin(6e-7));
  }
}

TEST_CASE("a bound asked for takes the published number of runs", "[numbers]") {
  const struct {
    double chance;
    int clean;
    int with_a_slip;
  } table[] = {{.5, 5, 8}, {.7, 9, 14}, {.8, 14, 22}, {.9, 29, 46}, {.95, 59, 93}, {.99, 299, 473}};
  for (const auto& row : table) {
    INFO("chance " << row.chance);
    CHECK(runs_needed(row.chance, 0) == row.clean);
    CHECK(runs_needed(row.chance, 1) == row.with_a_slip);
  }
}

TEST_CASE("the fewest runs are the fewest", "[numbers]") {
  for (const int slips : {0, 1, 2, 5})
    for (const double chance : {.3, .6, .85, .97}) {
      const int runs = runs_needed(chance, slips);
      INFO(slips << " slips, chance " << chance);
      CHECK(clean_run_bound(runs, slips) >= chance);
      if (runs > slips + 1) CHECK(clean_run_bound(runs - 1, slips) < chance);
    }
}

TEST_CASE("the rule of three comes close to the bound for many clean runs", "[numbers]") {
  // Hanley, Lippman-Hand 1983, JAMA 249:1743-1745: 1 - 3/n. JAMA 1995;274:1013: 0 of 50, 6 %.
  CHECK(clean_run_bound(50, 0) == Approx(1 - .06).margin(.003));
  CHECK(clean_run_bound(100, 0) == Approx(1 - 3. / 100).margin(.001));
}

TEST_CASE("no clean run proves nothing", "[numbers]") {
  CHECK(clean_run_bound(1, 1) == 0);
  CHECK(clean_run_bound(7, 7) == 0);
}

TEST_CASE("a streak of five within twenty tries is likely even for a shaky player", "[numbers]") {
  // Computed: .9196 at p = .8 and .4777 at p = .6.
  CHECK(streak_chance(5, 20, .8) == Approx(.9196).margin(5e-5));
  CHECK(streak_chance(5, 20, .6) == Approx(.4777).margin(5e-5));
  CHECK(streak_chance(5, 5, .8) == Approx(std::pow(.8, 5)));
  CHECK(streak_chance(5, 4, .8) == 0);
  CHECK(streak_chance(1, 3, .5) == Approx(.875));
}
