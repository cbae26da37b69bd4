// The card for the day.
#include <cmath>

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "workbook/sheets/runs/rejoin_points.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;

namespace {

constexpr const char* kLantern = R"(
title: Lantern Study
bars: 48
pickup: 1
meter: 3/4
tempo: 132
sections:
  - {name: A, bars: 1-16, phrases: [1-8, 9-16]}
  - {name: B, bars: 17-32}
  - {name: A again, bars: 33-44, same as: 1-12}
  - {name: Close, bars: 45-48}
look-alikes: [{bars: [9-16, 41-48], fork: [13, 45]}]
cues: [18]
practice: {days off: [sun]}
)";

// A section for every four bars.
Plan with_sections(int sections, int pieces = 1) {
  Plan plan = sound_plan();
  PlannedPiece piece = plan.pieces.front();
  piece.piece.bars = 4 * sections;
  piece.sections.clear();
  piece.cues.clear();
  piece.rejoin.clear();
  for (int at = 0; at < sections; ++at) {
    piece.sections.push_back(
        {"S" + std::to_string(at + 1), {4 * at + 1, 4 * at + 4}, std::nullopt});
    if (at > 0) piece.rejoin.push_back(4 * at + 1);
  }
  plan.pieces.assign(static_cast<std::size_t>(pieces), piece);
  for (int at = 1; at < pieces; ++at) plan.pieces[at].piece.title = "Piece " + std::to_string(at);
  return plan;
}

// The frames to cut along.
std::vector<Box> cards(const DrawnPage& page) {
  std::vector<Box> boxes;
  for (const DrawnItem& item : page.items)
    if (const auto* box = std::get_if<DrawnRectangle>(&item))
      if (box->paint.stroke && box->paint.stroke->dash > 0) boxes.push_back(box->box);
  return boxes;
}

void require_size(const Box& box, double width, double height) {
  CHECK(std::abs(box.width - width) < 1e-9);
  CHECK(std::abs(box.height - height) < 1e-9);
}

}  // namespace

TEST_CASE(
    "the rejoin card keeps its layout on every paper, for short, crowded and several pieces") {
  Plan named = with_sections(18);
  for (PlannedSection& section : named.pieces[0].sections)
    section.name = "A section whose name is exactly as long as is allowed, sixty";
  const std::vector<Plan> plans = {
      sound_plan(),
      sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"),
      sample::plan("{title: Long, bars: 300, tempo: 90, practice: {minutes: 60}}"),
      sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n", "2027-01-04",
                   "2027-06-20"),
      named,
      with_sections(70),
      with_sections(1250),
      with_sections(8, 2),
      with_sections(18, 3)};
  for (const Plan& plan : plans) sample::require_faultless_everywhere(draw_rejoin_card, plan);
}

TEST_CASE("the rejoin card leads forward from every bar, never to the next bar alone") {
  const std::string words = DrawnSheet(draw_rejoin_card, sample::plan(kLantern)).words();
  for (const char* text :
       {"Always forward.", "\nB\nslip in 0–16: bar 17\n",
        "\nB, second place\nslip in 17–24: bar 25\n", "\nA again\nslip in 25–32: bar 33\n",
        "\nClose\nslip in 33–44: bar 45\n", "\nto the end\nslip in 45–48\n"})
    CHECK_THAT(words, Catch::Contains(text));
  // At 9 and 41, just before the look-alikes part, nobody could tell which of them it is.
  CHECK_THAT(words, !Catch::Contains(": bar 41\n"));
  // Bar 18 was asked for as a cue start, but lies right behind bar 17.
  CHECK_THAT(words, !Catch::Contains(": bar 18\n"));
}

TEST_CASE("the rejoin card names places by section and phrase") {
  const std::string words = DrawnSheet(draw_rejoin_card, sample::plan(R"(
title: Phrases
bars: 32
tempo: 90
sections:
  - {name: A, bars: 1-16, phrases: [1-8, 9-16]}
  - {name: B, bars: 17-32, phrases: [17-20, 21-24, 25-32]}
cues: [29]
repeats: [{bars: 1-16, times: 2}]
)"))
                                .words();
  for (const char* text :
       {"\nA, second phrase\nslip in 1–8: bar 9\n", "\nB, second phrase\n", "\nB, third phrase\n",
        "\nB, in the third phrase\n", "\nfirst time: A\n", "\nsecond time: B\n"})
    CHECK_THAT(words, Catch::Contains(text));
}

TEST_CASE("each place on the rejoin card has a line to write how it begins") {
  const Plan plan = sample::plan(kLantern);
  for (const Print& print : sample::kEveryPaper) {
    const DrawnSheet sheet(draw_rejoin_card, plan, print);
    int lines = 0;
    for (const DrawnPage& page : sheet.canvas().pages())
      for (const DrawnItem& item : page.items)
        if (const auto* line = std::get_if<DrawnLine>(&item);
            line != nullptr && line->stroke.width == style::kWritingLine.width &&
            line->stroke.grey == style::kWritingLine.grey)
          lines += line->to.x - line->from.x > 25 ? 1 : 0;
    CHECK(lines == static_cast<int>(plan.pieces[0].rejoin.size()));
  }
}

TEST_CASE("what is in force stands at every place to rejoin after it") {
  const std::string words = DrawnSheet(draw_rejoin_card, sample::plan(R"(
title: Marks
bars: 48
tempo: 90
sections: [{name: A, bars: 1-16}, {name: B, bars: 17-32}, {name: C, bars: 33-48}]
marks:
  - {bar: 33, note: "mute off", holds: yes}
  - {bar: 12, note: "mute on", holds: yes}
  - {bar: 20, note: "look up"}
)"))
                                .words();
  CHECK_THAT(words, Catch::Contains("\nB\nslip in 9–16: bar 17\nmute on\n") &&
                        Catch::Contains("bar 25\nmute on\n") &&
                        Catch::Contains("bar 33\nmute off\n") && Catch::Contains("bar 9\nB\n") &&
                        !Catch::Contains("look up"));
}

TEST_CASE("the first bar of a section is larger than other places to go on from") {
  const DrawnSheet sheet(draw_rejoin_card, sample::plan(kLantern));
  double section = 0;
  double other = 0;
  for (const DrawnText& text : sheet.canvas().pages().front().texts()) {
    if (text.text == "B") section = text.style.size_pt;
    if (text.text == "B, second place") other = text.style.size_pt;
  }
  CHECK(section > 1.2 * other);
  CHECK(other > 0);
}

TEST_CASE("a section that is only called by its bars is not named on the card") {
  const Plan plan = sample::plan("{title: Plain, bars: 48, tempo: 90}");
  REQUIRE(plan.pieces[0].sections.size() > 1);
  const std::string words = DrawnSheet(draw_rejoin_card, plan).words();
  for (const Rejoin& rejoin : rejoins(plan.pieces[0]))
    if (rejoin.to > 0) CHECK(has(words, "\nbar " + std::to_string(rejoin.to) + "\nslip in "));
}

TEST_CASE("a card of few places is A6 upright, with a table for practising") {
  for (const PageSize paper : {kA4, kLetter}) {
    const DrawnSheet sheet(draw_rejoin_card, sample::plan(kLantern), Print{paper, 8, false});
    REQUIRE(sheet.pages() == 1);
    const std::vector<Box> boxes = cards(sheet.canvas().pages().front());
    REQUIRE(boxes.size() == 1);
    require_size(boxes[0], 105, 148);  // ISO 216: A6
    CHECK(has(sheet.words(), "cut along"));
    CHECK(has(sheet.words(), "Practise the jump"));
  }
}

TEST_CASE("ten places stand on one A6 card turned sideways, on one page") {
  for (const PageSize paper : {kA4, kLetter}) {
    const DrawnSheet sheet(draw_rejoin_card, with_sections(10), Print{paper, 8, false});
    REQUIRE(sheet.pages() == 1);
    const std::vector<Box> boxes = cards(sheet.canvas().pages().front());
    REQUIRE(boxes.size() == 1);
    require_size(boxes[0], 148, 105);  // ISO 216: A6
    CHECK(has(sheet.words(), "cut along"));
    CHECK(has(sheet.words(), "Practise the jump"));
  }
}

TEST_CASE("two cards share a page, of one long piece or of two pieces") {
  for (const PageSize paper : {kA4, kLetter})
    for (const Plan& plan : {with_sections(20), with_sections(10, 2)}) {
      const DrawnSheet sheet(draw_rejoin_card, plan, Print{paper, 8, false});
      REQUIRE(sheet.pages() == 1);
      const std::vector<Box> boxes = cards(sheet.canvas().pages().front());
      REQUIRE(boxes.size() == 2);
      for (const Box& box : boxes) require_size(box, 148, 105);  // ISO 216: A6
      CHECK_FALSE(boxes[0].overlaps(boxes[1], 1e-6));
      CHECK(has(sheet.words(), "cut along"));
    }
  CHECK(has(DrawnSheet(draw_rejoin_card, with_sections(20)).words(), "card 2 of 2"));
}

TEST_CASE("every place is on a card, and every word on how to use it, on any paper") {
  for (const Print& print : sample::kEveryPaper) {
    INFO("on paper of " << print.paper.width << " x " << print.paper.height << " mm");
    const DrawnSheet sheet(draw_rejoin_card, with_sections(25, 2), print);
    const std::string words = sheet.words();
    for (int section = 2; section <= 25; ++section) {
      INFO(section);
      CHECK(has(words, "\nS" + std::to_string(section) + "\n"));
      CHECK(has(words, ": bar " + std::to_string(4 * section - 3) + "\n"));
    }
    CHECK(has(words, "cut along"));
    CHECK(has(sample::one_line(words), "A jump"));
    CHECK(has(words, "from the next place."));
    for (const DrawnPage& page : sheet.canvas().pages())
      for (const Box& box : cards(page)) {
        CHECK(std::min(box.width, box.height) <= 105);
        CHECK(std::max(box.width, box.height) <= 148);
      }
  }
}
