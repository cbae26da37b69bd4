// How many starts one drill at a fork has.
#include "catch.h"
#include "laid_out.h"

namespace cahier {

TEST_CASE("a drill at a fork that was found has four starts at most", "[numbers]") {
  // A refrain that goes on in six ways.
  std::string sections = "{name: A, bars: 1-4}, {name: B, bars: 5-8}";
  std::vector<BarRange> chunks = {{1, 4}, {5, 8}};
  for (int turn = 1; turn < 6; ++turn) {
    const int first = 8 * turn + 1;
    const std::string number = std::to_string(turn);
    sections += ", {name: A" + number + ", bars: " + std::to_string(first) + "-" +
                std::to_string(first + 3) + ", same as: 1-4}, {name: B" + number +
                ", bars: " + std::to_string(first + 4) + "-" + std::to_string(first + 7) + "}";
    chunks.push_back({first + 4, first + 7});
  }
  const sample::LaidOut work("bars: 48\nsections: [" + sections + "]\n", chunks, 60);
  std::size_t most = 0;
  std::size_t all = 0;
  for (const ForkDrill& drill : work.analysis.fork_drills) {
    most = std::max(most, drill.cues.size());
    all += drill.cues.size();
  }
  CHECK(all == 6);
  CHECK(most <= 4);
  CHECK(work.analysis.fork_drills.size() == 2);
}

}  // namespace cahier
