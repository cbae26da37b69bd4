// The tempo of a task where the piece changes its own.

#include "catch.h"
#include "drawn_sheet.h"
#include "sample_plan.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"

using namespace cahier;

namespace {

constexpr const char* kChanging = R"(
title: Two Tempi
bars: 24
meter: 4/4
tempo: 120
changes: [{bar: 9, tempo: 80, meter: 3/4}, {bar: 17, tempo: 120, meter: 4/4}]
practice: {minutes: 30}
)";

}  // namespace

TEST_CASE("a task keeps its share of the tempo through a change") {
  const Plan plan = sample::plan(kChanging);
  const PlannedPiece& piece = plan.pieces.front();
  Task task;
  task.drill = Drill::slow_pass;
  task.bars = {1, 24};
  task.tempo = 54;  // 45 % of 120
  CHECK(tempo_at(piece, task, 1) == Tempo{54, Beat::quarter});
  // 45 % of 80 is 36, below the scale of marks; 60 % of 80 is 48, a mark.
  // No metronome has 36: the eighths have 72.
  CHECK(tempo_at(piece, task, 9) == Tempo{72, Beat::eighth});
  task.tempo = 72;
  CHECK(tempo_at(piece, task, 9).per_minute == 48);
  const std::vector<TempoFrom> later = later_tempi(piece, task);
  REQUIRE(later.size() == 2);
  CHECK(later[0].bar == 9);
  CHECK(later[1].bar == 17);
  CHECK(later[1].tempo.per_minute == 72);
  task.bars = {9, 16};
  CHECK(later_tempi(piece, task).empty());
  task.bars = {1, 24};
  task.tempo.reset();
  CHECK(later_tempi(piece, task).empty());
}

TEST_CASE("a run-through at full tempo has the tempi of the piece") {
  const Plan plan = sample::plan(kChanging);
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) {
        const std::vector<TempoFrom> later = later_tempi(plan.pieces.front(), task);
        REQUIRE(later.size() == 2);
        CHECK(later[0].tempo.per_minute == 80);
        CHECK(later[1].tempo.per_minute == 120);
      }
  const std::string words = sample::DrawnSheet(draw_day_panels, plan).words();
  CHECK(words.find("\n9:\n= 80\n") != std::string::npos);
}

TEST_CASE("a tempo below the metronome's slowest mark is counted in smaller beats") {
  // The traditional scale begins at 40 (Grove's Dictionary, first edition, vol. 2, p. 320).
  CHECK(on_the_metronome({40, Beat::quarter}) == Tempo{40, Beat::quarter});
  CHECK(on_the_metronome({38, Beat::quarter}) == Tempo{76, Beat::eighth});
  CHECK(on_the_metronome({35, Beat::quarter}) == Tempo{69, Beat::eighth});  // 70 is no mark
  CHECK(on_the_metronome({21, Beat::dotted_quarter}) == Tempo{63, Beat::eighth});
  CHECK(on_the_metronome({30, Beat::half}) == Tempo{60, Beat::quarter});
  CHECK(on_the_metronome({20, Beat::dotted_half}) == Tempo{60, Beat::quarter});
  CHECK(on_the_metronome({30, Beat::eighth}) == Tempo{30, Beat::eighth});
}
