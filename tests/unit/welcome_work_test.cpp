// What no rule asks for and a teacher would: how much of it a day takes.
#include "plan/schedule/welcome_work.h"

#include "catch.h"
#include "drafted.h"

namespace cahier {
namespace {

// 48 bars, so three stretches; the date is day 100.
struct ThreeStretches : sample::Drafted {
  explicit ThreeStretches(double minutes = 600)
      : Drafted("bars: 48\n", sample::fours(12), 100, minutes) {
    learn_all();
    recall_all(1);
  }

  WelcomeWork more{draft};

  double pass_minutes() { return progress().make.slow_pass({1, 16}).minutes; }
  // Passes that the day takes.
  std::size_t pass(int day) {
    more.pass(day);
    return count_on(day);
  }
  // What a day takes besides, that has used so many minutes.
  std::vector<Drill> fill_up(int day, double used = 1) {
    draft.room[day] -= used;
    more.fill_up(day);
    return drills_on(day);
  }
  // Every stretch had so many passes of each kind.
  void passed(int times) {
    for (int time = 0; time < times; ++time) {
      progress().passes_due.played(progress().make.slow_pass({1, 48}));
      progress().passes_due.played(progress().make.counted_pass({1, 48}));
    }
  }
};

using Drills = std::vector<Drill>;

}  // namespace

TEST_CASE("a pass comes when its bars have rested for a quarter of the best gap", "[numbers]") {
  CHECK(ThreeStretches().pass(3) == 0);
  CHECK(ThreeStretches().pass(4) == 3);
}

TEST_CASE("a day is half passes at most, until three weeks before the date", "[numbers]") {
  const double one = ThreeStretches().pass_minutes();
  const auto passes = [&](int day) {
    ThreeStretches work(3 * one);
    return work.pass(day);
  };
  CHECK(passes(78) == 2);  // one is a third of the day
  CHECK(passes(79) == 3);
}

TEST_CASE("each stretch has one pass of each kind, with eight weeks left two", "[numbers]") {
  const auto takes_second = [](int learned) {
    sample::Drafted work("bars: 16\n", sample::fours(4), 100, 600);
    work.learn_all(learned);
    work.recall_all(learned + 1);
    for (const Drill drill : {Drill::slow_pass, Drill::counted_pass})
      work.progress().passes_due.played(work.progress().make.of_bars(drill, {1, 16}));
    WelcomeWork(work.draft).pass(70);
    return work.count_on(70) > 0;
  };
  CHECK(takes_second(44));
  CHECK_FALSE(takes_second(45));
}

TEST_CASE("a day with room takes passes again after a fifth of the best gap", "[numbers]") {
  CHECK(ThreeStretches().fill_up(2).empty());
  CHECK(ThreeStretches().fill_up(3).size() == 3);
}

TEST_CASE("a day with room takes three passes of each kind over a stretch, and no more",
          "[numbers]") {
  ThreeStretches two;
  two.passed(2);
  CHECK(two.fill_up(3).size() == 3);
  ThreeStretches three;
  three.passed(3);
  CHECK(three.fill_up(3).empty());
}

TEST_CASE("when passes are done a day with room recalls whole stretches after a quarter of the gap",
          "[numbers]") {
  ThreeStretches work;
  work.passed(3);
  CHECK(work.fill_up(3).empty());
  CHECK(work.fill_up(4) == Drills{Drill::recall, Drill::recall, Drill::recall});
}

TEST_CASE("a day is full from 34 hundredths of its minutes on", "[numbers]") {
  CHECK_FALSE(ThreeStretches(100).fill_up(4, 33.8).empty());
  CHECK(ThreeStretches(100).fill_up(4, 34.2).empty());
}

}  // namespace cahier
