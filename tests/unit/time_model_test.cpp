#include "practice/time_model.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

Method round_numbers() {
  Method method = sample::steady();
  method.learn_tempo = {0.5, 0.5, 0.5, 0.5, 0.5};
  method.learn_stumble = {1, 1, 1, 1, 2};
  method.learn_pause = 6;
  method.setup = 30;
  method.repetitions = 5;
  method.run_setup = 60;
  return method;
}

}  // namespace

TEST_CASE("minutes to learn a chunk are what one gets by hand") {
  // Worked by hand: 4 bars of 3/4 at half of 120 are 12 beats at 60, 12 seconds; 3 steps of 5 times
  // (12 + 6) seconds are 270, with 30 to find the place 300 seconds: 5 minutes.
  const Piece piece = sample::piece("title: T\nbars: 8\nmeter: 3/4\ntempo: 120\n");
  const Method method = round_numbers();
  const TimeModel time(piece, method);
  CHECK(time.learn({1, 4}, 2) == 5);
  // Twice the playing time at level 5: 3 · 5 · (24 + 6) + 30 = 480 seconds.
  CHECK(time.learn({1, 4}, 5) == 8);
}

TEST_CASE("the player's own pace stretches learning at its level, and nothing else") {
  const Piece piece = sample::piece("title: T\nbars: 8\nmeter: 3/4\ntempo: 120\n");
  const Method usual = round_numbers();
  Method method = usual;
  method.pace = {1, 1.5, 1, 1, 1.25};
  const TimeModel time(piece, method);
  const TimeModel before(piece, usual);
  CHECK(time.learn({1, 4}, 2) == 7.5);  // 1.5 times 5
  CHECK(time.learn({1, 4}, 5) == 10);   // 1.25 times 8
  CHECK(time.learn({1, 4}, 3) == before.learn({1, 4}, 3));
  CHECK(time.recall({1, 4}, 2) == before.recall({1, 4}, 2));
  CHECK(time.write_out({1, 4}, 2) == before.write_out({1, 4}, 2));
}

TEST_CASE("a slow pass allows for a second one by the chance of a slip") {
  // By hand: 16 bars of 3/4 at half of 120 are 48 seconds, 57.6 with the stumbling, 87.6 with 30 to
  // find the place. Four passages of up to 4 bars that slip in 4 of 100 cases slip somewhere in
  // 1 - 0.96^4 = 0.1507 of them: 100.8 seconds.
  const Piece piece = sample::piece("title: T\nbars: 16\nmeter: 3/4\ntempo: 120\n");
  Method method = round_numbers();
  method.slow_tempo = method.counted_tempo = 0.5;
  method.recall_stumble = 1.2;
  method.slip_chance = {0.02, 0.04, 0.08, 0.15, 0.25};
  method.chunk_most = 4;
  CHECK(TimeModel(piece, method).slip_somewhere({1, 16}, 2) == Approx(0.1507).margin(0.0001));
  CHECK(TimeModel(piece, method).slow_pass({1, 16}, 2) == 2);
  CHECK(TimeModel(piece, method).counted_pass({1, 16}, 2) == 1.5);
  // At level 5 it is 1 - 0.75^4 = 0.6836: 147.5 seconds; in one passage 0.25: 109.5.
  CHECK(TimeModel(piece, method).slow_pass({1, 16}, 5) == 2.5);
  method.chunk_most = 16;
  CHECK(TimeModel(piece, method).slow_pass({1, 16}, 5) == 2);
}

TEST_CASE("one part needs one step, three parts four") {
  const Method method = round_numbers();
  const Piece violin =
      sample::piece("title: T\nbars: 8\nmeter: 3/4\ntempo: 120\ninstrument: violin\n");
  // 5 · 18 + 30 = 120 seconds.
  CHECK(TimeModel(violin, method).learn({1, 4}, 2) == 2);
  const Piece organ =
      sample::piece("title: T\nbars: 8\nmeter: 3/4\ntempo: 120\ninstrument: organ\n");
  // 4 · 5 · 18 + 30 = 390 seconds.
  CHECK(TimeModel(organ, method).learn({1, 4}, 2) == 6.5);
}

TEST_CASE("a practice tempo is a metronome mark, the performance tempo is itself") {
  const Piece piece = sample::piece("title: T\nbars: 8\nmeter: 4/4\ntempo: 130\n");
  const Method method = round_numbers();
  const TimeModel time(piece, method);
  CHECK(time.mark(1, 0.5) == 63);  // 65, rounded down to a mark
  CHECK(time.mark(1, 1) == 130);
}

TEST_CASE("a run-through counts repeats, changes of meter and tempo, and the time to settle") {
  const Piece piece = sample::piece(
      "title: T\nbars: 16\nmeter: 4/4\ntempo: 60\nchanges: [{bar: 9, meter: 2/4, tempo: 120}]\n"
      "repeats: [{bars: 1-4, times: 2}]\n");
  const Method method = round_numbers();
  // By hand: 12 bars of 4 beats at 60 are 48 seconds, 8 bars of 2 at 120 are 8; 116 with 60 to
  // settle, rounded up to the next half minute.
  CHECK(TimeModel(piece, method).run_through() == 2);
}

TEST_CASE("without a tempo the piece is estimated at 80 of its beat") {
  const Piece piece = sample::piece("title: T\nbars: 8\nmeter: 6/8\n");
  CHECK(tempo_or_usual(piece, 1) == Tempo{80, Beat::dotted_quarter});
}

}  // namespace cahier
