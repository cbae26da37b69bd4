#include "practice/metronome.h"

#include <vector>

#include "catch.h"

namespace cahier {

TEST_CASE("the metronome has the 39 traditional marks") {
  // Range 40 to 208: Grove's Dictionary of Music and Musicians, first edition, vol. 2, p. 320; the
  // steps between are common practice: 40-60 by 2, 63-72 by 3, 76-120 by 4, 126-144 by 6, 152-208
  // by 8.
  std::vector<int> marks;
  for (int mark = 40; mark <= 60; mark += 2) marks.push_back(mark);
  for (int mark = 63; mark <= 72; mark += 3) marks.push_back(mark);
  for (int mark = 76; mark <= 120; mark += 4) marks.push_back(mark);
  for (int mark = 126; mark <= 144; mark += 6) marks.push_back(mark);
  for (int mark = 152; mark <= 208; mark += 8) marks.push_back(mark);
  REQUIRE(marks.size() == 39);
  CHECK(std::vector<int>(kMetronomeMarks.begin(), kMetronomeMarks.end()) == marks);
}

TEST_CASE("practice tempi are rounded down to a mark") {
  CHECK(metronome_mark(66) == 66);
  CHECK(metronome_mark(65.9) == 63);
  CHECK(metronome_mark(125) == 120);
  CHECK(metronome_mark(400) == 208);
  CHECK(metronome_mark(40) == 40);
  CHECK(metronome_mark(37.4) == 37);
  CHECK(metronome_mark(3) == 10);
}

}  // namespace cahier
