// The sheets that follow the calendar: day panels, passes, and what is left out.
#include <algorithm>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "plan/first_uses.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/phrasing.h"
#include "workbook/parts/week_words.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::has;
using sample::one_line;

namespace {

using Draw = void (*)(Book&);
constexpr Draw kUpright[] = {draw_day_panels, draw_passes, draw_left_out};

// "before" stands in the text, and "after" behind it.
bool in_order(const std::string& text, const std::string& before, const std::string& after) {
  const std::size_t at = text.find(before);
  return at != std::string::npos && text.find(after, at) != std::string::npos;
}

int repetitions(const Task& task) {
  if (task.drill == Drill::cue_starts) return static_cast<int>(task.cues.size()) + task.throws;
  int number = task.drill == Drill::slow_pass ? 1 : 0;  // once more, where bars were mended
  for (const Step& step : task.steps) number += step.times;
  return number;
}

int repetitions(const Plan& plan) {
  int number = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) number += repetitions(task);
  return number;
}

Plan two_pieces() {
  Plan programme = sound_plan();
  programme.pieces.push_back(programme.pieces.front());
  programme.pieces.back().piece.title = std::string(200, 'M');
  for (Day& day : programme.days)
    if (!day.tasks.empty()) {
      day.tasks.push_back(day.tasks.front());
      day.tasks.back().piece = 1;
    }
  return programme;
}

Plan misfit() {
  const std::vector<Piece> pieces = {sample::piece("{title: Too Much, bars: 400, tempo: 60}")};
  const Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-01-14"),
                             pieces.front().practice, sample::steady());
  Plan plan = make_plan(pieces, terms);
  plan.remedies = {
      {"--minutes 120", 1},
      {"--by 2027-06-01", 2},
      {"--minutes mon:121,tue:122,wed:123,thu:124,fri:125,sat:126,sun:127 --repetitions 2", 3},
      {"--repetitions 3 --chunk-bars 6", 4}};
  REQUIRE_FALSE(plan.fits);
  return plan;
}

Plan with_long_ranges() {
  Plan plan = sound_plan();
  plan.pieces.front().piece.bars = 5000;
  for (Day& day : plan.days)
    for (Task& task : day.tasks) {
      task.bars = {4988, 5000};
      if (task.tempo) task.tempo = 207.5;
      task.beat = Beat::dotted_half;
      for (Step& step : task.steps) step.times = 20;
    }
  return plan;
}

std::vector<Plan> hard_plans() {
  return {sound_plan(),
          sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"),
          sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n",
                       "2027-01-04", "2027-06-20"),
          two_pieces(),
          with_long_ranges(),
          misfit()};
}

Plan years() {
  return sample::plan("{title: Years, bars: 90, tempo: 60, practice: {minutes: 20}}", "2027-01-04",
                      "2028-06-20");
}

}  // namespace

TEST_CASE("The sheets of the calendar keep their layout with short, crowded and several pieces") {
  for (const Plan& plan : hard_plans())
    for (const Draw draw : kUpright) sample::require_faultless(draw, plan);
}

TEST_CASE("The sheets of the calendar keep their layout with the teacher's lines and over years") {
  const Plan plan = years();
  for (const Draw draw : kUpright) {
    CHECK(DrawnSheet(draw, sound_plan(), Print{kA5, 8, true}).faults() == "");
    CHECK(DrawnSheet(draw, plan, Print{kA4, 8, true}).faults() == "");
    CHECK(DrawnSheet(draw, plan, Print{kA5, 8, false}).faults() == "");
  }
}

TEST_CASE("A day panel has a circle for every repetition") {
  for (const Plan& plan : {sound_plan(), sample::plan("{title: T, bars: 30, tempo: 80}")})
    CHECK(DrawnSheet(draw_day_panels, plan).circles_to_tick() == repetitions(plan));
}

TEST_CASE("A panel says what to do where the first use of new bars rests on an earlier day") {
  const std::string hint = "Not learned yet? Learn it now.";
  // A1 is new on Monday and recalled on Tuesday; B1 is new on Tuesday, joined on the same panel and
  // played again on Wednesday. The passes and starts after that say nothing.
  Plan plan = sound_plan();
  CHECK(first_uses(plan) == std::set<const Task*>{&plan.days[1].tasks[0], &plan.days[2].tasks[0]});
  const DrawnSheet sheet(draw_day_panels, plan);
  CHECK(count_of(sheet.words(), "\n" + hint + "\n") == 2);
  // Beside the drill's name, or just below.
  Box row;
  Box said;
  for (const DrawnText& text : sheet.canvas().pages().front().texts()) {
    if (text.text == "Recall, cold" && row.width == 0) row = text.within;
    if (text.text == hint && said.width == 0) said = text.within;
  }
  REQUIRE(row.width > 0);
  CHECK(said.y >= row.y);
  CHECK(said.y - row.bottom() < 0.5);
  // Learned before the workbook: no risk.
  plan.days[0].tasks.clear();
  CHECK(first_uses(plan) == std::set<const Task*>{&plan.days[2].tasks[0]});
  // How to use this book says the same.
  CHECK(has(one_line(DrawnSheet(draw_how_to_use, plan).words()),
            "Where it says “" + hint + "”, do that first"));
  plan.days[1].tasks.erase(plan.days[1].tasks.begin() + 1);
  CHECK(first_uses(plan).empty());
  CHECK_FALSE(has(one_line(DrawnSheet(draw_how_to_use, plan).words()), hint));
}

TEST_CASE("Every chunk of a plan has one row that asks whether it is learned, near its learning") {
  const Plan plan = sample::plan(sample::kStudy);
  const std::set<const Task*> uses = first_uses(plan);
  std::vector<bool> asked(plan.pieces[0].chunks.size(), false);
  std::vector<Date> learned(asked.size());
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      for (const int chunk : task.chunks) {
        if (task.drill == Drill::learn) learned[chunk] = day.date;
        if (uses.contains(&task) && !asked[chunk]) {
          CHECK(day.date > learned[chunk]);
          CHECK(day.date <= learned[chunk] + days{3});
          asked[chunk] = true;
        }
      }
  CHECK(std::count(asked.begin(), asked.end(), false) == 0);
  CHECK(uses.size() <= asked.size());
}

TEST_CASE("A day panel has two circles for a slow pass, and says what the second is for") {
  const std::string words = DrawnSheet(draw_day_panels, sound_plan()).words();
  CHECK(count_of(words, "\nagain\n") == 2);
  CHECK(count_of(one_line(words), "Second circle: only after mending.") == 2);
}

TEST_CASE("Joins and recalls say what is in force where they begin") {
  const Plan plan = sample::plan(R"(
title: Marks
bars: 24
tempo: 90
sections: [{name: A, bars: 1-12}, {name: B, bars: 13-24}]
marks: [{bar: 13, note: new manual, holds: yes}, {bar: 5, note: look up}]
)");
  int wanted = 0;
  int looks = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      const bool begins = task.drill == Drill::join || task.drill == Drill::recall;
      wanted += begins && task.bars.first >= 13 ? 1 : 0;
      wanted += task.drill == Drill::learn && task.bars.contains(13) ? 1 : 0;
      looks += task.drill == Drill::learn && task.bars.contains(5) ? 1 : 0;
    }
  REQUIRE(wanted > 5);
  const std::string words = one_line(DrawnSheet(draw_day_panels, plan).words());
  CHECK(count_of(words, "new manual") == wanted);
  CHECK(count_of(words, "look up") == looks);
}

TEST_CASE("New bars have a line to write what they are, beside the circles where there is room") {
  const Plan plan = sample::plan("{title: T, bars: 30, tempo: 80}");
  int learned = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) learned += task.drill == Drill::learn ? 1 : 0;
  REQUIRE(learned > 3);
  for (const PageSize paper : {kA4, kA5}) {
    const DrawnSheet sheet(draw_day_panels, plan, Print{paper, 8, false});
    const std::string words = sheet.words();
    CHECK(count_of(words, "\nwhat it is\n") == learned);
    CHECK(count_of(one_line(words), "Write what it is: a scale, a broken chord") == 2);
  }
}

TEST_CASE("The code of the tenth task of a day stands clear of its minutes") {
  Plan plan = sound_plan();
  const Task recall = sound::recall({1, 4}, {0});
  plan.days[3].tasks.assign(12, recall);
  for (int task = 0; task < 12; ++task)
    plan.days[3].tasks[task].id = "0107-" + std::to_string(task + 1);
  const DrawnSheet sheet(draw_day_panels, plan);
  int codes = 0;
  for (const DrawnPage& page : sheet.canvas().pages())
    for (const DrawnText& code : page.texts()) {
      if (!code.text.starts_with("0107-1") || code.text.size() != 7) continue;
      const double left = code.within.right() -
                          sample::typefaces().width(code.text, code.style.face, code.style.size_pt);
      for (const DrawnText& minutes : page.texts())
        if (minutes.text.ends_with("min") && std::abs(minutes.within.y - code.within.y) < 0.1) {
          ++codes;
          CHECK(left - minutes.within.right() > 1);
        }
    }
  CHECK(codes == 3);
}

TEST_CASE("A day panel says date, minutes, bars, drill and code of every task") {
  const Plan plan = sound_plan();
  const std::string words = DrawnSheet(draw_day_panels, plan).words();
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) CHECK(has(words, "\n" + task.id + "\n"));
  CHECK(in_order(words, "Tue", "5 January"));
  CHECK(has(words, minutes_text(plan.days[1].minutes()) + " of 15\u00a0min"));
  CHECK(has(words, "\n1–12\n"));
  CHECK(has(words, "\nRecall, cold\n"));
  CHECK(in_order(words, "\nRH\n", "\nLH\n"));
  CHECK(has(words, "\nLH, say RH\n"));
  CHECK(has(words, "Stop here, even if it goes well."));
  CHECK(has(words, "2027-W01"));
  CHECK(has(words, "Every bar is learned."));
}

TEST_CASE("A day panel of cue starts names the bars to begin at") {
  const std::string words = DrawnSheet(draw_day_panels, sound_plan()).words();
  CHECK(in_order(words, "\n1\u00a0→\n", "\n5\u00a0→\n"));
  CHECK(has(words, "\ndice\n"));
}

TEST_CASE("A day panel says how far each way of a fork is played") {
  Plan plan = sound_plan();
  Task& task = plan.days[1].tasks.front();
  task.drill = Drill::cue_starts;
  task.fork = true;
  task.cues = {1, 2};
  task.throws = 0;
  task.from_starts = {{1, 6}, {5, 11}};
  task.ways = {{4, 5}, {8, 9}};
  CHECK(has(DrawnSheet(draw_day_panels, plan).words(), "Stop after 6, 11."));
  task.ways = {{4, 5}, {8, 1}};
  CHECK(has(DrawnSheet(draw_day_panels, plan).words(), "Stop two bars past it."));
}

TEST_CASE("A day panel says twice that starts thrown besides assigned ones have the list's tempo") {
  Plan plan = sound_plan();
  const auto told = [&] {
    const std::string words = DrawnSheet(draw_day_panels, plan).words();
    int number = 0;
    for (std::size_t at = words.find("at the tempo of the list"); at != std::string::npos;
         at = words.find("at the tempo of the list", at + 1))
      ++number;
    return number;
  };
  for (std::size_t day = 1; day <= 3; ++day) {
    Task task = plan.days[1].tasks.front();
    task.drill = Drill::cue_starts;
    task.cues = {1};
    task.throws = 2;
    task.tempo = 300;  // not below the piece's
    plan.days[day].tasks.push_back(task);
  }
  CHECK(told() == 2);
}

TEST_CASE("A break stands between two sittings") {
  Plan plan = sound_plan();
  const auto breaks = [](const Plan& of) {
    const std::string words = DrawnSheet(draw_day_panels, of).words();
    int number = 0;
    for (std::size_t at = words.find("Break: "); at != std::string::npos;
         at = words.find("Break: ", at + 1))
      ++number;
    return number;
  };
  CHECK(breaks(plan) == 0);
  plan.days[1].tasks.back().block = 1;
  CHECK(breaks(plan) == 1);
  plan.days[2].tasks.push_back(plan.days[2].tasks.back());
  for (std::size_t task = 0; task < 3; ++task)
    plan.days[2].tasks.at(task).block = static_cast<int>(task);
  CHECK(breaks(plan) == 3);
}

TEST_CASE("A day off takes one line, and so do days off in a row") {
  Plan plan = sound_plan();
  CHECK(has(DrawnSheet(draw_day_panels, plan).words(), "Rest. No memory work today."));
  for (const int day : {5, 6}) {
    plan.days[day].tasks.clear();
    plan.days[day].allowance = 0;
  }
  const std::string words = DrawnSheet(draw_day_panels, plan).words();
  CHECK(has(words, "9 Jan – Sun 10 Jan"));
  CHECK(has(words, "No memory work on these days."));
}

TEST_CASE("A day stays on one page while a page can hold it") {
  const Plan plan = sample::plan("{title: T, bars: 60, tempo: 80}");
  CHECK_FALSE(has(DrawnSheet(draw_day_panels, plan).words(), "\ncontinued\n"));
  Plan long_day = sound_plan();
  for (int again = 0; again < 12; ++again)
    long_day.days[1].tasks.push_back(long_day.days[1].tasks[1]);
  const DrawnSheet sheet(draw_day_panels, long_day);
  CHECK(has(sheet.words(), "\ncontinued\n"));
  CHECK(sheet.faults() == "");
}

TEST_CASE("A week begins below another where a day of it has room, and pages end full") {
  const Plan plan =
      sample::plan("title: Song\nbars: 24\nmeter: 3/4\ntempo: 96\n", "2027-01-04", "2027-03-29");
  const DrawnSheet sheet(draw_day_panels, plan);
  CHECK(sheet.faults().empty());
  // Twelve weeks, most of them light.
  CHECK(sheet.pages() <= 11);
  int heads_below = 0;
  for (const DrawnPage& page : sheet.canvas().pages()) {
    const std::string words = page.words();
    for (int week = 1; week <= 12; ++week) {
      const std::size_t at = words.find("Week " + std::to_string(week) + " of 12");
      heads_below += at != std::string::npos && words.find("Stop here") < at ? 1 : 0;
    }
  }
  CHECK(heads_below >= 4);
}

TEST_CASE("Every week has one entry in the outline, and the teacher's lines at its end") {
  const Plan plan = sound_plan();
  const DrawnSheet sheet(draw_day_panels, plan, Print{kA4, 8, true});
  std::vector<std::string> marks;
  for (const DrawnOutlineEntry& entry : sheet.canvas().outline_entries())
    if (entry.level == 2) marks.push_back(entry.title);
  CHECK(marks == std::vector<std::string>{"Week 1", "Week 2"});
  CHECK(has(sheet.words(), "\nSigned\n"));
  CHECK_FALSE(has(DrawnSheet(draw_day_panels, plan).words(), "\nSigned\n"));
}

TEST_CASE("Weeks run from Monday to Sunday and are cut off at the plan's ends") {
  Plan plan;
  const Date friday = sample::date("2027-01-01");
  for (int day = 0; day < 12; ++day) {
    Day each;
    each.date = friday + days{day};
    each.allowance = 15;
    plan.days.push_back(each);
  }
  const std::vector<PlanWeek> weeks = weeks_of(plan);
  REQUIRE(weeks.size() == 3);
  CHECK(weeks[0].days.size() == 3);
  CHECK(weeks[1].days.size() == 7);
  CHECK(weeks[2].days.size() == 2);
  // ISO 8601: 2027-01-01 lies in 2026-W53 (sources: week dates).
  CHECK(iso_week_text(weeks[0].first()) == "2026-W53");
  CHECK(iso_week_text(weeks[1].first()) == "2027-W01");
}

TEST_CASE("What does not fit is listed with its minutes and what would help") {
  CHECK(DrawnSheet(draw_left_out, sound_plan()).pages() == 0);
  const Plan plan = misfit();
  double minutes = 0;
  for (const Unplaced& work : plan.unplaced) minutes += work.minutes;
  const std::string words = DrawnSheet(draw_left_out, plan).words();
  CHECK(has(words, "--minutes 120"));
  CHECK(has(words, "more minutes a day"));
  CHECK(has(words, minutes_text(minutes) + "\u00a0min"));
  CHECK(has(words, "Learn: "));
}

TEST_CASE("A day's tasks of a piece stand together, with lines for slips and minutes of its own") {
  Plan plan = sound_plan();
  plan.pieces.push_back(plan.pieces.front());
  plan.pieces.back().piece.title = "Second Study";
  for (Day& day : plan.days) day.tasks.clear();
  Task first = sound_plan().days[0].tasks.front();
  Task second = first;
  second.piece = 1;
  plan.days[0].tasks = {first, second, first, second};
  const std::string words = DrawnSheet(draw_day_panels, plan).words();
  CHECK(count_of(words, "\nLantern Study\n") == 1);
  CHECK(count_of(words, "\nSecond Study\n") == 1);
  CHECK(count_of(words, "\nslipped at bar\n") == 2);
  CHECK(count_of(words, "\ntook\n") == 2);
  CHECK(in_order(words, "\nslipped at bar\n", "\nSecond Study\n"));
}
