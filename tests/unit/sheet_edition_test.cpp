// The sheets of a later edition.
#include <algorithm>
#include <string>

#include "catch.h"
#include "every_paper.h"
#include "later_edition.h"
#include "plan/standing.h"
#include "plan/table_in_force.h"
#include "played.h"
#include "sample_pieces.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/phrasing.h"
#include "workbook/parts/week_words.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::has;
using sample::one_line;
using sample::with_runs;

namespace {

Plan behind() {
  Plan plan = sample::later_edition(sample::plan(sample::kStudy), sample::date("2027-01-11"));
  plan.record.last->days_behind = 3;
  plan.record.last->tasks_done -= 4;
  plan.record.last->bars_learned -= 2;
  plan.method.pace = {1.3, 1.3, 1.3, 1.3, 1.3};
  for (int chunk = 0; chunk < 5; ++chunk) sample::let_slip(plan, 0, chunk, {6, 1 + chunk % 4});
  return plan;
}

int pale_boxes(const DrawnSheet& sheet) {
  int number = 0;
  for (const DrawnPage& page : sheet.canvas().pages())
    for (const DrawnItem& item : page.items)
      if (const auto* box = std::get_if<DrawnRectangle>(&item))
        number += box->paint.fill && box->paint.fill->grey == style::kPale;
  return number;
}

}  // namespace

TEST_CASE("the sheets of a later edition keep their layout everywhere") {
  Plan late = with_runs();
  Plan early = behind();
  Plan crowded = sample::later_edition(
      sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n", "2027-01-04",
                   "2027-06-20"),
      sample::date("2027-05-03"));
  crowded.record.last->days_behind = 12;
  crowded.record.last->minutes = 88;
  crowded.method.pace.fill(1.4);
  for (int chunk = 0; chunk < 7; ++chunk) sample::let_slip(crowded, 0, chunk, {9, 4});
  for (void (*draw)(Book&) :
       {draw_cover, draw_how_to_use, draw_form_map, draw_cue_starts, draw_passes, draw_run_tally,
        draw_progress_chart, draw_weeks, draw_day_panels})
    for (const Plan* plan : {&late, &early, &crowded})
      sample::require_faultless_everywhere(draw, *plan);
}

TEST_CASE("editions of the planner keep their layout, and their sheets agree with the plan") {
  const std::vector<Piece> pieces = {sample::piece(sample::kLantern)};
  const auto plan_from = [&](const char* from, Record record) {
    Terms terms = settle(sample::date(from), sample::date("2027-03-20"), pieces[0].practice,
                         sample::steady());
    terms.record = std::move(record);
    return make_plan(pieces, terms);
  };
  Record record = sample::played(plan_from("2027-01-04", {}), sample::date("2027-03-09"));
  int number = 0;
  for (Done& done : record.done)
    if (done.bars.contains(6) && done.drill != Drill::learn && ++number % 2 == 0) done.slips = {6};
  record.last = LastEdition{1, sample::date("2027-01-04"), 15.0, 90, 90, 36, 36, 0};
  const Plan plan = plan_from("2027-03-09", record);
  REQUIRE(sample::faults_of(plan) == "");
  REQUIRE(weak_spots(plan).size() == 1);
  const BarRange weak = plan.pieces[0].chunks[weak_spots(plan)[0].chunk].bars;
  REQUIRE(weak.contains(6));
  for (void (*draw)(Book&) : {draw_cover, draw_form_map, draw_cue_starts, draw_run_tally,
                              draw_progress_chart, draw_day_panels})
    sample::require_faultless_everywhere(draw, plan);
  CHECK(has(one_line(DrawnSheet(draw_cover, plan).words()),
            "Bars that slip most now: " + bar_range(weak.first, weak.last) + "."));
  CHECK(has(DrawnSheet(draw_cue_starts, plan).words(), "\nweak\n"));
  // A circle to tick for each recording and listener that the plan asks for, and in spare rows.
  int recorded = 0;
  int listener = 0;
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      runs += task.drill == Drill::run_through;
      listener += task.reason == Reason::listener;
      recorded += task.reason == Reason::recorded || task.reason == Reason::listener;
    }
  REQUIRE(runs > 0);
  const DrawnSheet tally(draw_run_tally, plan);
  const int spare = 4;  // the page has room for all of them
  CHECK(tally.circles_to_tick() == 2 * runs + recorded + listener + 4 * spare);
}

TEST_CASE("a cover whose title takes a third of the page says as much as it has room for") {
  Plan plan = behind();
  plan.fits = false;
  plan.pieces[0].piece.composer = std::string(120, 'M') + " " + std::string(60, 'M');
  for (const std::size_t letters : {110, 130, 150, 165, 180, 200}) {
    INFO(letters);
    plan.pieces[0].piece.title = std::string(letters, 'W');
    sample::require_faultless_everywhere(draw_cover, plan);
  }
}

TEST_CASE("a programme's later edition names pieces, long titles cut, and keeps its layout") {
  const std::vector<Piece> pieces = {sample::piece(sample::crowded_piece()),
                                     sample::piece(sample::kStudy)};
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-06-20"), pieces[0].practice,
                       sample::steady());
  terms.minutes.fill(90);
  Plan plan = sample::later_edition(make_plan(pieces, terms), sample::date("2027-02-01"));
  plan.record.last->days_behind = -3;
  for (const int piece : {0, 1})
    for (const int chunk : {0, 1, 2}) sample::let_slip(plan, piece, chunk, {9, 4 + piece});
  for (void (*draw)(Book&) :
       {draw_cover, draw_form_map, draw_cue_starts, draw_run_tally, draw_progress_chart})
    sample::require_faultless_everywhere(draw, plan);
  CHECK(has(one_line(DrawnSheet(draw_cover, plan).words()),
            "Bars that slip most now: 1–4, 5–8 and 9–12 of Lantern Study and 3 more passages."));
  for (Chunk& chunk : plan.pieces[1].chunks) chunk.raised = false;
  plan.fits = false;
  sample::require_faultless_everywhere(draw_cover, plan);
  CHECK(has(one_line(DrawnSheet(draw_cover, plan).words()), " of " + std::string(24, 'W')));
}

TEST_CASE("the cover of a first edition says nothing of another one") {
  const std::string words = DrawnSheet(draw_cover, sample::plan(sample::kStudy)).words();
  CHECK_FALSE(has(words, "dition"));
  CHECK_FALSE(has(words, "last workbook"));
}

TEST_CASE("the cover of a later edition says in plain words what has changed") {
  Plan plan = behind();
  const int tasks = plan.record.last->tasks;
  const int bars = plan.record.last->bars_new;
  const std::string words = one_line(DrawnSheet(draw_cover, plan).words());
  CHECK(has(words, "Edition 2, planned from 11 January 2027"));
  CHECK(has(words, "3 days behind; the date still holds."));
  CHECK(has(words, "Of the last workbook’s " + std::to_string(tasks) + "\u00a0tasks so far, " +
                       std::to_string(tasks - 4) + " were done. New bars learned: " +
                       std::to_string(bars - 2) + " of " + std::to_string(bars) + "."));
  CHECK(has(words, "Learning takes you about 1.3 times as long as first estimated."));
  CHECK(has(words, "and 2 more passages."));
}

TEST_CASE("the cover says which bars were moved, and what gave way beside it") {
  Plan plan = behind();
  std::vector<const Task*> to_learn;
  std::vector<Date> dates;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn) to_learn.push_back(&task), dates.push_back(day.date);
  REQUIRE(to_learn.size() > 4);
  // Spaces that do not break are spaces here.
  const auto says = [&] {
    std::string words = one_line(DrawnSheet(draw_cover, plan).words());
    for (std::size_t at = 0; (at = words.find("\u00a0", at)) != std::string::npos;)
      words.replace(at, 2, " ");
    return words;
  };
  CHECK_FALSE(has(says(), "Moved"));
  const auto miss = [&](std::size_t task, const char* date) {
    plan.record.last->missed.push_back({0, to_learn[task]->bars, sample::date(date)});
  };
  const auto named = [&](std::size_t task, const std::string& from) {
    const BarRange bars = to_learn[task]->bars;
    return "bars " + bar_range(bars.first, bars.last) + " from " + from + " January to " +
           day_month(english_words(), dates[task]);
  };
  miss(0, "2027-01-05");
  CHECK(has(says(), "Moved: " + named(0, "5") + "."));
  miss(2, "2027-01-07");
  plan.gave_way = {GaveWay::gaps};
  CHECK(has(says(), "Moved: " + named(0, "5") + " and " + named(2, "7") +
                        ". What gave way: longer gaps between recalls."));
  CHECK(count_of(says(), "What gave way") == 1);
  miss(3, "2027-01-08");
  CHECK(has(says(), ", " + named(2, "7") + " and " + named(3, "8") + "."));
  miss(4, "2027-01-09");
  CHECK(has(says(),
            "Moved: 4 passages that were to be learned by now; the last of them now "
            "comes on " +
                day_month(english_words(), *std::max_element(dates.begin(), dates.begin() + 5)) +
                "."));
  for (const Print& print : sample::kEveryPaper)
    CHECK(DrawnSheet(draw_cover, plan, print).pages() <= (print.paper.width < 120 ? 2 : 1));
  sample::require_faultless_everywhere(draw_cover, plan);
}

TEST_CASE("bars that moved together are one, and bars that find no place are not moved") {
  Plan plan = sample::later_edition(sound_plan(), sample::date("2027-01-04"));
  REQUIRE(plan.record.last);
  const Date set_for = sample::date("2027-01-02");
  plan.record.last->missed = {{0, {5, 6}, set_for}, {0, {7, 8}, set_for}, {0, {1, 2}, set_for}};
  const std::vector<MovedBars> moved = moved_bars(plan);
  REQUIRE(moved.size() == 2);
  CHECK(moved[0].bars == BarRange{5, 8});
  CHECK(iso(moved[0].to) == "2027-01-05");
  CHECK(moved[1].bars == BarRange{1, 2});
  CHECK(iso(moved[1].to) == "2027-01-04");
  plan.days[0].tasks.clear();
  CHECK(moved_bars(plan).size() == 1);
  // What finds no place is still to be learned.
  CHECK(has_new_bars(plan));
  plan.days[1].tasks.clear();
  CHECK_FALSE(has_new_bars(plan));
  plan.unplaced = {{0, Drill::learn, {1, 4}, 8, Why::no_room_to_learn}};
  CHECK(has_new_bars(plan));
}

TEST_CASE("the cover names the day's minutes where they have changed") {
  Plan plan = behind();
  plan.record.last->minutes = 12;
  CHECK(has(one_line(DrawnSheet(draw_cover, plan).words()),
            "the date still holds with 15\u00a0minutes a day (12 before)."));
}

TEST_CASE("the cover does not name the day's minutes where there are fewer now, or as many") {
  Plan plan = behind();
  for (const double before : {15.0, 30.0}) {
    plan.record.last->minutes = before;
    for (const int days : {0, 3}) {
      plan.record.last->days_behind = days;
      CHECK_FALSE(has(one_line(DrawnSheet(draw_cover, plan).words()), "before)"));
    }
  }
  plan.record.last->days_behind = 0;
  plan.record.last->minutes = 12;
  CHECK(has(one_line(DrawnSheet(draw_cover, plan).words()),
            "On course, with 15\u00a0minutes a day (12 before)."));
}

TEST_CASE("the cover says of which tasks so many were done") {
  Plan plan = with_runs();
  LastEdition& last = *plan.record.last;
  last.bars_new = 0;
  const auto says = [&](int done, int tasks) {
    last.tasks_done = done;
    last.tasks = tasks;
    return one_line(DrawnSheet(draw_cover, plan).words());
  };
  CHECK(has(says(16, 19), "Of the last workbook’s 19\u00a0tasks so far, 16 were done."));
  CHECK(has(says(1, 19), "Of the last workbook’s 19\u00a0tasks so far, one was done."));
  CHECK(has(says(0, 19), "None of the last workbook’s 19\u00a0tasks so far was done."));
  CHECK(has(says(19, 19), "All 19\u00a0tasks of the last workbook so far were done."));
  CHECK(has(says(1, 1), "The one task of the last workbook so far was done."));
  CHECK(has(says(0, 1), "The one task of the last workbook so far was not done."));
  CHECK_FALSE(has(says(0, 0), "last workbook"));
  CHECK_FALSE(has(says(16, 19), "New bars"));
}

TEST_CASE("the cover says on course, ahead, and that the date does not hold") {
  Plan plan = behind();
  const auto says = [&] { return one_line(DrawnSheet(draw_cover, plan).words()); };
  plan.record.last->days_behind = 0;
  CHECK(has(says(), "On course."));
  plan.record.last->days_behind = -2;
  CHECK(has(says(), "2 days ahead: the days gained go to playing from memory."));
  plan.record.last->days_behind = 1;
  CHECK(has(says(), "1 day behind; the date still holds."));
  plan.fits = false;
  CHECK(has(says(), "1 day behind: as things are, the date does not hold."));
  CHECK_FALSE(has(says(), "still holds"));
  plan.upkeep = true;
  CHECK(has(says(), "To be kept in memory until"));
  CHECK(has(says(), "To keep it that way, this book asks for it again"));
  CHECK_FALSE(has(says(), "1 day behind"));
  plan.record.last.reset();
  plan.upkeep = false;
  CHECK(has(says(), "planned from 11 January 2027 Bars that slip"));
}

TEST_CASE("the pace is named where it differs and something is left to learn") {
  Plan plan = behind();
  plan.method.pace.fill(1.09);
  CHECK_FALSE(has(DrawnSheet(draw_cover, plan).words(), "Learning takes"));
  plan.method.pace.fill(1.5);
  CHECK(has(DrawnSheet(draw_cover, plan).words(), "Learning takes"));
  // Nor when nothing is left to learn.
  plan = with_runs();
  plan.method.pace.fill(1.5);
  CHECK_FALSE(has(DrawnSheet(draw_cover, plan).words(), "Learning takes"));
}

TEST_CASE("the cover counts what is still to learn and the runs to come") {
  const std::string words = DrawnSheet(draw_cover, with_runs()).words();
  CHECK(has(words, "\n2\nchunks, all learned already\n"));
  CHECK(has(words, "\n1\nrun-through to come\n"));
  CHECK_FALSE(has(words, "Nothing new in the last"));
  CHECK(has(one_line(DrawnSheet(draw_cover, behind()).words()), "Nothing new in the last"));
  CHECK(has(words, "\n5 Jan\nthe day everything was learned\n"));
}

TEST_CASE("cue starts with more of the dice are marked, and the sentence tells how much more") {
  Plan plan = sound_plan();
  const std::string fair = one_line(DrawnSheet(draw_cue_starts, plan).words());
  CHECK_FALSE(has(fair, "weak"));
  sample::share_dice(plan.pieces[0], {1, 3, 2});
  const std::string words = DrawnSheet(draw_cue_starts, plan).words();
  CHECK(has(one_line(words), "they come up two or three times as often as the others."));
  CHECK(count_of(words, "\nweak\n") == 2);
  CHECK(count_of(words, "\nno.\u00a02\n") == 18);
  sample::share_dice(plan.pieces[0], {1, 2, 1});
  CHECK(has(one_line(DrawnSheet(draw_cue_starts, plan).words()), "they come up twice as often"));
  sample::share_dice(plan.pieces[0], {1, 3, 3});
  CHECK(has(one_line(DrawnSheet(draw_cue_starts, plan).words()), "they come up three times"));
}

TEST_CASE("the starts that chance leaves out are counted by their shares") {
  Plan plan = sample::plan(std::string(sample::kStudy) + "cues: [5, 9, 13, 21, 25]\n");
  const std::size_t starts = plan.pieces[0].cues.size();
  REQUIRE(starts == 11);
  const auto says = [&] { return one_line(DrawnSheet(draw_cue_starts, plan).words()); };
  // Eleven equal starts in eleven throws: 11 (10/11)^11 = 3.86 (value computed).
  CHECK(has(says(), "miss about 4 starts"));
  // Six starts of 1/31 and five of 5/31: 6 (30/31)^11 + 5 (26/31)^11 = 4.91 (value computed).
  sample::share_dice(plan.pieces[0], {1, 5});
  CHECK(has(says(), "miss about 5 starts"));
  CHECK(has(says(), "they come up more often than the others."));
}

TEST_CASE("what went right before is grey on the progress chart") {
  CHECK(pale_boxes(DrawnSheet(draw_progress_chart, sound_plan())) == 0);
  // Two chunks learned and in a slow pass, one of them recalled, and three parts that held in a
  // run.
  Plan plan = with_runs();
  const DrawnSheet sheet(draw_progress_chart, plan);
  CHECK(pale_boxes(sheet) == 2 + 2 + 1 + 3);
  CHECK(has(one_line(sheet.words()), "Grey boxes went right before this edition."));
  for (Done& done : plan.record.done)
    if (done.drill == Drill::run_through) done.slips = {7};
  CHECK(pale_boxes(DrawnSheet(draw_progress_chart, plan)) == 2 + 2 + 1 + 2);
}

TEST_CASE("the form map marks what is learned, and bars that slip as hard ones") {
  const std::string first = DrawnSheet(draw_form_map, sample::plan(sample::kStudy)).words();
  CHECK_FALSE(has(first, "learned before this edition"));
  Plan plan = sample::later_edition(sample::plan(sample::kStudy), sample::date("2027-01-18"));
  const std::string words = DrawnSheet(draw_form_map, plan).words();
  CHECK(count_of(words, "\nlearned before this edition\n") == 2);  // of the map, of the calendar
  const auto dark_cells = [&] {
    int cells = 0;
    const Fill hard = Fill{0.72, false};
    const DrawnSheet sheet(draw_form_map, plan);
    for (const DrawnItem& item : sheet.canvas().pages().front().items)
      if (const auto* box = std::get_if<DrawnRectangle>(&item))
        cells += box->paint.fill && box->paint.fill->grey == hard.grey;
    return cells;
  };
  const int before = dark_cells();
  const BarRange bars = plan.pieces[0].chunks[0].bars;
  sample::let_slip(plan, 0, 0, {5, 2});
  // The bars where they are learned, and where they come back.
  CHECK(dark_cells() == before + 2 * bars.size());
}

TEST_CASE("in the calendar what came learned begins before the first day") {
  const Plan plan = sample::later_edition(sample::plan(sample::kStudy), sample::date("2027-01-11"));
  const auto before = [](const Plan& drawn) {
    const DrawnSheet sheet(draw_form_map, drawn);
    int signs = 0;
    for (const DrawnPage& page : sheet.canvas().pages())
      for (const DrawnItem& item : page.items)
        if (const auto* box = std::get_if<DrawnRectangle>(&item))
          signs += !box->paint.fill && box->box.width == Approx(2.4);
    return signs;
  };
  const auto learned = learned_before(plan, 0);
  const auto so_many =
      std::count_if(learned.begin(), learned.end(), [](const auto& date) { return !!date; });
  REQUIRE(so_many > 0);
  REQUIRE(so_many < static_cast<std::ptrdiff_t>(learned.size()));
  CHECK(before(plan) == so_many + 1);  // and one in the key
  CHECK(before(sample::plan(sample::kStudy)) == 0);
}

TEST_CASE("only a first edition has a readiness check") {
  CHECK(DrawnSheet(draw_readiness_check, sound_plan()).pages() == 1);
  CHECK(DrawnSheet(draw_readiness_check, with_runs()).pages() == 0);
}

TEST_CASE("of a piece kept without a log nothing is said that nobody told") {
  Plan plan = with_runs();
  plan.record.edition = 1;
  plan.record.last.reset();
  plan.upkeep = true;
  const std::string words = DrawnSheet(draw_cover, plan).words();
  CHECK(has(words, "\n1\nweek\n"));
  CHECK_FALSE(has(words, "5 Jan"));
  CHECK_FALSE(has(words, "dition"));
  CHECK(DrawnSheet(draw_readiness_check, plan).pages() == 0);
}

TEST_CASE("a step of new bars is left after twice as many tries as it has circles", "[numbers]") {
  CHECK(has(one_line(DrawnSheet(draw_how_to_use, sound_plan()).words()),
            "after 10 tries leave that line of circles"));
}

TEST_CASE("how to use a later edition begins with what is new, and its feet name the edition") {
  const DrawnSheet sheet(draw_how_to_use, with_runs());
  CHECK(sheet.pages() == 1);
  const std::string words = sheet.words();
  CHECK(has(one_line(words), "keep of the last edition only a dice table"));
  CHECK(has(words, "edition 2 · Lantern Study"));
  CHECK(has(one_line(words), "Still to come: 1."));
  CHECK_FALSE(has(words, "\nLearn\n"));
  const std::string first = DrawnSheet(draw_how_to_use, sound_plan()).words();
  CHECK_FALSE(has(first, "edition"));
  CHECK(has(first, "\nLearn\n"));
  const Plan lantern =
      sample::later_edition(sample::plan(sample::kLantern), sample::date("2027-01-11"));
  CHECK(DrawnSheet(draw_how_to_use, lantern).pages() == 1);
}

TEST_CASE("slips are asked for once: on a day's panel where the book has one") {
  const std::string wall = DrawnSheet(draw_weeks, sound_plan()).words();
  CHECK(has(wall, "slipped at"));
  Packet both;
  both.sheets = {sheet_of(SheetKind::weeks), sheet_of(SheetKind::day_panels)};
  const Plan plan = sound_plan();
  const DrawnBook book =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        return draw_workbook(canvas, plan, both, english_words(), Print{}, known);
      });
  int panels = 0;
  for (const DrawnPage& page : book.canvas->pages()) {
    CHECK_FALSE(has(page.words(), "\nslipped at\n"));
    panels += count_of(page.words(), "slipped at bar");
  }
  CHECK(panels == 6);  // not on the two days of run-throughs alone: theirs stand on the tally
}

TEST_CASE("how to use an edition in which nothing is new explains only what it asks for") {
  const Plan whole = sample::plan(sample::kStudy);
  Date learned = whole.from;
  for (const Day& day : whole.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn) learned = day.date;
  const Plan half = sample::later_edition(whole, learned);
  const std::string before = one_line(DrawnSheet(draw_how_to_use, half).words());
  CHECK(has(before, "The day in five steps"));
  CHECK(has(before, "Then take what is new"));
  Plan known = sample::later_edition(whole, learned + days{1});
  for (Day& day : known.days)
    std::erase_if(day.tasks, [](const Task& task) { return task.drill == Drill::join; });
  const std::string after = one_line(DrawnSheet(draw_how_to_use, known).words());
  CHECK(has(after, "The day in four steps"));
  CHECK_FALSE(has(after, "what is new"));
  CHECK_FALSE(has(after, "Slowly through neighbouring chunks"));
  CHECK_FALSE(has(after, "The first time comes after a night"));
}

TEST_CASE(
    "a dice table is printed again only where it is another one, and says whose place it takes") {
  Plan plan = behind();
  const std::string whole = one_line(DrawnSheet(draw_cue_starts, plan).words());
  CHECK(has(whole, "Throw a die twice"));
  std::vector<int> bars;
  for (const CueStart& cue : plan.pieces[0].cues) bars.push_back(cue.bar);
  const auto thrown = [&](int number, std::vector<int> shares) {
    return ThrownStarts{number, Throw::two_dice, {bars}, {std::move(shares)}};
  };
  const std::vector<int> alike(bars.size(), 1);
  std::vector<int> weak = alike;
  weak.front() = 2;
  plan.record.edition = 4;
  plan.record.thrown = {thrown(1, weak), thrown(2, alike), thrown(3, alike)};
  plan.pieces[0].dice = dice_tables({1, 2});
  std::vector<ThrownCue> cues;
  for (const CueStart& cue : plan.pieces[0].cues) cues.push_back({cue.number, 1});
  plan.pieces[0].dice = weighted_dice_tables(cues);
  CHECK(table_in_force(plan, 0).stays == 2);
  const DrawnSheet same(draw_cue_starts, plan);
  CHECK(has(one_line(same.words()), "the dice table of workbook 2 stays valid"));
  CHECK_FALSE(has(one_line(same.words()), "Throw a die twice"));
  CHECK(has(one_line(same.words()), "A dot: right first time."));
  plan.record.thrown.back() = thrown(3, weak);
  CHECK(table_in_force(plan, 0).replaced == 3);
  const DrawnSheet other(draw_cue_starts, plan);
  CHECK(has(one_line(other.words()), "Use this table in place of the one in workbook 3."));
  CHECK(has(one_line(other.words()), "Throw a die twice"));
  // A log that does not tell.
  plan.record.thrown.back() = {3, Throw::two_dice, {}, {}};
  CHECK(table_in_force(plan, 0).stays == 0);
  for (const std::vector<int>& shares : {alike, weak}) {
    plan.record.thrown.back() = thrown(3, shares);
    sample::require_faultless_everywhere(draw_cue_starts, plan);
  }
}

TEST_CASE("the goal of a week counts what was learned before the edition") {
  const Plan plan =
      sample::later_edition(sample::plan(sample::kLantern), sample::date("2027-01-11"));
  const PlanWeek week = weeks_of(plan).front();
  CHECK(week_goal(english_words(), plan, week) == "By Sunday: bars 0–24 from memory.");
}

TEST_CASE("a programme's later edition shows every piece's form") {
  const std::vector<Piece> pieces = {
      sample::piece("{title: \"Sonata in C minor, first movement\", bars: 24}"),
      sample::piece(sample::kStudy), sample::piece(sample::kLantern)};
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-06-20"), pieces[0].practice,
                       sample::steady());
  terms.minutes.fill(90);
  const Plan plan = sample::later_edition(make_plan(pieces, terms), sample::date("2027-02-01"));
  for (const Print& print : sample::kEveryPaper) {
    const std::string words = DrawnSheet(draw_cover, plan, print).words();
    CHECK(has(words, "Sonata"));
    for (const std::size_t piece : {1u, 2u}) CHECK(has(words, "\n" + pieces[piece].title + "\n"));
    CHECK_FALSE(has(words, "more piece"));
  }
}
