// The sheets of passes and of run-throughs.
#include <algorithm>
#include <string>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::one_line;

namespace {

using Draw = void (*)(Book&);
constexpr Draw kSheets[] = {draw_passes, draw_run_tally};

// 96 bars in six stretches.
constexpr const char* kFantasy = R"(
title: Fantasy
bars: 96
meter: 4/4
tempo: 108
level: 3
sections:
  - {name: A, bars: 1-16}
  - {name: B, bars: 17-36, level: 4}
  - {name: A again, bars: 37-48, same as: 1-12}
  - {name: C, bars: 49-72}
  - {name: A last, bars: 73-84, same as: 1-12}
  - {name: Coda, bars: 85-96}
practice: {minutes: 30}
)";

const Print kLargePrint{{148.5, 210}, 8, false, {14.1, 8.5, 8.5, 8.5}};
const Print kLargeLetter{{152.7, 197.6}, 8, false, {14.1, 8.5, 8.5, 8.5}};

void require_faultless_everywhere(Draw draw, const Plan& plan) {
  sample::require_faultless(draw, plan);
  for (const Print* print : {&kLargePrint, &kLargeLetter})
    for (const Words* words : {&english_words(), &sample::wordy()}) {
      const DrawnSheet sheet(draw, plan, *print, *words);
      CHECK(faults(sheet.canvas(), print->margins).empty());
    }
}

}  // namespace

TEST_CASE("Passes and the tally keep their layout, in large print too") {
  for (const Draw draw : kSheets) {
    require_faultless_everywhere(draw, sound_plan());
    require_faultless_everywhere(draw, sample::plan(kFantasy));
    require_faultless_everywhere(
        draw, sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n",
                           "2027-01-04", "2027-06-20"));
  }
}

TEST_CASE("The sheet of passes leaves the circles to the panels and says how to count") {
  Plan plan = sound_plan();
  plan.pieces[0].piece.meter = Meter{{2, 3}, 8};
  const DrawnSheet sheet(draw_passes, plan);
  CHECK(sheet.circles_to_tick() == 0);
  for (const char* head : {"\nfumbled at\n", "\nmended\n", "\nagain\n"}) {
    CAPTURE(head);
    CHECK(sheet.words().find(head) != std::string::npos);
  }
  CHECK(
      one_line(sheet.words()).find("open the score, mend those bars, write them under “mended”") !=
      std::string::npos);
  const std::string words = sheet.words();
  CHECK(one_line(words).find("“1\u00a02, 1\u00a02\u00a03”") != std::string::npos);
  CHECK(words.find("\n16 Jan\n", words.find("\n1–12\n")) != std::string::npos);
  plan.days[2].tasks.clear();
  plan.days[12].tasks.clear();
  CHECK(DrawnSheet(draw_passes, plan).pages() == 0);
}

TEST_CASE("A slow pass has columns for where it fumbled, what was mended, and playing it again") {
  const auto words_on = [](PageSize paper) {
    return DrawnSheet(draw_passes, sound_plan(), Print{paper, 8, false}).words();
  };
  const std::string wide = words_on(kA4);
  const std::size_t at = wide.find("\nfumbled at\n");
  REQUIRE(at != std::string::npos);
  CHECK(wide.find("\nmended\n", at) < wide.find("\nagain\n", at));
  // On a narrow page the panel's second circle tells of playing it again.
  const std::string narrow = words_on(kA5);
  CHECK(narrow.find("\nmended\n") != std::string::npos);
  CHECK(narrow.find("\nagain\n") == std::string::npos);
}

TEST_CASE("Every run has a circle for giving no sign, and a sentence says what that is") {
  const DrawnSheet sheet(draw_run_tally, sound_plan());
  CHECK(one_line(sheet.words()).find("gave no sign") != std::string::npos);
  CHECK(one_line(sheet.words()).find("no face, no sigh, no word, no stop") != std::string::npos);
}

TEST_CASE("Each pass has its own cell for what fumbled, in the row of its date") {
  const DrawnSheet sheet(draw_passes, sample::plan(kFantasy));
  const DrawnPage& page = sheet.canvas().pages().front();
  std::vector<Box> fumbled;  // the heads, of slow passes and of counted ones
  double heads = 0;
  for (const DrawnText& text : page.texts()) {
    if (text.text == "fumbled at") fumbled.push_back(text.within);
    if (text.text == "planned") heads = std::max(heads, text.within.bottom());
  }
  REQUIRE(fumbled.size() == 2);
  std::ranges::sort(fumbled, {}, &Box::x);
  int dates = 0;
  for (const DrawnText& text : page.texts()) {
    const bool is_date = text.text.ends_with(" Jan") || text.text.ends_with(" Feb");
    if (!is_date || text.within.y < heads) continue;
    ++dates;
    const Box& date = text.within;
    const Box& head = date.right() < fumbled[0].x + 1 ? fumbled[0] : fumbled[1];
    const bool is_ruled = std::ranges::any_of(page.items, [&](const DrawnItem& item) {
      const auto* line = std::get_if<DrawnLine>(&item);
      return line && line->from.y == line->to.y && line->from.x <= date.x &&
             line->to.x >= head.right() && line->from.y >= date.bottom() - 0.5 &&
             line->from.y <= date.bottom() + 1;
    });
    CHECK(is_ruled);
    CHECK(head.x > date.right() - 1);
  }
  CHECK(dates > 10);
}

TEST_CASE("Slow passes stand at the left, counted ones beside them") {
  Plan plan = sound_plan();
  plan.days[2].tasks.clear();
  Task counted = plan.days[12].tasks.front();
  counted.drill = Drill::counted_pass;
  plan.days[11].tasks = {counted};
  const DrawnSheet sheet(draw_passes, plan);
  Box slow;
  Box other;
  for (const DrawnText& text : sheet.canvas().pages().front().texts()) {
    if (text.text == "16 Jan") slow = text.within;
    if (text.text == "15 Jan") other = text.within;
  }
  REQUIRE(slow.width > 0);
  REQUIRE(other.width > 0);
  CHECK(slow.centre().y == Approx(other.centre().y));
  CHECK(slow.right() < other.x);
}

TEST_CASE("Some seventy passes over six stretches are one page") {
  const Plan plan = sample::plan(kFantasy);
  int passes = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      passes += task.drill == Drill::slow_pass || task.drill == Drill::counted_pass;
  REQUIRE(passes > 15);
  const DrawnSheet sheet(draw_passes, plan);
  CHECK(sheet.pages() == 1);
}

TEST_CASE("The tally has a row for every planned run with its date, and rows to spare") {
  const DrawnSheet sheet(draw_run_tally, sound_plan());
  CHECK(sheet.pages() == 1);
  CHECK(count_of(sheet.words(), "\n8 Jan\n") == 2);
  CHECK(count_of(sheet.words(), "\n11 Jan\n") == 2);
  CHECK(count_of(sheet.words(), "\n14 Jan\n") == 1);
  // Five rows of which none asks for a witness, and four to spare for whatever happens.
  CHECK(sheet.circles_to_tick() == 2 * 5 + 4 * 4);
}

TEST_CASE("Ten runs and what they tell share a page, with fewer rows to spare") {
  Plan plan = sound_plan();
  plan.new_to_performing = true;
  const DrawnSheet sheet(draw_run_tally, plan);
  CHECK(sheet.pages() == 1);
  CHECK(count_of(sheet.words(), "\n11\n") == 1);
  CHECK(count_of(sheet.words(), "\n14\n") == 0);
}

TEST_CASE("The tally says in tenths, rounded down, what clean runs let a player count on") {
  // One-sided 95 % bounds, Clopper and Pearson 1934 (values computed): .549280 for 5 of 5, .741134
  // for 10, .860892 for 20; with one slip .342592, .605837 and .783894. A streak of five within
  // twenty is met with .4777 at .6.
  const std::string words = one_line(DrawnSheet(draw_run_tally, sound_plan()).words());
  for (const char* said :
       {"5 in a row 5 clean ones in ten", "10 in a row 7 clean ones in ten",
        "20 in a row, or more 8 clean ones in ten",
        "one slip in 5: 3 in ten; one slip in 10: 6 in ten",
        "of 100 players who are clean only 6 times in ten, 48 get there within 20 tries"}) {
    INFO(said);
    CHECK(words.find(said) != std::string::npos);
  }
}

TEST_CASE("The figures of clean runs stand in one line for the teacher, rounded down") {
  // The same bounds.
  const std::string words = one_line(DrawnSheet(draw_run_tally, sound_plan()).words());
  for (const char* figure :
       {"5 of 5: 54\u00a0%, 10 of 10: 74\u00a0% and 20 of 20: 86\u00a0%",
        "4 of 5: 34\u00a0%, 9 of 10: 60\u00a0% and 19 of 20: 78\u00a0%", "95\u00a0% confidence"}) {
    INFO(figure);
    CHECK(words.find(figure) != std::string::npos);
  }
  const std::size_t teacher = words.find("For the teacher");
  REQUIRE(teacher != std::string::npos);
  CHECK(words.substr(0, teacher).find('%') == std::string::npos);
  CHECK(words.substr(0, teacher).find("confidence") == std::string::npos);
}
