// Which forks are the most dangerous, and what of a plan meets them.
#include "plan/memory_traps.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "catch.h"
#include "report/plan_json.h"
#include "report/traps_text.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"

namespace cahier {
namespace {

using sample::has;

PlannedPiece forked(const std::string& yaml) {
  PlannedPiece planned;
  planned.piece = sample::piece(yaml);
  planned.forks = forks_of(planned.piece);
  return planned;
}

std::vector<int> first_bars(const PlannedPiece& planned) {
  std::vector<int> bars;
  for (const MemoryTrap& trap : memory_traps(planned))
    bars.push_back(planned.forks[trap.fork].ways.front().to);
  return bars;
}

double danger_of(const PlannedPiece& planned) { return memory_traps(planned).front().danger; }

}  // namespace

TEST_CASE("the longer bars are alike before they part, the more dangerous they are") {
  const PlannedPiece planned = forked(
      "{title: T, bars: 64, look-alikes: [{bars: [1-4, 9-12], fork: [2, 10]}, "
      "{bars: [17-24, 33-40], fork: [24, 40]}, {bars: [41-44, 49-52], fork: [44, 52]}]}");
  CHECK(first_bars(planned) == std::vector<int>{24, 44, 2});
  CHECK(memory_traps(planned).front().bars_alike == 7);
  // The figure of a score's look-alikes, worked out by hand.
  CHECK(danger_of(planned) == Approx(7 / 7.75));
}

TEST_CASE("of equal danger what comes first in the piece stands first") {
  CHECK(first_bars(forked("{title: T, bars: 64, look-alikes: [{bars: [33-36, 41-44], fork: [35, "
                          "43]}, {bars: [1-4, 9-12], fork: [3, 11]}]}")) ==
        std::vector<int>{3, 35});
}

TEST_CASE("returns, endings and repeats are weighed beside look-alikes, a repeat as half of them",
          "[numbers]") {
  const PlannedPiece ending = forked(
      "{title: T, bars: 24, repeats: [{bars: 1-9, times: 2}], endings: [{bars: 9-9, times: [1]}, "
      "{bars: 10-10, times: [2]}]}");
  CHECK(danger_of(ending) == Approx(8 / 8.75));
  const PlannedPiece repeat = forked("{title: T, bars: 24, repeats: [{bars: 1-8, times: 2}]}");
  CHECK(danger_of(repeat) == Approx(0.5 * 8 / 8.75));
  const PlannedPiece back = forked(
      "{title: T, bars: 24, sections: [{name: A, bars: 1-4}, {name: B, bars: 5-12}, "
      "{name: C, bars: 13-16, same as: 1-4}, {name: D, bars: 17-24}]}");
  CHECK(danger_of(back) == Approx(4 / 4.75));
}

TEST_CASE("ways that are the same again after one bar are three quarters as dangerous",
          "[numbers]") {
  // Bars 5 and 13 differ; 6 to 8 come back in 14 to 16, and then lead to 9 or 17.
  const PlannedPiece meets = forked(
      "{title: T, bars: 24, sections: [{name: A, bars: 1-8}, {name: B, bars: 9-12, same as: 1-4}, "
      "{name: C, bars: 13-13}, {name: D, bars: 14-16, same as: 6-8}, {name: E, bars: 17-24}]}");
  REQUIRE(memory_traps(meets).size() == 2);
  CHECK(first_bars(meets) == std::vector<int>{9, 5});
  CHECK(danger_of(meets) == Approx(3 / 3.75));
  CHECK(memory_traps(meets).back().danger == Approx(0.75 * 4 / 4.75));
}

TEST_CASE("a score tells of more bars alike, and of bars that are nearly the same") {
  PlannedPiece planned =
      forked("{title: T, bars: 24, look-alikes: [{bars: [5-8, 13-16], fork: [7, 15]}]}");
  CHECK(danger_of(planned) == Approx(2 / 2.75));
  planned.piece.partings = {{7, 15, 6, 4, 0.5, 2, {}}};
  CHECK(danger_of(planned) == Approx(6.5 / 7.25));
  planned.piece.partings.front().apart = 1;
  CHECK(danger_of(planned) == Approx(0.75 * 6.5 / 7.25));
}

TEST_CASE("a fork is met by its drills, starts beyond it, and work spoken and written over it") {
  const Plan plan = sample::plan(std::string(sample::kStudy) + "practice: {temper: yes}\n",
                                 "2027-01-04", "2027-05-20");
  const TrapAnswers answers = answers_to(plan, 0, plan.pieces[0].forks.front());
  REQUIRE(answers.fork_drills.size() >= 3);  // teacher.md, figure 8: three days
  for (const DatedTask& one : answers.fork_drills) {
    CHECK(one.task->fork);
    CHECK((plays_way(*one.task, plan.pieces[0].forks.front().ways[0]) ||
           plays_way(*one.task, plan.pieces[0].forks.front().ways[1])));
  }
  REQUIRE_FALSE(answers.starts.empty());
  for (const CueStart* cue : answers.starts)
    CHECK(((cue->bar >= 13 && cue->bar < 17) || (cue->bar >= 45 && cue->bar < 49)));
  REQUIRE_FALSE(answers.spoken_parts.empty());
  for (const DatedTask& one : answers.spoken_parts)
    CHECK((one.task->bars.contains(13) || one.task->bars.contains(45)));
  REQUIRE_FALSE(answers.write_outs.empty());
}

TEST_CASE("a start beyond a fork is not one that leads into it at another place") {
  Plan plan = sample::plan(
      "{title: T, bars: 16, tempo: 60, cues: [5, 7, 9], look-alikes: [{bars: [1-4, 5-8], fork: "
      "[3, 7]}], repeats: [{bars: 9-12, times: 2}]}");
  const auto bars_beyond = [&](const Fork& fork) {
    std::vector<int> bars;
    for (const CueStart* cue : answers_to(plan, 0, fork).starts) bars.push_back(cue->bar);
    return bars;
  };
  CHECK(bars_beyond(plan.pieces[0].forks[0]) == std::vector<int>{7});
  // Of a repeat its first bar is where one goes on.
  const std::vector<int> repeat = bars_beyond(plan.pieces[0].forks[1]);
  CHECK(std::ranges::find(repeat, 9) != repeat.end());
}

TEST_CASE("the list of traps names the places, where they part, and the drills by their codes") {
  Plan plan = sample::plan(sample::kStudy);
  const std::string text = traps_text(plan, english_words());
  CHECK(has(text, "\n  1. bars 9–16 and 41–48 · 4 bars alike · they part in bars 13 and 45\n"));
  const TrapAnswers answers = answers_to(plan, 0, plan.pieces[0].forks.front());
  for (const DatedTask& one : answers.fork_drills) CHECK(has(text, "(" + one.task->id + ")"));
  CHECK_FALSE(has(text, "Bar 45"));
  plan.pieces[0].piece.partings = {
      {13, 45, 4, 4, 0.5, 2.5, {{HandChange::Kind::instead, "right hand", {"F♯"}, {"F"}}}}};
  CHECK(has(traps_text(plan, english_words()),
            "\n     Bar 45, after beat 2: right hand: F♯ instead of F.\n"));
  const Plan none = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  CHECK(has(traps_text(none, english_words()), "No bars that are alike go on"));
}

TEST_CASE("the JSON has every trap, what differs, and what meets it") {
  Plan plan = sample::plan(sample::kStudy);
  plan.pieces[0].piece.partings = {
      {13, 45, 4, 4, 0.5, 2, {{HandChange::Kind::added, "left hand", {"C"}, {}}}}};
  const auto traps = nlohmann::json::parse(plan_json(plan)).at("pieces").at(0).at("traps");
  REQUIRE(traps.size() == plan.pieces[0].forks.size());
  const auto& one = traps.at(0);
  CHECK(one.at("from") == "look_alikes");
  CHECK(one.at("danger") == 0.857);  // 4.5 / 5.25
  CHECK(one.at("bars_alike") == 4);
  CHECK(one.at("ways").at(0).at("difference").is_null());
  CHECK(one.at("ways").at(1) == nlohmann::json::parse(R"({"first": 41, "at": 44, "to": 45,
      "beat": 2, "difference": "left hand: C added"})"));
  CHECK(one.at("fork_drills").size() ==
        answers_to(plan, 0, plan.pieces[0].forks.front()).fork_drills.size());
}

}  // namespace cahier
