// When a fork that was drilled comes again.
#include "plan/due/forks_due.h"

#include <iterator>

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

struct Forked : sample::LaidOut {
  Forked()
      : LaidOut(
            "bars: 16\nsections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}]\n"
            "look-alikes: [{bars: [1-2, 10-12], fork: [2, 12]}]\n",
            sample::fours(4), 100) {}

  ForksDue& forks() { return progress.forks; }
  // Whether it comes again on a day; drilled first and last on days given.
  bool again(int day, int drills, int first, int last, int last_learned = 0) {
    return forks().again({nullptr, drills, first, last}, day, end, last_learned);
  }
};

}  // namespace

TEST_CASE("a fork is drilled three times", "[numbers]") {
  Forked work;
  REQUIRE(work.forks().begin() != work.forks().end());
  work.forks().drilled(work.forks().begin(), 10);
  work.forks().drilled(work.forks().begin(), 36);
  CHECK(work.forks().begin() != work.forks().end());
  work.forks().drilled(work.forks().begin(), 90);
  CHECK(work.forks().begin() == work.forks().end());
}

TEST_CASE("the second drill of a fork comes after a third of the way, two days at least",
          "[numbers]") {
  Forked work;
  // The last one may come from day 88 on.
  CHECK_FALSE(work.again(35, 1, 10, 10));
  CHECK(work.again(36, 1, 10, 10));
  CHECK_FALSE(work.again(87, 1, 86, 86));
  CHECK(work.again(88, 1, 86, 86));
}

TEST_CASE("the last drill of a fork comes in the last twelve days, farther than the second",
          "[numbers]") {
  Forked work;
  CHECK_FALSE(work.again(87, 2, 10, 40));
  CHECK(work.again(88, 2, 10, 40));
  CHECK_FALSE(work.again(88, 2, 10, 49));
}

TEST_CASE("with less than four weeks left one drill in the last fourteen days is enough",
          "[numbers]") {
  Forked work;
  CHECK(work.again(78, 1, 72, 72, 72));  // twenty-eight days: a second before the last
  CHECK_FALSE(work.again(78, 1, 73, 73, 73));
  CHECK(work.again(88, 1, 73, 73, 73));
  CHECK(work.again(90, 1, 85, 85, 80));
  CHECK_FALSE(work.again(90, 1, 86, 86, 80));
}

TEST_CASE("a day has one fork, or two where more than the next three days' wait", "[numbers]") {
  Forked work;
  CHECK(work.forks().most_on(50, 100, 3, 50) == 1);
  CHECK(work.forks().most_on(50, 100, 4, 50) == 2);
  // In the last days every practice day left counts.
  CHECK(work.forks().most_on(90, 100, 10, 10) == 1);
  CHECK(work.forks().most_on(90, 100, 11, 10) == 2);
}

// A B A: after bar 8 it goes on the first time and ends the second, so no fork drill plays the
// seam.
TEST_CASE("the seam out of what comes back is joined three times, farther and farther apart",
          "[numbers]") {
  sample::LaidOut work(
      "bars: 24\nsections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}, {name: A again, bars: "
      "17-24, same as: 1-8}]\n",
      sample::fours(4), 100);
  REQUIRE(work.analysis.fork_drills.empty());
  work.learn_all();
  ReturnSeamsDue& seams = work.progress.return_seams;
  const auto due = [&](int day) {
    return static_cast<int>(seams.on_day(day, work.end, work.progress.make).size());
  };
  const auto play = [&](int day) { seams.played(work.progress.make.join({5, 12}), day); };
  CHECK(due(50) == 0);  // the first is for the joins
  play(10);
  play(10);
  CHECK(due(39) == 0);  // a third of the 90 days left
  CHECK(due(40) == 1);
  play(40);
  CHECK(due(70) == 0);
  CHECK(due(71) == 1);
  play(71);
  CHECK(due(99) == 0);
}

TEST_CASE("a seam that fork drills play is not joined again besides") {
  sample::LaidOut work(
      "bars: 32\nsections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}, {name: A again, bars: "
      "17-24, same as: 1-8}, {name: Close, bars: 25-32}]\n",
      {{1, 4}, {5, 8}, {9, 12}, {13, 16}, {25, 28}, {29, 32}}, 100);
  REQUIRE_FALSE(work.analysis.fork_drills.empty());
  ReturnSeamsDue& seams = work.progress.return_seams;
  seams.played(work.progress.make.join({1, 32}), 10);
  CHECK(seams.on_day(90, work.end, work.progress.make).empty());
}

}  // namespace cahier
