// The sheets on which memory is proved and tempered: cue starts, run-throughs, look-alikes,
// spoken parts, write-outs.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>
#include <utility>
#include <vector>

#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sound_plan.h"
#include "workbook/parts_cue.h"

using namespace cahier;
using sample::DrawnSheet;

namespace {

using Draw = void (*)(Book&);
constexpr Draw kSheets[] = {draw_cue_starts, draw_run_tally, draw_look_alikes, draw_spoken_parts,
                            draw_write_outs};

constexpr const char* kStudy = R"(
title: Lantern Study
bars: 48
meter: 3/4
key: A minor
tempo: 132
sections:
  - {name: A, bars: 1-16}
  - {name: B, bars: 17-32, level: 4}
  - {name: A again, bars: 33-44, same as: 1-12}
  - {name: Close, bars: 45-48}
look-alikes: [{bars: [9-16, 41-48], fork: [13, 45]}]
)";

int count_of(const std::string& text, const std::string& what) {
  int number = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++number;
  return number;
}

// Where each box for an assigned cue start stands, by the y of its middle.
std::vector<double> assigned_boxes(const DrawnSheet& sheet) {
  constexpr double kSide = 4.4;
  std::vector<double> heights;
  for (const DrawnPage& page : sheet.canvas().pages())
    for (const DrawnItem& item : page.items)
      if (const auto* rectangle = std::get_if<DrawnRectangle>(&item);
          rectangle && std::abs(rectangle->box.width - kSide) < 1e-9 &&
          std::abs(rectangle->box.height - kSide) < 1e-9)
        heights.push_back(rectangle->box.centre().y);
  return heights;
}

}  // namespace

TEST_CASE("The proving sheets keep their layout with short, crowded and several pieces") {
  for (const Draw draw : kSheets) {
    sample::require_faultless(draw, sound_plan());
    sample::require_faultless(draw, sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"));
    sample::require_faultless(
        draw, sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n",
                           "2027-01-04", "2027-06-20"));
    Plan programme = sound_plan();
    programme.pieces.push_back(programme.pieces.front());
    programme.pieces.back().piece.title = std::string(200, 'M');
    sample::require_faultless(draw, programme);
  }
}

TEST_CASE("The proving sheets keep their layout with five thousand bars") {
  Plan plan = sound_plan();
  PlannedPiece& piece = plan.pieces.front();
  piece.piece.bars = 5000;
  piece.piece.sections.clear();
  piece.piece.look_alikes.clear();
  piece.sections = {{"All of it", {1, 5000}, {}}};
  piece.chunks.clear();
  piece.cues.clear();
  std::vector<int> numbers;
  for (int bar = 1; bar <= 5000; bar += 4)
    piece.chunks.push_back({"A" + std::to_string(bar), {bar, bar + 3}, 0, 2});
  for (int bar = 1; bar <= 5000; bar += 16) {
    numbers.push_back(static_cast<int>(numbers.size()) + 1);
    piece.cues.push_back({numbers.back(), bar, 0});
  }
  piece.dice = dice_tables(numbers);
  for (const Draw draw : kSheets) CHECK(DrawnSheet(draw, plan).faults() == "");
}

TEST_CASE("The dice table shows every cue start as often as the dice bring it") {
  const Plan plan = sample::plan(kStudy);
  const PlannedPiece& piece = plan.pieces.front();
  REQUIRE(piece.dice.size() == 1);
  const DrawnSheet sheet(draw_cue_starts, plan);
  for (const DiceTable::Row& row : piece.dice.front().rows) {
    const std::string bar = "bar " + std::to_string(piece.cues[row.cue - 1].bar) + "\n";
    CHECK(count_of(sheet.words(), "\n" + bar) == static_cast<int>(row.outcomes.size()));
  }
  CHECK(count_of(sheet.words(), "\nagain\n") == static_cast<int>(piece.dice.front().again.size()));
}

TEST_CASE("Every cue start has a circle for having come once, and a box on each date it is set") {
  const Plan plan = sample::plan(kStudy);
  std::set<std::pair<Date, int>> assigned;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      for (const int cue : task.cues) assigned.insert({day.date, cue});
  REQUIRE(assigned.size() > 5);
  const DrawnSheet sheet(draw_cue_starts, plan);
  CHECK(sheet.circles_to_tick() == static_cast<int>(plan.pieces.front().cues.size()));
  CHECK(assigned_boxes(sheet).size() == assigned.size());
}

TEST_CASE("The box of an assigned cue start stands in the row of that start") {
  // The plan made by hand sets cue starts 1 and 2, on one day.
  const DrawnSheet sheet(draw_cue_starts, sound_plan());
  const std::vector<double> boxes = assigned_boxes(sheet);
  REQUIRE(boxes.size() == 2);
  std::vector<double> rows;
  for (const DrawnItem& item : sheet.canvas().pages().front().items)
    if (const auto* circle = std::get_if<DrawnCircle>(&item);
        circle && circle->use == CircleUse::tick)
      rows.push_back(circle->centre.y);
  REQUIRE(rows.size() == 3);
  CHECK(boxes[0] == Approx(rows[0]));
  CHECK(boxes[1] == Approx(rows[1]));
}

TEST_CASE("The sheet of cue starts says how long chance may leave one out") {
  // Twelve equal starts: 1.00 throws each, and (11/12)^12 = .352 unseen after twelve throws;
  // thirteen take 1.38 throws (shared reckoning: 36 / (2 * 13)).
  PlannedPiece piece = sound::small_planned_piece();
  const auto words_with = [&](int starts) {
    Plan plan = sound_plan();
    plan.days.resize(2);
    plan.days[0].tasks.clear();
    plan.days[1].tasks.clear();
    piece.piece.bars = starts;
    piece.cues.clear();
    std::vector<int> numbers;
    for (int start = 1; start <= starts; ++start) {
      piece.cues.push_back({start, start, 0});
      numbers.push_back(start);
    }
    piece.dice = dice_tables(numbers);
    plan.pieces = {piece};
    return DrawnSheet(draw_cue_starts, plan).words();
  };
  CHECK(words_with(12).find("35\u00a0%") != std::string::npos);
  CHECK(words_with(12).find("on average") == std::string::npos);
  CHECK(words_with(13).find("1.38 throws") != std::string::npos);
}

TEST_CASE("A cue start ends with its chunk, from inside a chunk with the next one") {
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.look_alikes.clear();
  CHECK(last_bar_from(piece, {1, 1, 0}) == 4);
  CHECK(last_bar_from(piece, {2, 3, 0}) == 8);
  // Bars 9–12 are bars 1–4 again.
  CHECK(last_bar_from(piece, {3, 9, 2}) == 12);
  CHECK(last_bar_from(piece, {4, 11, 2}) == 12);
}

TEST_CASE("A cue start before a fork goes on past it") {
  PlannedPiece piece = sound::small_planned_piece();
  piece.piece.look_alikes = {{{{1, 6}, {9, 12}}, {5, 11}}};
  piece.cues = {{1, 1, 0}, {2, 5, 1}, {3, 9, 2}};  // the one on the fork comes too late
  CHECK(last_bar_from(piece, piece.cues[0]) == 8);
  piece.cues = {{1, 1, 0}, {2, 3, 0}, {3, 9, 2}};  // the second is nearer
  CHECK(last_bar_from(piece, piece.cues[0]) == 4);
  CHECK(last_bar_from(piece, piece.cues[1]) == 8);
}

TEST_CASE("The tally has a row for every planned run with its date, and rows to spare") {
  const DrawnSheet sheet(draw_run_tally, sound_plan());
  CHECK(count_of(sheet.words(), "\n8 Jan\n") == 2);
  CHECK(count_of(sheet.words(), "\n11 Jan\n") == 2);
  CHECK(count_of(sheet.words(), "\n14 Jan\n") == 1);
  // Nine rows: nine for clean, recordings from the fourth run on, listeners from the fifth.
  CHECK(sheet.circles_to_tick() == 9 + 6 + 5);
}

TEST_CASE("The tally rounds what clean runs tell downwards") {
  // One-sided 95 % bounds, Clopper and Pearson 1934 (values computed): .549280 for 5 of 5, .342592
  // with one slip; .741134 and .605837 for 10. A streak of five within twenty: .9196 at .8, .4777
  // at .6.
  Plan plan = sound_plan();
  std::string words = DrawnSheet(draw_run_tally, plan).words();
  for (const char* figure :
       {"54\u00a0%", "34\u00a0%", "74\u00a0%", "60\u00a0%", "48 of 100", "92 of 100"}) {
    INFO(figure);
    std::string unbroken = words;
    std::replace(unbroken.begin(), unbroken.end(), '\n', ' ');
    CHECK(unbroken.find(figure) != std::string::npos);
  }
  CHECK(words.find("55\u00a0%") == std::string::npos);
}

TEST_CASE("Look-alikes stand side by side with their forks and drills") {
  const Plan plan = sample::plan(kStudy);
  const DrawnSheet sheet(draw_look_alikes, plan);
  const std::string words = sheet.words();
  CHECK(words.find("\n9–16\n") != std::string::npos);
  CHECK(words.find("\n41–48\n") != std::string::npos);
  CHECK(words.find("parts at bar 13 · A") != std::string::npos);
  CHECK(words.find("parts at bar 45 · A again") != std::string::npos);
  int drills = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) drills += task.fork ? 1 : 0;
  REQUIRE(drills > 0);
  CHECK(sheet.circles_to_tick() == 2 * (drills + 2));
}

TEST_CASE("A piece without look-alikes has no sheet of them") {
  const Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  CHECK(DrawnSheet(draw_look_alikes, plan).pages() == 0);
}
