// What a plan gave up, by kind.
#include "plan/quality/gave_way.h"

#include <set>
#include <string>

#include "catch.h"

namespace cahier {
namespace {

using Kinds = std::vector<GaveWay>;

Kinds let_go(const std::vector<std::pair<Drill, Why>>& work) {
  Plan plan;
  for (const auto& [drill, why] : work) plan.let_go.push_back({0, drill, {1, 4}, 2, why});
  return what_gave_way(plan, {});
}

Kinds short_of(const std::vector<Lack>& lacks) {
  QualityFigure figure;
  figure.met = false;
  for (const Lack lack : lacks) {
    figure.why.emplace_back();
    figure.why.back().lack = lack;
  }
  return what_gave_way(Plan(), {figure});
}

}  // namespace

TEST_CASE("each kind of work that gives way has a word of its own") {
  std::set<std::string> words;
  for (int kind = 0; kind <= static_cast<int>(GaveWay::gaps); ++kind) {
    const std::string word(gave_way_word(static_cast<GaveWay>(kind)));
    CAPTURE(word);
    CHECK_FALSE(word.empty());
    CHECK(words.insert(word).second);
  }
  CHECK(gave_way_word(GaveWay::write_outs) == "write_outs");
  CHECK(gave_way_word(GaveWay::second_passes) == "second_passes");
  CHECK(gave_way_word(GaveWay::gaps) == "gaps");
}

TEST_CASE("what a plan let go gave way, by its drill and the reason") {
  CHECK(let_go({{Drill::write_out, Why::no_room_to_temper}}) == Kinds{GaveWay::write_outs});
  CHECK(let_go({{Drill::spoken_part, Why::no_room_to_temper}}) == Kinds{GaveWay::spoken_parts});
  CHECK(let_go({{Drill::run_through, Why::no_room_to_run}}) == Kinds{GaveWay::run_throughs});
  CHECK(let_go({{Drill::cue_starts, Why::no_room_to_prove}}) == Kinds{GaveWay::forks});
  CHECK(let_go({{Drill::join, Why::no_room_to_join}}) == Kinds{GaveWay::joins});
  CHECK(let_go({{Drill::recall, Why::no_room_to_recall}}) == Kinds{GaveWay::gaps});
  // Learning is never given up.
  CHECK(let_go({{Drill::learn, Why::no_room_to_learn}}).empty());
}

TEST_CASE("what the figures miss gave way") {
  CHECK(short_of({Lack::few_recalls}) == Kinds{GaveWay::recalls});
  for (const Lack lack : {Lack::one_slow_pass, Lack::one_counted_pass})
    CHECK(short_of({lack}) == Kinds{GaveWay::second_passes});
  for (const Lack lack : {Lack::no_slow_pass, Lack::no_counted_pass})
    CHECK(short_of({lack}) == Kinds{GaveWay::passes});
  CHECK(short_of({Lack::fork_seldom}) == Kinds{GaveWay::fork_drills});
  for (const Lack lack : {Lack::section_not_whole, Lack::half_not_whole})
    CHECK(short_of({lack}) == Kinds{GaveWay::sections});
  for (const Lack lack : {Lack::first_run_late, Lack::first_run_missing, Lack::runs_far_apart})
    CHECK(short_of({lack}) == Kinds{GaveWay::more_run_throughs});
  // In another place, or more than wanted, but not missing.
  for (const Lack lack : {Lack::seam_late, Lack::two_new, Lack::temper_share, Lack::thin_days,
                          Lack::runs_at_the_end, Lack::fork_early})
    CHECK(short_of({lack}).empty());
}

TEST_CASE("what gave way is named once, the first to go first") {
  CHECK(let_go({}).empty());
  CHECK(let_go({{Drill::join, Why::no_room_to_join},
                {Drill::spoken_part, Why::no_room_to_temper},
                {Drill::join, Why::no_room_to_join},
                {Drill::write_out, Why::no_room_to_temper}}) ==
        Kinds{GaveWay::write_outs, GaveWay::spoken_parts, GaveWay::joins});
  Plan plan;
  plan.let_go = {{0, Drill::write_out, {1, 4}, 2, Why::no_room_to_temper},
                 {0, Drill::run_through, {1, 4}, 2, Why::no_room_to_run}};
  QualityFigure figure;
  for (const Lack lack : {Lack::no_slow_pass, Lack::few_recalls, Lack::no_counted_pass}) {
    figure.why.emplace_back();
    figure.why.back().lack = lack;
  }
  CHECK(what_gave_way(plan, {figure}) ==
        Kinds{GaveWay::write_outs, GaveWay::recalls, GaveWay::passes, GaveWay::run_throughs});
}

TEST_CASE("much less than the last workbook set for the same days gave way", "[numbers]") {
  const auto told = [](TaskCounts before, int passes, int runs, int joins) {
    Plan plan;
    plan.from = parse_date("2027-01-11").value();
    plan.record.last = LastEdition();
    plan.record.last->ahead = before;
    plan.days.emplace_back().date = plan.from;
    const auto add = [&](Drill drill, int number) {
      for (; number > 0; --number) {
        Task& task = plan.days[0].tasks.emplace_back();
        task.drill = drill;
        task.steps.emplace_back();
      }
    };
    add(Drill::slow_pass, passes / 2);
    add(Drill::counted_pass, passes - passes / 2);
    add(Drill::run_through, runs);
    add(Drill::join, joins);
    return what_gave_way(plan, {});
  };
  // Eight tenths of passes and run-throughs, half of the joins.
  CHECK(told({10, 10, 10}, 8, 8, 5).empty());
  CHECK(told({10, 10, 10}, 7, 8, 5) == Kinds{GaveWay::fewer_passes});
  CHECK(told({10, 10, 10}, 8, 7, 5) == Kinds{GaveWay::fewer_run_throughs});
  CHECK(told({10, 10, 10}, 8, 8, 4) == Kinds{GaveWay::fewer_joins});
  // One of a few is not worth a word.
  CHECK(told({3, 3, 3}, 2, 2, 1).empty());
}

}  // namespace cahier
