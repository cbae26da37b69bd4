// The tempo of a task where the piece changes its own.

#include "plan/due/task_tempo.h"

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "plan/counted_task.h"
#include "plan/cue_reach.h"
#include "practice/beat_units.h"
#include "practice/time_model.h"
#include "sample_plan.h"
#include "workbook/parts/task_words.h"
#include "workbook/text_edition/starts_in_words.h"

using namespace cahier;

namespace {

constexpr const char* kChanging = R"(
title: Two Tempi
bars: 24
meter: 4/4
tempo: 120
changes: [{bar: 9, tempo: 80, meter: 3/4}, {bar: 17, tempo: 120, meter: 4/4}]
practice: {minutes: 30}
)";

}  // namespace

TEST_CASE("a task keeps its share of the tempo through a change") {
  const Piece piece = sample::piece(kChanging);
  const TimeModel time(piece, sample::steady());
  Task task;
  task.drill = Drill::slow_pass;
  task.bars = {1, 24};
  set_tempo(task, piece, time, 0.45);
  CHECK(task.tempo == 54);
  CHECK(task.tempi == std::vector<TempoFrom>{{1, 54}, {9, 36}, {17, 54}});
  CHECK(task.tempo_at(8) == 54);
  CHECK(task.tempo_at(16) == 36);
  CHECK(task.tempo_at(24) == 54);
  REQUIRE(later_tempi(task).size() == 2);
  CHECK(tempo_at(task, 9) == Tempo{36, Beat::quarter});
  task.bars = {9, 16};
  set_tempo(task, piece, time, 0.6);
  CHECK(task.tempo == 48);
  CHECK(task.tempi.empty());
  CHECK(later_tempi(task).empty());
}

TEST_CASE("cue starts have the tempo of each start") {
  const Piece piece = sample::piece(kChanging);
  const TimeModel time(piece, sample::steady());
  Task task;
  task.drill = Drill::cue_starts;
  task.cues = {1, 2, 3};
  task.bars = {1, 20};
  task.from_starts = {{1, 4}, {5, 8}, {13, 20}};
  set_tempo(task, piece, time, 1);
  // From bar 17 on it is the tempo of the first bars again.
  CHECK(task.tempi == std::vector<TempoFrom>{{1, 120}, {13, 80}, {17, 120}});
  CHECK(shows_tempo(task));
  task.cues.clear();
  CHECK_FALSE(shows_tempo(task));  // dice choose the start, and its list names the tempo
}

TEST_CASE("a start that plays over a change names the tempo after it, with its bar") {
  const Piece piece = sample::piece(kChanging);
  Task task;
  task.drill = Drill::cue_starts;
  task.cues = {1, 2, 3};
  task.bars = {1, 20};
  task.from_starts = {{1, 4}, {7, 12}, {13, 20}};
  set_tempo(task, piece, TimeModel(piece, sample::steady()), 1);
  CHECK(task.tempi == std::vector<TempoFrom>{{1, 120}, {9, 80}, {17, 120}});
  CHECK(later_tempi(task) == std::vector<TempoFrom>{{9, 80}, {17, 120}});
  // Bar 13 has its own beside it; where there is no room for that, all are named by their bars.
  task.from_starts = {{1, 4}, {13, 16}};
  set_tempo(task, piece, TimeModel(piece, sample::steady()), 1);
  CHECK(later_tempi(task).empty());
  CHECK(later_tempi(task, StartTempi::below) == std::vector<TempoFrom>{{13, 80}});
}

TEST_CASE("a fork drill names the tempo that each way leads to") {
  const Piece piece = sample::piece(kChanging);
  const TimeModel time(piece, sample::steady());
  Task task;
  task.drill = Drill::cue_starts;
  task.fork = true;
  task.cues = {2, 2};
  task.bars = {13, 16};
  task.from_starts = {{13, 16}, {13, 16}};
  task.ways = {{14, 15}, {16, 1, true}, {14, 17}};
  set_tempo(task, piece, time, 0.5);
  CHECK(task.tempo == 40);
  CHECK(task.tempi.empty());  // those lie in its bars
  CHECK(task.tempi_after_jumps == std::vector<TempoFrom>{{1, 60}, {17, 60}});
  CHECK(task.tempo_at(17) == 60);
  CHECK(later_tempi(task) == task.tempi_after_jumps);
  // Within the bars that the drill goes over.
  task.bars = {13, 20};
  task.from_starts = {{13, 16}, {20, 20}};
  task.ways = {{14, 17}, {20, 21}};
  set_tempo(task, piece, time, 0.5);
  CHECK(task.tempi == std::vector<TempoFrom>{{13, 40}, {17, 60}});
  CHECK(task.tempi_after_jumps.empty());
  CHECK(later_tempi(task) == std::vector<TempoFrom>{{17, 60}});
  // Counted anew with its neighbours, those after jumps too.
  task.bars = {13, 16};
  task.from_starts = {{13, 16}};
  task.ways = {{16, 1}};
  set_tempo(task, piece, time, 0.5);
  Piece compound = piece;
  compound.changes[0].meter = Meter{{6}, 8};
  compound.changes[0].tempo = Tempo{60, Beat::dotted_quarter};
  set_tempo(task, compound, TimeModel(compound, sample::steady()), 0.5);
  CHECK(task.beat == Beat::eighth);
  CHECK(task.tempo == 88);
  CHECK(task.tempi_after_jumps == std::vector<TempoFrom>{{1, 120}});
}

TEST_CASE("the list of starts names the tempo that a start leads into, on paper and in words") {
  const Plan plan = sample::plan(std::string(kChanging) + "cues: [7, 15]\n");
  const PlannedPiece& piece = plan.pieces[0];
  const auto at = [&](int bar) { return *std::ranges::find(piece.cues, bar, &CueStart::bar); };
  CHECK(tempo_changes_from(piece, at(1)).empty());
  REQUIRE(tempo_changes_from(piece, at(7)) == std::vector<int>{9});
  const std::vector<std::string> lines = starts_in_words(english_words(), piece);
  CHECK_THAT(lines[at(7).number - 1],
             Catch::Contains("quarter note = 120 beats a minute, from bar 9 on 80."));
  CHECK_THAT(lines[at(1).number - 1], !Catch::Contains(" on "));
  const std::string words = sample::DrawnSheet(draw_cue_starts, plan).words();
  CHECK(words.find("\n9:\n") != std::string::npos);
  CHECK(words.find("\n7:\n") == std::string::npos);
  sample::require_faultless_everywhere(draw_cue_starts, plan);
  sample::require_faultless_everywhere(draw_day_panels, plan);
}

TEST_CASE("a day's rows of a piece are counted in one unit of beat") {
  Piece piece = sample::piece(kChanging);
  piece.changes[0].meter = Meter{{6}, 8};
  piece.changes[0].tempo = Tempo{60, Beat::dotted_quarter};
  const TimeModel time(piece, sample::steady());
  const auto of = [&](Drill drill, BarRange bars, double share) {
    Task task;
    task.drill = drill;
    task.bars = bars;
    set_tempo(task, piece, time, share);
    return task;
  };
  const Task across = of(Drill::recall, {1, 16}, 0.5);
  CHECK(across.beat == Beat::eighth);
  CHECK(across.tempi == std::vector<TempoFrom>{{1, 120}, {9, 88}});  // 90 is no mark
  std::vector<Task> tasks = {of(Drill::recall, {1, 8}, 0.5), of(Drill::recall, {9, 16}, 0.7),
                             of(Drill::run_through, {1, 24}, 1)};
  CHECK(tasks[0].beat == Beat::quarter);
  CHECK(tasks[1].beat == Beat::dotted_quarter);
  count_in_one_beat(tasks, {&piece});
  for (const Task& task : tasks) CHECK(task.beat == Beat::eighth);
  CHECK(tasks[0].tempo == 120);
  CHECK(tasks[1].tempo == 126);
  CHECK(tasks[2].tempo == 240);  // as on the day, without a metronome
  // A recall at 120 is beyond the metronome's 208 in eighths: each row keeps its own.
  tasks = {of(Drill::recall, {1, 8}, 1), of(Drill::recall, {9, 16}, 0.7)};
  count_in_one_beat(tasks, {&piece});
  CHECK(tasks[0].beat == Beat::quarter);
  CHECK(tasks[1].beat == Beat::dotted_quarter);
}

TEST_CASE("a run-through is played as on the day, in the tempi of the piece") {
  const Plan plan = sample::plan(kChanging);
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) {
        ++runs;
        CHECK_FALSE(shows_tempo(task));
        REQUIRE(task.tempi.size() == 3);
        const double unit = quarters(task.beat);
        CHECK(task.tempi[0].per_minute * unit == 120);
        CHECK(task.tempi[1].per_minute * unit == 80);
        CHECK(task.tempi[2].per_minute * unit == 120);
      }
  CHECK(runs >= 5);
  const std::string words = sample::DrawnSheet(draw_day_panels, plan).words();
  CHECK(words.find("as on") != std::string::npos);
}

TEST_CASE("a mark counted in smaller beats is a mark, the piece's own tempo exact") {
  CHECK(counted_in({38, Beat::quarter}, Beat::eighth, false) == 76);
  CHECK(counted_in({35, Beat::quarter}, Beat::eighth, false) == 69);  // 70 is no mark
  CHECK(counted_in({20, Beat::dotted_half}, Beat::quarter, false) == 60);
  CHECK(counted_in({50, Beat::dotted_quarter}, Beat::eighth, true) == 150);
}

TEST_CASE("music is counted in the longest beat that divides all of theirs") {
  const CountedMusic quarters_of_four{Beat::quarter, 4, 60};
  const CountedMusic compound{Beat::dotted_quarter, 3, 60};
  const CountedMusic halves{Beat::half, 4, 60};
  CHECK(common_unit({quarters_of_four, quarters_of_four}) == Beat::quarter);
  CHECK(common_unit({quarters_of_four, compound}) == Beat::eighth);
  CHECK(common_unit({halves, quarters_of_four}) == Beat::quarter);
  CHECK(common_unit({{Beat::dotted_half, 6, 60}, compound}) == Beat::dotted_quarter);
  CHECK(common_unit({{Beat::dotted_half, 3, 60}, halves}) == Beat::quarter);
  CHECK_FALSE(common_unit({{Beat::dotted_eighth, 3, 60}, quarters_of_four}).has_value());
  CHECK_FALSE(common_unit({}).has_value());
}

// A metronome ends at 208, see practice/metronome.h.
TEST_CASE("where that is too fast a longer beat is taken, if the bar holds a whole number of it") {
  const CountedMusic fast{Beat::quarter, 4, 150};
  CHECK(common_unit({fast, {Beat::eighth, 4, 75}}) == Beat::quarter);     // 4/4 in eighths
  CHECK_FALSE(common_unit({fast, {Beat::eighth, 1.5, 75}}).has_value());  // 3/8
  CHECK_FALSE(common_unit({fast, {Beat::dotted_quarter, 3, 150}}).has_value());
  CHECK(common_unit({{Beat::quarter, 4, 104}, {Beat::eighth, 1.5, 75}}) == Beat::eighth);
  CHECK_FALSE(common_unit({{Beat::quarter, 4, 105}, {Beat::eighth, 1.5, 75}}).has_value());
}

TEST_CASE("rows that no one unit can count change it as seldom as can be") {
  Piece piece = sample::piece(kChanging);
  piece.changes[0].meter = Meter{{6}, 8};
  piece.changes[0].tempo = Tempo{60, Beat::dotted_quarter};
  const auto row = [&](BarRange bars, double per_minute, Beat beat) {
    Task task;
    task.drill = Drill::recall;
    task.bars = bars;
    task.tempo = per_minute;
    task.beat = beat;
    return task;
  };
  const Task quick = row({1, 8}, 120, Beat::quarter);
  const Task slow = row({1, 8}, 60, Beat::quarter);
  const Task compound = row({9, 16}, 40, Beat::dotted_quarter);
  CHECK(beats_of_rows({&quick, &slow, &compound, &slow}, piece) ==
        std::vector<Beat>{Beat::quarter, Beat::quarter, Beat::eighth, Beat::eighth});
  CHECK(beats_of_rows({&slow, &compound, &quick}, piece) ==
        std::vector<Beat>{Beat::eighth, Beat::eighth, Beat::quarter});
}

// Reckoned from the plan's rows alone: of each start the least share of the tempo among its bars'
// last recalls of the days before and of that day, or of learning; all of it after a run-through.
TEST_CASE("no start is faster than its bars have been") {
  const Plan plan = sample::plan(std::string(kChanging) + "level: 3\n");
  const PlannedPiece& planned = plan.pieces[0];
  std::vector<double> reached(static_cast<std::size_t>(planned.piece.bars) + 1, 0);
  bool run = false;
  int starts = 0;
  int slower = 0;
  const auto share = [&](const Task& task, int bar) {
    return task.tempo_at(bar) * quarters(task.beat) /
           tempo_or_usual(planned.piece, bar).quarters_per_minute();
  };
  for (const Day& day : plan.days) {
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn || task.drill == Drill::recall)
        for (int bar = task.bars.first; bar <= task.bars.last; ++bar)
          reached[static_cast<std::size_t>(bar)] = share(task, task.bars.first);
    for (const Task& task : day.tasks) {
      if (task.drill != Drill::cue_starts || task.fork || run) continue;
      std::vector<BarRange> played = task.from_starts;
      if (task.throws > 0) played = {planned.piece.whole()};
      for (const BarRange& bars : played)
        for (int bar = bars.first; bar <= bars.last; ++bar) {
          ++starts;
          slower += share(task, bars.first) < 0.99;
          // Metronome marks are a twentieth apart.
          CHECK(share(task, bars.first) <= reached[static_cast<std::size_t>(bar)] * 1.05);
        }
    }
    for (const Task& task : day.tasks) run = run || task.drill == Drill::run_through;
  }
  CHECK(starts > 0);
  CHECK(slower > 0);
}

TEST_CASE(
    "a day of throws names its tempi until the bars are at theirs, then leaves them to the list") {
  const Plan plan = sample::plan(kChanging);
  PlannedPiece piece = plan.pieces[0];
  Task task;
  task.drill = Drill::cue_starts;
  task.bars = piece.piece.whole();
  task.throws = 4;
  task.tempo = 60;  // of 120
  CHECK(shows_tempo(piece, task));
  CHECK(thrown_tempi(piece, plan.method, task) == std::vector<TempoFrom>{{9, 40}, {17, 60}});
  task.tempo = 120;
  CHECK_FALSE(shows_tempo(piece, task));
  task.tempo = 60;
  task.throws = 0;
  CHECK_FALSE(shows_tempo(piece, task));
}
