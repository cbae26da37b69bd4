// When starts from the middle come, and when forks.
#include "plan/due/cue_starts_due.h"

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

constexpr double kRoom = 600;  // minutes

// Twelve sections of a chunk each, so that there are twelve starts.
struct TwelveStarts : sample::LaidOut {
  TwelveStarts()
      : LaidOut(
            "bars: 48\nsections: [{name: A, bars: 1-4}, {name: B, bars: 5-8}, {name: C, bars: "
            "9-12}, {name: D, bars: 13-16}, {name: E, bars: 17-20}, {name: F, bars: 21-24}, "
            "{name: G, bars: 25-28}, {name: H, bars: 29-32}, {name: I, bars: 33-36}, {name: J, "
            "bars: 37-40}, {name: K, bars: 41-44}, {name: L, bars: 45-48}]\n",
            sample::fours(12), 100) {}

  // How many starts the day's session assigns; -1 where the day has none.
  int session(int day, bool begun = true, double fill = kRoom) {
    const std::vector<Task> tasks = progress.starts_due.on_day(
        day, days, end, progress.recalls, progress.make, -1, kRoom, begun, fill);
    return tasks.empty() ? -1 : static_cast<int>(tasks.front().cues.size());
  }
};

// Learned on day 0 and recalled on day 1.
struct Whole : TwelveStarts {
  Whole() {
    learn_all();
    recall_all(1);
  }
};

// Two passages that look alike, with a fork in each.
struct OneFork : sample::LaidOut {
  OneFork()
      : LaidOut(
            "bars: 16\nsections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}]\n"
            "look-alikes: [{bars: [1-2, 10-12], fork: [2, 12]}]\n",
            sample::fours(4), 100) {
    learn_all();
  }

  bool drills_fork(int day) {
    for (const Task& task : progress.starts_due.on_day(day, days, end, progress.recalls,
                                                       progress.make, -1, kRoom, true, kRoom))
      if (task.fork) return true;
    return false;
  }
};

}  // namespace

TEST_CASE("while a piece is learned, two starts come on every third practice day", "[numbers]") {
  TwelveStarts work;
  for (const int chunk : {0, 1, 2, 3, 4, 5}) work.learn(chunk, 0);
  work.recall({1, 24}, 1);
  CHECK(work.session(20) == 2);
  CHECK(work.session(21) == -1);
  CHECK(work.session(22) == -1);
  CHECK(work.session(23) == 2);
}

TEST_CASE("once the piece is whole, a session assigns eight starts", "[numbers]") {
  CHECK(Whole().session(20) == 8);
}

TEST_CASE("a start is first assigned half a best gap after its bars, then after four fifths",
          "[numbers]") {
  Whole work;
  CHECK(work.session(5) == 0);  // only the dice
  CHECK(work.session(6) == 8);
  CHECK(work.session(7) == 4);  // the others
  CHECK(work.session(8) == 0);
  CHECK(work.session(9) == 8);
}

TEST_CASE("nobody sits down for a few starts alone, unless the last were six practice days ago",
          "[numbers]") {
  Whole work;
  REQUIRE(work.session(20) == 8);
  const double much = 10000;  // more minutes than any session
  CHECK(work.session(25, false, much) == -1);
  CHECK(work.session(26, false, much) == 8);
}

TEST_CASE("a fork is first drilled when a little is forgotten, from a seventh of a gap on",
          "[numbers]") {
  OneFork work;
  work.recall_all(10);
  CHECK_FALSE(work.drills_fork(11));
  CHECK(work.drills_fork(12));
}

TEST_CASE("a fork waits no longer than until twelve days before the date", "[numbers]") {
  OneFork work;
  work.recall_all(86);
  CHECK_FALSE(work.drills_fork(87));
  work.recall_all(87);
  CHECK(work.drills_fork(88));
}

}  // namespace cahier
