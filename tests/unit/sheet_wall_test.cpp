// The weeks to pin up, and the goal of a week.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <set>

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "hostile_plans.h"
#include "long_checks.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/phrasing.h"
#include "workbook/parts/week_words.h"
#include "workbook/sheets/days/wall_tasks.h"
#include "workbook/sheets/days/wall_week.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;

namespace {

// Each text stands in `words` behind the one before.
bool in_order(const std::string& words, const std::vector<std::string>& texts) {
  std::size_t at = 0;
  for (const std::string& text : texts) {
    at = words.find("\n" + text + "\n", at);
    if (at == std::string::npos) return false;
    ++at;
  }
  return true;
}

Plan programme(const std::string& title = std::string(200, 'M')) {
  Plan plan = sound_plan();
  plan.pieces.push_back(plan.pieces.front());
  plan.pieces.back().piece.title = title;
  for (Day& day : plan.days)
    if (!day.tasks.empty()) {
      day.tasks.push_back(day.tasks.front());
      day.tasks.back().piece = 1;
    }
  return plan;
}

Plan with_long_ranges() {
  Plan plan = sound_plan();
  plan.pieces.front().piece.bars = 5000;
  for (Day& day : plan.days) {
    day.lesson = true;
    day.note = DayNote::catch_up;
    for (Task& task : day.tasks) {
      task.bars = {4988, 5000};
      for (Step& step : task.steps) step.times = 20;
    }
  }
  return plan;
}

// `count` slow passes of bars that do not touch, on the first day.
Plan with_passes(int count) {
  Plan plan = sound_plan();
  plan.days[0].tasks.clear();
  for (int pass = 0; pass < count; ++pass) {
    const int first = 10 + pass;
    plan.days[0].tasks.push_back(sound::task(Drill::slow_pass, {first, first + 1}, {}, 1));
    plan.days[0].tasks.push_back(sound::task(Drill::join, {first, first + 50}, {}, 1));
  }
  return plan;
}

std::vector<DrawnText> on_the_wall(const DrawnPage& page) {
  std::vector<DrawnText> large;
  for (const DrawnText& text : page.texts())
    if (text.style.role == TextRole::wall) large.push_back(text);
  return large;
}

const DrawnText* find(const std::vector<DrawnText>& texts, const std::string& text) {
  const auto found = std::find_if(texts.begin(), texts.end(),
                                  [&](const DrawnText& one) { return one.text == text; });
  return found == texts.end() ? nullptr : &*found;
}

// Rectangles drawn with a line of this width.
std::vector<Box> frames(const DrawnPage& page, double width) {
  std::vector<Box> boxes;
  for (const DrawnItem& item : page.items)
    if (const auto* box = std::get_if<DrawnRectangle>(&item))
      if (box->paint.stroke && std::abs(box->paint.stroke->width - width) < 1e-9)
        boxes.push_back(box->box);
  return boxes;
}

Plan of_weeks(int weeks) {
  Plan plan = sound_plan();
  while (static_cast<int>(plan.days.size()) < 7 * weeks) {
    Day day = plan.days[0];
    day.tasks.clear();
    day.date = plan.days.back().date + days{1};
    plan.days.push_back(day);
  }
  plan.by = plan.days.back().date + days{1};
  return plan;
}

}  // namespace

TEST_CASE("The wall sheet keeps its layout on every paper, for short, crowded and long plans") {
  const std::vector<Plan> plans = {
      sound_plan(),
      programme(),
      with_long_ranges(),
      with_passes(30),
      of_weeks(27),
      sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"),
      sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n", "2027-01-04",
                   "2027-06-20"),
      sample::plan("{title: Year, bars: 90, tempo: 60, practice: {minutes: 20}}", "2027-01-04",
                   sample::in_long_checks() ? "2028-06-20" : "2027-10-20")};
  for (const Plan& plan : plans) sample::require_faultless_everywhere(draw_weeks, plan);
}

TEST_CASE("A day on the wall has its tasks in the day's order, bars before the drill's name") {
  const DrawnSheet sheet(draw_weeks, sound_plan());
  REQUIRE(sheet.pages() == 2);
  const DrawnPage& week = sheet.canvas().pages().front();
  CHECK(week.size.width > week.size.height);
  CHECK(in_order(week.words(), {"Tue", "5", "13\u00a0min", "1–4", "recall", "5–8", "new", "1–12",
                                "join", "Wed", "6"}));
  CHECK(in_order(week.words(), {"1–12", "slow pass", "1", "5", "1\u00a0×", "forks", "5–8",
                                "spoken part", "5–8", "write-out"}));
  CHECK(in_order(week.words(), {"Fri", "2\u00a0×", "1–12", "run-throughs"}));
  CHECK(in_order(week.words(), {"Sun", "10", "rest"}));
}

TEST_CASE("Bars on the wall are read from a metre") {
  // Of an x-height of 3.5 mm: Legge, Bigelow 2011 (value from memory).
  const DrawnSheet sheet(draw_weeks, sound_plan());
  const std::vector<DrawnText> large = on_the_wall(sheet.canvas().pages().front());
  for (const char* text : {"Mon", "4", "1–4", "5–8", "1–12", "2\u00a0×", "rest"}) {
    INFO(text);
    REQUIRE(find(large, text));
    CHECK(find(large, text)->x_height >= 3.5);
  }
  CHECK_FALSE(find(large, "recall"));
}

TEST_CASE("Bars stay as large on small paper and in a full week") {
  for (const Print& print : sample::kEveryPaper)
    for (const Plan& plan : {sound_plan(), with_passes(3), with_passes(30)}) {
      INFO("on paper of " << print.paper.width << " x " << print.paper.height << " mm");
      const DrawnSheet sheet(draw_weeks, plan, print);
      const std::string bars =
          bar_range(plan.days[0].tasks[0].bars.first, plan.days[0].tasks[0].bars.last);
      CHECK(find(on_the_wall(sheet.canvas().pages().front()), bars));
    }
}

TEST_CASE("The bars of a light week are larger than those of a full one") {
  const DrawnSheet sheet(draw_weeks, with_passes(3));
  const auto first = on_the_wall(sheet.canvas().pages()[0]);
  const auto second = on_the_wall(sheet.canvas().pages()[1]);
  REQUIRE(find(first, "1–12"));
  REQUIRE(find(second, "1–12"));
  CHECK(find(second, "1–12")->style.size_pt == style::kSize7);
  CHECK(find(first, "1–12")->style.size_pt < style::kSize7);
}

TEST_CASE("New bars stand in a frame, bars that are recalled do not") {
  const DrawnSheet sheet(draw_weeks, sound_plan());
  const DrawnPage& week = sheet.canvas().pages().front();
  const std::vector<Box> boxes = frames(week, 0.7);
  CHECK(boxes.size() == 2);
  for (const DrawnText& text : on_the_wall(week)) {
    const bool framed = std::any_of(boxes.begin(), boxes.end(),
                                    [&](const Box& box) { return box.contains(text.ink); });
    if (text.text == "1–12") CHECK_FALSE(framed);
  }
  for (const Box& box : boxes) {
    std::string inside;
    for (const DrawnText& text : week.texts())
      if (box.contains(text.ink)) inside += text.text + "\n";
    CHECK((inside == "1–4\nnew\n" || inside == "5–8\nnew\n"));
  }
}

TEST_CASE("Every day of practice has a box to tick, large enough for the wall") {
  const Plan plan = sound_plan();
  int boxes = 0;
  const DrawnSheet sheet(draw_weeks, plan);
  for (const DrawnPage& page : sheet.canvas().pages())
    for (const Box& box : frames(page, 0.5)) {
      // The brief of the wall sheet asks for 8 mm.
      CHECK(box.width >= 8);
      CHECK(box.height >= 8);
      ++boxes;
    }
  CHECK(boxes == std::count_if(plan.days.begin(), plan.days.end(),
                               [](const Day& day) { return !day.tasks.empty(); }));
}

TEST_CASE("What the wall has no room for goes on on a further sheet, whole") {
  constexpr int kPasses = 30;
  for (const Print& print : sample::kEveryPaper) {
    INFO("on paper of " << print.paper.width << " x " << print.paper.height << " mm");
    const DrawnSheet sheet(draw_weeks, with_passes(kPasses), print);
    CHECK(sheet.pages() > DrawnSheet(draw_weeks, sound_plan(), print).pages());
    CHECK(has(sheet.words(), ", continued\n"));
    CHECK_FALSE(has(sheet.words(), "more"));
    for (int pass = 0; pass < kPasses; ++pass)
      for (const int length : {1, 50})
        CHECK(has(sheet.words(), "\n" + bar_range(10 + pass, 10 + pass + length) + "\n"));
  }
}

TEST_CASE("A lesson day of any amount of work keeps its line for slips") {
  Plan plan = with_passes(30);
  const auto heaviest =
      std::ranges::max_element(plan.days, {}, [](const Day& day) { return day.tasks.size(); });
  // No other day has a line.
  for (Day& day : plan.days)
    if (&day != &*heaviest) day.tasks.clear();
  heaviest->lesson = true;
  for (const Print& print : sample::kEveryPaper)
    CHECK(has(DrawnSheet(draw_weeks, plan, print).words(), "\nslipped at\n"));
}

TEST_CASE("A range of bars stands on one line on any paper") {
  Plan plan = sound_plan();
  plan.pieces[0].piece.bars = 120;
  for (Task& task : plan.days[1].tasks) task.bars = {110, 120};
  plan.days[1].tasks.front().drill = Drill::recall;
  for (const Print& print : sample::kEveryPaper) {
    const std::string words = DrawnSheet(draw_weeks, plan, print).words();
    CHECK(has(words, "\n110–120\n"));
    CHECK_FALSE(has(words, "\n110–\n"));
  }
}

TEST_CASE("What stands large no more is named below in small type where there is room") {
  Plan plan = sound_plan();
  plan.days[1].tasks.clear();
  for (const Drill drill : {Drill::recall, Drill::slow_pass, Drill::counted_pass, Drill::learn,
                            Drill::spoken_part, Drill::join, Drill::cue_starts})
    plan.days[1].tasks.push_back(sound::task(drill, {1, 4}, {0}, 1));
  plan.days[1].tasks.back().cues = {2};
  plan.days[1].tasks.back().throws = 3;
  const std::string words = DrawnSheet(draw_weeks, plan, Print{kLetter, 8, false}).words();
  CHECK(in_order(words, {"recall", "slow pass", "counted pass", "new", "spoken part", "join",
                         "3\u00a0×", "cue starts"}));
  plan.days[1].tasks.erase(plan.days[1].tasks.begin() + 1, plan.days[1].tasks.begin() + 3);
  const std::string small = DrawnSheet(draw_weeks, plan, Print{kA5, 8, false}).words();
  INFO(small);
  CHECK(in_order(small, {"1–4", "recall", "1–4", "new"}));
  CHECK(has(small, "\njoin 1–4\ncue starts 5\u00a0→"));
  CHECK(has(small, "3\u00a0×\u00a0dice"));
}

TEST_CASE(
    "A heavy day stands closer, but not smaller while it has room, and the others stay large") {
  const DrawnSheet some(draw_weeks, with_passes(4));
  const auto closer = on_the_wall(some.canvas().pages().front());
  REQUIRE(find(closer, "10–11"));
  CHECK(find(closer, "10–11")->style.size_pt == style::kSize5);
  CHECK(find(closer, "1–12")->style.size_pt == style::kSize6);
  const DrawnSheet many(draw_weeks, with_passes(30));
  const auto tight = on_the_wall(many.canvas().pages().front());
  CHECK(find(tight, "10–11")->style.size_pt == style::kLeastWall);
  CHECK(find(tight, "1–12")->style.size_pt == style::kSize6);
}

TEST_CASE("Tasks of one drill stand together when they follow one another") {
  Day day;
  using sound::task;
  day.tasks = {task(Drill::recall, {1, 4}, {}, 1), task(Drill::recall, {9, 12}, {}, 1),
               task(Drill::learn, {5, 6}, {}, 1),  task(Drill::learn, {7, 8}, {}, 1),
               task(Drill::join, {1, 8}, {}, 1),   task(Drill::recall, {13, 16}, {}, 1),
               task(Drill::join, {5, 12}, {}, 1)};
  const Plan plan = sound_plan();
  const auto texts = [&](Together together) {
    std::vector<std::string> said;
    for (const WallGroup& group : wall_groups(english_words(), plan, day, together)) {
      std::string text = group.name + ":";
      for (const WallEntry& entry : group.entries) text += " " + entry.text;
      said.push_back(text);
    }
    return said;
  };
  using Said = std::vector<std::string>;
  CHECK(texts(Together::neighbours) ==
        Said{"recalls: 1–4 9–12", "new: 5–8", "join: 1–8", "recall: 13–16", "join: 5–12"});
  // Recalls that touch are one; joins are each played in one go.
  CHECK(texts(Together::all) == Said{"recalls: 1–4 9–16", "new: 5–8", "joins: 1–8 5–12"});
}

TEST_CASE("Cue starts on the wall have an arrow, the dice their number") {
  const Plan plan = sound_plan();
  const auto groups = wall_groups(english_words(), plan, plan.days[2], Together::neighbours);
  REQUIRE(groups.size() == 2);
  CHECK(groups[1].name == "forks");
  REQUIRE(groups[1].entries.size() == 3);
  CHECK(groups[1].entries[1].text == "5");
  CHECK(groups[1].entries[1].behind == Behind::arrow);
  CHECK(groups[1].entries[2].text == "1\u00a0×");
  CHECK(groups[1].entries[2].behind == Behind::die);
}

TEST_CASE("A programme says of which piece, a single piece does not") {
  CHECK(has(DrawnSheet(draw_weeks, programme("Second")).words(), "\nSecond\n"));
  CHECK_FALSE(has(DrawnSheet(draw_weeks, sound_plan()).words(), "\nLantern Study\n"));
}

TEST_CASE("Lesson, catching up and rest are words to be seen from afar") {
  Plan plan = sound_plan();
  plan.days[1].lesson = true;
  plan.days[4].note = DayNote::catch_up;
  plan.days[5].note = DayNote::catch_up;
  const DrawnSheet sheet(draw_weeks, plan);
  const auto large = on_the_wall(sheet.canvas().pages().front());
  for (const char* word : {"lesson", "catch up", "rest"}) {
    INFO(word);
    CHECK(find(large, word));
  }
  CHECK(has(sheet.words(), "\nfor the lesson\n"));
  CHECK(has(sheet.words(), "\ncaught up\n"));
}

TEST_CASE("The day itself is framed, and days outside the plan are grey and empty") {
  Plan plan = sound_plan();
  plan.days.resize(9);
  plan.by = plan.days.back().date + days{1};
  const DrawnSheet sheet(draw_weeks, plan);
  const DrawnPage& week = sheet.canvas().pages().back();
  CHECK(frames(week, 1.2).size() == 1);
  CHECK(in_order(week.words(), {"Wed", "13", "the day", "itself", "Lantern Study", "time"}));
  std::string on_grey;
  for (const DrawnItem& item : week.items)
    if (const auto* box = std::get_if<DrawnRectangle>(&item))
      if (box->paint.fill && box->paint.fill->grey == style::kPale)
        for (const DrawnText& text : week.texts())
          if (box->box.contains(text.ink)) on_grey += text.text + " ";
  CHECK(on_grey == "Thu 14 Fri 15 Sat 16 Sun 17 ");
}

TEST_CASE("A touch on a day of the wall leads to its panel") {
  const Plan plan = sound_plan();
  Packet packet;
  packet.sheets = {sheet_of(SheetKind::weeks), sheet_of(SheetKind::day_panels)};
  RecordingCanvas first(sample::typefaces());
  const Print print;
  const Contents known = draw_workbook(first, plan, packet, english_words(), print, Contents{});
  for (const DrawnItem& item : first.pages().front().items)
    CHECK_FALSE(std::holds_alternative<DrawnLink>(item));
  RecordingCanvas canvas(sample::typefaces());
  draw_workbook(canvas, plan, packet, english_words(), print, known);
  std::vector<int> pages;
  for (std::size_t page = 0; page < 2; ++page)
    for (const DrawnItem& item : canvas.pages()[page].items)
      if (const auto* link = std::get_if<DrawnLink>(&item)) pages.push_back(link->page);
  std::vector<int> wanted;
  for (const Day& day : plan.days) wanted.push_back(known.days.at(day.date));
  CHECK(pages == wanted);
  CHECK(faults(canvas, style::kMargins) == std::vector<std::string>{});
}

TEST_CASE("A single week is drawn on a page of its own, with its goal, dates and ISO week") {
  const DrawnSheet sheet(
      [](Book& book) {
        book.open_sheet(SheetKind::weeks, "One");
        const auto weeks = weeks_of(book.plan());
        draw_wall_week(book, weeks[1]);
      },
      sound_plan());
  REQUIRE(sheet.pages() == 1);
  const DrawnPage& page = sheet.canvas().pages().front();
  CHECK(page.size.width > page.size.height);
  const auto large = on_the_wall(page);
  CHECK(find(large, "This week: 3 run-throughs, start to end."));
  CHECK(has(page.words(), "\nWeek 2 of 2 · 11–17 January 2027 · 2027-W02\n"));
}

TEST_CASE("A week has its page for itself in plans of up to 26 weeks") {
  CHECK(DrawnSheet(draw_weeks, of_weeks(26)).pages() == 26);
  CHECK(DrawnSheet(draw_weeks, of_weeks(27)).pages() == 14);
  const Plan plan = sample::plan("{title: Years, bars: 16, tempo: 60}", "2027-01-04", "2028-01-10");
  CHECK(DrawnSheet(draw_weeks, plan).pages() == 27);  // 53 weeks, two a page
}

TEST_CASE("The goal of a week names what is learned by its last day, without the returns") {
  Plan plan = sound_plan();
  const auto goal = [&](std::size_t week) {
    return week_goal(english_words(), plan, weeks_of(plan)[week]);
  };
  CHECK(goal(0) == "By Sunday: every bar from memory.");
  CHECK(goal(1) == "This week: 3 run-throughs, start to end.");
  plan.days[1].tasks.erase(plan.days[1].tasks.begin() + 1);
  // Bars 9–12 come back to 1–4.
  CHECK(goal(0) == "By Sunday: bars 1–4 from memory.");
  plan.days[7].tasks.clear();
  plan.days[10].tasks.clear();
  CHECK(goal(1) == "This week: the whole piece from memory, slowly.");
  for (Day& day : plan.days) day.tasks.clear();
  CHECK(goal(1) == "A week without memory work.");
}

TEST_CASE("The goal of a week without new bars is what most of its days ask for") {
  using Tasks = std::vector<Task>;
  const auto goal = [](const std::vector<Tasks>& days) {
    Plan plan = sound_plan();
    for (Day& day : plan.days) day.tasks.clear();
    plan.days[1].tasks = {sound::learn({1, 4}, 0), sound::learn({5, 8}, 1)};
    for (std::size_t day = 0; day < days.size(); ++day) plan.days[7 + day].tasks = days[day];
    return week_goal(english_words(), plan, weeks_of(plan)[1]);
  };
  const auto task = [](Drill drill, BarRange bars) { return sound::task(drill, bars, {0}, 1); };
  const Task join = task(Drill::join, {1, 12});
  const Task starts = task(Drill::cue_starts, {1, 12});
  const Task spoken = task(Drill::spoken_part, {1, 12});
  const Task slow = task(Drill::slow_pass, {1, 4});
  const Task counted = task(Drill::counted_pass, {5, 8});
  // A longer stretch on one day does not stand for a week of other work.
  CHECK(goal({{slow}, {task(Drill::recall, {1, 12})}, {slow}}) ==
        "This week: section A from memory, slowly.");
  CHECK(goal({{counted}, {starts}, {starts}}) == "This week: begin anywhere, score shut.");
  CHECK(goal({{spoken, counted}, {spoken}}) == "This week: the weakest bars, spoken and written.");
  // The bars of all its days.
  CHECK(goal({{slow}, {counted}}) ==
        "This week: bars 1–8 from memory, slowly, and counting aloud.");
  CHECK(goal({{counted}, {counted}}) == "This week: section B from memory, counting aloud.");
  CHECK(goal({{task(Drill::recall, {1, 3})}, {task(Drill::recall, {6, 8})}}) ==
        "This week: bars 1–3 and 6–8 from memory.");
  CHECK(goal({{task(Drill::recall, {1, 7})}, {}}) ==
        "This week: bars 1–7 from memory, without stopping.");
  // Of as many days, what tells most of a memory.
  CHECK(goal({{slow, task(Drill::recall, {1, 12}), starts, spoken, join}}) ==
        "This week: section A from memory, slowly.");
  CHECK(goal({{join, spoken, starts}}) == "This week: begin anywhere, score shut.");
  CHECK(goal({{join, spoken}}) == "This week: the weakest bars, spoken and written.");
  CHECK(goal({{join}}) == "This week: the seams between what you know.");
  // What is played comes before what is heard in the head.
  CHECK(goal({{task(Drill::silent_run, {1, 12}), task(Drill::recall, {1, 7})}}) ==
        "This week: bars 1–7 from memory, without stopping.");
  CHECK(goal({{task(Drill::silent_run, {1, 12}), join}}) ==
        "Once this week: hear the whole piece in your head, away from the instrument.");
}

TEST_CASE("The goal of a week of several pieces names each that has new bars") {
  Plan plan = programme("Second");
  CHECK(week_goal(english_words(), plan, weeks_of(plan)[0]) ==
        "By Sunday: every bar of Lantern Study and bars 1–4 of Second from memory.");
  Task learned = sound::learn({5, 8}, 1);
  learned.piece = 1;
  plan.days[2].tasks.push_back(learned);
  CHECK(week_goal(english_words(), plan, weeks_of(plan)[0]) == "By Sunday: every bar from memory.");
}

TEST_CASE("The goal of a week with many stretches counts the bars") {
  const Plan plan = sample::plan(
      "{title: T, bars: 80, tempo: 60, practice: {minutes: 20, order: hardest first}, hard: "
      "[{bars: "
      "5-8, level: 5}, {bars: 21-24, level: 5}, {bars: 45-48, level: 5}, {bars: 69-72, level: "
      "5}]}");
  CHECK(week_goal(english_words(), plan, weeks_of(plan)[0]).size() < 80);
}
