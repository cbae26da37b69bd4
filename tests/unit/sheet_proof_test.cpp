// How the sheets on which memory is proved and tempered bear short, crowded and very long pieces.
#include <vector>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sound_plan.h"

using namespace cahier;
using sample::DrawnSheet;

namespace {

using Draw = void (*)(Book&);
constexpr Draw kSheets[] = {draw_cue_starts, draw_run_tally, draw_spoken_parts, draw_write_outs};

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
