// The last evening and the day.
#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;

namespace {

// A plan whose only piece has so many sections of four bars.
Plan with_named_sections(int sections) {
  Plan plan = sound_plan();
  PlannedPiece& piece = plan.pieces.front();
  piece.piece.bars = 4 * sections;
  piece.sections.clear();
  for (int at = 0; at < sections; ++at)
    piece.sections.push_back(
        {"Part " + std::to_string(at + 1), {4 * at + 1, 4 * at + 4}, std::nullopt});
  return plan;
}

}  // namespace

TEST_CASE("the sheet of the day keeps its layout on every paper, with few and many sections") {
  for (const Plan& plan :
       {sound_plan(), sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"),
        sample::plan("{title: No Tempo, bars: 20}"), with_named_sections(9),
        with_named_sections(200),
        sample::plan(sample::crowded_piece(), "2027-01-04", "2027-06-20")})
    sample::require_faultless_everywhere(draw_the_day, plan);
  Plan programme = sound_plan();
  programme.pieces.assign(12, programme.pieces.front());
  sample::require_faultless_everywhere(draw_the_day, programme);
}

TEST_CASE("the sheet of the day has one page and a line for each section's beginning") {
  for (const PageSize paper : {kA4, kLetter})
    for (const int sections : {1, 4, 9, 20}) {
      INFO(sections << " sections");
      const DrawnSheet sheet(draw_the_day, with_named_sections(sections), Print{paper, 8, false});
      CHECK(sheet.pages() == 1);
      for (int at = 1; at <= sections; ++at)
        CHECK(has(sheet.words(), "\nPart " + std::to_string(at) + "\n"));
    }
  const DrawnSheet small(draw_the_day, with_named_sections(3), Print{kA5, 8, false});
  CHECK(small.pages() == 1);
  const DrawnSheet many(draw_the_day, with_named_sections(60), Print{kA5, 8, false});
  CHECK(many.pages() <= 3);
  CHECK(has(many.words(), "\nPart 60\n"));
}

TEST_CASE("the sheet of the day says the morning, the tempo, the walk and the cautions, in order") {
  const std::string words =
      DrawnSheet(draw_the_day, sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"))
          .words();
  std::size_t at = 0;
  for (const char* text :
       {"The evening before", "Friday 19 March", "The morning of Saturday 20 March", "Warm up",
        "A slow pass", "A silent play-through", "What I look at last", "The opening tempo", "= 90",
        "The bar I hear inside", "How each section begins", "bars 1–5",
        "The walk to the instrument", "Look after yourself."}) {
    INFO(text);
    const std::size_t found = words.find(text, at);
    CHECK(found != std::string::npos);
    if (found != std::string::npos) at = found;
  }
}

TEST_CASE("the evening before a day off sends to no panel") {
  Plan plan = sound_plan();
  const auto words = [&] { return one_line(DrawnSheet(draw_the_day, plan).words()); };
  REQUIRE(plan.days.back().date == plan.by - days{1});
  plan.days.back().tasks = plan.days[1].tasks;
  CHECK(has(words(), "The panel of"));
  plan.days.back().tasks.clear();
  CHECK_FALSE(has(words(), "The panel of"));
  CHECK(has(words(), "is free of practice: leave it so."));
}

TEST_CASE("a programme has one page for the day, with the opening tempo of each piece") {
  Plan plan = sound_plan();
  plan.pieces.assign(3, plan.pieces.front());
  for (int piece = 0; piece < 3; ++piece) {
    plan.pieces[piece].piece.title = "Piece " + std::to_string(piece + 1);
    plan.pieces[piece].piece.tempo = Tempo{61.0 + piece, Beat::quarter};
  }
  for (const PageSize paper : {kA4, kLetter, kA5}) {
    const DrawnSheet sheet(draw_the_day, plan, Print{paper, 8, false});
    CHECK(sheet.pages() == 1);
    for (const char* text : {"Piece 1", "= 61", "Piece 2", "= 62", "Piece 3", "= 63"})
      CHECK(has(sheet.words(), text));
    CHECK_FALSE(has(sheet.words(), "How each section begins"));
  }
}
