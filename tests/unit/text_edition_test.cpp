// The workbook in words: all that the panels say, and no sign that is skipped when it is read
// aloud.
#include "workbook/text_edition/text_edition.h"

#include <sstream>

#include "catch.h"
#include "hostile_plans.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/phrasing.h"
#include "workbook/text_edition/plain_forms.h"

namespace cahier {
namespace {

using sample::has;

std::string in_words(const Plan& plan) { return text_edition(plan, english_words()); }

std::string plain(const std::string& text) { return in_plain_signs(english_words(), text); }

int count_of(const std::string& text, const std::string& part) {
  int number = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++number;
  return number;
}

}  // namespace

TEST_CASE("signs are words in the text edition") {
  CHECK(plain("4–10 January 2027") == "4 to 10 January 2027");
  CHECK(plain("28 January – 3 February") == "28 January to 3 February");
  CHECK(plain("10½ of 20") == "10 and a half of 20");
  CHECK(plain("½ min") == "half min");
  CHECK(plain("14 → 15") == "14 then 15");
  CHECK(plain("14 →") == "14 then");
  CHECK(plain("Week 1 · January") == "Week 1, January");
  CHECK(plain("right hand: F♯ instead of B♭.") == "right hand: F sharp instead of B flat.");
  CHECK(plain("C♯5, E♭") == "C sharp 5, E flat");
  CHECK(plain("5\u00a0times, “again”") == "5 times, “again”");
  CHECK(plain_bars(english_words(), {3, 3}) == "bar 3");
  CHECK(plain_tempo(english_words(), {56.5, Beat::dotted_quarter}) ==
        "dotted quarter note = 56.5 beats a minute");
}

TEST_CASE("the text edition says all that the panels say of a day") {
  const Plan plan = sound_plan();
  const std::string text = in_words(plan);
  CHECK(text.starts_with("cahier workbook: Lantern Study, by Nobody\n"));
  CHECK(has(text, "\nTo be played from memory on Monday 18 January 2027\n"));
  CHECK(has(text, "\nWeek 1 of 2, 4 to 10 January 2027\nBy Sunday: every bar from memory.\n"));
  CHECK(has(text,
            "\n\nMonday 4 January: 8 and a half of 15 minutes\n"
            "1. Learn: bars 1 to 4. Code 0104-1.\n"));
  CHECK(has(text, "\nSteps: right hand 5 times; left hand 5 times; both together 5 times.\n"));
  CHECK(has(text,
            "\nAbout 8 and a half minutes.\n"
            "Stop here, even if it goes well. What has stuck shows after a night. "));
  CHECK(has(text, "\nHow often: once, both together, once more if bars were mended.\n"));
  CHECK(has(text, "\nNot learned yet? Learn it now.\n"));
  CHECK(has(text, "\nMonday 18 January: The day itself\n"));
}

TEST_CASE("the text edition names every task with its bars, its tempi and its starts") {
  for (const Plan& plan :
       {sample::plan(sample::crowded_piece() + "practice: {minutes: 90, blocks: 2, temper: yes}\n"),
        sample::plan(
            "{title: Song, instrument: voice, bars: 40, tempo: 80, practice: {dice: coins}}")}) {
    const std::string text = in_words(plan);
    int tasks = 0;
    for (const Day& day : plan.days)
      for (const Task& task : day.tasks) {
        ++tasks;
        INFO(task.id);
        CHECK(count_of(text, " Code " + task.id + ".\n") == 1);
        if (covers(task.drill, Covers::starts)) continue;
        CHECK(has(text, ": " + plain_bars(english_words(), task.bars) + ". Code " + task.id));
        for (const TempoFrom& from : task.tempi) CHECK(has(text, number_text(from.per_minute)));
      }
    CHECK(tasks > 50);
    for (const CueStart& cue : plan.pieces[0].cues)
      CHECK(count_of(text, "\nStart " + std::to_string(cue.number) + ": bar ") == 1);
    for (const std::string sign : {"–", "½", "→", "·", "\u00a0", "  "}) {
      CAPTURE(sign);
      CHECK_FALSE(has(text, sign));
    }
    std::stringstream lines(text);
    for (std::string line; std::getline(lines, line);) CHECK_FALSE(line.ends_with(' '));
  }
}

TEST_CASE("the text edition of so many weeks has their days alone, and all the starts") {
  const Plan plan = sample::plan("{title: T, bars: 48, tempo: 60}");
  const std::string all = in_words(plan);
  const std::string two = text_edition(plan, english_words(), 2);
  CHECK(has(two, "\nWeek 2 of 11, "));
  CHECK_FALSE(has(two, "\nWeek 3 of 11, "));
  CHECK_FALSE(has(two, "The day itself"));
  CHECK(has(all, "The day itself"));
  CHECK(has(two, all.substr(all.find("\nCue starts\n"))));
}

TEST_CASE("the text edition says what is in force at starts, recalls and joins") {
  const std::string text = in_words(sample::plan(
      "title: T\nbars: 24\ntempo: 60\nmarks: [{bar: 9, note: new manual, holds: yes}]\n"));
  CHECK(has(
      text,
      "\nStart 1: bar 1, bars 1 to 12, to the end of bar 3, quarter note = 60 beats a minute.\n"));
  CHECK(count_of(text, "In force there: new manual.") > 5);
}

TEST_CASE("the text edition tells how starts begin, and the forks with what differs") {
  Plan plan = sample::plan(
      "{title: T, bars: 24, tempo: 60, look-alikes: [{bars: [1-4, 13-16], fork: [3, 15]}]}");
  Piece& piece = plan.pieces[0].piece;
  CHECK_FALSE(has(in_words(plan), " begins with "));
  piece.beginnings_aloud.resize(25);
  piece.beginnings_aloud[1] = {"right hand: E flat 5; D", "left hand: A minor"};
  piece.beginnings_aloud[15] = {"right hand: G 4"};
  piece.partings = {
      {3, 15, 2, 4, 0.5, 2, {{HandChange::Kind::instead, "right hand", {"F♯"}, {"F"}}}}};
  const std::string text = in_words(plan);
  CHECK(has(text,
            "\nBar 1 begins with right hand: E flat 5; D.\n"
            "Bar 1 begins with left hand: A minor.\n"));
  CHECK(has(text,
            "\n1. bars 1 to 4 and 13 to 16, 2 bars alike, they part in bars 3 and 15.\n"
            "Bar 15, beat 2: right hand: F sharp instead of F.\n"
            "Bar 15 begins with right hand: G 4.\n"));
}

TEST_CASE("each outcome of the throws stands in the text edition once") {
  const Plan plan = sample::plan("{title: T, bars: 48, tempo: 60, practice: {dice: one die}}");
  const std::string text = in_words(plan);
  for (const DiceTable& table : plan.pieces[0].dice)
    for (const DiceTable::Row& row : table.rows)
      for (const auto& outcome : row.outcomes)
        CHECK(has(text, std::to_string(outcome.front()) + ": start " + std::to_string(row.cue)));
  CHECK(has(text, "\nTo choose a start, throw a die.\n"));
  const std::string coins =
      in_words(sample::plan("{title: T, bars: 48, tempo: 60, practice: {dice: coins}}"));
  CHECK(has(coins, "\nH H H: start 1, bar 1.\n"));
}

}  // namespace cahier
