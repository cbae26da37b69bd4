#include "practice/drill.h"

#include <algorithm>
#include <cmath>

#include "broken_rules.h"
#include "drawn_sheet.h"
#include "drill_keys.h"
#include "plan/chunks/analyse.h"
#include "plan/due/task_maker.h"
#include "plan/rules/indexed_plan.h"
#include "report/plan_words.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "workbook/parts/task_words.h"

namespace cahier {
namespace {

// The sound plan with one task more, of any drill, on a day that has one of its own.
Plan with_a_task_of(Drill drill) {
  Plan plan = sound_plan();
  Task task = sound::task(drill, {1, 12}, {0, 1}, 2);
  if (covers(drill, Covers::starts)) task.cues = {1, 2, 3};
  task.id = "0112-1";
  plan.days[8].tasks = {task};
  return plan;
}

}  // namespace

TEST_CASE("the rows of the drills are whole and contradict neither each other nor themselves") {
  std::set<std::string_view> words;
  std::set<std::string_view> nouns;
  for (const DrillFacts& facts : every_drill()) {
    INFO(facts.word);
    CHECK(&facts_of(facts.drill) == &facts);
    CHECK(words.insert(facts.word).second);
    CHECK(nouns.insert(facts.noun).second);
    CHECK_FALSE(facts.word.empty());
    CHECK_FALSE(facts.noun.empty());
    CHECK((facts.share != nullptr) == (facts.tempo == AtTempo::share));
    // Whatever is played from memory may slip: what recalls, and a join; and what is heard in the
    // head, where it blurs.
    CHECK((facts.retrieves || facts.plays_across || facts.drill == Drill::silent_run) ==
          (facts.slips != Slips::nowhere));
    // What is read from the score tests no memory, and without an instrument nothing has a tempo.
    if (facts.takes_score) {
      CHECK_FALSE(facts.retrieves);
      CHECK(facts.slips == Slips::nowhere);
    }
    if (!facts.needs_instrument) CHECK(facts.tempo == AtTempo::none);
  }
  CHECK(words.size() == every_drill().size());
}

TEST_CASE("every drill has all of its words in the catalogue") {
  const auto keys = english_words().keys();
  const std::set<std::string> known(keys.begin(), keys.end());
  for (const DrillFacts& facts : every_drill())
    for (const std::string& key : sample::keys_of(facts)) {
      INFO(key);
      CHECK(known.contains(key));
    }
}

TEST_CASE("every drill is said, explained, and set on panels and on the wall") {
  const Words& words = english_words();
  for (const DrillFacts& facts : every_drill()) {
    INFO(facts.word);
    const Plan plan = with_a_task_of(facts.drill);
    const Task& task = plan.days[8].tasks.front();
    CHECK_FALSE(say_task(words, task).empty());
    CHECK_FALSE(say_drill(words, facts.drill, 2, "1–12").empty());
    const std::string label = words.say("how_to_use." + std::string(facts.word));
    CHECK(sample::has(sample::DrawnSheet(draw_how_to_use, plan).words(), "\n" + label + "\n"));
    // The drill that the day asks for by itself stands on its panel with what it means.
    Plan alone = plan;
    for (Day& day : alone.days)
      if (day.tasks.empty() || day.tasks.front().id != task.id) day.tasks.clear();
    const std::string panel = sample::DrawnSheet(draw_day_panels, alone).words();
    CHECK(sample::has(sample::one_line(panel), drill_title(words, task)));
    CHECK(sample::has(sample::one_line(panel), drill_meaning(words, task)));
    const int number = covers(facts.drill, Covers::starts) ? 3 : 1;
    const std::string on_the_wall =
        facts.drill == Drill::learn ? words.say(facts.counted) : words.count(facts.counted, number);
    CHECK(sample::has(sample::DrawnSheet(draw_weeks, alone).words(), "\n" + on_the_wall + "\n"));
  }
}

TEST_CASE("every drill has a time formula, and a task that is made by its row") {
  const Piece piece = sample::piece("title: T\nbars: 16\nmeter: 4/4\ntempo: 100\nlevel: 3\n");
  const Method& method = sample::steady();
  const Analysis analysis = analyse(piece, method, method.chunk_minutes);
  const TaskMaker make(analysis, method, 0);
  for (const DrillFacts& facts : every_drill()) {
    INFO(facts.word);
    const double minutes = analysis.time.minutes(facts.drill, {1, 4}, 3, 4);
    CHECK(minutes >= 0.5);
    CHECK(minutes * 2 == std::floor(minutes * 2));
    const Task task = facts.covers == Covers::chunk    ? make.of_chunk(facts.drill, 1)
                      : facts.covers == Covers::starts ? make.cue_starts({1}, 3)
                                                       : make.of_bars(facts.drill, piece.whole());
    CHECK(task.drill == facts.drill);
    CHECK(task.minutes >= 0.5);
    CHECK_FALSE(task.steps.empty());
    CHECK(task.tempo.has_value() == (facts.tempo != AtTempo::none));
  }
}

// The checker decides by itself what tests memory and what joins: neither list is made from the
// other.
TEST_CASE("the checker and the planner hold the same drills for retrieval") {
  for (const DrillFacts& facts : every_drill()) {
    INFO(facts.word);
    CHECK(is_retrieval(facts.drill) == facts.retrieves);
  }
}

TEST_CASE("the checker and the planner hold the same drills for playing across joins") {
  for (const DrillFacts& facts : every_drill()) {
    INFO(facts.word);
    Plan plan = with_a_task_of(facts.drill);
    plan.days[1].tasks.pop_back();
    plan.days[2].tasks[0].bars = {5, 12};
    plan.days[12].tasks[0].bars = {5, 12};
    const auto found = violations(plan);
    const bool joined = std::none_of(found.begin(), found.end(), [](const Violation& violation) {
      return violation.kind == Violation::Kind::join_not_played;
    });
    CHECK(joined == facts.plays_across);
  }
}

TEST_CASE("the last days hold what their rows allow, the comfortable ones only what is welcome") {
  for (const int bars : {8, 24, 48, 96}) {
    CAPTURE(bars);
    const Plan plan =
        sample::plan("{title: Steady, bars: " + std::to_string(bars) + ", tempo: 100, level: 4}");
    int seen = 0;
    for (const Day& day : plan.days)
      if (day.date >= plan.by - days{plan.method.quiet_days})
        for (const Task& task : day.tasks) {
          CAPTURE(task.id, drill_word(task.drill));
          CHECK(facts_of(task.drill).last_days == LastDays::welcome);
          ++seen;
        }
    CHECK(seen > 0);
  }
}

}  // namespace cahier
