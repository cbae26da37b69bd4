// Where starts from the middle lie, and where to rejoin.
#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

Analysis analysis_of(const Piece& piece) {
  std::vector<BarRange> chunks;
  for (int bar = 1; bar <= piece.bars; bar += 4)
    chunks.push_back({bar, std::min(bar + 3, piece.bars)});
  return analyse(piece, sample::steady(), sample::LaidOut::named(piece, chunks));
}

// How many starts a piece of one section has.
std::size_t starts_in(int bars, const std::string& more = {}) {
  const Piece piece =
      sample::piece("title: Starts\nbars: " + std::to_string(bars) +
                    "\nsections: [{name: A, bars: 1-" + std::to_string(bars) + more + "}]\n");
  return analysis_of(piece).planned.cues.size();
}

// Where to rejoin when phrases begin at bar 1 and at these.
std::vector<int> rejoin(int bars, std::vector<int> begins) {
  std::string phrases;
  int first = 1;
  begins.push_back(bars + 1);
  for (const int next : begins) {
    phrases +=
        (phrases.empty() ? "" : ", ") + std::to_string(first) + "-" + std::to_string(next - 1);
    first = next;
  }
  const Piece piece = sample::piece("title: Rejoin\nbars: " + std::to_string(bars) +
                                    "\nsections: [{name: A, bars: 1-" + std::to_string(bars) +
                                    ", phrases: [" + phrases + "]}]\n");
  return analysis_of(piece).planned.rejoin;
}

}  // namespace

TEST_CASE("a start comes about every eight bars, in a piece of more than 200 every sixteen",
          "[numbers]") {
  CHECK(starts_in(40) == 5);
  CHECK(starts_in(200) == 25);
  CHECK(starts_in(208) == 13);
}

TEST_CASE("a phrase of more than sixteen bars has a start inside", "[numbers]") {
  CHECK(starts_in(16, ", phrases: [1-16]") == 1);
  CHECK(starts_in(17, ", phrases: [1-17]") > 1);
}

TEST_CASE("places to rejoin lie four bars apart, in a long piece eight", "[numbers]") {
  using Bars = std::vector<int>;
  CHECK(rejoin(16, {4, 6}) == Bars{6});
  CHECK(rejoin(16, {5, 9}) == Bars{5, 9});
  CHECK(rejoin(204, {8, 20}) == Bars{20});
  CHECK(rejoin(204, {9, 20}) == Bars{9, 20});
}

}  // namespace cahier
