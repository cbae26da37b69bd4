#include "practice/dice_tables.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "catch.h"

using namespace cahier;

namespace {

std::vector<int> numbers_to(int count) {
  std::vector<int> numbers(count);
  std::iota(numbers.begin(), numbers.end(), 1);
  return numbers;
}

}  // namespace

TEST_CASE("two dice in order give every cue start its equal share of 36 outcomes") {
  for (int count = 1; count <= 36; ++count) {
    INFO(count << " cue starts");
    const auto tables = dice_tables(numbers_to(count));
    REQUIRE(tables.size() == 1);
    const DiceTable& table = tables[0];
    CHECK(table.name == "2d6");
    REQUIRE(static_cast<int>(table.rows.size()) == count);
    std::set<std::vector<int>> seen(table.again.begin(), table.again.end());
    CHECK(seen.size() == table.again.size());
    for (int row = 0; row < count; ++row) {
      CHECK(table.rows[row].cue == row + 1);
      CHECK(static_cast<int>(table.rows[row].outcomes.size()) == 36 / count);
      for (const auto& outcome : table.rows[row].outcomes) {
        CHECK(seen.insert(outcome).second);
        for (const int face : outcome) CHECK((face >= 1 && face <= 6));
      }
    }
    CHECK(seen.size() == 36);
  }
}

TEST_CASE("outcomes are dealt in the order of the dice and the rest say throw again") {
  // Index (first - 1) * 6 + second; with seven cue starts five each, and one left over.
  const DiceTable table = dice_tables(numbers_to(7))[0];
  CHECK(table.rows[0].outcomes ==
        std::vector<std::vector<int>>{{1, 1}, {1, 2}, {1, 3}, {1, 4}, {1, 5}});
  CHECK(table.rows[1].outcomes.front() == std::vector<int>{1, 6});
  CHECK(table.again == std::vector<std::vector<int>>{{6, 6}});
}

TEST_CASE("the throws to be expected are the published ones") {
  // Computed: 36 / (q n) with q = floor(36 / n).
  const struct {
    int cues;
    double throws;
  } table[] = {{7, 1.0286}, {8, 1.1250}, {9, 1},       {12, 1},      {18, 1},
               {36, 1},     {10, 1.2},   {13, 1.3846}, {19, 1.8947}, {25, 1.44}};
  for (const auto& row : table) {
    INFO(row.cues << " cue starts");
    CHECK(expected_throws(dice_tables(numbers_to(row.cues))[0]) == Approx(row.throws).margin(5e-5));
  }
}

TEST_CASE("the throws to be expected of a single die are the published ones") {
  // Computed: 4 of 6 count, 1.5 throws; 5 of 6, 1.2.
  CHECK(expected_throws(dice_tables(numbers_to(4), Throw::one_die)[0]) == Approx(1.5));
  CHECK(expected_throws(dice_tables(numbers_to(5), Throw::one_die)[0]) == Approx(1.2));
  CHECK(expected_throws(dice_tables(numbers_to(3), Throw::one_die)[0]) == Approx(1));
}

TEST_CASE("whatever is thrown, the shares are equal and every outcome has its place") {
  for (const Throw thrown : {Throw::two_dice, Throw::one_die, Throw::d20, Throw::coins})
    for (const int cues : {1, 2, 3, 5, 6, 7, 20, 21, 33, 64, 65, 150}) {
      INFO("throw " << static_cast<int>(thrown) << " for " << cues << " cue starts");
      int next = 1;
      for (const DiceTable& table : dice_tables(numbers_to(cues), thrown)) {
        std::size_t outcomes = 1;
        for (int die = 0; die < table.count; ++die) outcomes *= table.faces;
        CHECK(table.name == std::to_string(table.count) + "d" + std::to_string(table.faces));
        std::set<std::vector<int>> seen(table.again.begin(), table.again.end());
        REQUIRE(table.rows.size() <= outcomes);
        for (const auto& row : table.rows) {
          CHECK(row.cue == next++);
          CHECK(row.outcomes.size() == outcomes / table.rows.size());
          seen.insert(row.outcomes.begin(), row.outcomes.end());
        }
        CHECK(table.again.size() == outcomes % table.rows.size());
        CHECK(seen.size() == outcomes);
        for (const auto& outcome : seen) {
          CHECK(static_cast<int>(outcome.size()) == table.count);
          CHECK(*std::min_element(outcome.begin(), outcome.end()) >= 1);
          CHECK(*std::max_element(outcome.begin(), outcome.end()) <= table.faces);
        }
      }
      CHECK(next == cues + 1);
    }
}

TEST_CASE("one die and the die of twenty faces hold as many cue starts as they have faces") {
  CHECK(dice_tables(numbers_to(6), Throw::one_die).size() == 1);
  CHECK(dice_tables(numbers_to(7), Throw::one_die).size() == 2);
  CHECK(dice_tables(numbers_to(16), Throw::one_die).size() == 3);
  CHECK(dice_tables(numbers_to(20), Throw::d20).size() == 1);
  CHECK(dice_tables(numbers_to(21), Throw::d20).size() == 2);
  CHECK(dice_tables(numbers_to(6), Throw::one_die)[0].name == "1d6");
  CHECK(dice_tables(numbers_to(16), Throw::d20)[0].name == "1d20");
  CHECK(dice_tables(numbers_to(16), Throw::d20)[0].again.size() == 4);
}

TEST_CASE("there are as few coins as keep the throws to be expected at one and a half",
          "[numbers]") {
  // Computed: 2^k / (floor(2^k / n) n); five starts of three coins take 1.6 throws, of four 1.07;
  // seventeen of five coins 1.88, of six 1.25. Six coins at most.
  const struct {
    int cues;
    int coins;
  } table[] = {{1, 1}, {2, 1},  {3, 2},  {4, 2},  {5, 4},  {6, 3},  {8, 3},
               {9, 5}, {16, 4}, {17, 6}, {22, 5}, {32, 5}, {33, 6}, {64, 6}};
  for (const auto& row : table) {
    INFO(row.cues << " cue starts");
    const auto tables = dice_tables(numbers_to(row.cues), Throw::coins);
    REQUIRE(tables.size() == 1);
    CHECK(tables[0].faces == 2);
    CHECK(tables[0].count == row.coins);
  }
  CHECK(dice_tables(numbers_to(65), Throw::coins).size() == 2);
}

TEST_CASE("the first coin counts most, heads before tails") {
  const DiceTable table = dice_tables(numbers_to(8), Throw::coins)[0];
  CHECK(table.rows[0].outcomes == std::vector<std::vector<int>>{{1, 1, 1}});
  CHECK(table.rows[1].outcomes == std::vector<std::vector<int>>{{1, 1, 2}});
  CHECK(table.rows[4].outcomes == std::vector<std::vector<int>>{{2, 1, 1}});
}

TEST_CASE("no cue start is told by the sum of the dice") {
  // The sums of two dice fall 1 2 3 4 5 6 5 4 3 2 1 times in 36, so eleven cue starts by sum would
  // be far from even; by order each has three.
  const DiceTable table = dice_tables(numbers_to(11))[0];
  for (const auto& row : table.rows) CHECK(row.outcomes.size() == 3);
}

TEST_CASE("more than 36 cue starts are cut into near-equal tables, each a stretch in order") {
  for (const int count : {37, 72, 73, 100, 500}) {
    INFO(count << " cue starts");
    const auto tables = dice_tables(numbers_to(count));
    CHECK(static_cast<int>(tables.size()) == (count + 35) / 36);
    int next = 1;
    std::size_t least = 36;
    std::size_t most = 0;
    for (const auto& table : tables) {
      for (const auto& row : table.rows) CHECK(row.cue == next++);
      least = std::min(least, table.rows.size());
      most = std::max(most, table.rows.size());
    }
    CHECK(next == count + 1);
    CHECK(most - least <= 1);
  }
}

TEST_CASE("no cue starts need no table") { CHECK(dice_tables({}).empty()); }

TEST_CASE("outcomes are in exact proportion to the weights") {
  // Every way of giving one to nine cues weights of 1 and 2, whatever is thrown.
  for (const Throw thrown : {Throw::two_dice, Throw::one_die, Throw::d20, Throw::coins})
    for (int count = 1; count <= 9; ++count)
      for (int heavy = 0; heavy < 1 << count; ++heavy) {
        std::vector<ThrownCue> cues;
        for (int cue = 0; cue < count; ++cue) cues.push_back({cue + 1, 1 + (heavy >> cue & 1)});
        std::vector<int> met;
        for (const DiceTable& table : weighted_dice_tables(cues, thrown)) {
          const auto outcomes =
              static_cast<std::size_t>(std::lround(std::pow(table.faces, table.count)));
          std::size_t weights = 0;
          for (const auto& row : table.rows)
            weights += static_cast<std::size_t>(cues[row.cue - 1].weight);
          std::set<std::vector<int>> seen(table.again.begin(), table.again.end());
          for (const auto& row : table.rows) {
            met.push_back(row.cue);
            const auto weight = static_cast<std::size_t>(cues[row.cue - 1].weight);
            CHECK(row.outcomes.size() == outcomes / weights * weight);
            seen.insert(row.outcomes.begin(), row.outcomes.end());
          }
          CHECK(seen.size() == outcomes);
        }
        std::vector<int> all(count);
        std::iota(all.begin(), all.end(), 1);
        CHECK(met == all);
      }
}

TEST_CASE("tables are cut by weight where one cannot hold all") {
  std::vector<ThrownCue> cues;
  for (int cue = 1; cue <= 30; ++cue) cues.push_back({cue, cue <= 10 ? 2 : 1});
  // 40 shares and 36 outcomes: two tables of 20 shares each.
  const auto tables = weighted_dice_tables(cues);
  REQUIRE(tables.size() == 2);
  CHECK(tables[0].rows.size() == 10);
  CHECK(tables[1].rows.size() == 20);
}
