// What is taken as done of a piece that is kept.
#include "practice/kept_record.h"

#include "catch.h"
#include "practice/learned_bars.h"
#include "sample_plan.h"

namespace cahier {

TEST_CASE("a kept piece counts as learned three days before its last quiet days", "[numbers]") {
  const Piece piece = sample::piece("title: Kept\nbars: 16\n");
  const Date from = sample::date("2027-01-20");
  const std::vector<Done> done =
      taken_as_done(piece, 0, sample::steady(), from, LearnedBars(Record{}, 0, piece));
  REQUIRE(done.front().drill == Drill::learn);
  // Played on the 19th; nothing new on the two days before.
  CHECK(done.front().date == sample::date("2027-01-14"));
  CHECK(done.back().drill == Drill::run_through);
  CHECK(done.back().date == sample::date("2027-01-19"));
}

}  // namespace cahier
