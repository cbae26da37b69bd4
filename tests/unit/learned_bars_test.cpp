#include "practice/learned_bars.h"

#include "catch.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

const Date kMonday = sample::date("2027-01-04");
const Date kTuesday = kMonday + days{1};

using Ranges = std::vector<BarRange>;

}  // namespace

TEST_CASE("bars of a return are learned where their source is, from either side") {
  const Piece piece = sample::piece(sample::kStudy);  // bars 33 to 44 are bars 1 to 12 again
  LearnedBars bars(piece);
  CHECK_FALSE(bars.since(34));
  bars.learn({33, 36}, kMonday);
  CHECK(bars.since(2) == kMonday);
  CHECK(bars.since(34) == kMonday);
  CHECK_FALSE(bars.since(5));
  CHECK_FALSE(bars.since(37));
  CHECK(bars.first_unlearned({33, 40}) == 37);
  CHECK(bars.first_unlearned({1, 8}) == 5);
  CHECK_FALSE(bars.first_unlearned({34, 35}));
  CHECK(bars.sources({11, 34}) == Ranges{{1, 2}, {11, 32}});
}

TEST_CASE("what is learned keeps its date, and only the rest counts as learned at a later time") {
  const Piece piece = sample::piece(sample::kStudy);
  LearnedBars bars(piece);
  bars.learn({3, 4}, kMonday);
  bars.learn({1, 8}, kTuesday);
  CHECK(bars.since(3) == kMonday);
  CHECK(bars.since(2) == kTuesday);
  CHECK(bars.at_one_time() == Ranges{{1, 2}, {3, 4}, {5, 8}});
}

TEST_CASE("what is left to learn stands where it is learned, a pickup with it") {
  const Piece piece = sample::piece(sample::kLantern);
  LearnedBars bars(piece);
  CHECK(bars.unlearned() == Ranges{{0, 32}, {45, 48}});
  bars.learn({0, 4}, kMonday);
  bars.learn({41, 46}, kMonday);
  CHECK(bars.unlearned() == Ranges{{5, 8}, {13, 32}, {47, 48}});
  bars.learn(piece.whole(), kTuesday);
  CHECK(bars.unlearned().empty());
}

TEST_CASE("a record tells what was learned of its own piece") {
  const Piece piece = sample::piece(sample::kStudy);
  Record record;
  for (const int index : {0, 1}) {
    Done done;
    done.piece = index;
    done.drill = Drill::learn;
    done.date = kMonday;
    done.bars = index == 0 ? BarRange{1, 4} : BarRange{5, 8};
    record.done.push_back(done);
  }
  record.done.push_back(record.done.front());
  record.done.back().drill = Drill::recall;
  record.done.back().bars = {9, 12};
  CHECK(LearnedBars(record, 0, piece).at_one_time() == Ranges{{1, 4}});
  CHECK(LearnedBars(record, 1, piece).at_one_time() == Ranges{{5, 8}});
  CHECK(LearnedBars(record, 2, piece).at_one_time().empty());
}

TEST_CASE("bars that the piece has not are not learned, and break nothing") {
  LearnedBars bars(sample::piece(sample::kStudy));
  CHECK_FALSE(bars.since(49));
  CHECK_FALSE(bars.since(-1));
  CHECK(bars.first_unlearned({60, 60}) == 60);
  CHECK_FALSE(LearnedBars().since(1));
}
