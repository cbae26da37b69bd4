// Which sections are to be played whole, and how soon.
#include "plan/due/sections_due.h"

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

struct ThreeSections : sample::LaidOut {
  ThreeSections()
      : LaidOut(
            "bars: 79\nsections: [{name: A, bars: 1-7}, {name: B, bars: 8-15}, {name: C, bars: "
            "16-79}]\n",
            chunks(), 100) {
    learn_all();
    recall_all(1);
    // As before that recall, which played them whole.
    waiting.emplace(analysis, terms.method);
  }

  static std::vector<BarRange> chunks() {
    std::vector<BarRange> all = {{1, 4}, {5, 7}};
    for (int bar = 8; bar < 79; bar += 4) all.push_back({bar, bar + 3});
    return all;
  }

  std::optional<SectionsDue> waiting;
};

}  // namespace

TEST_CASE("a section of eight bars is played whole, a long one 32 bars at a time", "[numbers]") {
  ThreeSections work;
  CHECK(work.waiting->on_day(work.progress.recalls, 2) ==
        std::vector<WholeStretch>{{{8, 15}}, {{16, 47}}, {{48, 79}}});
}

TEST_CASE("three days after its last new bars a section is to be played whole at last",
          "[numbers]") {
  ThreeSections work;
  CHECK_FALSE(work.waiting->on_day(work.progress.recalls, 3).front().presses);
  CHECK(work.waiting->on_day(work.progress.recalls, 4).front().presses);
}

TEST_CASE("a half is played in as few parts as a section, at once, before the first run-through") {
  sample::LaidOut work("bars: 79\nsections: [{name: A, bars: 1-15}, {name: B, bars: 16-79}]\n",
                       {{1, 7}, {8, 15}, {16, 30}, {31, 45}, {46, 79}}, 100);
  work.learn_all();
  work.recall_all(1);
  SectionsDue waiting(work.analysis, work.terms.method);
  for (const Task& section :
       {work.progress.make.recall({1, 15}), work.progress.make.recall({16, 79})})
    waiting.played(section);
  CHECK(waiting.on_day(work.progress.recalls, 2).empty());
  waiting.add_half({16, 79}, work.analysis, 20);
  const std::vector<WholeStretch> parts = {{{16, 45}, Reason::half, true},
                                           {{46, 79}, Reason::half, true}};
  CHECK(waiting.on_day(work.progress.recalls, 2) == parts);
  CHECK(waiting.on_day(work.progress.recalls, 20).empty());
  waiting.played(work.progress.make.recall({16, 45}));
  CHECK(waiting.on_day(work.progress.recalls, 2) == std::vector<WholeStretch>{parts[1]});
}

TEST_CASE("the parts of a half begin where phrases begin, where those are known") {
  sample::LaidOut work(
      "bars: 80\nsections: [{name: A, bars: 1-80, phrases: [1-20, 21-34, 35-60, 61-80]}]\n",
      {{1, 20}, {21, 34}, {35, 60}, {61, 80}}, 100);
  work.learn_all();
  work.recall_all(1);
  SectionsDue waiting(work.analysis, work.terms.method);
  waiting.played(work.progress.make.recall({1, 80}));
  waiting.add_half({1, 60}, work.analysis, 20);
  const auto parts = waiting.on_day(work.progress.recalls, 2);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].bars == BarRange{1, 34});
  CHECK(parts[1].bars == BarRange{35, 60});
}

TEST_CASE("an upbeat makes no part of a half") {
  sample::LaidOut work(
      "bars: 64\nmeter: 4/4\npickup: 1\nsections: [{name: A, bars: 0-32}, {name: B, bars: "
      "33-64}]\n",
      {{0, 32}, {33, 64}}, 100);
  work.learn_all();
  work.recall_all(1);
  SectionsDue waiting(work.analysis, work.terms.method);
  waiting.played(work.progress.make.recall({0, 64}));
  waiting.add_half({0, 32}, work.analysis, 20);
  CHECK(waiting.on_day(work.progress.recalls, 2).size() == 1);
}

}  // namespace cahier
