#include "plan/history.h"

#include <catch2/catch.hpp>

#include "sample_pieces.h"
#include "sample_plan.h"

namespace cahier {
namespace {

Done done(Drill drill, BarRange bars, const std::string& date = "2027-01-05") {
  Done made;
  made.date = sample::date(date);
  made.drill = drill;
  made.bars = bars;
  made.slips.emplace();
  return made;
}

History history_of(std::vector<Done> all) {
  Record record;
  record.done = std::move(all);
  return {record, 0, sample::piece(sample::kStudy)};  // 33-44 come back from 1-12
}

bool counts(const SlipCount& count, int trials, int slips) {
  return count.trials == trials && count.slips == slips;
}

}  // namespace

TEST_CASE("history: what is played from memory is a trial of every chunk that it holds whole") {
  Done recall = done(Drill::recall, {1, 8});
  recall.slips = {6};
  const History history = history_of({recall, done(Drill::join, {5, 12}),
                                      done(Drill::learn, {1, 4}), done(Drill::write_out, {1, 4})});
  CHECK(counts(history.slips({1, 4}), 1, 0));
  CHECK(counts(history.slips({5, 8}), 2, 1));
  CHECK(counts(history.slips({9, 12}), 1, 0));
  CHECK(counts(history.slips({6, 9}), 2, 1));  // held whole once, slipped in the share of it
  CHECK(counts(history.slips({13, 16}), 0, 0));
}

TEST_CASE("history: a slip in a return is one where the bars are learned") {
  Done pass = done(Drill::slow_pass, {33, 44});
  pass.slips = {34};
  const History history = history_of({pass});
  CHECK(counts(history.slips({1, 4}), 1, 1));
  CHECK(counts(history.slips({5, 8}), 1, 0));
  CHECK(history.last_slip({1, 4}) == sample::date("2027-01-05"));
  CHECK_FALSE(history.last_slip({5, 8}).has_value());
}

TEST_CASE("history: a run-through counts only where its slips were told") {
  Done run = done(Drill::run_through, {1, 48});
  run.slips.reset();
  CHECK(counts(history_of({run}).slips({17, 20}), 0, 0));
  run.slips = {17, 30};
  CHECK(counts(history_of({run}).slips({17, 20}), 1, 1));
  CHECK(counts(history_of({run}).slips({21, 24}), 1, 0));
}

TEST_CASE("history: starts count for the bars they begin in, slips further on for theirs") {
  Done starts = done(Drill::cue_starts, {1, 17});
  starts.starts = {9};
  starts.hit = {1, 1, 17};
  starts.missed = {17};
  starts.slips = {3, 6};
  const History history = history_of({starts});
  CHECK(counts(history.slips({1, 4}), 3, 1));  // begun from twice, a slip at 3
  CHECK(counts(history.slips({5, 8}), 1, 1));
  CHECK(counts(history.slips({9, 12}), 0, 0));  // how it went was not told
  CHECK(counts(history.slips({17, 20}), 2, 1));
  CHECK(history.last_slip({5, 8}) == sample::date("2027-01-05"));
}

}  // namespace cahier
