
#include "practice/history.h"
#include "catch.h"
#include "practice/pace_samples.h"
#include "practice/time_model.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

Done done(const std::string& date, Drill drill, BarRange bars) {
  Done one;
  one.date = sample::date(date);
  one.drill = drill;
  one.bars = bars;
  one.slips.emplace();
  return one;
}

Record record_of(std::vector<Done> all) {
  Record record;
  record.done = std::move(all);
  return record;
}

}  // namespace

TEST_CASE("a history counts each time that all of a chunk was played, and where it slipped") {
  const Piece piece = sample::piece(sample::kStudy);  // bars 33 to 44 are bars 1 to 12 again
  Done whole = done("2027-01-08", Drill::recall, {1, 8});
  Done part = done("2027-01-09", Drill::recall, {3, 8});
  Done back = done("2027-01-10", Drill::recall, {33, 36});
  Done slipped = done("2027-01-11", Drill::slow_pass, {1, 16});
  slipped.slips->push_back(2);
  Done untold = done("2027-01-12", Drill::run_through, {1, 48});
  untold.slips.reset();
  Done starts = done("2027-01-13", Drill::cue_starts, {1, 33});
  starts.hit = {1, 1};
  starts.missed = {34};
  const History history(record_of({whole, part, back, slipped, untold, starts}), 0, piece);
  // Bars 1-4: two recalls (one of them in the return), the pass, two starts hit, one missed.
  CHECK(history.slips({1, 4}).trials == 6);
  CHECK(history.slips({1, 4}).slips == 2);
  CHECK(history.last_slip({1, 4}) == sample::date("2027-01-13"));
  CHECK(history.slips({5, 8}).trials == 3);
  CHECK(history.slips({5, 8}).slips == 0);
  CHECK_FALSE(history.last_slip({5, 8}));
  CHECK(history.slips({17, 20}).trials == 0);
  // Nothing is reported of another piece.
  CHECK(History(record_of({whole}), 1, piece).slips({1, 4}).trials == 0);
}

TEST_CASE("starts count for the bars they begin in, slips told of them for the bars they were in") {
  const Piece piece = sample::piece(sample::kStudy);
  Done starts = done("2027-01-05", Drill::cue_starts, {1, 17});
  starts.starts = {9};
  starts.hit = {1, 1, 17};
  starts.missed = {17};
  starts.slips = {3, 6};
  const History history(record_of({starts}), 0, piece);
  CHECK(history.slips({1, 4}).trials == 3);  // begun from twice, a slip at 3
  CHECK(history.slips({1, 4}).slips == 1);
  CHECK(history.slips({5, 8}).trials == 1);
  CHECK(history.slips({5, 8}).slips == 1);
  CHECK(history.last_slip({5, 8}) == sample::date("2027-01-05"));
  CHECK(history.slips({9, 12}).trials == 0);  // how it went is not reported
  CHECK(history.slips({17, 20}).trials == 2);
  CHECK(history.slips({17, 20}).slips == 1);
}

TEST_CASE("what was learned stands where it is learned, and what is missing is named") {
  const Piece piece = sample::piece(sample::kStudy);
  const History history(record_of({done("2027-01-05", Drill::learn, {33, 36}),
                                   done("2027-01-06", Drill::learn, {17, 24})}),
                        0, piece);
  CHECK(history.learned().at_one_time() == std::vector<BarRange>{{1, 4}, {17, 24}});
  CHECK(history.learned().unlearned() == std::vector<BarRange>{{5, 16}, {25, 32}, {45, 48}});
}

TEST_CASE("the time of learning is compared with what the method estimates") {
  const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
  const Method& method = sample::steady();
  const TimeModel time(pieces[0], method);
  const double easy = time.learn({1, 4}, 2);
  const double hard = time.learn({17, 20}, 4);
  const double recall = time.recall({1, 4}, 2);
  Record record = record_of({done("2027-01-04", Drill::learn, {1, 4}),
                             done("2027-01-05", Drill::recall, {1, 4}),
                             done("2027-01-05", Drill::learn, {17, 20})});
  record.done[0].minutes = 2 * easy;
  record.minutes = {{sample::date("2027-01-05"), recall + 1.5 * hard}};
  const auto samples = pace_samples(record, pieces, method);
  REQUIRE(samples.size() == 2);
  CHECK(samples[0].level == 2);
  CHECK(samples[0].ratio == Approx(2));
  CHECK(samples[0].weight == 1);
  // The recall takes its estimated minutes of the day; the rest was for the new bars.
  CHECK(samples[1].level == 4);
  CHECK(samples[1].ratio == Approx(1.5));
  CHECK(samples[1].weight == Approx(1));
  // The player's pace and what-if factors of the method change nothing of that.
  Method paced = method;
  paced.pace.fill(1.7);
  paced.learn_factor = 1.25;
  CHECK(pace_samples(record, pieces, paced)[0].ratio == Approx(2));
}

TEST_CASE("new bars of one day share its minutes by what was estimated for each") {
  const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
  const TimeModel time(pieces[0], sample::steady());
  const double easy = time.learn({1, 4}, 2);
  const double hard = time.learn({17, 20}, 4);
  Record record = record_of(
      {done("2027-01-04", Drill::learn, {1, 4}), done("2027-01-04", Drill::learn, {17, 20})});
  record.minutes = {{sample::date("2027-01-04"), 1.2 * (easy + hard)}};
  const auto samples = pace_samples(record, pieces, sample::steady());
  REQUIRE(samples.size() == 2);
  CHECK(samples[0].ratio == Approx(1.2));
  CHECK(samples[1].ratio == Approx(1.2));
  CHECK(samples[0].weight + samples[1].weight == Approx(1));
  CHECK(samples[0].weight == Approx(easy / (easy + hard)));
}

TEST_CASE("a day whose minutes do not reach for what was done besides tells nothing of the pace") {
  const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
  Record record = record_of(
      {done("2027-01-04", Drill::learn, {1, 4}), done("2027-01-04", Drill::run_through, {1, 48})});
  record.minutes = {{sample::date("2027-01-04"), 1}};
  CHECK(pace_samples(record, pieces, sample::steady()).empty());
}
