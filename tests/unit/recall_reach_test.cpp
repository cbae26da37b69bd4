// How far one recall goes.
#include "plan/due/recall_reach.h"

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

using Reached = std::pair<int, int>;

struct SixChunks : sample::LaidOut {
  SixChunks() : LaidOut("bars: 24\n", sample::fours(6), 100) {
    learn_all();
    recall_all(1);
  }

  Reached reach(int day, Reach reach, const std::vector<int>& due) {
    return recall_reach(progress, 0, day, 600, reach, [&](int chunk) {
      return std::find(due.begin(), due.end(), chunk) != due.end();
    });
  }
};

}  // namespace

TEST_CASE("a recall takes along neighbours that were last played half a best gap ago",
          "[numbers]") {
  SixChunks work;
  CHECK(work.reach(5, Reach::ripe, {0}) == Reached{0, 0});
  CHECK(work.reach(6, Reach::ripe, {0}) == Reached{0, 5});
}

TEST_CASE("a recall plays two chunks on the way to another that is due, not three", "[numbers]") {
  SixChunks work;
  CHECK(work.reach(5, Reach::due, {0, 3}) == Reached{0, 3});
  CHECK(work.reach(5, Reach::due, {0, 4}) == Reached{0, 0});
}

}  // namespace cahier
