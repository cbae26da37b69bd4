// What a start plays, and what it leaves due.
#include "plan/due/recalls_due.h"

#include <catch2/catch.hpp>

#include "laid_out.h"
#include "plan/chunks/analyse.h"
#include "plan/due/task_maker.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

using Numbers = std::vector<int>;

// Four chunks of four bars; the starts are at 1, at 3, at 9 for its section, and at 10 for a fork.
const Piece& piece() {
  static const Piece made = sample::piece(
      "title: Four Chunks\nbars: 16\n"
      "sections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}]\n"
      "look-alikes: [{bars: [1-2, 10-12], fork: [2, 12]}]\ncues: [3]\n");
  return made;
}

const Analysis& analysis() {
  static const Analysis made = analyse(
      piece(), sample::steady(),
      {{"A1", {1, 4}, 0, 2}, {"A2", {5, 8}, 0, 2}, {"B1", {9, 12}, 1, 2}, {"B2", {13, 16}, 1, 2}});
  return made;
}

const StartFromCue& from(int bar) {
  for (const StartFromCue& start : analysis().starts)
    if (start.bar == bar) return start;
  FAIL("no start at " << bar);
  return analysis().starts.front();
}

// The date is in twenty days; before the plan lies a past of sixty.
constexpr int kFirst = 60;
constexpr int kEnd = 80;

}  // namespace

TEST_CASE("a start names what it plays from end to end, and all that it plays of") {
  CHECK(from(1).bars == BarRange{1, 4});
  CHECK(from(1).chunks == Numbers{0});
  CHECK(from(1).touched == Numbers{0});
  CHECK(from(3).bars == BarRange{3, 8});
  CHECK(from(3).chunks == Numbers{1});
  CHECK(from(3).touched == Numbers{0, 1});
  // The fork is asked of what its starts play, besides the bars that look alike.
  CHECK(from(10).bars == BarRange{10, 16});
  REQUIRE(analysis().fork_drills.size() == 1);
  CHECK(analysis().fork_drills[0].learned == Numbers{0, 2, 3});
}

TEST_CASE("a start that plays a part of a chunk does not recall it", "[numbers]") {
  const TaskMaker make(analysis(), sample::steady(), 0);
  Numbers practice_days;
  for (int day = kFirst; day < kEnd; ++day) practice_days.push_back(day);
  RecallsDue recalls(analysis(), sample::steady(), practice_days, kFirst, kEnd, true);
  for (const int chunk : {0, 1}) recalls.learn(chunk, 0);
  recalls.retrieve(make.recall({1, 8}), 10);
  const double before = recalls.ripeness(0, kFirst);
  // Overdue since long: both come back within the plan's first week.
  for (const int chunk : {0, 1}) {
    CAPTURE(chunk);
    CHECK_FALSE(recalls.must(chunk, 5));
    CHECK(recalls.must(chunk, 6));
  }
  const std::vector<CueStart>& cues = analysis().planned.cues;
  const auto three =
      std::find_if(cues.begin(), cues.end(), [](const CueStart& cue) { return cue.bar == 3; });
  recalls.retrieve(make.cue_starts({three->number}, 0), 50);
  CHECK(recalls.ripeness(0, kFirst) == before);
  CHECK(recalls.ripeness(1, kFirst) < before);
  // Thirty days were left: the bars played may rest thirteen (2 * 6.28), those before them no
  // longer than before.
  CHECK_FALSE(recalls.must(0, 2));
  CHECK(recalls.must(0, 3));
  CHECK(recalls.must(1, 3));
  CHECK_FALSE(recalls.ripe_enough(from(3).bars, 51));
  CHECK(recalls.ripe_enough(BarRange{1, 2}, 51));
}

namespace {

// Five chunks in one section, the last one hard.
struct FiveChunks : sample::LaidOut {
  explicit FiveChunks(double gap = 10)
      : LaidOut("bars: 20\nhard: [{bars: 17-20, level: 4}]\n", sample::fours(5), 100, gap) {
    learn_all();
    recall_all(1);
  }

  RecallsDue& recalls() { return progress.recalls; }
  bool sooner(int day) { return !recalls().wants_sooner(day).empty(); }
  // What is wanted on a day when all is set aside for another one anyway, or -1.
  std::vector<Want> wants(int day, int next_played = -1) {
    return recalls().wants(day, std::vector<int>(analysis.stretches.size(), next_played));
  }
};

}  // namespace

TEST_CASE("new bars come back every other day until three recalls held", "[numbers]") {
  FiveChunks work;
  CHECK_FALSE(work.sooner(2));
  CHECK(work.sooner(3));
  work.recall_all(3);
  CHECK(work.sooner(5));
  work.recall_all(5);
  CHECK_FALSE(work.sooner(8));
}

TEST_CASE("new bars come back sooner for ten days, not longer", "[numbers]") {
  FiveChunks work;
  CHECK(work.sooner(10));
  CHECK_FALSE(work.sooner(11));
}

TEST_CASE("bars on their way to their tempo come back every day", "[numbers]") {
  FiveChunks work;
  for (const int day : {3, 5, 39}) work.recall_all(day);
  REQUIRE_FALSE(work.sooner(40));
  work.recalls().tempo().be_at_tempo_by(50, true);
  CHECK_FALSE(work.sooner(39));  // it had its turn
  CHECK(work.sooner(40));
}

TEST_CASE("hard bars come back after an eighth of the best gap, where a day has room",
          "[numbers]") {
  FiveChunks work(50);
  CHECK(work.recalls().hard_on(6).empty());
  const std::vector<Want> hard = work.recalls().hard_on(8);
  REQUIRE(hard.size() == 1);
  CHECK(hard[0].bars == BarRange{17, 20});
}

TEST_CASE("what slips comes back after half of the best gap", "[numbers]") {
  FiveChunks work;
  work.analysis.planned.chunks[1].raised = true;
  CHECK(work.wants(5).empty());
  REQUIRE(work.wants(6).size() == 1);
  CHECK(work.wants(6)[0].bars == BarRange{5, 8});
}

TEST_CASE("what is set aside within one and a half best gaps of the last recall waits for it",
          "[numbers]") {
  FiveChunks work;
  CHECK_FALSE(work.wants(11).empty());
  CHECK(work.wants(11, 16).empty());
  CHECK_FALSE(work.wants(11, 17).empty());
}

TEST_CASE("nothing is recalled less than half a best gap before it is played anyway", "[numbers]") {
  FiveChunks work;
  CHECK(work.wants(13, 17).empty());
  CHECK_FALSE(work.wants(13, 18).empty());
}
