#include "broken_rules.h"

#include <utility>

using namespace cahier;

TEST_CASE("the checker finds nothing in a sound plan") {
  CHECK(broken_rules(sound_plan()).empty());
}

TEST_CASE("rule 1: every bar lies in one chunk, inside its phrase, of a size allowed") {
  CHECK(broken_by([](Plan& plan) { plan.method.chunk_most = 3; }) == Rules{1});
  CHECK(broken_by([](Plan& plan) {
          plan.method.chunk_least = 5;
          plan.method.chunk_most = 9;
        }).empty());
  CHECK(broken_by([](Plan& plan) {
          plan.pieces[0].piece.sections[1].phrases = {{5, 6}, {7, 8}};
        }) == Rules{1});
  const Rules uncovered = broken_by([](Plan& plan) { plan.pieces[0].chunks[1].bars = {5, 7}; });
  CHECK(std::count(uncovered.begin(), uncovered.end(), 1) == 1);
  const Rules in_a_return = broken_by([](Plan& plan) {
    plan.pieces[0].chunks.push_back({"X1", {9, 12}, 2, 2});
  });
  CHECK(std::count(in_a_return.begin(), in_a_return.end(), 1) == 1);
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].sections.pop_back(); }) == Rules{1});
  CHECK(broken_by([](Plan& plan) {
          plan.pieces[0].sections[2].same_as = BarRange{5, 8};
        }) == Rules{1});
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].chunks[1].id = "A1"; }) == Rules{1});
}

TEST_CASE("rule 1: a phrase shorter than the least chunk may be a chunk") {
  CHECK(broken_by([](Plan& plan) {
          plan.method.chunk_least = 6;
          plan.method.chunk_most = 8;
        }).empty());
}

TEST_CASE("rule 2: each chunk is learned once, every part alone and then together") {
  CHECK(broken_by([](Plan& plan) { plan.method.repetitions = 4; }) == Rules{2});
  CHECK(broken_by([](Plan& plan) {
          auto& steps = plan.days[0].tasks[0].steps;
          steps.erase(steps.begin());
        }) == Rules{2});
  CHECK(broken_by([](Plan& plan) {
          auto& steps = plan.days[0].tasks[0].steps;
          std::swap(steps[0], steps[2]);
        }) == Rules{2});
  CHECK(broken_by([](Plan& plan) {
          Task again = plan.days[0].tasks[0];
          again.id = "0109-1";
          plan.days[5].tasks = {again};
        }) == Rules{2});
  const Rules never = broken_by([](Plan& plan) { plan.days[0].tasks.clear(); });
  CHECK(std::count(never.begin(), never.end(), 2) == 1);
}

TEST_CASE("rule 3: no day holds more than it allows, and none work that is off") {
  CHECK(broken_by([](Plan& plan) { plan.days[1].allowance = 12.5; }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days[1].allowance = 13; }).empty());
  CHECK(broken_by([](Plan& plan) {
          plan.days[4].off = true;
          plan.days[4].allowance = 0;
        }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days[5].off = true; }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days.pop_back(); }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { std::swap(plan.days[5], plan.days[8]); }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].minutes = 8.25; }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].minutes = 0; }) == Rules{3});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].block = 1; }) == Rules{3});
}

TEST_CASE("rule 3: a run-through longer than any day stands alone and the plan says so") {
  const auto long_run = [](Plan& plan) { plan.days[10].tasks[0].minutes = 20; };
  CHECK(broken_by(long_run) == Rules{3});
  CHECK(broken_by([&](Plan& plan) {
          long_run(plan);
          plan.days[10].note = DayNote::run_alone;
        }).empty());
  // Another day is long enough for it.
  CHECK(broken_by([&](Plan& plan) {
          long_run(plan);
          plan.days[10].note = DayNote::run_alone;
          plan.days[5].allowance = 20;
        }) == Rules{3});
}

TEST_CASE("rule 3: not even a run-through that stands alone may fall on a day off") {
  CHECK(broken_by([](Plan& plan) {
          plan.days[10].tasks[0].minutes = 20;
          plan.days[10].note = DayNote::run_alone;
          plan.days[10].allowance = 0;
        }) == Rules{3});
}

TEST_CASE("rule 10: a plan fits exactly when nothing is left unplaced") {
  CHECK(broken_by([](Plan& plan) { plan.fits = false; }) == Rules{10});
  CHECK(broken_by([](Plan& plan) {
          plan.unplaced = {{0, Drill::recall, {1, 4}, 1.5, Why::no_room_to_recall}};
        }) == Rules{10});
}

TEST_CASE(
    "of a plan that does not fit only what is placed is checked, and the rest must be named") {
  const auto without_b = [](Plan& plan) {
    plan.fits = false;
    plan.unplaced = {{0, Drill::learn, {5, 8}, 8.5, Why::no_room_to_learn}};
    for (Day& day : plan.days) day.tasks.clear();
    plan.days[0].tasks = {sound_plan().days[0].tasks[0]};
    plan.temper = Temper::no;
  };
  CHECK(broken_by(without_b).empty());
  CHECK(broken_by([&](Plan& plan) {
          without_b(plan);
          plan.unplaced[0].bars = {5, 6};
        }) == Rules{2});
  CHECK(broken_by([&](Plan& plan) {
          without_b(plan);
          plan.days[0].allowance = 5;
        }) == Rules{3});
}

TEST_CASE("a plan that contradicts its own form is refused before it is checked") {
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].piece = 3; }) == Rules{0});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].chunks = {7}; }) == Rules{0});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].bars = {1, 40}; }) == Rules{0});
  CHECK(broken_by([](Plan& plan) { plan.days[0].tasks[0].id = "0104-2"; }) == Rules{0});
  CHECK(broken_by([](Plan& plan) { plan.pieces.clear(); }) == Rules{0});
  // New work before the day's recall.
  CHECK(broken_by([](Plan& plan) {
          std::swap(plan.days[1].tasks[0], plan.days[1].tasks[1]);
          std::swap(plan.days[1].tasks[0].id, plan.days[1].tasks[1].id);
        }) == Rules{0});
}
