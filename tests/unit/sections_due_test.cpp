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

}  // namespace cahier
