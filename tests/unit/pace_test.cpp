#include "practice/pace.h"

#include <cmath>
#include <utility>

#include "catch.h"
#include "sample_chance.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// The spreads used in the examples below, whatever the built-in method says.
Method method_with(double players = .35, double levels = .15, double times = .3) {
  Method method = sample::steady();
  method.pace_of_players = players;
  method.pace_of_levels = levels;
  method.pace_of_times = times;
  return method;
}

double squared(double value) { return value * value; }

std::vector<PaceSample> same_again(PaceSample sample, int times) {
  return std::vector<PaceSample>(static_cast<std::size_t>(times), sample);
}

// A second way, from the model alone: the most likely player and levels of a normal model, which
// are also their means, make
//   player²/players² + sum of level²/levels² + sum of weight (log ratio - player - level)²/times²
// least. Its normal equations are solved for all six unknowns by elimination.
ByLevel by_normal_equations(const Method& method, const std::vector<PaceSample>& samples) {
  constexpr int kUnknowns = 6;  // the player, then the levels
  double rows[kUnknowns][kUnknowns + 1] = {};
  rows[0][0] = 1 / squared(method.pace_of_players);
  for (int level = 1; level < kUnknowns; ++level)
    rows[level][level] = 1 / squared(method.pace_of_levels);
  for (const PaceSample& sample : samples) {
    const double precision = sample.weight / squared(method.pace_of_times);
    for (const int row : {0, sample.level}) {
      for (const int column : {0, sample.level}) rows[row][column] += precision;
      rows[row][kUnknowns] += precision * std::log(sample.ratio);
    }
  }
  for (int pivot = 0; pivot < kUnknowns; ++pivot)
    for (int row = 0; row < kUnknowns; ++row) {
      if (row == pivot) continue;
      const double factor = rows[row][pivot] / rows[pivot][pivot];
      for (int column = pivot; column <= kUnknowns; ++column)
        rows[row][column] -= factor * rows[pivot][column];
    }
  ByLevel pace{};
  const double player = rows[0][kUnknowns] / rows[0][0];
  for (int level = 1; level < kUnknowns; ++level)
    pace[level - 1] = std::exp(player + rows[level][kUnknowns] / rows[level][level]);
  return pace;
}

// A third way: the mean of player + level over the posterior itself, summed over a fine grid of the
// player and of two levels, the only ones with samples.
std::pair<double, double> by_integration(const Method& method, int one, int other,
                                         const std::vector<PaceSample>& samples) {
  constexpr int kHalf = 40;
  constexpr double kSpreads = 9;  // on either side
  const double player_step = kSpreads * method.pace_of_players / kHalf;
  const double level_step = kSpreads * method.pace_of_levels / kHalf;
  double mass = 0;
  double sum_of_one = 0;
  double sum_of_other = 0;
  for (int i = -kHalf; i <= kHalf; ++i)
    for (int j = -kHalf; j <= kHalf; ++j)
      for (int k = -kHalf; k <= kHalf; ++k) {
        const double player = i * player_step;
        const double first = j * level_step;
        const double second = k * level_step;
        double surprise = squared(player / method.pace_of_players) +
                          squared(first / method.pace_of_levels) +
                          squared(second / method.pace_of_levels);
        for (const PaceSample& sample : samples)
          surprise +=
              sample.weight *
              squared((std::log(sample.ratio) - player - (sample.level == one ? first : second)) /
                      method.pace_of_times);
        const double density = std::exp(-surprise / 2);
        mass += density;
        sum_of_one += density * (player + first);
        sum_of_other += density * (player + second);
      }
  REQUIRE(one != other);
  return {std::exp(sum_of_one / mass), std::exp(sum_of_other / mass)};
}

}  // namespace

TEST_CASE("without a sample the method's minutes stand") {
  CHECK(learn_pace(method_with(), {}) == ByLevel{1, 1, 1, 1, 1});
}

TEST_CASE("one time that took half as long again moves the pace by the share worked out by hand") {
  // Variances: players .35² = .1225, levels .15² = .0225, times .3² = .09; all of one sample .235.
  // The player's share of it is .1225/.235 = .521277, the player's and the level's together
  // .145/.235 = .617021; log 1.5 = .405465.
  //   level 2: exp(.617021 × .405465) = exp(.250180) = 1.28426
  //   the others: exp(.521277 × .405465) = exp(.211359) = 1.23536
  const ByLevel pace = learn_pace(method_with(), {{2, 1.5}});
  CHECK(pace[1] == Approx(1.28426).margin(5e-6));
  for (const int other : {0, 2, 3, 4}) CHECK(pace[other] == Approx(1.23536).margin(5e-6));
}

TEST_CASE("ten times that took half as long again nearly tell the whole, as the manual says") {
  // Level variance .0225 + .09/10 = .0315; player .405465 × .1225/(.1225 + .0315) = .322529, exp
  // 1.380615; level .322529 + .0225/.0315 × (.405465 - .322529) = .381769, exp 1.464874.
  const ByLevel pace = learn_pace(method_with(), same_again({2, 1.5}, 10));
  CHECK(pace[1] == Approx(1.464874).margin(2e-6));
  CHECK(pace[2] == Approx(1.380615).margin(2e-6));
}

TEST_CASE("three times at two levels give the pace worked out by hand") {
  // Level 2 took 1.5 and 1.6 times as long: mean log (.405465 + .470004)/2 = .437735, of variance
  // .0225 + .09/2 = .0675. Level 4 took 1.2 times: log .182322, variance .0225 + .09 = .1125.
  // Player: precision 1/.1225 + 1/.0675 + 1/.1125 = 8.163265 + 14.814815 + 8.888889 = 31.866969,
  //   mean (.437735 × 14.814815 + .182322 × 8.888889)/31.866969 = 8.105603/31.866969 = .254358.
  // Level 2: trust .0225/.0675 = 1/3, .254358 + (.437735 - .254358)/3 = .315484, exp 1.370922.
  // Level 4: trust .0225/.1125 = 1/5, .254358 + (.182322 - .254358)/5 = .239951, exp 1.271187.
  const ByLevel pace = learn_pace(method_with(), {{2, 1.5}, {4, 1.2}, {2, 1.6}});
  CHECK(pace[1] == Approx(1.370922).margin(2e-6));
  CHECK(pace[3] == Approx(1.271187).margin(2e-6));
  for (const int other : {0, 2, 4}) CHECK(pace[other] == Approx(std::exp(.254358)).margin(2e-6));
}

TEST_CASE("the closed form solves the normal equations of the whole model") {
  sample::Chance chance(1);
  for (int trial = 0; trial < 200; ++trial) {
    Method method = method_with();
    method.pace_of_players = chance.between(.05, 1);
    method.pace_of_levels = chance.between(.05, .5);
    method.pace_of_times = chance.between(.05, .6);
    std::vector<PaceSample> samples(static_cast<std::size_t>(chance.number(0, 30)));
    for (PaceSample& sample : samples) {
      sample.level = chance.number(1, 5);
      sample.ratio = chance.between(.25, 4.5);
      sample.weight = chance.between(.25, 2);
    }
    const ByLevel pace = learn_pace(method, samples);
    const ByLevel again = by_normal_equations(method, samples);
    INFO("trial " << trial << ", " << samples.size() << " samples");
    for (std::size_t i = 0; i < pace.size(); ++i)
      CHECK(pace[i] == Approx(again[i]).margin(1e-9).epsilon(0));
  }
}

TEST_CASE("the closed form is the mean of the posterior, summed over a grid") {
  const std::vector<PaceSample> samples = {{2, 1.5}, {4, 1.2}, {2, 1.6}, {4, .9, .5}};
  const ByLevel pace = learn_pace(method_with(), samples);
  const auto [second, fourth] = by_integration(method_with(), 2, 4, samples);
  CHECK(pace[1] == Approx(second).margin(1e-9).epsilon(0));
  CHECK(pace[3] == Approx(fourth).margin(1e-9).epsilon(0));
}

TEST_CASE("one time moves the pace less than ten that took as long, and never past them") {
  for (const double ratio : {.5, .8, 1.25, 2.}) {
    double before = 0;
    for (const int times : {1, 2, 10, 100}) {
      const double moved =
          std::log(learn_pace(method_with(), same_again({3, ratio}, times))[2]) / std::log(ratio);
      INFO(times << " times " << ratio);
      CHECK(moved > before);
      CHECK(moved < 1);
      before = moved;
    }
  }
}

TEST_CASE("very many times tell the pace of each level, whatever the first guess") {
  std::vector<PaceSample> samples;
  const ByLevel truth = {.7, 1.5, 1.1, 1.3, 2.5};
  sample::Chance chance(2);
  for (int level = 1; level <= 5; ++level)
    for (int time = 0; time < 20000; ++time)
      samples.push_back({level, truth[level - 1] * std::exp(.2 * chance.normal())});
  const ByLevel pace = learn_pace(method_with(), samples);
  // The spread of a mean of 20 000 is .2/141 = .0014; five of them.
  for (std::size_t i = 0; i < pace.size(); ++i)
    CHECK(std::log(pace[i]) == Approx(std::log(truth[i])).margin(.007));
}

TEST_CASE("a level that was never timed follows what the others say of the player") {
  const ByLevel pace =
      learn_pace(method_with(), {{1, 1.5}, {2, 1.5}, {3, 1.5}, {1, 1.5}, {2, 1.5}, {3, 1.5}});
  CHECK(pace[3] > 1.3);
  CHECK(pace[3] < pace[2]);
  CHECK(pace[3] == Approx(pace[4]));
  // One slow level says less of the player than three.
  CHECK(learn_pace(method_with(), same_again({1, 1.5}, 6))[3] < pace[3]);
}

TEST_CASE("levels that differ more between them borrow less from each other") {
  const std::vector<PaceSample> samples = {{2, 1.5}, {2, 1.5}, {2, 1.5}, {4, 1.0}, {4, 1.0}};
  double before = 0;
  for (const double levels : {.01, .05, .15, .5}) {
    const ByLevel pace = learn_pace(method_with(.35, levels), samples);
    CHECK(pace[1] - pace[3] > before);
    before = pace[1] - pace[3];
  }
}

TEST_CASE("half a sample counts half, and none counts nothing") {
  CHECK(learn_pace(method_with(), {{2, 1.4, .5}, {2, 1.4, .5}})[1] ==
        Approx(learn_pace(method_with(), {{2, 1.4}})[1]).margin(1e-12));
  CHECK(learn_pace(method_with(), {{2, 1.4, 0}, {5, 3, 0}}) == ByLevel{1, 1, 1, 1, 1});
}

TEST_CASE("the order of the samples does not matter beyond rounding") {
  const ByLevel forward = learn_pace(method_with(), {{2, 1.5}, {4, .8}, {2, 1.1}, {1, 3}});
  const ByLevel backward = learn_pace(method_with(), {{1, 3}, {2, 1.1}, {4, .8}, {2, 1.5}});
  for (std::size_t i = 0; i < forward.size(); ++i)
    CHECK(forward[i] == Approx(backward[i]).margin(1e-12));
}

TEST_CASE("a pause for lunch counts as five times, a slip of the pen as a fifth", "[numbers]") {
  CHECK(learn_pace(method_with(), {{2, 60}}) == learn_pace(method_with(), {{2, 5}}));
  CHECK(learn_pace(method_with(), {{2, .001}}) == learn_pace(method_with(), {{2, .2}}));
  CHECK(learn_pace(method_with(), {{2, 4.9}})[1] < learn_pace(method_with(), {{2, 5}})[1]);
}

TEST_CASE("over many players the estimate errs less than the bare mean and the first guess") {
  // The players are drawn from the model itself, four times each at level 3.
  const Method method = method_with();
  sample::Chance chance(3);
  double error = 0;
  double of_the_mean = 0;
  double of_the_guess = 0;
  constexpr int kPlayers = 4000;
  for (int player = 0; player < kPlayers; ++player) {
    const double truth =
        std::hypot(method.pace_of_players, method.pace_of_levels) * chance.normal();
    std::vector<PaceSample> samples;
    double mean = 0;
    for (int time = 0; time < 4; ++time) {
      const double log_ratio = truth + method.pace_of_times * chance.normal();
      samples.push_back({3, std::exp(log_ratio)});
      mean += log_ratio / 4;
    }
    error += squared(std::log(learn_pace(method, samples)[2]) - truth) / kPlayers;
    of_the_mean += squared(mean - truth) / kPlayers;
    of_the_guess += squared(truth) / kPlayers;
  }
  CHECK(error < of_the_mean);
  CHECK(error < of_the_guess);
  // The model's own variance of what is left: 1/(1/.145 + 4/.09) = .01948; 4000 draws of a
  // squared normal have a spread of .01948 × √(2/4000) = .00044, five of them.
  CHECK(error == Approx(.01948).margin(.0022));
}

}  // namespace cahier
