#include "report/plan_text.h"

#include <sstream>

#include "catch.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/utf8.h"

using namespace cahier;

namespace {

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> all;
  std::stringstream in(text);
  for (std::string line; std::getline(in, line);) all.push_back(line);
  return all;
}

bool has_line(const std::string& text, const std::string& wanted) {
  for (const std::string& line : lines(text))
    if (line == wanted) return true;
  return false;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string said(const Plan& plan, bool why = false, bool spacing = false) {
  return plan_text(plan, english_words(), why, spacing);
}

}  // namespace

TEST_CASE("a plan's text begins with what it is for and what it holds") {
  const std::string text = said(sound_plan());
  CHECK(lines(text).at(0) == "Lantern Study, by Nobody");
  CHECK(has_line(text, "4–17 January 2027 · 2 weeks · For Monday 18 January 2027"));
  CHECK(has_line(text, "  12 practice days · 2 days off · 56 minutes in all"));
  CHECK(has_line(text, "  2 chunks · 3 cue starts · 5 run-throughs"));
  CHECK(has_line(text, "  Everything is learned by Tuesday 5 January."));
  CHECK(holds(text, "quarter = 132"));
  CHECK(holds(text, "15 minutes a day"));
}

TEST_CASE("each day has its date, its minutes and its tasks, weeks apart with their ISO number") {
  const std::string text = said(sound_plan());
  // 2027-01-01 is 2026-W53-5 (ISO 8601), so Monday 4 January opens week 1.
  CHECK(holds(text, "\n\nWeek 1 · 4–10 January 2027\n"));
  CHECK(holds(text, "\n\nWeek 2 · 11–17 January 2027\n"));
  CHECK(has_line(text, "Mon  4 Jan  8½ min  learn 1–4"));
  CHECK(has_line(text, "Tue  5 Jan  13 min  recall 1–4 · learn 5–8 · join 1–12"));
  CHECK(has_line(text, "                    Every bar is learned."));
  CHECK(has_line(text, "Sat  9 Jan          free"));
  CHECK(has_line(text, "Sun 10 Jan     off"));
  CHECK(holds(text, "forks at cue starts 1, 2 and 1 throw"));
  CHECK(has_line(text, "Mon 11 Jan   5 min  2 run-throughs"));
}

TEST_CASE("cue starts are told by number, and where dice alone choose by how many throws") {
  const auto told = [](std::vector<int> cues, int throws) {
    Plan plan = sound_plan();
    Task& task = plan.days[2].tasks[1];
    task.fork = false;
    task.cues = std::move(cues);
    task.throws = throws;
    return said(plan);
  };
  CHECK(holds(told({2}, 0), " · cue start 2\n"));
  CHECK(holds(told({1, 2}, 2), " · cue starts 1, 2 and 2 throws\n"));
  CHECK(holds(told({}, 2), " · 2 cue starts by chance\n"));
  CHECK(holds(told({}, 1), " · a cue start by chance\n"));
}

TEST_CASE("no line of a plan's text is longer than a terminal") {
  Plan plan = sound_plan();
  for (int more = 0; more < 12; ++more) plan.days[2].tasks.push_back(plan.days[2].tasks[0]);
  plan.pieces[0].piece.title = std::string(30, 'a') + " " + std::string(40, 'b') + " Études";
  for (const bool asked : {false, true})
    for (const std::string& line : lines(said(plan, asked, asked))) {
      INFO(line);
      CHECK(count_characters(line) <= 80);
      CHECK((line.empty() || line.back() != ' '));
    }
}

TEST_CASE("asked why, each task has its own line and its reason under it") {
  const std::string text = said(sound_plan(), true);
  CHECK(holds(text,
              "Tue  5 Jan  13 min  recall 1–4 · 1½ min\n"
              "                      the first recall, after a night\n"
              "                    learn 5–8 · 8½ min\n"
              "                      new\n"));
  CHECK(holds(text, "look-alikes part at bar 3"));
  CHECK_FALSE(holds(said(sound_plan()), "after a night"));
}

TEST_CASE("a plan that does not fit says by how much, what is not placed, and the words to type") {
  Plan plan = sound_plan();
  plan.fits = false;
  plan.unplaced = {{0, Drill::learn, {5, 8}, 8.5, Why::no_room_to_learn},
                   {0, Drill::run_through, {1, 12}, 2.5, Why::no_room_to_run}};
  plan.remedies = {{"--minutes 22", 22}, {"--from 2026-12-28", 7}};
  const std::string text = said(plan);
  CHECK(holds(text, "11 minutes of work"));
  CHECK(holds(text, "learn 5–8: 8½ min"));
  CHECK(has_line(text, "--minutes 22"));
  CHECK(has_line(text, "--from 2026-12-28"));
  CHECK(holds(sample::one_line(text), "11 minutes of work are left over."));
  CHECK_FALSE(holds(said(sound_plan()), "left over"));
  plan.remedies.clear();
  CHECK(holds(said(plan), "Nothing that was tried"));
}

TEST_CASE("a plan's text says how many of the gaps between recalls are near the best one") {
  // All eight gaps, as worked by hand in the tests of the spacing report.
  CHECK(has_line(said(sound_plan()),
                 "  100 % of the gaps between recalls lie within half to twice the best gap."));
  CHECK_FALSE(holds(said(sound_plan()), "only because"));
  Plan plan = sound_plan();
  for (int day = 2; day < 12; ++day) {
    plan.days[day].tasks.clear();
    plan.days[day].allowance = 0;
  }
  // From day 1 to day 12; the best gap is 3.6 days. The other chunk is recalled once.
  CHECK(has_line(said(plan),
                 "  0 % of the gaps between recalls lie within half to twice the best gap."));
  CHECK(has_line(said(plan), "  1 gap is longer than that only because all days between are off."));
  plan.days[12].tasks.clear();
  CHECK_FALSE(holds(said(plan), "gaps between recalls"));
}

TEST_CASE("asked for spacing, each chunk has its days of recall and the best ones under them") {
  const std::string text = said(sound_plan(), false, true);
  CHECK(holds(text,
              "Sun 17 Jan     off\n"
              "\n"
              "Recalls beside the best days\n"));
  CHECK(holds(text,
              "\n"
              "  A1, bars 1–4 · 4 of 4 gaps near the best\n"
              "    planned  5, 6, 8, 11, 14, 16 Jan\n"
              "    best     5, 9, 12, 14, 16 Jan\n"
              "  B1, bars 5–8 · 4 of 4 gaps near the best\n"
              "    planned  6, 8, 11, 14, 16 Jan\n"
              "    best     6, 9, 12, 14, 16 Jan\n"));
  CHECK_FALSE(holds(said(sound_plan()), "planned"));
}

TEST_CASE("days of recall name a month only once, and chunks that are not recalled say so") {
  Plan plan = sound_plan();
  plan.from += days{20};
  plan.by += days{20};
  for (Day& day : plan.days) day.date += days{20};
  CHECK(holds(said(plan, false, true), "    planned  25, 26, 28, 31 Jan · 3, 5 Feb\n"));
  for (std::size_t day = 2; day < plan.days.size(); ++day) plan.days[day].tasks.clear();
  plan.pieces[0].chunks[1].bars = {5, 5};
  const std::string text = said(plan, false, true);
  CHECK(holds(text, "  A1, bars 1–4 · recalled once, so no gap\n    planned  25 Jan\n"));
  CHECK(text.ends_with("  B1, bar 5 · not recalled\n"));
  plan.days[0].tasks.clear();
  plan.days[1].tasks.clear();
  CHECK_FALSE(holds(said(plan, false, true), "best days"));
}

TEST_CASE("a plan says what happens when learning takes longer, where that was asked") {
  Plan plan = sound_plan();
  CHECK_FALSE(holds(said(plan), "longer"));
  std::swap(plan.days[3].tasks[0], plan.days[4].tasks[1]);  // something that a teacher would ask
  plan.sensitivity = {{1.25, 0}, {1.5, 4}};
  CHECK(holds(said(plan),
              "\n\nIf learning takes 25 % longer than estimated, everything still fits.\n"
              "If learning takes 50 % longer than estimated, it is all ready 4 days late.\n"
              "\nWhat a teacher would ask\n"));
  plan.sensitivity = {{1.25, 1}, {1.5, std::nullopt}};
  CHECK(holds(said(plan), "it is all ready 1 day late."));
  CHECK(holds(said(plan), "a date a year later is not enough."));
}

TEST_CASE("of several pieces each task says to which it belongs") {
  Plan plan = sound_plan();
  plan.pieces.push_back(plan.pieces[0]);
  plan.days[0].tasks[0].piece = 1;
  const std::string text = said(plan);
  CHECK(has_line(text, "[2] Lantern Study, by Nobody"));
  CHECK(holds(text, "[2] learn 1–4"));
  CHECK(holds(said(plan, false, true), "\n  [2] A1, bars 1–4 · "));
  CHECK_FALSE(holds(said(sound_plan()), "[1]"));
}
