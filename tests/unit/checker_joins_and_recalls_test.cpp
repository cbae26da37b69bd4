#include "broken_rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

using namespace cahier;

TEST_CASE("rule 4: neighbours meet after both are learned, into a return as well") {
  const auto join_bars = [](int first, int last) {
    return [=](Plan& plan) {
      without_temper(plan);
      plan.days[1].tasks[2].bars = {first, last};
      plan.days[2].tasks[0].bars = {5, 12};
      plan.days[12].tasks[0].bars = {5, 12};
    };
  };
  CHECK(broken_by(join_bars(1, 8)).empty());
  CHECK(broken_by(join_bars(5, 12)) == Rules{4});
  // Between sections, and into the return.
  const auto into_the_return = [](Plan& plan) {
    without_temper(plan);
    plan.days[1].tasks[2].bars = {1, 8};
    plan.days[2].tasks[0].bars = {1, 8};
    plan.days[12].tasks[0].bars = {1, 8};
  };
  CHECK(broken_by(into_the_return) == Rules{4});
  // A join listed before the second chunk is learned, and none after.
  const auto early = [](Plan& plan) {
    without_temper(plan);
    std::swap(plan.days[1].tasks[1], plan.days[1].tasks[2]);
    std::swap(plan.days[1].tasks[1].id, plan.days[1].tasks[2].id);
    plan.days[2].tasks[0].bars = {5, 12};
    plan.days[12].tasks[0].bars = {5, 12};
  };
  CHECK(broken_by(early) == Rules{4});
  CHECK(finds(early, Kind::join_not_played));
}

TEST_CASE("rule 4: the way out of a return is joined where it stands") {
  // A last section after the return; the source of the return goes on to other bars.
  const auto with_close = [](BarRange join) {
    return [=](Plan& plan) {
      PlannedPiece& piece = plan.pieces[0];
      piece.piece.bars = 16;
      piece.piece.sections.push_back({"Close", {13, 16}, {}, {}, {}});
      piece.sections.push_back({"Close", {13, 16}, {}});
      piece.chunks.push_back({"C1", {13, 16}, 3, 2});
      piece.cues.push_back({4, 13, 3});
      piece.dice = dice_tables({1, 2, 3, 4});
      without_temper(plan);
      for (Day& day : plan.days)
        for (Task& task : day.tasks)
          if (task.drill == Drill::run_through) {
            task.bars = {1, 16};
            task.chunks = {0, 1, 2};
          }
      Task learn = plan.days[0].tasks[0];
      learn.id = "0107-1";
      learn.bars = {13, 16};
      learn.chunks = {2};
      Task joined = plan.days[1].tasks[2];
      joined.id = "0107-2";
      joined.bars = join;
      joined.chunks = join.first < 13 ? std::vector<int>{0, 2} : std::vector<int>{2};
      plan.days[3].tasks = {learn, joined};
      Task close = plan.days[12].tasks[0];
      close.id = "0116-2";
      close.bars = {13, 16};
      close.chunks = {2};
      plan.days[12].tasks.push_back(close);
    };
  };
  CHECK(broken_by(with_close({9, 16})).empty());
  CHECK(broken_by(with_close({13, 16})) == Rules{4});
}

TEST_CASE("rule 4: a run-through alone does not join") {
  CHECK(broken_by([](Plan& plan) {
          without_temper(plan);
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
          for (const int day : {1, 2, 12})
            for (Task& task : plan.days[day].tasks)
              if (task.bars == BarRange{1, 12}) task.bars = {1, 10};
        }).empty());
  CHECK(broken_by([&](Plan& plan) {
          halves(plan);
          without_temper(plan);
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
    without_temper(plan);
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
    without_temper(plan);
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

namespace {

// The last day of the sound plan holds, in place of a pass over everything, a session of cue
// starts. From the run-through before it four days are left to the date, one more than a bar may
// rest.
void end_with_starts(Plan& plan, const std::vector<int>& cues, BarRange bars,
                     const std::vector<int>& chunks) {
  Task& last = plan.days[12].tasks[0];
  last.drill = Drill::cue_starts;
  last.cues = cues;
  last.bars = bars;
  last.chunks = chunks;
}

// Another cue start, with those after it renumbered.
void add_cue(Plan& plan, int bar, int section) {
  auto& cues = plan.pieces[0].cues;
  const auto after =
      std::find_if(cues.begin(), cues.end(), [&](const CueStart& cue) { return cue.bar > bar; });
  cues.insert(after, {0, bar, section});
  std::vector<int> numbers;
  for (CueStart& cue : cues) numbers.push_back(cue.number = static_cast<int>(numbers.size()) + 1);
  plan.pieces[0].dice = dice_tables(numbers);
}

// The bars that a plan says rest too long, in its words.
std::string resting(const std::function<void(Plan&)>& change) {
  Plan plan = sound_plan();
  change(plan);
  std::string bars;
  for (const Violation& violation : violations(plan)) {
    CAPTURE(violation.what);
    CHECK(violation.kind == Kind::gap_too_long);
    bars += violation.what.substr(0, violation.what.find(" rests")) + "; ";
  }
  return bars;
}

}  // namespace

TEST_CASE("rule 5: a start inside a chunk recalls the bars from there on, and no others") {
  const auto from_bar = [](int bar, int begun, const std::vector<int>& chunks) {
    return [=](Plan& plan) {
      add_cue(plan, bar, 1);
      end_with_starts(plan, {begun}, {begun == 2 ? 5 : bar, 12}, chunks);
    };
  };
  // From bar 7 to the end of B1, and all of the next: bars 9 to 12 are A1 again.
  CHECK(resting(from_bar(7, 3, {0})) == "bars 5-6 of chunk B1; ");
  CHECK(resting(from_bar(8, 3, {0})) == "bars 5-7 of chunk B1; ");
  // From the first bar to its last; and that start goes no farther.
  CHECK(resting([](Plan& plan) { end_with_starts(plan, {2, 3}, {5, 12}, {0, 1}); }).empty());
  CHECK(resting([](Plan& plan) {
          end_with_starts(plan, {2}, {5, 8}, {1});
        }) == "chunk A1 (bars 1-4); ");
}

TEST_CASE("rule 5: a start in a return recalls the notes it has") {
  CHECK(resting([](Plan& plan) {
          end_with_starts(plan, {3}, {9, 12}, {0});
        }) == "chunk B1 (bars 5-8); ");
  const auto inside_the_return = [](Plan& plan) {
    add_cue(plan, 11, 2);
    end_with_starts(plan, {2, 4}, {5, 12}, {1});
  };
  CHECK(resting(inside_the_return) == "bars 1-2 of chunk A1; ");
}

TEST_CASE("rule 5: a start before a fork goes on past it") {
  // The fork is B1's first bar: the last start before it in the look-alikes plays on to the end of
  // B1. A start nearer to the fork takes its place.
  const auto with_fork = [](Plan& plan) {
    plan.pieces[0].piece.look_alikes = {{{{1, 6}, {9, 12}}, {5, 11}}};
    plan.days[2].tasks[1].cues = {1, 3};
    plan.days[2].tasks[1].bars = {1, 12};
  };
  CHECK(resting([&](Plan& plan) {
          with_fork(plan);
          end_with_starts(plan, {1}, {1, 8}, {0, 1});
        }).empty());
  CHECK(resting([&](Plan& plan) {
          with_fork(plan);
          add_cue(plan, 3, 0);
          plan.days[2].tasks[1].cues = {1, 2, 4};
          end_with_starts(plan, {1}, {1, 4}, {0});
        }) == "chunk B1 (bars 5-8); ");
}

TEST_CASE("rule 5: where a return ends, the rest of the chunk is not played") {
  // Bars 9 and 10 are bars 1 and 2 again, and the last.
  const auto cut_short = [](Plan& plan) {
    PlannedPiece& piece = plan.pieces[0];
    piece.piece.bars = 10;
    piece.piece.sections[2].bars = {9, 10};
    piece.piece.sections[2].same_as = BarRange{1, 2};
    piece.sections[2] = {"A again", {9, 10}, BarRange{1, 2}};
    for (Day& day : plan.days)
      for (Task& task : day.tasks) task.bars.last = std::min(task.bars.last, 10);
  };
  CHECK(broken_by(cut_short).empty());
  const auto ends_with = [&](BarRange bars, const std::vector<int>& chunks) {
    return [=](Plan& plan) {
      cut_short(plan);
      plan.days[12].tasks[0].bars = bars;
      plan.days[12].tasks[0].chunks = chunks;
    };
  };
  CHECK(resting(ends_with({5, 10}, {1})) == "bars 3-4 of chunk A1; ");
  CHECK(finds(ends_with({5, 10}, {0, 1}), Kind::chunk_not_played));
  CHECK_FALSE(finds(ends_with({1, 10}, {0, 1}), Kind::chunk_not_played));
  // A start there does not reach farther either.
  const auto starts = [&](Plan& plan) {
    cut_short(plan);
    end_with_starts(plan, {2, 3}, {5, 10}, {1});
  };
  CHECK(resting(starts) == "bars 3-4 of chunk A1; ");
}

TEST_CASE("rule 5: cue starts name what they play from end to end, and need all they play of") {
  const auto from_bar_seven = [](const std::vector<int>& chunks) {
    return [=](Plan& plan) {
      add_cue(plan, 7, 1);
      plan.days[2].tasks[1].cues = {1, 3};
      plan.days[2].tasks[1].bars = {1, 12};
      plan.days[2].tasks[1].chunks = chunks;
    };
  };
  CHECK(broken_by(from_bar_seven({0})).empty());
  CHECK(finds(from_bar_seven({0, 1}), Kind::chunk_not_played));
  CHECK(finds(from_bar_seven({}), Kind::chunk_not_named));
  // B1 is new on that day, and the start plays its last bars.
  const auto too_soon = [&](Plan& plan) {
    from_bar_seven({0})(plan);
    plan.pieces[0].piece.look_alikes.clear();
    std::swap(plan.days[1].tasks[2], plan.days[2].tasks[1]);
    std::swap(plan.days[1].tasks[2].id, plan.days[2].tasks[1].id);
  };
  CHECK(finds(too_soon, Kind::not_learned_before));
}
