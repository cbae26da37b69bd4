#include "plan/check_plan.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <utility>

#include "sound_plan.h"

using namespace cahier;

namespace {

// The rules broken, each once; the words go to the test's report.
std::vector<int> broken_rules(const Plan& plan) {
  std::vector<int> rules;
  for (const Breach& breach : breaches(plan)) {
    UNSCOPED_INFO("rule " << breach.rule << ": " << breach.what);
    rules.push_back(breach.rule);
  }
  std::sort(rules.begin(), rules.end());
  rules.erase(std::unique(rules.begin(), rules.end()), rules.end());
  return rules;
}

// What is broken after one change to the sound plan.
std::vector<int> broken_by(const std::function<void(Plan&)>& change) {
  Plan plan = sound_plan();
  change(plan);
  return broken_rules(plan);
}

using Rules = std::vector<int>;

}  // namespace

TEST_CASE("the judge finds nothing in a sound plan") { CHECK(broken_rules(sound_plan()).empty()); }

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

TEST_CASE("rule 4: neighbours meet after both are learned, into a return as well") {
  const auto join_bars = [](int first, int last) {
    return [=](Plan& plan) {
      plan.days[1].tasks[2].bars = {first, last};
      plan.days[2].tasks[0].bars = {5, 12};
      plan.days[12].tasks[0].bars = {5, 12};
    };
  };
  CHECK(broken_by(join_bars(1, 8)).empty());
  CHECK(broken_by(join_bars(5, 12)) == Rules{4});
  // Between sections, and into the return.
  const auto into_the_return = [](Plan& plan) {
    plan.days[1].tasks[2].bars = {1, 8};
    plan.days[2].tasks[0].bars = {1, 8};
    plan.days[12].tasks[0].bars = {1, 8};
  };
  CHECK(broken_by(into_the_return) == Rules{4});
  // A join listed before the second chunk is learned.
  const Rules early = broken_by([](Plan& plan) {
    std::swap(plan.days[1].tasks[1], plan.days[1].tasks[2]);
    std::swap(plan.days[1].tasks[1].id, plan.days[1].tasks[2].id);
  });
  CHECK(early == Rules{4});
}

TEST_CASE("rule 4: a run-through alone does not join") {
  CHECK(broken_by([](Plan& plan) {
          plan.days[1].tasks.pop_back();
          plan.days[2].tasks[0].bars = {5, 12};
          plan.days[12].tasks[0].bars = {5, 12};
        }) == Rules{4});
}

TEST_CASE("rule 4: chunks that meet inside a return are joined where they are learned") {
  // A is two chunks; their join in bars 9-12 is the join of bars 2 and 3.
  const auto halves = [](Plan& plan) {
    PlannedPiece& piece = plan.pieces[0];
    piece.chunks = {{"A1", {1, 2}, 0, 2}, {"B1", {5, 8}, 1, 4}, {"A2", {3, 4}, 0, 2}};
    std::swap(piece.chunks[1], piece.chunks[2]);
    for (Day& day : plan.days)
      for (Task& task : day.tasks) {
        std::vector<int> chunks;
        for (const int chunk : task.chunks)
          for (const int now : chunk == 0 ? std::vector<int>{0, 1} : std::vector<int>{2})
            chunks.push_back(now);
        task.chunks = chunks;
      }
    Task& first = plan.days[0].tasks[0];
    first.bars = {1, 2};
    first.chunks = {0};
    first.minutes = 4;
    Task second = first;
    second.id = "0104-2";
    second.bars = {3, 4};
    second.chunks = {1};
    plan.days[0].tasks.push_back(second);
  };
  CHECK(broken_by(halves).empty());
  CHECK(broken_by([&](Plan& plan) {
          halves(plan);
          plan.days[1].tasks[0].bars = {3, 4};
          plan.days[1].tasks[0].chunks = {1};
          // Only bars 4-9 are still joined: the pair of bars 2 and 3 is not.
          for (const int day : {1, 2, 12})
            for (Task& task : plan.days[day].tasks)
              if (task.drill != Drill::learn && task.drill != Drill::cue_starts &&
                  task.bars.contains(BarRange{1, 4})) {
                task.bars = {3, 10};
                task.chunks = {0, 1, 2};
              }
        }) == Rules{4});
}

TEST_CASE("rule 5: recall waits for a night, comes in time, and goes on to the end") {
  // The first recall on the fourth practice day after learning; three are allowed.
  const auto late = [](Plan& plan) {
    plan.pieces[0].piece.look_alikes.clear();
    plan.days[1].tasks[0].drill = Drill::join;
    plan.days[2].tasks[0].drill = Drill::join;
    plan.days[2].tasks[1].cues = {2};
    plan.days[2].tasks[1].bars = {5, 5};
    plan.days[2].tasks[1].chunks = {1};
  };
  CHECK(broken_by(late) == Rules{5});
  CHECK(broken_by([&](Plan& plan) {
          late(plan);
          plan.method.first_recall_days = 4;
        }).empty());
  // The new chunk played from memory on its first day.
  CHECK(broken_by([](Plan& plan) { plan.days[1].tasks[2].drill = Drill::counted_pass; }) ==
        Rules{5});
  // The last recall too far from the date: from Thursday four days are left, three the limit.
  CHECK(broken_by([](Plan& plan) { plan.days[12].tasks.clear(); }) == Rules{5});
  // From Wednesday twelve days are left, seven the limit (2 * 3.39, computed).
  const auto rest_to = [](int day) {
    return [=](Plan& plan) {
      const auto move = [&](int from, int to) {
        plan.days[to].tasks = std::exchange(plan.days[from].tasks, {});
        for (Task& task : plan.days[to].tasks) task.id.replace(2, 2, std::to_string(to + 4));
      };
      move(10, 11);
      move(4, day);
      plan.days[12].tasks.push_back(plan.days[7].tasks[0]);
      plan.days[12].tasks[1].id = "0116-2";
      plan.days[7].tasks.clear();
      for (Task& task : plan.days[day].tasks)
        if (day < 10) task.id.replace(0, 4, fmt::format("01{:02}", day + 4));
    };
  };
  CHECK(broken_by(rest_to(9)).empty());
  CHECK(broken_by(rest_to(10)) == Rules{5});
}

TEST_CASE("rule 5: a gap may run past its limit only to the next practice day") {
  // The only recalls after day 2 are on day 7 at the earliest; nobody can play in between.
  const auto week_away = [](Plan& plan) {
    plan.days[4].tasks[0].drill = Drill::join;  // keeps its place, but is no retrieval
    plan.method.longest_gap = 1;                // 3 days allowed from day 2
    plan.method.run_throughs = 3;
    plan.method.run_days = 2;
  };
  CHECK(broken_by(week_away) == Rules{5});
  const auto away = [&](Plan& plan) {
    week_away(plan);
    plan.pieces[0].piece.instrument.parts = {"right hand", "left hand"};
    plan.temper = Temper::no;
    plan.days[2].tasks.resize(2);
    plan.days[4].tasks.clear();
    for (int day = 3; day <= 6; ++day) {
      plan.days[day].off = true;
      plan.days[day].allowance = 0;
    }
    plan.days[9].tasks = {plan.days[12].tasks[0]};
    plan.days[9].tasks[0].id = "0113-1";
    plan.days[13].off = true;
    plan.days[13].allowance = 0;
    plan.days[11].tasks = {plan.days[12].tasks[0]};
    plan.days[11].tasks[0].id = "0115-1";
  };
  CHECK(broken_by(away).empty());
  CHECK(broken_by([&](Plan& plan) {
          away(plan);
          plan.days[6].off = false;
          plan.days[6].allowance = 15;
        }) == Rules{5});
}

TEST_CASE("rule 5: a task names the chunks it plays and no others") {
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[0].chunks = {0}; }) == Rules{5});
  CHECK(broken_by([](Plan& plan) { plan.days[1].tasks[0].chunks = {0, 1}; }) == Rules{5});
  CHECK(broken_by([](Plan& plan) {
          plan.days[2].tasks[1].cues = {1};
          plan.days[2].tasks[1].bars = {1, 1};
          plan.pieces[0].piece.look_alikes.clear();
          plan.method.chunk_most = 4;
          plan.days[2].tasks[1].chunks = {0};
        }).empty());
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[1].chunks = {1}; }) == Rules{5});
}

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
        }) == Rules{7, 8});
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

TEST_CASE("rule 7: a section of more than sixteen bars has a cue start inside it") {
  const auto with_sections_of = [](int bars, bool inside) {
    Plan plan = sound_plan();
    plan.fits = false;  // nothing placed: only the piece is judged
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
  CHECK(broken_by([](Plan& plan) { plan.temper = Temper::no; }) == Rules{9});
  // A1 has level 2.
  CHECK(broken_by([](Plan& plan) { plan.temper = Temper::weak; }) == Rules{9});
  CHECK(broken_by([](Plan& plan) {
          plan.temper = Temper::weak;
          plan.days[4].tasks.resize(1);
        }).empty());
  // A required drill left out.
  CHECK(broken_by([](Plan& plan) { plan.days[4].tasks.pop_back(); }) == Rules{9});
  // The easier chunk first.
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].chunks[0].level = 5; }) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.pieces[0].chunks[0].level = 4; }).empty());
  // On the day the chunk is learned.
  CHECK(broken_by([](Plan& plan) {
          Task speak = plan.days[2].tasks[2];
          speak.id = "0105-4";
          plan.days[1].tasks.push_back(speak);
          plan.days[1].allowance = 30;
        }) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[2].steps.pop_back(); }) == Rules{9});
  CHECK(broken_by([](Plan& plan) { plan.days[2].tasks[3].tempo = 60; }) == Rules{9});
}

TEST_CASE("rule 9: a single part is never spoken") {
  Plan plan = sound_plan();
  plan.pieces[0].piece.instrument = *find_instrument("violin");
  const std::string part = plan.pieces[0].piece.parts().at(0);
  for (Day& day : plan.days)
    for (Task& task : day.tasks)
      task.steps = {{{part}, {}, task.drill == Drill::learn ? 5 : task.steps[0].times}};
  CHECK(broken_rules(plan) == Rules{9});
  for (Day& day : plan.days) {
    std::erase_if(day.tasks, [](const Task& task) { return task.drill == Drill::spoken_part; });
    for (std::size_t number = 0; number < day.tasks.size(); ++number)
      day.tasks[number].id.replace(5, std::string::npos, std::to_string(number + 1));
  }
  CHECK(broken_rules(plan).empty());
}

TEST_CASE("rule 10: a plan fits exactly when nothing is left unplaced") {
  CHECK(broken_by([](Plan& plan) { plan.fits = false; }) == Rules{10});
  CHECK(broken_by([](Plan& plan) {
          plan.unplaced = {{0, Drill::recall, {1, 4}, 1.5, Why::no_room_to_recall}};
        }) == Rules{10});
}

TEST_CASE("of a plan that does not fit only what is placed is judged, and the rest must be named") {
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

TEST_CASE("a plan that contradicts its own form is refused before it is judged") {
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
