// Which neighbouring chunks are played together.
#include "plan/chunks/group_at_phrases.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

using Groups = std::vector<int>;

// Ranges of the given sizes, one after the other.
std::vector<BarRange> ranges_of(const std::vector<int>& sizes, int first = 1) {
  std::vector<BarRange> ranges;
  for (const int size : sizes) {
    ranges.push_back({first, first + size - 1});
    first += size;
  }
  return ranges;
}

// One section with phrases of the given sizes; of none it names none.
PhraseMap phrases_of_sizes(int bars, const std::vector<int>& sizes, int first = 1) {
  PlannedPiece planned;
  planned.piece.bars = bars;
  if (first == 0) planned.piece.pickup = 1;
  planned.piece.sections = {{"A", {first, bars}, ranges_of(sizes, first), {}, {}}};
  planned.sections = {{"A", {first, bars}, {}}};
  return PhraseMap(planned);
}

const std::vector<int> kTwelveTwos(12, 2);

}  // namespace

TEST_CASE("groups of chunks begin where phrases do", "[numbers]") {
  const PhraseMap fours = phrases_of_sizes(24, {4, 4, 4, 4, 4, 4});
  // Ten bars would hold five chunks, and the next phrase's first half.
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), fours, 10) == Groups{0, 4, 8});
  const PhraseMap uneven = phrases_of_sizes(24, {6, 8, 10});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), uneven, 10) == Groups{0, 3, 7});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), uneven, 16) == Groups{0, 7});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), uneven, 24) == Groups{0});
}

TEST_CASE("as few groups of chunks as hold them, of about equal length", "[numbers]") {
  const PhraseMap fours = phrases_of_sizes(24, {4, 4, 4, 4, 4, 4});
  // Not sixteen bars and eight.
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), fours, 16) == Groups{0, 6});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), fours, 23) == Groups{0, 6});
}

TEST_CASE("a phrase is divided only when it is half as long again as a group", "[numbers]") {
  const std::vector<int> threes(8, 3);
  const PhraseMap one = phrases_of_sizes(24, {24});
  CHECK(group_at_phrases(ranges_of(threes), one, 16) == Groups{0});
  CHECK(group_at_phrases(ranges_of(threes), one, 15) == Groups{0, 4});
  // What is not too long stays whole beside it.
  const PhraseMap two = phrases_of_sizes(24, {6, 18});
  CHECK(group_at_phrases(ranges_of(threes), two, 12) == Groups{0, 2});
  const PhraseMap nine = phrases_of_sizes(24, {9, 15});
  CHECK(group_at_phrases(ranges_of(threes), nine, 9) == Groups{0, 3, 6});
}

TEST_CASE("where no phrase is known a group may begin with any chunk", "[numbers]") {
  const PhraseMap none = phrases_of_sizes(24, {});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), none, 10) == Groups{0, 4, 8});
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), none, 6) == Groups{0, 3, 6, 9});
  // Half as long again, but no phrase.
  CHECK(group_at_phrases(ranges_of(kTwelveTwos), none, 16) == Groups{0, 6});
  CHECK(group_at_phrases({}, none, 10).empty());
}

TEST_CASE("a pickup rides along in a group without counting", "[numbers]") {
  // Bars 0-4 and 5-8 in a group of eight.
  const PhraseMap fours = phrases_of_sizes(8, {5, 4}, 0);
  CHECK(group_at_phrases(ranges_of({5, 4}, 0), fours, 8) == Groups{0});
  CHECK(group_at_phrases(ranges_of({5, 4}, 0), fours, 7) == Groups{0, 1});
}

}  // namespace cahier
