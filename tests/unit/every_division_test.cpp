// All ways of cutting a short piece.
#include "plan/chunks/every_division.h"

#include <set>

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

std::vector<std::vector<BarRange>> ways(const std::string& yaml) {
  const Piece piece = sample::piece("title: T\n" + yaml);
  std::vector<std::vector<BarRange>> all;
  for (const auto& chunks : every_division(piece, {}, sample::steady())) {
    all.emplace_back();
    for (const Chunk& chunk : chunks) all.back().push_back(chunk.bars);
  }
  return all;
}

}  // namespace

TEST_CASE("a phrase is cut in as many ways as it has compositions of two, three and four") {
  // The recurrence for compositions with bounded parts, c(n) = c(n-2) + c(n-3) + c(n-4), a
  // textbook one (from memory); a single bar stays as it is.
  std::vector<std::size_t> counts = {1, 0, 1, 1, 2};
  while (counts.size() < 12) {
    const std::size_t n = counts.size();
    counts.push_back(counts[n - 2] + counts[n - 3] + counts[n - 4]);
  }
  for (std::size_t bars = 2; bars <= 11; ++bars) {
    const auto all = ways("bars: " + std::to_string(bars) + "\n");
    CHECK(all.size() == counts[bars]);
    CHECK(std::set(all.begin(), all.end(), [](const auto& one, const auto& other) {
            return std::lexicographical_compare(
                one.begin(), one.end(), other.begin(), other.end(), [](BarRange a, BarRange b) {
                  return std::pair(a.first, a.last) < std::pair(b.first, b.last);
                });
          }).size() == all.size());
  }
  CHECK(ways("bars: 1\n").size() == 1);
}

TEST_CASE("the ways of several phrases are multiplied, and a return is not cut") {
  using Ways = std::vector<std::vector<BarRange>>;
  CHECK(ways("bars: 14\nsections:\n"
             "  - {name: A, bars: 1-5, phrases: [1, 2-5]}\n"
             "  - {name: B, bars: 6-9}\n"
             "  - {name: again, bars: 10-14, same as: 1-5}\n") ==
        Ways{{{1, 1}, {2, 3}, {4, 5}, {6, 7}, {8, 9}},
             {{1, 1}, {2, 5}, {6, 7}, {8, 9}},
             {{1, 1}, {2, 3}, {4, 5}, {6, 9}},
             {{1, 1}, {2, 5}, {6, 9}}});
}

TEST_CASE("a pickup rides with the first chunk in every way") {
  using Ways = std::vector<std::vector<BarRange>>;
  CHECK(ways("bars: 4\nmeter: 3/4\npickup: 1\n") == Ways{{{0, 2}, {3, 4}}, {{0, 4}}});
  CHECK(ways("bars: 2\nmeter: 3/4\npickup: 1\nsections:\n"
             "  - {name: A, bars: 0-2, phrases: [0, 1-2]}\n") == Ways{{{0, 0}, {1, 2}}});
}

TEST_CASE("more than 32 ways are none", "[numbers]") {
  CHECK(ways("bars: 14\nsections: [{name: A, bars: 1-14, phrases: [1-6, 7-14]}]\n").size() == 32);
  CHECK(ways("bars: 15\nsections: [{name: A, bars: 1-15, phrases: [1-7, 8-15]}]\n").empty());
}

}  // namespace cahier
