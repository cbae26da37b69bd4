// The sheets of a book that keeps what is learned: most of its days have no work.
#include <algorithm>
#include <string>

#include "catch.h"
#include "every_paper.h"
#include "later_edition.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "workbook/parts/week_words.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::has;
using sample::one_line;

namespace {

// From Sunday 21 March 2027 on, lessons on Thursdays.
Plan kept(const std::string& until = "2027-09-18", const std::string& yaml = sample::kStudy,
          const std::string& from = "2027-03-21") {
  const std::vector<Piece> pieces = {sample::piece(yaml)};
  Terms terms =
      settle(sample::date(from), sample::date(until), pieces.front().practice, sample::steady());
  terms.upkeep = true;
  Plan plan = make_plan(pieces, terms);
  for (Day& day : plan.days) day.lesson = weekday_index(day.date) == 3;
  return plan;
}

int days_with_work(const Plan& plan) {
  return static_cast<int>(std::count_if(plan.days.begin(), plan.days.end(),
                                        [](const Day& day) { return !day.tasks.empty(); }));
}

void draw_cover_and_write_outs(Book& book) {
  draw_cover(book);
  draw_write_outs(book);
}

}  // namespace

TEST_CASE("a book that keeps a piece shows the weeks with work, under their numbers") {
  const Plan plan = kept();
  const std::vector<PlanWeek> all = weeks_of(plan);
  const std::vector<PlanWeek> shown = shown_weeks(plan);
  REQUIRE(shown.size() < all.size());
  std::size_t idle = 0;
  for (const PlanWeek& week : all) idle += week.idle() && &week != &all.back();
  CHECK(shown.size() == all.size() - idle);
  for (const PlanWeek& week : shown) {
    CHECK(week.weeks == all.size());
    CHECK(week.first() == all[week.number - 1].first());
  }
  for (auto* draw : {draw_weeks, draw_day_panels}) {
    const DrawnSheet sheet(draw, plan);
    for (const PlanWeek& week : all) {
      const bool printed = has(sheet.words(), week_title(english_words(), week));
      CHECK(printed == (!week.idle() || &week == &all.back()));
    }
  }
  // Any other book has them all.
  const Plan first = sample::plan(sample::kStudy);
  CHECK(shown_weeks(first).size() == weeks_of(first).size());
}

TEST_CASE("a book that keeps a piece has a panel for each day with work and no other") {
  const Plan plan = kept();
  const std::string words = DrawnSheet(draw_day_panels, plan).words();
  CHECK(count_of(words, "\nStop here.\n") == days_with_work(plan));
  CHECK_FALSE(has(words, "Nothing set"));
  CHECK_FALSE(has(words, "Rest."));
  CHECK_FALSE(has(words, "Nothing new"));
  CHECK(has(words, "\nThe day itself\n"));
}

TEST_CASE("on the wall of a book that keeps a piece days without work are empty") {
  const std::string words = DrawnSheet(draw_weeks, kept()).words();
  CHECK(has(words, "\nlesson\n"));
  CHECK_FALSE(has(words, "nothing set"));
  CHECK_FALSE(has(words, "\nrest\n"));
  // The plan begins on a Wednesday, and has work that week: the days before it are left blank.
  const Plan midweek = kept("2027-06-18", sample::kStudy, "2027-03-24");
  REQUIRE_FALSE(weeks_of(midweek).front().idle());
  const std::string first = DrawnSheet(draw_weeks, midweek).canvas().pages().front().words();
  CHECK(has(first, "\nWed\n24\n"));
  CHECK_FALSE(has(first, "\nMon\n22\n"));
  CHECK_FALSE(has(first, "\nTue\n23\n"));
}

TEST_CASE("two weeks of a book that keeps a piece share a wall page, and the whole book is small") {
  const Plan plan = kept();
  const std::size_t weeks = shown_weeks(plan).size();
  CHECK(DrawnSheet(draw_weeks, plan).pages() == static_cast<int>((weeks + 1) / 2));
  CHECK(DrawnSheet(draw_day_panels, plan).pages() <= static_cast<int>((weeks + 1) / 2) + 1);
}

TEST_CASE("the cover of a book that keeps a piece counts days with work, and says what it does") {
  const Plan plan = kept();
  const std::string words = DrawnSheet(draw_cover, plan).words();
  const std::string days = std::to_string(days_with_work(plan));
  CHECK(has(words, "\n" + days + "\ndays with work\n"));
  CHECK(has(words, "\n27\nweeks\n"));
  CHECK(weeks_of(plan).size() == 27);
  CHECK(has(one_line(words),
            "this book asks for it again on " + days +
                "\u00a0days from Sunday 21 March 2027 on: at growing intervals at first"));
  CHECK_FALSE(has(words, "practice days"));
  CHECK_FALSE(has(words, "stay free"));
  CHECK(has(one_line(DrawnSheet(draw_cover, sample::plan(sample::kStudy)).words()), "stay free"));
}

TEST_CASE("a book that keeps a piece explains only what it asks for") {
  Plan plan = kept();
  std::string words = DrawnSheet(draw_how_to_use, plan).words();
  for (const char* gone : {"what is new", "\nJoin\n", "\nSpoken part\n", "\nWrite-out\n",
                           "Speaking and writing out", "three missed days", "\nLearn\n"})
    CHECK_FALSE(has(words, gone));
  CHECK(has(words, "Do it on the next free day"));
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 0);
  CHECK(DrawnSheet(draw_cover_and_write_outs, plan).pages() == 1);
  // Blank staves alone may be asked for.
  CHECK(DrawnSheet(draw_write_outs, plan).pages() > 0);
  const auto with_work = std::find_if(plan.days.begin(), plan.days.end(),
                                      [](const Day& day) { return !day.tasks.empty(); });
  REQUIRE(with_work != plan.days.end());
  with_work->tasks.push_back(sound::task(Drill::join, {1, 8}, {0, 1}, 2));
  with_work->tasks.push_back(sound::write_out({17, 20}, 4));
  words = DrawnSheet(draw_how_to_use, plan).words();
  CHECK(has(words, "\nJoin\n"));
  CHECK(has(words, "\nWrite-out\n"));
  CHECK(has(words, "Speaking and writing out"));
  CHECK(DrawnSheet(draw_cover_and_write_outs, plan).pages() > 1);
}

TEST_CASE("a book that keeps a piece counts all its run-throughs, and wants the last recorded") {
  const Plan plan = kept();
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) runs += task.steps.front().times;
  REQUIRE(runs > plan.runs_required());
  const std::string number = std::to_string(runs);
  CHECK(has(DrawnSheet(draw_cover, plan).words(), "\n" + number + "\nrun-throughs asked for\n"));
  CHECK(has(one_line(DrawnSheet(draw_how_to_use, plan).words()), number + " are asked for."));
  const DrawnSheet tally(draw_run_tally, plan);
  CHECK(has(one_line(tally.words()), "This book asks for " + number + "\u00a0run-throughs."));
  // Of the five for the date those from the second on, as with any other date.
  CHECK(plan.runs_required() == 5);
  CHECK(has(one_line(tally.words()), "From run " + std::to_string(runs - 5 + 2) + " on make"));
}

TEST_CASE("a piece kept without a log is called learned, not learned before another edition") {
  const Plan plan = kept();
  const std::string map = DrawnSheet(draw_form_map, plan).words();
  CHECK_FALSE(has(map, "before this edition"));
  CHECK(count_of(map, "\nlearned already\n") == 2);  // of the map, of the calendar
  CHECK(has(map, "\nWhen each chunk is recalled\n"));
  CHECK_FALSE(has(map, "\njoined, spoken or written\n"));
  CHECK_FALSE(has(map, "\nlearned\n"));
  const std::string chart = one_line(DrawnSheet(draw_progress_chart, plan).words());
  CHECK(has(chart, "Grey boxes count as learned."));
  CHECK_FALSE(has(chart, "before this edition"));
}

TEST_CASE("the sheets of a book that keeps a piece keep their layout everywhere") {
  const Plan plan = kept();
  const Plan next_day = kept("2027-03-22");
  const Plan crowded = kept("2027-12-01", sample::crowded_piece() + "practice: {minutes: 90}\n");
  for (void (*draw)(Book&) : {draw_cover, draw_how_to_use, draw_form_map, draw_weeks,
                              draw_day_panels, draw_progress_chart})
    for (const Plan* one : {&plan, &next_day, &crowded})
      sample::require_faultless_everywhere(draw, *one);
}
