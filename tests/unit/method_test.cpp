#include "practice/read_method.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// The built-in method with one line replaced.
std::vector<std::string> faults_with(const std::string& line, const std::string& instead) {
  std::string text = Templates().read("methods", "steady").text();
  const std::size_t at = text.find(line);
  REQUIRE(at != std::string::npos);
  text.replace(at, text.find('\n', at) - at, instead);
  Diagnostics diagnostics;
  read_method(Source("method.yaml", text), "method", diagnostics);
  std::vector<std::string> messages;
  for (const Diagnostic& diagnostic : diagnostics.all()) messages.push_back(diagnostic.message);
  return messages;
}

}  // namespace

TEST_CASE("the built-in method has the customary numbers", "[numbers]") {
  const Method& method = sample::steady();
  CHECK(method.repetitions == 5);  // common practice
  CHECK(method.chunk_least == 2);
  CHECK(method.chunk_most == 4);
  CHECK(method.run_throughs == 5);
  CHECK(method.run_throughs_new == 10);
  CHECK(method.quiet_days == 2);
  // Cepeda and others 2008, Psychological Science 19(11): gaps 3, 8, 12, 27 days for delays of 7,
  // 35, 70, 350.
  REQUIRE(method.spacing.size() == 4);
  const double published[][2] = {{7, 3}, {35, 8}, {70, 12}, {350, 27}};
  for (std::size_t pair = 0; pair < 4; ++pair) {
    CHECK(method.spacing[pair].delay == published[pair][0]);
    CHECK(method.spacing[pair].gap == published[pair][1]);
  }
}

TEST_CASE("the times that drills take are those of the built-in method", "[numbers]") {
  const Method& method = sample::steady();
  CHECK(method.chunk_minutes == 9);
  CHECK(method.learn_tempo == ByLevel{0.6, 0.5, 0.45, 0.4, 0.33});
  CHECK(method.learn_stumble == ByLevel{1.2, 1.3, 1.5, 1.7, 2});
  CHECK(method.learn_pause == 5);  // seconds
  CHECK(method.setup == 30);
  CHECK(method.join_tempo == 0.5);
  CHECK(method.recall_tempo == 0.7);
  CHECK(method.slow_tempo == 0.45);
  CHECK(method.counted_tempo == 0.6);
  CHECK(method.recall_stumble == 1.2);
  CHECK(method.cue_start_seconds == 40);
  CHECK(method.cue_throws == 4);
  CHECK(method.spoken_times == 2);
  CHECK(method.spoken_own_times == 1);
  CHECK(method.spoken_together_times == 1);
  CHECK(method.spoken_tempo == 0.4);
  CHECK(method.write_out_seconds == ByLevel{20, 25, 35, 45, 60});
  CHECK(method.silent_stumble == 1.5);
  CHECK(method.run_setup == 60);
}

TEST_CASE(
    "a day has a quarter of an hour, a break every 25 minutes, and a silent play-through a week",
    "[numbers]") {
  const Method& method = sample::steady();
  CHECK(method.minutes == 15);
  CHECK(method.blocks == 1);
  CHECK(method.break_minutes == 5);
  CHECK(method.break_after == 25);
  CHECK(method.silent_days == 7);
  CHECK(method.first_recall_days == 3);
  CHECK(method.runs_a_day == 2);
  CHECK(method.run_days == 3);
}

TEST_CASE("listeners come fourteen, nine and five days before the date", "[numbers]") {
  CHECK(sample::steady().listener_days == std::vector<int>{14, 9, 5});
}

TEST_CASE("what the log teaches begins with the guesses of the built-in method", "[numbers]") {
  const Method& method = sample::steady();
  CHECK(method.slip_chance == ByLevel{0.02, 0.04, 0.08, 0.15, 0.25});
  CHECK(method.slip_weight == 4);
  CHECK(method.pace_of_players == 0.35);
  CHECK(method.pace_of_levels == 0.15);
  CHECK(method.pace_of_times == 0.3);
}

TEST_CASE("every number of a method needs its source") {
  CHECK(faults_with("repetitions:", "repetitions: {value: 5}") ==
        std::vector<std::string>{"\"repetitions\" has no value or no source"});
  CHECK(faults_with("repetitions:", "repetitions: 5").size() == 1);
}

TEST_CASE("numbers of a method are kept within reason") {
  CHECK(faults_with("repetitions:", "repetitions: {value: 500, source: x}").size() == 1);
  CHECK(faults_with("repetitions:", "repetitions: {value: 2.5, source: x}").size() == 1);
  CHECK(faults_with("runs a day:", "runs a day: {value: 3, source: x}").size() == 1);
  CHECK(faults_with("learn tempo:", "learn tempo: {value: [0.5], source: x}").size() == 1);
  CHECK(faults_with("chunk most:", "chunk most: {value: 2, source: x}").size() == 1);
  CHECK(faults_with("  value: [[7, 3]", "  value: [[7, 3], [35, 2]]").size() == 1);
  CHECK(faults_with("repetitions:", "repetition: {value: 5, source: x}").size() == 2);
}

TEST_CASE("lists of days and steps of a method are kept in order") {
  const auto run_days = [](const std::string& value) {
    return faults_with("last run days:", "last run days: {value: " + value + ", source: x}").size();
  };
  CHECK(run_days("[6, 3, 1]") == 0);
  CHECK(run_days("[3, 6]") == 1);
  CHECK(run_days("[5.5, 2]") == 1);
  CHECK(run_days("[8, 2]") == 1);  // of the last week
  CHECK(run_days("[]") == 1);
  CHECK(run_days("5") == 1);
  const auto apart = [](const std::string& value) {
    return faults_with("days between runs:", "days between runs: {value: " + value + ", source: x}")
        .size();
  };
  CHECK(apart("[[0, 7]]") == 0);
  CHECK(apart("[[10, 7]]") == 1);
  CHECK(apart("[[0, 7], [70, 10], [70, 14]]") == 1);
  CHECK(apart("[[0, 7, 8]]") == 1);
  CHECK(apart("[]") == 1);
}

TEST_CASE("two numbers of a method that contradict each other are told once") {
  CHECK(faults_with("most learn share:", "most learn share: {value: 0.2, source: x}").size() == 1);
  CHECK(faults_with("chunk least:", "chunk least: {value: 4, source: x}").size() == 1);
  // One that has a fault of its own is not compared with another.
  CHECK(faults_with("most learn share:", "most learn share: {value: -1, source: x}").size() == 1);
  CHECK(faults_with("chunk most:", "chunk most: {value: 0, source: x}").size() == 1);
  CHECK(faults_with("run throughs for a new performer:",
                    "run throughs for a new performer: {value: x, source: x}")
            .size() == 1);
}

TEST_CASE("the days between run-throughs are those of the last step that is reached", "[numbers]") {
  const Method& method = sample::steady();
  CHECK(method.days_between_runs(0) == 10);
  CHECK(method.days_between_runs(69) == 10);
  CHECK(method.days_between_runs(70) == 14);
  CHECK(method.days_between_runs(179) == 14);
  CHECK(method.days_between_runs(180) == 21);
}

TEST_CASE("chunks of another size take minutes in proportion") {
  const Method& method = sample::steady();
  const Method larger = method.with_chunks_up_to(6);
  CHECK(larger.chunk_most == 6);
  CHECK(larger.chunk_least == method.chunk_least);
  CHECK(larger.chunk_minutes == Approx(method.chunk_minutes * 1.5));
  // By way of another size or not, it is the same.
  const Method by_way = method.with_chunks_up_to(5).with_chunks_up_to(6);
  CHECK(by_way.chunk_minutes == Approx(larger.chunk_minutes));
  CHECK(method.least_chunk_most() == 3);  // of 2 bars alone no phrase of 3 can be made
}

}  // namespace cahier
