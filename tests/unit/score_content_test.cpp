// Which bars hold the same, hand by hand.

#include "catch.h"
#include "score/passages/bar_content.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

// Bar 1 as given, and a bar 2: whether both hands of bar 2 are those of bar 1.
bool is_same(const std::string& one, const std::string& other) {
  const Score score =
      read(piano(measure("1", attributes("4/4", "0", 2, 4) + one) + measure("2", other)));
  return identical_measures(score.measures)[1].both == 1;
}

}  // namespace

TEST_CASE(
    "bars are identical in onset, length, spelling, grace, tie from before and their length") {
  const std::string bar = note("C4", 8) + note("F#4", 8);
  CHECK(is_same(bar, bar));
  CHECK_FALSE(is_same(bar, note("F#4", 8) + note("C4", 8)));
  CHECK_FALSE(is_same(bar, note("C4", 4) + rest(4) + note("F#4", 8)));
  CHECK_FALSE(is_same(bar, note("C4", 8) + note("Gb4", 8)));
  CHECK_FALSE(is_same(bar, note("C4", 8) + note("F#5", 8)));
  CHECK_FALSE(
      is_same(bar, note("C4", 8) + note({"F#4", 8, 1, "<tie type=\"stop\"/>", false, false})));
  CHECK(is_same(bar, note("C4", 8) + note({"F#4", 8, 1, "<tie type=\"start\"/>", false, false})));
  CHECK_FALSE(is_same(bar, note({"C4", 0, 1, "", false, true}) + bar));
  CHECK_FALSE(is_same(bar, bar + rest(4)));
  CHECK_FALSE(is_same(bar, note("C4", 8) + note("F#4", 8, 2)));
}

TEST_CASE("voices, order of writing, doubled notes and rests do not matter") {
  const std::string bar = note("C4", 8) + note({"E4", 8, 1, "", true, false}) + note("F4", 8);
  CHECK(is_same(bar, note("E4", 8) + note({"C4", 8, 1, "", true, false}) + note("F4", 8)));
  CHECK(is_same(bar, note("C4", 8) + forward(8) + backup(16) + note("E4", 8) + note("F4", 8)));
  CHECK(is_same(bar, bar + backup(16) + note("C4", 8) + rest(8)));
}

TEST_CASE("each hand names its own earliest bar; a silent hand names none") {
  const auto bar = [](const std::string& number, const std::string& right,
                      const std::string& left) {
    return measure(number, (number == "1" ? attributes("4/4", "0", 2) : "") + note(right, 4) +
                               backup(4) + (left.empty() ? rest(4, 2) : note(left, 4, 2)));
  };
  const Score score = read(piano(bar("1", "C5", "C3") + bar("2", "D5", "C3") + bar("3", "C5", "") +
                                 bar("4", "C5", "") + bar("5", "D5", "C3")));
  const std::vector<IdenticalMeasure> same = identical_measures(score.measures);
  CHECK_FALSE(same[0].top);
  CHECK_FALSE(same[0].both);
  CHECK_FALSE(same[1].top);
  CHECK(same[1].lower == 1);
  CHECK_FALSE(same[1].both);
  CHECK(same[2].top == 1);
  CHECK_FALSE(same[2].lower);
  CHECK_FALSE(same[2].both);
  CHECK(same[3].top == 1);
  CHECK_FALSE(same[3].lower);
  CHECK(same[3].both == 3);
  CHECK(same[4].top == 2);
  CHECK(same[4].lower == 1);
  CHECK(same[4].both == 2);
}
