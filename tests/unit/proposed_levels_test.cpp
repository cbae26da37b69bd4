// Levels that a piece file from a score begins with.

#include "import/proposed_levels.h"
#include "catch.h"
#include "import/write_piece.h"
#include "piece/read_piece.h"
#include "score/level/bar_level.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

// Bars of two hands at 120, each new, by the level of the right hand: 1 is a whole note, 2 eighths,
// 3 sixteenths, 4 sixteenths with notes that the key has not, 5 these with leaps. R is a rest.
Score of_levels(const std::string& levels, int staff = 1) {
  std::string measures;
  int number = 0;
  for (const char level : levels) {
    std::string bar =
        number == 0 ? attributes("4/4", "0", 2, 8) + "<sound tempo=\"120\"/>" : std::string();
    const int notes = level == 'R' ? 0 : level == '1' ? 1 : level == '2' ? 8 : 16;
    for (int at = 0; at < notes; ++at) {
      // The first three notes tell the number of the bar, in sevenths.
      const int digit = at == 0 ? number % 7 : at == 1 ? number / 7 % 7 : at == 2 ? number / 49 : 0;
      std::string pitch = std::string(1, "CDEFGAB"[digit]) + "4";
      if (level >= '4' && at >= 8 && at < 13) pitch = std::string(1, "CDFGA"[at - 8]) + "#4";
      if (level == '5' && (at == 4 || at == 6)) pitch = "C1";
      bar += note(pitch, 32 / notes, staff);
    }
    if (notes == 0) bar += rest(32, staff);
    ++number;
    measures += measure(std::to_string(number), bar);
  }
  return read(piano(measures));
}

std::string levels_of(const Score& score) {
  std::string text;
  for (const std::vector<int>& hands : bar_levels(score))
    text += std::to_string(std::ranges::max(hands));
  return text;
}

std::string hard_of(const ProposedLevels& levels) {
  std::string text;
  for (const ProposedHardBars& one : levels.hard)
    text += fmt::format("{}{}-{}:{}", text.empty() ? "" : " ", one.first, one.last, one.level);
  return text;
}

std::string hard_of(const std::string& levels) {
  return hard_of(propose_levels(of_levels(levels), {}));
}

}  // namespace

TEST_CASE("the levels of these tests are what they say") {
  CHECK(levels_of(of_levels("12345")) == "12345");
  CHECK(levels_of(of_levels("111112222233333444445555")) == "111112222233333444445555");
}

TEST_CASE("a piece, or a section, is as hard as half of its bars are, rests left aside") {
  CHECK(propose_levels(of_levels("111222"), {}).piece == 2);
  CHECK(propose_levels(of_levels("1112"), {}).piece == 1);
  CHECK(propose_levels(of_levels("3RRRR33"), {}).piece == 3);
  CHECK(propose_levels(of_levels("RR11"), {{0, 1, "A", {}}, {2, 3, "B", {}}}).sections ==
        std::vector<int>{2, 1});
  const Score score = of_levels(
      "11113333"
      "11112222");
  const ProposedLevels levels =
      propose_levels(score, {{0, 3, "A", {}}, {4, 7, "B", {}}, {8, 11, "C", 0}, {12, 15, "D", {}}});
  CHECK(levels.piece == 2);
  CHECK(levels.sections == std::vector<int>{1, 3, 2, 2});
}

TEST_CASE("hard bars are those above their section, from level 3 on") {
  CHECK(hard_of("22222222").empty());
  CHECK(hard_of("11112111").empty());
  CHECK(hard_of("22223322") == "4-5:3");
  CHECK(hard_of("33334433") == "4-5:4");
  // One easier bar between, two no longer; the level is what half of them reach.
  CHECK(hard_of("222425222") == "3-5:5");
  CHECK(hard_of("22422522") == "2-2:4 5-5:5");
  CHECK(hard_of("2224342222") == "3-5:4");
  CHECK(hard_of("22233342222") == "3-6:3");
  // A section is left at its end, and a return has none.
  const Score score = of_levels("2222444422244");
  CHECK(hard_of(propose_levels(score, {{0, 4, "A", {}}, {5, 8, "B", {}}, {9, 12, "C", {}}})) ==
        "4-4:4");
  CHECK(hard_of(propose_levels(score, {{0, 8, "A", {}}, {9, 12, "C", 0}})) == "4-7:4");
}

TEST_CASE("no more than twelve places are named, the hardest and longest of them in order") {
  std::string levels;
  for (int at = 0; at < 12; ++at) levels += "2223";
  levels += "222332225222";
  const ProposedLevels proposed = propose_levels(of_levels(levels), {});
  REQUIRE(proposed.hard.size() == 12);
  CHECK(proposed.hard[9].first == 39);
  CHECK(proposed.hard[10].first == 51);
  CHECK(proposed.hard[11].level == 5);
}

TEST_CASE("the levels stand in the piece file, with the hand, and nothing that is usual") {
  const auto written = [](const std::string& levels, int staff = 1) {
    return write_piece(of_levels(levels, staff));
  };
  CHECK_THAT(written("22224422"),
             Catch::Contains("\nhard:\n  - {bars: 5-6, level: 4}  # right hand\n"));
  CHECK_THAT(written("22224422", 2), Catch::Contains("{bars: 5-6, level: 4}  # left hand\n"));
  Score one_hand = of_levels("22224422");
  one_hand.hands.pop_back();
  CHECK_THAT(write_piece(one_hand), Catch::Contains("  - {bars: 5-6, level: 4}\n"));
  CHECK_THAT(written("33333333"), Catch::Contains("\nlevel: 3\n"));
  CHECK_THAT(written("22222222"), !Catch::Contains("level:"));
  Diagnostics diagnostics;
  const Piece piece = *read_piece(Source("a.yaml", written("22224422")), diagnostics);
  CHECK(piece.level_at(4) == 2);
  CHECK(piece.level_at(5) == 4);
}
