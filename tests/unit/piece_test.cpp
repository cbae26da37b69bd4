#include "piece/piece.h"

#include "catch.h"

using namespace cahier;

namespace {

Section section(std::string name, BarRange bars, std::optional<BarRange> same_as = std::nullopt) {
  Section made;
  made.name = std::move(name);
  made.bars = bars;
  made.same_as = same_as;
  return made;
}

Piece study() {
  Piece piece;
  piece.bars = 48;
  piece.meter = {{3}, 4};
  piece.tempo = Tempo{132, Beat::quarter};
  return piece;
}

}  // namespace

TEST_CASE("changes hold from their bar on, each field for itself") {
  Piece piece = study();
  piece.changes = {{9, Meter{{6}, 8}, std::nullopt, std::nullopt},
                   {17, std::nullopt, Key{3, "A major"}, Tempo{96, Beat::half}}};
  CHECK(piece.meter_at(8).text() == "3/4");
  CHECK(piece.meter_at(9).text() == "6/8");
  CHECK(piece.meter_at(48).text() == "6/8");
  CHECK_FALSE(piece.key_at(16));
  CHECK(piece.key_at(17)->fifths == 3);
  CHECK(piece.tempo_at(16)->per_minute == 132);
  CHECK(piece.tempo_at(17)->quarters_per_minute() == 192);
}

TEST_CASE("bar 0 is as long as the pickup") {
  Piece piece = study();
  CHECK(piece.first_bar() == 1);
  piece.meter = {{6}, 8};
  piece.pickup = 1;
  CHECK(piece.first_bar() == 0);
  CHECK(piece.quarters_in(0) == 0.5);
  CHECK(piece.quarters_in(1) == 3);
  CHECK(piece.whole() == BarRange{0, 48});
}

TEST_CASE("a section's level stands in place of the piece's, hard bars in place of both") {
  Piece piece = study();
  piece.sections = {section("A", {1, 16}), section("B", {17, 48})};
  piece.sections[1].level = 4;
  piece.hard = {{{20, 24}, 5}, {{22, 30}, 3}, {{1, 1}, 1}};
  CHECK(piece.level_at(2) == 2);
  CHECK(piece.level_at(1) == 1);
  CHECK(piece.level_at(17) == 4);
  CHECK(piece.level_at(20) == 5);
  CHECK(piece.level_at(22) == 5);  // the harder of two that overlap
  CHECK(piece.level_at(30) == 3);
}

TEST_CASE("a return is followed to what is learned, through returns of returns") {
  Piece piece = study();
  piece.sections = {section("A", {1, 8}), section("B", {9, 16}, BarRange{1, 8}),
                    section("C", {17, 24}, BarRange{33, 40}), section("D", {25, 32}),
                    section("E", {33, 48}, BarRange{9, 24})};
  piece.sections[4].bars = {33, 40};
  piece.sections[4].same_as = BarRange{9, 16};
  CHECK(piece.learned_bar(3) == 3);
  CHECK(piece.learned_bar(10) == 2);
  CHECK(piece.learned_bar(17) == 1);
  CHECK(piece.learned_bar(40) == 8);
  CHECK(piece.learned_bar(30) == 30);
  CHECK(piece.learned_bar(45) == 45);
}

TEST_CASE("a piece without repeats is played from its first bar to its last") {
  Piece piece = study();
  CHECK(piece.playing_order() == std::vector<BarRange>{{1, 48}});
  piece.pickup = 1;
  CHECK(piece.playing_order() == std::vector<BarRange>{{0, 48}});
}

TEST_CASE("repeats inside repeats are played as often as both say") {
  Piece piece = study();
  piece.bars = 12;
  piece.repeats = {{{5, 6}, 3}, {{3, 8}, 2}, {{10, 12}, 2}};
  const std::vector<BarRange> once = {{3, 4}, {5, 6}, {5, 6}, {5, 6}, {7, 8}};
  std::vector<BarRange> expected = {{1, 2}};
  expected.insert(expected.end(), once.begin(), once.end());
  expected.insert(expected.end(), once.begin(), once.end());
  expected.insert(expected.end(), {{9, 9}, {10, 12}, {10, 12}});
  CHECK(piece.playing_order() == expected);
}
