#include "practice/slip_chance.h"

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// The first guesses used in the examples below.
Method guesses() {
  Method method = sample::steady();
  method.slip_chance = {.04, .08, .15, .25, .4};
  method.slip_weight = 4;
  return method;
}

// The posterior mean by summing over the chance itself. In the log odds x of the chance p,
// dp = p (1 - p) dx, so that the integrand of Beta(a, b) becomes p^a (1 - p)^b: smooth, and gone at
// both ends.
double by_integration(double mean, double weight, const SlipCount& count) {
  const double slipped = mean * weight + count.slips;
  const double held = (1 - mean) * weight + count.trials - count.slips;
  const double ends = 40 + 45 / std::min(slipped, held);
  double mass = 0;
  double sum = 0;
  for (double x = -ends; x <= ends; x += .02) {
    const double log_chance = std::min(x, 0.) - std::log1p(std::exp(-std::abs(x)));
    const double chance = std::exp(log_chance);
    const double density = std::exp(slipped * log_chance + held * (log_chance - x));
    mass += density;
    sum += chance * density;
  }
  return sum / mass;
}

}  // namespace

TEST_CASE("with no guess at all, slips follow Laplace's rule of succession") {
  // A mean of a half that counts for two trials is Beta(1, 1), every chance as likely as any other:
  // s slips of n give (s + 1)/(n + 2) (Laplace 1814, Essai philosophique sur les probabilités;
  // value from memory).
  Method method = guesses();
  method.slip_chance.fill(.5);
  method.slip_weight = 2;
  for (int trials = 0; trials <= 40; ++trials)
    for (int slips = 0; slips <= trials; ++slips) {
      INFO(slips << " of " << trials);
      CHECK(slip_chance(method, 3, {trials, slips}) == Approx((slips + 1.) / (trials + 2.)));
    }
}

TEST_CASE("the chance of a slip is the one worked out by hand") {
  // Level 2: .08 that counts for 4 trials is .32 of a slip. One slip of one: 1.32/5 = .264; one of
  // four: 1.32/8 = .165; three of six: 3.32/10 = .332; none of six: .32/10 = .032.
  CHECK(slip_chance(guesses(), 2, {0, 0}) == Approx(.08));
  CHECK(slip_chance(guesses(), 2, {1, 1}) == Approx(.264));
  CHECK(slip_chance(guesses(), 2, {4, 1}) == Approx(.165));
  CHECK(slip_chance(guesses(), 2, {6, 3}) == Approx(.332));
  CHECK(slip_chance(guesses(), 2, {6, 0}) == Approx(.032));
  // Level 5: .4 × 4 = 1.6 of a slip. Two of two: 3.6/6 = .6.
  CHECK(slip_chance(guesses(), 5, {2, 2}) == Approx(.6));
}

TEST_CASE("the closed form is the mean of the posterior, summed over every chance") {
  for (int level = 1; level <= 5; ++level)
    for (const double weight : {.5, 4., 20.})
      for (const SlipCount count : {SlipCount{0, 0}, {1, 0}, {1, 1}, {7, 3}, {30, 2}, {30, 30}}) {
        Method method = guesses();
        method.slip_weight = weight;
        INFO("level " << level << ", weight " << weight << ", " << count.slips << " of "
                      << count.trials);
        CHECK(slip_chance(method, level, count) ==
              Approx(by_integration(method.slip_chance[level - 1], weight, count))
                  .margin(1e-9)
                  .epsilon(0));
      }
}

TEST_CASE("after very many trials the chance is the share of slips") {
  for (const int percent : {0, 5, 50, 100})
    CHECK(slip_chance(guesses(), 4, {100000, percent * 1000}) ==
          Approx(percent / 100.).margin(5e-5));
}

TEST_CASE("one trial moves the chance less than ten that went as it did") {
  for (int level = 1; level <= 5; ++level) {
    const double guess = slip_chance(guesses(), level, {});
    CHECK(slip_chance(guesses(), level, {1, 1}) > guess);
    CHECK(slip_chance(guesses(), level, {10, 10}) > slip_chance(guesses(), level, {1, 1}));
    CHECK(slip_chance(guesses(), level, {1, 0}) < guess);
    CHECK(slip_chance(guesses(), level, {10, 0}) < slip_chance(guesses(), level, {1, 0}));
    CHECK(slip_chance(guesses(), level, {1000, 0}) > 0);
    CHECK(slip_chance(guesses(), level, {1000, 1000}) < 1);
  }
}

TEST_CASE("slips raise the weakness to the level whose own chance they reach") {
  // Level 2, as above: .264 reaches level 4 (.25) and not level 5 (.4); .165 reaches level 3 (.15);
  // one slip of five is 1.32/9 = .1467 and reaches none; four of six are 4.32/10 = .432, level 5.
  CHECK(weakness(guesses(), 2, {1, 1}) == 4);
  CHECK(weakness(guesses(), 2, {4, 1}) == 3);
  CHECK(weakness(guesses(), 2, {5, 1}) == 2);
  CHECK(weakness(guesses(), 2, {6, 4}) == 5);
}

TEST_CASE("a slip at first sight of a passage weighs what the manual says") {
  // The built-in guess for level 2 is .04, .16 of a slip in 4 trials: one of one is 1.16/5 = .232,
  // past level 4 (.15); one of eleven 1.16/15 = .0773, short of level 3 (.08); one of ten .0829.
  CHECK(slip_chance(sample::steady(), 2, {1, 1}) == Approx(.232));
  CHECK(weakness(sample::steady(), 2, {1, 1}) == 4);
  CHECK(weakness(sample::steady(), 2, {10, 1}) == 3);
  CHECK(weakness(sample::steady(), 2, {11, 1}) == 2);
}

TEST_CASE("without a slip nothing is weaker than the piece says") {
  for (int level = 1; level <= 5; ++level)
    for (const int trials : {0, 1, 5, 100}) CHECK(weakness(guesses(), level, {trials, 0}) == level);
  // Nor where two levels slip alike in the method.
  Method alike = guesses();
  alike.slip_chance.fill(.2);
  for (const int trials : {0, 3}) CHECK(weakness(alike, 2, {trials, 0}) == 2);
}

TEST_CASE("more slips never lower the weakness, more that held never raise it") {
  for (int level = 1; level <= 5; ++level)
    for (int trials = 0; trials <= 25; ++trials)
      for (int slips = 0; slips <= trials; ++slips) {
        INFO("level " << level << ", " << slips << " of " << trials);
        const int weak = weakness(guesses(), level, {trials, slips});
        CHECK(weak >= level);
        CHECK(weak <= 5);
        if (slips < trials) CHECK(weakness(guesses(), level, {trials, slips + 1}) >= weak);
        CHECK(weakness(guesses(), level, {trials + 1, slips + 1}) >= weak);
        CHECK(weakness(guesses(), level, {trials + 1, slips}) <= weak);
      }
}

TEST_CASE("a weakness is forgotten when the passage has held often enough") {
  // One slip and n that held, level 2: 1.32/(5 + n) < .15 from n = 4 on (1.32/9 = .1467).
  CHECK(weakness(guesses(), 2, {4, 1}) > 2);
  CHECK(weakness(guesses(), 2, {5, 1}) == 2);
}

}  // namespace cahier
