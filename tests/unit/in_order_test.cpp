// Work for several threads, taken in order.
#include "cli/studio/in_order.h"

#include <atomic>
#include <chrono>
#include <numeric>
#include <stdexcept>
#include <thread>
#include <vector>

#include "catch.h"

namespace cahier {

TEST_CASE("results are taken in order, whichever is done first") {
  constexpr std::size_t kCount = 24;
  for (const std::size_t threads : {1, 3, 50}) {
    std::vector<int> results(kCount, -1);
    std::vector<std::size_t> taken;
    std::atomic<int> workers = 0;
    const auto worker = [&]() -> WorkOne {
      ++workers;
      return [&](std::size_t number) {
        // The earlier ones take longer.
        std::this_thread::sleep_for(std::chrono::microseconds((kCount - number) * 100));
        results[number] = static_cast<int>(number);
      };
    };
    in_order(kCount, threads, worker, [&](std::size_t number) {
      CHECK(results[number] == static_cast<int>(number));
      taken.push_back(number);
    });
    std::vector<std::size_t> all(kCount);
    std::iota(all.begin(), all.end(), std::size_t{0});
    CHECK(taken == all);
    CHECK(workers == static_cast<int>(std::min(threads, kCount)));
  }
}

TEST_CASE("what cannot be said ends the work") {
  std::atomic<int> done = 0;
  const auto worker = [&]() -> WorkOne {
    return [&](std::size_t) {
      std::this_thread::sleep_for(std::chrono::milliseconds(2));
      ++done;
    };
  };
  CHECK_THROWS_AS(in_order(500, 2, worker,
                           [](std::size_t number) {
                             if (number == 3) throw std::runtime_error("nobody reads");
                           }),
                  std::runtime_error);
  CHECK(done < 400);
}

}  // namespace cahier
