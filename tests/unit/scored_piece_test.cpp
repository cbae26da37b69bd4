// A piece whose file names a score: what comes from there, and where it is printed.
#include "import/scored_piece.h"

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "paths.h"
#include "report/plan_json.h"
#include "sample_plan.h"
#include "sheet_words.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;

namespace {

// Beside the example's score, so that its name alone is the path to it.
std::optional<Piece> waltz(const std::string& yaml, Diagnostics& diagnostics) {
  return read_scored_piece(Source(std::string(EXAMPLES) + "/waltz.yaml", yaml), &english_words(),
                           diagnostics)
      .piece;
}

Piece waltz(const std::string& yaml) {
  Diagnostics diagnostics;
  auto piece = waltz(yaml, diagnostics);
  REQUIRE(piece);
  return *std::move(piece);
}

Plan plan_of(const Piece& piece) {
  Plan plan = make_plan({piece}, settle(sample::date("2027-01-04"), sample::date("2027-03-22"),
                                        piece.practice, sample::steady()));
  REQUIRE(plan.fits);
  return plan;
}

}  // namespace

TEST_CASE("what a piece file does not say comes from its score") {
  const Piece piece = waltz("score: heron-waltz.musicxml\nlevel: 3\n");
  CHECK(piece.title == "Heron Waltz");
  CHECK(piece.bars == 28);
  CHECK(piece.pickup == 1);
  CHECK(piece.tempo->per_minute == 126);
  CHECK(piece.level == 3);
  REQUIRE(piece.sections.size() == 5);
  CHECK(piece.sections[2].same_as == BarRange{1, 6});
}

TEST_CASE("a key of the file replaces the score's, and what belongs to it") {
  const Piece piece = waltz(
      "score: {file: heron-waltz.musicxml, part: P1}\ntempo: 50\nrepeats: []\n"
      "sections: [{name: All, bars: 0-28}]\n");
  CHECK(piece.tempo->per_minute == 50);
  CHECK(piece.tempo->beat == natural_beat(piece.meter));
  CHECK(piece.repeats.empty());
  CHECK(piece.sections.size() == 1);
}

TEST_CASE("the score tells how bars begin and how they are spoken") {
  const Piece piece = waltz("score: heron-waltz.musicxml\n");
  CHECK(piece.beginning_at(25) == "R: G4 B · L: G2 B–D");
  CHECK(piece.beginning_at(0) == "R: D5");
  CHECK(piece.beginning_at(29).empty());
  CHECK(piece.said_at(9, 0) == "E; G; F sharp");
  CHECK(piece.said_at(9, 1) == "E; G and B; G and B");
  CHECK(piece.said_at(9, 2).empty());
  CHECK(waltz("score: {file: heron-waltz.musicxml, names: german}\n").said_at(9, 1) ==
        "E; G and H; G and H");
  CHECK(waltz("score: {file: heron-waltz.musicxml, names: solfege}\n").said_at(9, 0) ==
        "mi; sol; fa sharp");
  Diagnostics diagnostics;
  CHECK_FALSE(waltz("score: {file: heron-waltz.musicxml, names: english}\n", diagnostics));
  CHECK(diagnostics.all().front().hint == "write letters, german or solfege");
}

TEST_CASE("starts, forks, the card and the day tell how their bars begin") {
  const Plan plan = plan_of(waltz("score: heron-waltz.musicxml\n"));
  CHECK(has(DrawnSheet(draw_cue_starts, plan).words(), "R: G4 B · L: G2 B–D"));
  CHECK(has(DrawnSheet(draw_rejoin_card, plan).words(), "R: G4 B · L: G2 B–D"));
  CHECK(has(DrawnSheet(draw_look_alikes, plan).words(), "From bar 9 on: R: E5 G · L: E3 G–B"));
  CHECK(has(DrawnSheet(draw_the_day, plan).words(), "Coda: R: G4 B · L: G2 B–D"));
  Plan silent = plan;
  silent.pieces[0].piece.beginnings.clear();
  CHECK(has(DrawnSheet(draw_look_alikes, silent).words(), "From bar 9 on:\n"));
  CHECK_FALSE(has(DrawnSheet(draw_cue_starts, silent).words(), "R: "));
}

TEST_CASE("a score tells how the ways on at a fork differ, on the sheet and in the JSON") {
  const Plan plan = plan_of(waltz("score: heron-waltz.musicxml\n"));
  const Piece& piece = plan.pieces[0].piece;
  REQUIRE_FALSE(piece.partings.empty());
  for (const Parting& parting : piece.partings) {
    CHECK(parting.one < parting.other);
    CHECK(parting.beat >= 1);
    CHECK(piece.parting_of(parting.one, parting.other) != nullptr);
  }
  // Read off the score: bars 7 and 23 differ at their second beat, 3 and 7 at once.
  const std::string words = DrawnSheet(draw_look_alikes, plan).words();
  CHECK(has(words, "Bar 7, beat 1: left hand: D instead of C."));
  CHECK(has(words, "Bar 23, beat 2: right hand: F♯ instead of C."));
  CHECK_FALSE(has(words, "Bar 9, "));  // after a repeat, which goes back to quite other bars
  const std::string json = plan_json(plan);
  CHECK(has(json, "\"to\": 23, \"beat\": 2, \"difference\": \"right hand: F♯ instead of C\""));
}

TEST_CASE("the names of spoken parts stand on a page of their own, chunk by chunk") {
  Plan plan = plan_of(waltz("score: heron-waltz.musicxml\nlevel: 4\n"));
  const DrawnSheet sheet(draw_spoken_parts, plan);
  REQUIRE(sheet.pages() == 2);
  CHECK_FALSE(has(sheet.canvas().pages()[0].words(), "E; G"));
  const std::string answers = sheet.canvas().pages()[1].words();
  CHECK(has(answers, "Spoken parts: the names\n"));
  CHECK(has(answers, "bars 9–12\n"));
  CHECK(has(answers, "9: E; G; F sharp · 10: E; B"));
  CHECK(sheet.faults().empty());
  plan.pieces[0].piece.said.clear();
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 1);
}

TEST_CASE("where a fork's lines have no room, what is told stands below them, whole") {
  const Plan plan = plan_of(waltz("score: heron-waltz.musicxml\n"));
  const std::string words =
      DrawnSheet(draw_look_alikes, plan, large_print(kA4, PunchedEdge::inner)).words();
  CHECK(has(words, "\nFrom bar 7 on:\n"));
  CHECK(has(words, "\nBar 7 begins R: D5 C · L: D3 F♯–C.\n"));
  CHECK(has(words, "\nBar 7, beat 1: left hand: D instead of C.\n"));
  const std::string usual = DrawnSheet(draw_look_alikes, plan).words();
  CHECK(has(usual, "\nFrom bar 7 on: R: D5 C · L: D3 F♯–C\n"));
  CHECK_FALSE(has(usual, "Bar 7 begins"));
}

TEST_CASE("sheets that tell how bars begin keep their layout on every paper") {
  const Plan plan = plan_of(waltz("score: heron-waltz.musicxml\nlevel: 4\n"));
  for (const auto draw :
       {draw_cue_starts, draw_rejoin_card, draw_look_alikes, draw_the_day, draw_spoken_parts})
    sample::require_faultless(draw, plan);
}
