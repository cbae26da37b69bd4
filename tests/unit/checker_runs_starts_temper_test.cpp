#include "broken_rules.h"

#include <fmt/format.h>

#include <utility>

using namespace cahier;

TEST_CASE("rule 6: nothing is new at the end, and run-throughs are enough and spread out") {
  CHECK(broken_by([](Plan& plan) { plan.method.quiet_days = 13; }) == Rules{6});
  CHECK(broken_by([](Plan& plan) { plan.method.quiet_days = 12; }).empty());
  CHECK(broken_by([](Plan& plan) { plan.new_to_performing = true; }) == Rules{6});
  CHECK(broken_by([](Plan& plan) { plan.method.run_days = 4; }) == Rules{6});
  CHECK(broken_by([](Plan& plan) { plan.method.runs_a_day = 1; }) == Rules{6});
  CHECK(broken_by([](Plan& plan) { plan.days[7].tasks[0].bars = {1, 8}; }) == Rules{6});
  // Before everything is learned.
  CHECK(broken_by([](Plan& plan) {
          Task run = plan.days[10].tasks[0];
          run.id = "0105-2";
          plan.days[1].tasks[1].id = "0105-3";
          plan.days[1].tasks[2].id = "0105-4";
          plan.days[1].allowance = 30;
          plan.days[1].tasks.insert(plan.days[1].tasks.begin() + 1, run);
        }) == Rules{6});
}

TEST_CASE("rule 7: every section begins with a cue start and the dice are fair") {
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].cues[2].bar = 10; }) == Rules{7});
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].piece.cues = {7}; }) == Rules{7});
  CHECK(broken_by([](Plan& plan) {
          std::swap(plan.pieces[0].cues[1].bar, plan.pieces[0].cues[2].bar);
        }) == Rules{5, 7, 8});
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].dice = dice_tables({1, 2}); }) == Rules{7});
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].dice.clear(); }) == Rules{7});
  CHECK(broken_by([](Plan& plan) {
          plan.pieces[0].dice[0].rows[0].outcomes.back() = {6, 6};
        }) == Rules{7});
  CHECK(broken_by([](Plan& plan) {
          auto& rows = plan.pieces[0].dice[0].rows;
          rows[0].outcomes.push_back(rows[1].outcomes.back());
          rows[1].outcomes.pop_back();
        }) == Rules{7});
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[1].cues = {1, 2, 8}; }) == Rules{7});
}

TEST_CASE("rule 7: a session of cue starts may leave the choice to the dice, but not to nobody") {
  const auto dice_alone = [](Plan& plan) {
    plan.pieces[0].piece.look_alikes.clear();
    Task& task = plan.days[2].tasks[1];
    task.cues.clear();
    task.chunks.clear();
    task.throws = 2;
  };
  CHECK(broken_by(dice_alone).empty());
  CHECK(broken_by([&](Plan& plan) {
          dice_alone(plan);
          plan.days[2].tasks[1].throws = 0;
        }) == Rules{7});
  CHECK_FALSE(broken_by([&](Plan& plan) {
                dice_alone(plan);
                plan.days[2].tasks[1].chunks = {0};
              }).empty());
}

TEST_CASE("rule 7: a section of more than sixteen bars has a cue start inside it") {
  const auto with_sections_of = [](int bars, bool inside) {
    Plan plan = sound_plan();
    plan.fits = false;  // nothing placed: only the piece is checked
    plan.unplaced = {{0, Drill::learn, {1, bars}, 99, Why::no_room_to_learn}};
    for (Day& day : plan.days) day.tasks.clear();
    PlannedPiece& piece = plan.pieces[0];
    piece.piece.bars = bars;
    piece.piece.sections = {{"A", {1, bars}, {}, {}, {}}};
    piece.piece.look_alikes.clear();
    piece.sections = {{"A", {1, bars}, {}}};
    piece.chunks = {{"A1", {1, bars}, 0, 2}};
    plan.method.chunk_most = bars;
    piece.cues = {{1, 1, 0}};
    if (inside) piece.cues.push_back({2, 9, 0});
    piece.dice = inside ? dice_tables({1, 2}) : dice_tables({1});
    return broken_rules(plan);
  };
  CHECK(with_sections_of(16, false).empty());
  CHECK(with_sections_of(17, false) == Rules{7});
  CHECK(with_sections_of(17, true).empty());
}

TEST_CASE("rule 8: look-alikes are not both new on one day and their forks are drilled") {
  // Allen 2013, doi 10.1177/0305735612463947.
  CHECK(broken_by([](Plan& plan) {
          Task second = plan.days[1].tasks[1];
          plan.days[1].tasks.erase(plan.days[1].tasks.begin() + 1);
          plan.days[1].tasks[1].id = "0105-2";
          plan.days[1].tasks[0].bars = {1, 12};
          plan.days[1].tasks[0].chunks = {0, 1};
          second.id = "0104-2";
          plan.days[0].tasks.push_back(second);
          plan.days[0].allowance = 30;
        }) == Rules{8});
  CHECK(broken_by([](Plan& plan) {
          plan.days[2].tasks[1].cues = {1, 3};
          plan.days[2].tasks[1].bars = {1, 9};
          plan.days[2].tasks[1].chunks = {0};
        }) == Rules{8});
  CHECK(broken_by([](Plan& plan) {
          plan.pieces[0].piece.look_alikes[0].forks = {3, 10};
        }) == Rules{8});
  // A return and its source are the same music, not look-alikes that trouble each other.
  CHECK(broken_by([](Plan& plan) {
          plan.pieces[0].piece.look_alikes = {{{{1, 4}, {9, 12}}, {2, 11}}};
          plan.days[2].tasks[1].cues = {1, 3};
          plan.days[2].tasks[1].bars = {1, 9};
          plan.days[2].tasks[1].chunks = {0};
        }).empty());
}

TEST_CASE("rule 9: Temper is for learned bars, asked for, weakest first") {
  const auto with_first_level = [](int level) {
    return [=](Plan& plan) {
      plan.pieces[0].piece.sections[0].level = level;
      plan.pieces[0].chunks[0].level = level;
    };
  };
  CHECK(broken_by([](Plan& plan) { plan.temper = Temper::no; }) == Rules{9});
  // A1 has level 2.
  CHECK(broken_by([](Plan& plan) { plan.temper = Temper::weak; }) == Rules{9});
  CHECK(broken_by([](Plan& plan) {
          plan.temper = Temper::weak;
          plan.days[4].tasks.resize(1);
        }).empty());
  // A drill left out, in silence and not.
  CHECK(broken_by([](Plan& plan) { plan.days[4].tasks.pop_back(); }) == Rules{9});
  const auto let_go = [](Drill drill, BarRange bars) {
    return [=](Plan& plan) {
      plan.days[4].tasks.pop_back();
      plan.let_go = {{0, drill, bars, 4, Why::no_room_to_temper}};
    };
  };
  CHECK(broken_by(let_go(Drill::write_out, {1, 4})).empty());
  CHECK(broken_by(let_go(Drill::spoken_part, {1, 4})) == Rules{9});
  CHECK(broken_by(let_go(Drill::write_out, {5, 8})) == Rules{9});
  // The easier chunk first.
  CHECK(broken_by(with_first_level(5)) == Rules{9});
  CHECK(broken_by(with_first_level(4)).empty());
  // On the day the chunk is learned.
  CHECK(broken_by([](Plan& plan) {
          Task speak = plan.days[3].tasks[0];
          speak.id = "0105-4";
          plan.days[1].tasks.push_back(speak);
          plan.days[1].allowance = 30;
        }) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.days[3].tasks[0].steps.pop_back(); }) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.days[3].tasks[1].tempo = 60; }) == Rules{9});
}

TEST_CASE("rule 9: Temper comes after a slow or counted pass, and is weakest first among those") {
  // The pass over both on the third day, their Temper on the fourth and fifth.
  const auto with_pass = [](Drill drill) {
    return [=](Plan& plan) { plan.days[2].tasks[0].drill = drill; };
  };
  CHECK(broken_by(with_pass(Drill::counted_pass)).empty());
  CHECK(broken_by(with_pass(Drill::recall)) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[0].bars = {1, 7}; }) == Rules{5, 9});
  // Of A1 only on the fourth day: it may be tempered on the fifth, though it is weaker than B1.
  const auto a_day_later = [](int level) {
    return [=](Plan& plan) {
      plan.pieces[0].piece.sections[0].level = level;
      plan.pieces[0].chunks[0].level = level;
      Task later = plan.days[2].tasks[0];
      plan.days[2].tasks[0].bars = {5, 8};
      plan.days[2].tasks[0].chunks = {1};
      later.bars = {1, 8};
      plan.days[3].tasks.insert(plan.days[3].tasks.begin(), later);
      for (std::size_t number = 0; number < plan.days[3].tasks.size(); ++number)
        plan.days[3].tasks[number].id = fmt::format("0107-{}", number + 1);
    };
  };
  CHECK(broken_by(a_day_later(2)).empty());
  CHECK(broken_by(a_day_later(5)).empty());
  // On the day of its pass it may not.
  CHECK(broken_by([&](Plan& plan) {
          a_day_later(2)(plan);
          std::swap(plan.days[4].tasks[2], plan.days[3].tasks[2]);
          std::swap(plan.days[4].tasks[2].id, plan.days[3].tasks[2].id);
        }) == Rules{9});
}

TEST_CASE("rule 9: a single part is never spoken") {
  Plan plan = sound_plan();
  plan.pieces[0].piece.instrument = *find_instrument("violin");
  const std::string part = plan.pieces[0].piece.parts().at(0);
  for (Day& day : plan.days)
    for (Task& task : day.tasks)
      task.steps = {{{part}, {}, task.drill == Drill::learn ? 5 : task.steps[0].times}};
  CHECK(broken_rules(plan) == Rules{9});
  CHECK(finds(plan, Kind::only_part_spoken));
  for (Day& day : plan.days) {
    std::erase_if(day.tasks, [](const Task& task) { return task.drill == Drill::spoken_part; });
    for (std::size_t number = 0; number < day.tasks.size(); ++number)
      day.tasks[number].id.replace(5, std::string::npos, std::to_string(number + 1));
  }
  CHECK(broken_rules(plan).empty());
}
