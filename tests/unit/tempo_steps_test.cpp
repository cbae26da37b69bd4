// How the tempo grows from that of learning to the full one.
#include "plan/due/tempo_steps.h"

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

// One chunk of level 2, learned on day 0 at half of its tempo; so `share` of the tempo is twice as
// far on the way as it is above a half.
struct OneChunk : sample::LaidOut {
  explicit OneChunk(int to) : LaidOut("bars: 4\n", sample::fours(1), to) {
    REQUIRE(analysis.time.share(Drill::learn, 2) == Approx(0.5));
    steps().learned(0, 0);
  }

  TempoSteps& steps() { return progress.recalls.tempo(); }
  double share(int day) { return 0.5 + 0.5 * steps().progress({0}, day); }
  void climb(int times) {
    for (int time = 0; time < times; ++time) steps().climbed({0});
  }
};

}  // namespace

TEST_CASE("the first recall is a twentieth faster than learning, however late it is", "[numbers]") {
  OneChunk work(100);
  work.steps().be_at_tempo_by(50, true);
  CHECK(work.share(49) == Approx(0.525));
}

TEST_CASE("from one recall to the next the tempo rises by 19 hundredths of the full one",
          "[numbers]") {
  OneChunk work(100);
  work.steps().be_at_tempo_by(50, true);
  work.climb(1);
  CHECK(work.share(49) == Approx(0.715));
}

TEST_CASE("bars reach their tempo a little after the middle of the days to the first run-through",
          "[numbers]") {
  OneChunk work(100);
  work.steps().be_at_tempo_by(50, true);
  work.climb(4);
  CHECK(work.share(11) == Approx(0.7));  // 11 of 27.5 days
  CHECK(work.share(28) == 1);
}

TEST_CASE("where no run-through is to come, bars reach their tempo in six sevenths of the days",
          "[numbers]") {
  OneChunk work(70);
  work.climb(4);
  CHECK(work.share(24) == Approx(0.7));  // 24 of 60 days
}

TEST_CASE(
    "bars are proved at nine tenths of their tempo, twice in the fourteen days before the "
    "first run-through",
    "[numbers]") {
  OneChunk work(100);
  work.steps().be_at_tempo_by(50, true);
  CHECK_FALSE(work.steps().wants_tempo(0, 35));
  CHECK(work.steps().wants_tempo(0, 36));
  work.climb(3);  // 0.525, 0.715, 0.905
  CHECK(work.steps().wants_tempo(0, 36));
  work.climb(1);
  CHECK_FALSE(work.steps().wants_tempo(0, 36));
}

TEST_CASE("starts go by the tempo of the last recall, not by that of the next") {
  OneChunk work(100);
  work.steps().be_at_tempo_by(50, true);
  CHECK(work.steps().reached_progress({0}) == 0);
  work.climb(2);  // 0.525, 0.715
  CHECK(0.5 + 0.5 * work.steps().reached_progress({0}) == Approx(0.715));
  CHECK(work.share(49) > 0.8);
  work.steps().ran_through();
  CHECK(work.steps().reached_progress({0}) == 1);
}

}  // namespace cahier
