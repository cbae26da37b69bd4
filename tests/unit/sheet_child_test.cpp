// The packet for a child: few pages, big type, short words, nothing to decipher.
#include <regex>

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/templates.h"
#include "workbook/packet.h"
#include "workbook/sheets/child/child_throw.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;

namespace {

constexpr auto kChildSheets = {draw_child_start, draw_child_weeks, draw_child_starts,
                               draw_child_runs, draw_child_staves};

const Plan& of_a_child() {
  static const Plan plan =
      sample::plan("{title: The Otter, bars: 16, meter: 3/4, tempo: 100, key: G major, level: 1}",
                   "2027-01-04", "2027-03-22");
  return plan;
}

std::vector<DrawnPage> child_packet(const Plan& plan, const Print& print) {
  Diagnostics diagnostics;
  const Packet packet = read_packet(Templates().read("packets", "child"), diagnostics);
  REQUIRE_FALSE(diagnostics.has_errors());
  RecordingCanvas canvas(sample::typefaces());
  draw_workbook(canvas, plan, packet, english_words(), print, Contents{});
  return canvas.pages();
}

// What a child could not read: codes, percentages, ISO weeks, small type.
std::string hard_to_read(const DrawnText& text, double least) {
  static const std::regex kCode(R"(%|\d{4}-\d|W\d\d)");
  if (std::regex_search(text.text, kCode)) return "code: " + text.text + "\n";
  if (text.style.size_pt < least) return "small: " + text.text + "\n";
  return text.style.cut ? "cut: " + text.text + "\n" : "";
}

Plan with_tasks(std::vector<Task> tasks) {
  Plan plan = sound_plan();
  for (Day& day : plan.days) {
    day.tasks.clear();
    day.note = DayNote::none;
  }
  plan.days[0].tasks = std::move(tasks);
  return plan;
}

// The weeks of a plan, each text behind the one before with a space between them.
std::string in_one_line(const Plan& plan) {
  std::string words = DrawnSheet(draw_child_weeks, plan).words();
  std::replace(words.begin(), words.end(), '\n', ' ');
  return words;
}

int pages_headed(const std::vector<DrawnPage>& pages, const std::string& head) {
  return static_cast<int>(std::count_if(pages.begin(), pages.end(), [&](const DrawnPage& page) {
    return page.words().rfind(head, 0) == 0;
  }));
}

}  // namespace

TEST_CASE("a child's sheets keep their layout on every paper, for one piece and two") {
  Plan two = sound_plan();
  two.pieces.push_back(two.pieces.front());
  two.pieces.back().piece.title = std::string(200, 'M');
  for (Day& day : two.days)
    if (!day.tasks.empty()) {
      day.tasks.push_back(day.tasks.front());
      day.tasks.back().piece = 1;
    }
  for (const Plan* plan : {&of_a_child(), static_cast<const Plan*>(&two)})
    for (const auto draw : kChildSheets) sample::require_faultless_everywhere(draw, *plan);
}

TEST_CASE("a child's sheets keep their layout for more work than a child would have") {
  const Plan plan =
      sample::plan(sample::crowded_piece() + "practice: {minutes: 120, temper: yes}\n",
                   "2027-01-04", "2027-03-20");
  for (const auto draw : kChildSheets) sample::require_faultless(draw, plan);
}

TEST_CASE("eleven weeks of 16 bars are a page a week and at most 20 pages for a child") {
  for (const PageSize paper : {kA4, kLetter, kA5}) {
    INFO("on paper " << paper.width << " mm wide");
    const auto pages = child_packet(of_a_child(), usual_print(paper, PunchedEdge::inner));
    CHECK(pages.size() <= 20);
    CHECK(pages_headed(pages, "Week ") == 11);
    for (int week = 1; week <= 11; ++week)
      CHECK(pages_headed(pages, "Week " + std::to_string(week) + " of 11\n") == 1);
  }
}

TEST_CASE("no page for a child holds a code, a percentage or small type") {
  for (const PageSize paper : {kA4, kLetter, kA5}) {
    std::string faults;
    for (const DrawnPage& page : child_packet(of_a_child(), usual_print(paper, PunchedEdge::inner)))
      for (const DrawnText& text : page.texts()) faults += hard_to_read(text, 14);
    CHECK(faults == "");
  }
}

TEST_CASE("a child's day names each task once, recalls of several bars together") {
  using sound::task;
  const std::string words =
      DrawnSheet(draw_child_weeks,
                 with_tasks({task(Drill::recall, {1, 4}, {0}, 1), task(Drill::join, {1, 8}, {}, 1),
                             task(Drill::recall, {9, 12}, {}, 1)}))
          .words();
  CHECK(has(words, "\nBy heart: bars 1–4 and 9–12.\n"));
  CHECK(has(words, "\nPut together, slowly: bars 1–8.\n"));
}

TEST_CASE("bars of level 1 are played slowly where others are written or spoken") {
  using sound::task;
  Plan plan =
      with_tasks({task(Drill::write_out, {1, 4}, {0}, 1), task(Drill::spoken_part, {1, 2}, {}, 1)});
  plan.pieces[0].piece.level = 1;
  plan.pieces[0].chunks[0].level = 4;  // as slips raise it
  const std::string words = in_one_line(plan);
  CHECK(has(words, "Very slowly, by heart: bars 1–4 and 1–2. "));
  CHECK_FALSE(has(words, "Write"));
  plan.pieces[0].piece.level = 2;
  CHECK(has(in_one_line(plan), "Write down without looking: bars 1–4."));
}

TEST_CASE("a child tosses one coin for two starts, a die for up to six") {
  const auto name = [](int cues) {
    PlannedPiece piece = sound_plan().pieces.front();
    piece.cues.clear();
    for (int cue = 1; cue <= cues; ++cue) piece.cues.push_back({cue, 4 * cue - 3});
    piece.dice = dice_tables({1});
    const auto tables = child_tables(piece);
    return tables.empty() ? "" : tables.front().name;
  };
  CHECK(name(1) == "");
  CHECK(name(2) == "1d2");
  CHECK(name(3) == "1d6");
  CHECK(name(6) == "1d6");
  CHECK(name(7) == "2d6");
  const std::string words = DrawnSheet(draw_child_starts, of_a_child()).words();
  CHECK(has(words, "\nheads: start at bar 1\n"));
  CHECK(has(words, "\ntails: start at bar 9\n"));
}

TEST_CASE("a child may choose what is thrown in the piece file") {
  const Plan plan =
      sample::plan("{title: Five, bars: 16, meter: 3/4, tempo: 90, practice: {dice: d20}}",
                   "2027-01-04", "2027-02-15");
  CHECK(child_tables(plan.pieces.front()).front().name == "1d20");
}

TEST_CASE("five good ones are said to a child without figures of chance") {
  const std::string words = DrawnSheet(draw_child_runs, of_a_child()).words();
  CHECK(has(words, "Five good ones: you know it. One bad one is no bad news."));
}

TEST_CASE("a child has two to ten empty bars to write in, on every paper") {
  for (const PageSize paper : {kA4, kLetter, kA5}) {
    const DrawnSheet sheet(draw_child_staves, of_a_child(), usual_print(paper, PunchedEdge::inner));
    int upright = 0;  // one where a system begins, one where each bar ends
    int level = 0;    // ten a system of two staves
    for (const DrawnItem& item : sheet.canvas().pages().at(0).items)
      if (const auto* line = std::get_if<DrawnLine>(&item)) {
        upright += line->from.x == line->to.x ? 1 : 0;
        level += line->from.y == line->to.y ? 1 : 0;
      }
    INFO(upright << " upright and " << level << " level lines on paper " << paper.width);
    const int bars = upright - level / 10;
    CHECK(bars >= 2);
    CHECK(bars <= 10);
  }
}

TEST_CASE("the empty bars for a child are one page") {
  CHECK(DrawnSheet(draw_child_staves, of_a_child()).pages() == 1);
}
