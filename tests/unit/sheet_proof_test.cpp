// The sheets on which memory is proved and tempered: spoken parts, write-outs; and how they, the
// cue starts and the tally bear short, crowded and very long pieces.
#include <algorithm>
#include <catch2/catch.hpp>
#include <vector>

#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sound_plan.h"

using namespace cahier;
using sample::DrawnSheet;

namespace {

using Draw = void (*)(Book&);
constexpr Draw kSheets[] = {draw_cue_starts, draw_run_tally, draw_spoken_parts, draw_write_outs};

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

int tasks_of(const Plan& plan, Drill drill) {
  int number = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == drill) ++number;
  return number;
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

TEST_CASE("Spoken parts have lines and circles for every planned step") {
  const Plan plan = sound_plan();
  const DrawnSheet sheet(draw_spoken_parts, plan);
  CHECK(count_of(sheet.words(), "play left hand, say right hand") == 2);
  CHECK(count_of(sheet.words(), "play right hand, say left hand") == 2);
  CHECK(sheet.circles_to_tick() == 2 * 2 * 2);
}

TEST_CASE(
    "Spoken parts without a task are one page to fill in, and none where they make no sense") {
  Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  REQUIRE(tasks_of(plan, Drill::spoken_part) == 0);
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 1);
  plan.temper = Temper::no;
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 0);
  const Plan violin =
      sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90, instrument: violin}");
  CHECK(DrawnSheet(draw_spoken_parts, violin).pages() == 0);
}

TEST_CASE("Write-outs have numbered staves for every task") {
  const Plan plan = sample::plan(kStudy);
  const int tasks = tasks_of(plan, Drill::write_out);
  REQUIRE(tasks > 0);
  const DrawnSheet sheet(draw_write_outs, plan);
  CHECK(count_of(sheet.words(), "planned for") == tasks);
  for (int bar = 17; bar <= 32; ++bar) {
    INFO(bar);
    CHECK(count_of(sheet.words(), "\n" + std::to_string(bar) + "\n") == 1);
  }
}

TEST_CASE("Write-outs without a task are two pages of blank staves, also without Temper") {
  Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  REQUIRE(tasks_of(plan, Drill::write_out) == 0);
  CHECK(DrawnSheet(draw_write_outs, plan).pages() == 2);
  plan.temper = Temper::no;
  CHECK(DrawnSheet(draw_write_outs, plan).pages() == 2);
}

TEST_CASE("The largest staves are set smaller where a small page cannot hold them") {
  Plan plan = sound_plan();
  plan.pieces.front().piece.instrument = *find_instrument("organ");
  const Print print{kA5, 20, false};
  CHECK(DrawnSheet(draw_write_outs, plan, print).faults() == "");
  for (Day& day : plan.days) day.tasks.clear();
  CHECK(DrawnSheet(draw_write_outs, plan, print).faults() == "");
}
