// Endings of repeats, the forks that follow from a piece's form, their drills, and where to rejoin.
#include "piece/forks.h"

#include <map>
#include <set>

#include "catch.h"
#include "practice/time_model.h"
#include "sample_plan.h"
#include "workbook/sheets/runs/rejoin_points.h"

using namespace cahier;

namespace {

using Played = std::vector<BarRange>;
using Ways = std::vector<PlayedWay>;

Piece piece_of(int bars) {
  Piece piece;
  piece.title = "Forks";
  piece.bars = bars;
  piece.tempo = Tempo{10, Beat::quarter};
  return piece;
}

Piece with_endings() {
  Piece piece = piece_of(20);
  piece.repeats = {{{1, 16}, 2, {{{15, 16}, {1}}, {{17, 18}, {2}}}}};
  return piece;
}

Ways ways_of(const Fork& fork) {
  Ways ways;
  for (const WayOn& way : fork.ways) ways.push_back({way.at, way.to});
  return ways;
}

Ways ways_back_of(const Fork& fork) {
  Ways ways;
  for (const WayOn& way : fork.back) ways.push_back({way.at, way.to});
  return ways;
}

// {A, B, A again, Close}, each section so many bars.
Piece with_return(int a, int b) {
  Piece piece = piece_of(2 * a + 2 * b);
  piece.sections = {{"A", {1, a}, {}, {}, {}},
                    {"B", {a + 1, a + b}, {}, {}, {}},
                    {"A again", {a + b + 1, 2 * a + b}, {}, {}, BarRange{1, a}},
                    {"Close", {2 * a + b + 1, 2 * a + 2 * b}, {}, {}, {}}};
  return piece;
}

constexpr const char* kEndings = R"(
title: Endings
bars: 40
meter: 3/4
tempo: 120
sections:
  - {name: A, bars: 1-18, phrases: [1-8, 9-18]}
  - {name: B, bars: 19-26}
  - {name: A again, bars: 27-34, same as: 1-8}
  - {name: Close, bars: 35-40}
repeats: [{bars: 1-16, times: 2}, {bars: 19-26, times: 2}]
endings: [{bars: 15-16, times: [1]}, {bars: 17-18, times: [2]}]
)";

}  // namespace

TEST_CASE("a repeat with endings is played as they say") {
  Piece piece = with_endings();
  CHECK(piece.playing_order() == Played{{1, 14}, {15, 16}, {1, 14}, {17, 18}, {19, 20}});
  // All of them inside the repeat, and one for two of its times.
  piece.repeats = {{{3, 18}, 3, {{{15, 16}, {1, 2}}, {{17, 18}, {3}}}}};
  const Played twice = {{3, 14}, {15, 16}, {3, 14}, {15, 16}};
  Played expected = {{1, 2}};
  expected.insert(expected.end(), twice.begin(), twice.end());
  expected.insert(expected.end(), {{3, 14}, {17, 18}, {19, 20}});
  CHECK(piece.playing_order() == expected);
}

TEST_CASE("repeats inside a repeat with endings, and inside an ending, are played each time") {
  Piece piece = piece_of(12);
  piece.repeats = {{{1, 8}, 2, {{{6, 8}, {1}}, {{9, 10}, {2}}}}, {{2, 3}, 2}, {{6, 7}, 2}};
  CHECK(piece.playing_order() == Played{{1, 1},
                                        {2, 3},
                                        {2, 3},
                                        {4, 5},
                                        {6, 7},
                                        {6, 7},
                                        {8, 8},
                                        {1, 1},
                                        {2, 3},
                                        {2, 3},
                                        {4, 5},
                                        {9, 10},
                                        {11, 12}});
}

TEST_CASE("a run-through takes as long as what is played, endings included") {
  const Method method = sample::steady();
  const Piece repeated = with_endings();
  const Piece written_out = piece_of(14 + 2 + 14 + 2 + 2);
  CHECK(TimeModel(repeated, method).run_through() == TimeModel(written_out, method).run_through());
  Piece longer = repeated;
  longer.repeats[0].endings.clear();
  CHECK(TimeModel(longer, method).run_through() > TimeModel(repeated, method).run_through());
}

TEST_CASE("a return that is left another way than at first is a fork") {
  const auto forks = forks_of(with_return(16, 24));
  REQUIRE(forks.size() == 1);
  CHECK(forks[0].from == ForkFrom::return_);
  CHECK(ways_of(forks[0]) == Ways{{16, 17}, {56, 57}});
  CHECK(forks[0].ways[1].alike == BarRange{41, 56});
}

TEST_CASE("a return that goes on as at first is a fork only where they part") {
  Piece piece = with_return(8, 8);
  piece.sections[3].same_as = BarRange{9, 16};
  piece.bars = 40;
  piece.sections.push_back({"Coda", {33, 40}, {}, {}, {}});
  const auto forks = forks_of(piece);
  REQUIRE(forks.size() == 1);
  CHECK(ways_of(forks[0]) == Ways{{16, 17}, {32, 33}});
  CHECK(forks[0].ways[0].alike == BarRange{1, 16});
  // Where nothing follows the return, nothing is to be told apart.
  piece.sections.pop_back();
  piece.bars = 32;
  CHECK(forks_of(piece).empty());
}

TEST_CASE("two returns of the same bars make one fork of three ways") {
  Piece piece = with_return(8, 8);
  piece.bars = 48;
  piece.sections.push_back({"A last", {33, 40}, {}, {}, BarRange{17, 24}});
  piece.sections.push_back({"Coda", {41, 48}, {}, {}, {}});
  const auto forks = forks_of(piece);
  REQUIRE(forks.size() == 1);
  CHECK(ways_of(forks[0]) == Ways{{8, 9}, {24, 25}, {40, 41}});
}

TEST_CASE("what the piece file names is not found again") {
  Piece piece = with_return(16, 24);
  piece.look_alikes = {{{{9, 18}, {49, 58}}, {17, 57}}};
  const auto forks = forks_of(piece);
  REQUIRE(forks.size() == 1);
  CHECK(forks[0].from == ForkFrom::look_alikes);
  CHECK(ways_of(forks[0]) == Ways{{16, 17}, {56, 57}});
}

TEST_CASE("a repeat goes back or on; at the end of the piece it only goes back") {
  Piece piece = piece_of(20);
  piece.repeats = {{{1, 16}, 2}, {{17, 20}, 3}};
  const auto forks = forks_of(piece);
  REQUIRE(forks.size() == 2);
  CHECK(forks[0].from == ForkFrom::repeat);
  CHECK(ways_of(forks[0]) == Ways{{16, 1}, {16, 17}});
  CHECK(forks[0].ways[0].times == std::vector<int>{1});
  CHECK(forks[0].ways[1].times == std::vector<int>{2});
  CHECK(forks[0].ways[1].of == 2);
  CHECK(ways_of(forks[1]) == Ways{{20, 17}});
}

TEST_CASE("repeats that end together are one fork of all their ways") {
  Piece piece = piece_of(20);
  piece.repeats = {{{1, 16}, 2}, {{9, 16}, 2}};
  const auto forks = forks_of(piece);
  REQUIRE(forks.size() == 1);
  CHECK(ways_of(forks[0]) == Ways{{16, 9}, {16, 1}, {16, 17}});
}

TEST_CASE("the ways into endings are a fork, the way back from them a seam") {
  const auto forks = forks_of(with_endings());
  REQUIRE(forks.size() == 1);
  CHECK(forks[0].from == ForkFrom::ending);
  CHECK(ways_of(forks[0]) == Ways{{14, 15}, {14, 17}});
  CHECK(ways_back_of(forks[0]) == Ways{{16, 1}});
  // An ending that goes back at one time and on at another is a fork itself.
  Piece piece = with_endings();
  piece.repeats = {{{1, 18}, 4, {{{15, 16}, {1, 3}}, {{17, 18}, {2, 4}}}}};
  const auto both = forks_of(piece);
  REQUIRE(both.size() == 2);
  CHECK(ways_back_of(both[0]) == Ways{{16, 1}});
  CHECK(ways_of(both[1]) == Ways{{18, 1}, {18, 19}});
}

TEST_CASE("every way on is drilled three times, and the way back is played") {
  const Plan plan = sample::plan(kEndings, "2027-01-04", "2027-03-22");
  REQUIRE(plan.fits);
  const PlannedPiece& planned = plan.pieces[0];
  REQUIRE(planned.forks.size() == 3);
  std::map<std::pair<int, int>, std::set<Date>> drilled;
  for (const Day& day : plan.days) {
    int forks = 0;
    for (const Task& task : day.tasks) {
      if (!task.fork) continue;
      ++forks;
      CHECK(task.steps[0].times == static_cast<int>(task.cues.size()));
      for (const PlayedWay& way : task.ways) drilled[{way.at, way.to}].insert(day.date);
    }
    CHECK(forks <= 1);
  }
  for (const Fork& fork : planned.forks)
    for (const auto& ways : {fork.ways, fork.back})
      for (const WayOn& way : ways) {
        CAPTURE(way.at, way.to);
        CHECK(drilled[{way.at, way.to}].size() == 3);
        CHECK(*drilled[{way.at, way.to}].rbegin() >= plan.by - days{14});
      }
  CHECK(drilled.count({16, 1}) == 1);
}

TEST_CASE("forks that were found are no reason why a plan does not fit") {
  std::string bare = "title: Tight\nbars: 24\nmeter: 4/4\ntempo: 100\n";
  const std::string repeats =
      "repeats: [{bars: 1-8, times: 2}, {bars: 9-16, times: 2}, {bars: 17-24, times: 2}]\n"
      "practice: {minutes: 60, days off: [sun]}\n";
  const Plan plan = sample::plan(bare + repeats, "2027-01-04", "2027-01-18");
  CHECK(plan.fits);
  for (const Unplaced& work : plan.unplaced) CHECK(work.drill != Drill::cue_starts);
}

TEST_CASE("one rejoins where phrases begin, never just before bars that look the same part") {
  const std::string sections =
      "title: Rejoin\nbars: 48\nmeter: 4/4\ntempo: 100\nsections:\n"
      "  - {name: A, bars: 1-16, phrases: [1-6, 7-12, 13-16]}\n"
      "  - {name: B, bars: 17-28, phrases: 2}\n"
      "  - {name: A again, bars: 29-44, same as: 1-16}\n"
      "  - {name: Close, bars: 45-48}\n";
  // 13 and 41 lie four bars before the fork, and phrases of two bars are too near one another.
  CHECK(sample::plan(sections).pieces[0].rejoin == std::vector<int>{7, 17, 21, 25, 29, 35, 45});
  // What is asked for as a cue start is a place to rejoin as well, unless it leads into a fork.
  CHECK(sample::plan(sections + "cues: [20, 43]\n").pieces[0].rejoin ==
        std::vector<int>{7, 17, 20, 25, 29, 35, 45});
  // A repeat goes back to where one can rejoin for its second time.
  CHECK(sample::plan(sections + "repeats: [{bars: 1-16, times: 2}]\n").pieces[0].rejoin ==
        std::vector<int>{1, 7, 17, 21, 25, 29, 35, 45});
}

TEST_CASE("the rejoin card tells the times of a repeat apart where they lead elsewhere") {
  const Plan plan = sample::plan(kEndings);
  const std::vector<Rejoin> rows = rejoins(plan.pieces[0]);
  REQUIRE(rows.size() == 7);
  CHECK(rows[0].from == Played{{1, 8}});
  CHECK(rows[0].to == 9);
  CHECK(rows[0].times == std::vector<int>{1, 2});
  CHECK(rows[0].of == 2);
  CHECK(rows[1].from == Played{{9, 16}});
  CHECK(rows[1].to == 1);
  CHECK(rows[1].times == std::vector<int>{1});
  CHECK(rows[2].from == Played{{9, 14}, {17, 18}});
  CHECK(rows[2].to == 19);
  CHECK(rows[2].begins_section);
  CHECK(rows[2].times == std::vector<int>{2});
  CHECK(rows[3].to == 19);
  CHECK(rows[4].to == 27);
  CHECK(rows[6].to == 0);
  // A pickup alone is not jumped over, even where bar 1 is a place to rejoin.
  const Plan upbeat = sample::plan(std::string(kEndings) + "pickup: 1\n");
  CHECK(rejoins(upbeat.pieces[0]).front().from == Played{{1, 8}});
}
