#include "plan/chunks/divide.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

std::vector<BarRange> chunk_bars(const std::string& yaml,
                                 double load = sample::steady().chunk_minutes) {
  const Piece piece = sample::piece(yaml);
  const TimeModel time(piece, sample::steady());
  std::vector<BarRange> bars;
  for (const Chunk& chunk :
       divide_into_chunks(piece, divide_into_sections(piece), {}, sample::steady(), time, load))
    bars.push_back(chunk.bars);
  return bars;
}

std::vector<BarRange> section_bars(const std::string& yaml) {
  std::vector<BarRange> bars;
  for (const Section& section : divide_into_sections(sample::piece(yaml)))
    bars.push_back(section.bars);
  return bars;
}

}  // namespace

TEST_CASE("a piece without sections is cut into sixteens, or nearly", "[numbers]") {
  using Bars = std::vector<BarRange>;
  CHECK(section_bars("title: T\nbars: 48\n") == Bars{{1, 16}, {17, 32}, {33, 48}});
  CHECK(section_bars("title: T\nbars: 5\n") == Bars{{1, 5}});
  CHECK(section_bars("title: T\nbars: 20\n") == Bars{{1, 12}, {13, 20}});
  CHECK(section_bars("title: T\nbars: 8\nmeter: 4/4\npickup: 1\n") == Bars{{0, 8}});
}

TEST_CASE("sections begin where key or meter change") {
  using Bars = std::vector<BarRange>;
  CHECK(section_bars("title: T\nbars: 24\nkey: C major\nchanges: [{bar: 11, key: G major}]\n") ==
        Bars{{1, 10}, {11, 24}});
}

TEST_CASE("chunks fall on fours where the load allows") {
  using Bars = std::vector<BarRange>;
  CHECK(chunk_bars("title: T\nbars: 12\nmeter: 3/4\ntempo: 132\n") ==
        Bars{{1, 4}, {5, 8}, {9, 12}});
}

TEST_CASE("chunks rather begin four bars apart than three, though they are a little too long") {
  using Bars = std::vector<BarRange>;
  const std::string twelve = "title: T\nbars: 12\ntempo: 96\nlevel: 3\n";
  CHECK(chunk_bars(twelve, 8.3) == Bars{{1, 4}, {5, 8}, {9, 12}});
  CHECK(chunk_bars(twelve, 7.2) == Bars{{1, 2}, {3, 4}, {5, 6}, {7, 8}, {9, 10}, {11, 12}});
}

TEST_CASE("no chunk crosses a phrase, and no bar is left an orphan") {
  using Bars = std::vector<BarRange>;
  const Bars bars = chunk_bars(
      "title: T\nmeter: 3/4\ntempo: 120\nsections: [{name: A, bars: 1-15, phrases: [1-5, 6-12, "
      "13-13, 14-15]}]\n");
  CHECK(bars == Bars{{1, 3}, {4, 5}, {6, 9}, {10, 12}, {13, 13}, {14, 15}});
}

TEST_CASE("hard bars make smaller chunks") {
  const auto easy = chunk_bars("title: T\nbars: 16\nmeter: 4/4\ntempo: 100\nlevel: 1\n");
  const auto hard = chunk_bars("title: T\nbars: 16\nmeter: 4/4\ntempo: 100\nlevel: 5\n");
  CHECK(easy.size() == 4);
  CHECK(hard.size() == 8);
}

TEST_CASE("every length of phrase is cut within the method's sizes") {
  for (int bars = 2; bars <= 200; ++bars) {
    int expected = 1;
    for (const BarRange& chunk :
         chunk_bars("title: T\nbars: " + std::to_string(bars) +
                    "\nmeter: 4/4\nlevel: 3\nsections: [{name: A, bars: 1-" + std::to_string(bars) +
                    "}]\n")) {
      INFO(bars);
      REQUIRE(chunk.first == expected);
      REQUIRE(chunk.size() >= 2);
      REQUIRE(chunk.size() <= 4);
      expected = chunk.last + 1;
    }
    REQUIRE(expected == bars + 1);
  }
}

TEST_CASE("a pickup rides with the first chunk and does not count") {
  const auto bars = chunk_bars("title: T\nbars: 8\nmeter: 3/4\ntempo: 132\npickup: 1\n");
  CHECK(bars.front() == BarRange{0, 4});
}

}  // namespace cahier
