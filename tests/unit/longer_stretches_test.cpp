// Which longer stretches are set aside before the first run-through.
#include "plan/due/longer_stretches.h"

#include "catch.h"
#include "laid_out.h"

namespace cahier {
namespace {

std::size_t booked(int bars) {
  sample::LaidOut work("bars: " + std::to_string(bars) + "\n",
                       {{1, 4}, {5, 8}, {9, 12}, {13, bars}}, 60);
  std::vector<double> room(60, 30);
  return reserve_longer_stretches(work.analysis, work.progress.make, work.terms.method, room, 10,
                                  30)
      .size();
}

}  // namespace

TEST_CASE("a piece has halves from sixteen bars on", "[numbers]") {
  CHECK(booked(15) == 0);
  CHECK(booked(16) == 2);
}

}  // namespace cahier
