// A small plan, made by hand, that keeps every rule: twelve bars in three sections of which the
// last comes back to the first, two weeks from Monday 4 January 2027.
#pragma once

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

#include "plan/plan.h"
#include "steady_method.h"

namespace cahier {
namespace sound {

inline const std::vector<std::string> kBoth = {"right hand", "left hand"};

inline Piece small_piece() {
  Piece piece;
  piece.title = "Lantern Study";
  piece.composer = "Nobody";
  piece.bars = 12;
  piece.tempo = Tempo{132, Beat::quarter};
  piece.sections = {{"A", {1, 4}, {}, {}, {}},
                    {"B", {5, 8}, {}, 4, {}},
                    {"A again", {9, 12}, {}, {}, BarRange{1, 4}}};
  piece.look_alikes = {{{{1, 4}, {5, 8}}, {3, 7}}};
  return piece;
}

inline PlannedPiece small_planned_piece() {
  PlannedPiece planned;
  planned.piece = small_piece();
  planned.sections = {{"A", {1, 4}, {}}, {"B", {5, 8}, {}}, {"A again", {9, 12}, BarRange{1, 4}}};
  planned.chunks = {{"A1", {1, 4}, 0, 2}, {"B1", {5, 8}, 1, 4}};
  planned.cues = {{1, 1, 0}, {2, 5, 1}, {3, 9, 2}};
  planned.dice = dice_tables({1, 2, 3});
  planned.forks = forks_of(planned.piece);
  planned.rejoin = {9};
  return planned;
}

inline Task task(Drill drill, BarRange bars, std::vector<int> chunks, double minutes) {
  Task made;
  made.drill = drill;
  made.bars = bars;
  made.chunks = std::move(chunks);
  made.steps = {{kBoth, {}, 1}};
  made.tempo = 66;
  made.minutes = minutes;
  return made;
}

inline Task learn(BarRange bars, int chunk) {
  Task made = task(Drill::learn, bars, {chunk}, 8.5);
  made.steps = {{{"right hand"}, {}, 5}, {{"left hand"}, {}, 5}, {kBoth, {}, 5}};
  made.reason = Reason::new_material;
  return made;
}

inline Task recall(BarRange bars, std::vector<int> chunks) {
  Task made = task(Drill::recall, bars, std::move(chunks), 1.5);
  made.reason = Reason::first_night;
  return made;
}

inline Task runs(int times) {
  Task made = task(Drill::run_through, {1, 12}, {0, 1}, 2.5 * times);
  made.steps[0].times = times;
  made.tempo = 132;
  made.reason = Reason::whole;
  return made;
}

inline Task speak(BarRange bars, int chunk) {
  Task made = task(Drill::spoken_part, bars, {chunk}, 2);
  made.steps = {{{"right hand"}, {"left hand"}, 2},
                {{"left hand"}, {"left hand"}, 1},
                {{"left hand"}, {"right hand"}, 2},
                {{"right hand"}, {"right hand"}, 1},
                {kBoth, {}, 1}};
  made.reason = Reason::weakest_first;
  return made;
}

inline Task write_out(BarRange bars, int chunk) {
  Task made = task(Drill::write_out, bars, {chunk}, 4);
  made.tempo.reset();
  return made;
}

inline Task fork_drill() {
  Task made = task(Drill::cue_starts, {1, 5}, {0, 1}, 2);
  made.cues = {1, 2};
  made.throws = 1;
  made.fork = true;
  made.reason = Reason::fork;
  made.reason_number = 3;
  return made;
}

}  // namespace sound

inline Plan sound_plan() {
  using namespace sound;
  Plan plan;
  plan.from = parse_date("2027-01-04").value();
  plan.by = plan.from + days{14};
  plan.temper = Temper::yes;
  plan.method = sample::steady();
  plan.pieces = {small_planned_piece()};
  for (int day = 0; day < 14; ++day) {
    Day made;
    made.date = plan.from + days{day};
    made.off = weekday_index(made.date) == 6;
    made.allowance = made.off ? 0 : 15;
    plan.days.push_back(made);
  }
  plan.days[0].tasks = {learn({1, 4}, 0)};
  plan.days[1].tasks = {recall({1, 4}, {0}), learn({5, 8}, 1),
                        task(Drill::join, {1, 12}, {0, 1}, 3)};
  plan.days[1].note = DayNote::everything_learned;
  plan.days[2].tasks = {task(Drill::slow_pass, {1, 12}, {0, 1}, 4), fork_drill()};
  plan.days[3].tasks = {speak({5, 8}, 1), write_out({5, 8}, 1)};
  plan.days[4].tasks = {runs(2), speak({1, 4}, 0), write_out({1, 4}, 0)};
  plan.days[7].tasks = {runs(2)};
  plan.days[10].tasks = {runs(1)};
  plan.days[12].tasks = {task(Drill::slow_pass, {1, 12}, {0, 1}, 4)};
  for (Day& day : plan.days)
    for (std::size_t number = 0; number < day.tasks.size(); ++number) {
      const std::chrono::year_month_day date{day.date};
      day.tasks[number].id = fmt::format("{:02}{:02}-{}", static_cast<unsigned>(date.month()),
                                         static_cast<unsigned>(date.day()), number + 1);
    }
  return plan;
}

}  // namespace cahier
