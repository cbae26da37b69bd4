// Long pieces, short ones, few days, many, and forms that turn back on themselves.
#include <map>
#include <set>

#include "catch.h"
#include "plan/search/lower_bound.h"
#include "practice/best_gap.h"
#include "sample_plan.h"

namespace cahier {
namespace {

template <typename Visit>
void each_task(const Plan& plan, Visit visit) {
  for (int day = 0; day < static_cast<int>(plan.days.size()); ++day)
    for (const Task& task : plan.days[day].tasks) visit(day, task);
}

int count(const Plan& plan, Drill drill) {
  int found = 0;
  each_task(plan, [&](int, const Task& task) { found += task.drill == drill ? 1 : 0; });
  return found;
}

// The day of learning and those of playing from memory, by chunk.
std::map<int, std::vector<int>> days_played(const Plan& plan) {
  std::map<int, std::vector<int>> played;
  each_task(plan, [&](int day, const Task& task) {
    if (task.drill != Drill::learn && !retrieves(task.drill)) return;
    for (const int chunk : task.chunks) played[chunk].push_back(day);
  });
  return played;
}

int day_learned(const Plan& plan, int bar) {
  int learned = -1;
  each_task(plan, [&](int day, const Task& task) {
    if (task.drill == Drill::learn && task.bars.contains(bar)) learned = day;
  });
  return learned;
}

// How often a join, a recall or a slow or counted pass goes on from a bar to the next.
int times_played_across(const Plan& plan, int bar) {
  int times = 0;
  each_task(plan, [&](int, const Task& task) {
    const bool across = task.drill == Drill::join || task.drill == Drill::recall ||
                        task.drill == Drill::slow_pass || task.drill == Drill::counted_pass;
    times += across && task.bars.contains({bar, bar + 1}) ? 1 : 0;
  });
  return times;
}

}  // namespace

TEST_CASE("one bar is one chunk, with no join and all its run-throughs") {
  const Plan plan = sample::plan("title: One\nbars: 1\ntempo: 60\n");
  REQUIRE(plan.fits);
  REQUIRE(plan.pieces[0].chunks.size() == 1);
  CHECK(plan.pieces[0].chunks[0].bars == BarRange{1, 1});
  CHECK(plan.pieces[0].cues.size() == 1);
  CHECK(count(plan, Drill::learn) == 1);
  CHECK(count(plan, Drill::join) == 0);
  CHECK(count(plan, Drill::run_through) >= 5);
  CHECK(days_played(plan)[0].size() > 10);  // and it is played from memory to the end
}

TEST_CASE("one bar with a pickup is still one chunk") {
  const Plan plan = sample::plan("title: One\nbars: 1\npickup: 1\ntempo: 60\n");
  REQUIRE(plan.fits);
  REQUIRE(plan.pieces[0].chunks.size() == 1);
  CHECK(plan.pieces[0].chunks[0].bars == BarRange{0, 1});
}

TEST_CASE("five thousand bars fit into three years at an hour and a half a day") {
  const Plan plan = sample::plan("title: Long\nbars: 5000\ntempo: 120\npractice: {minutes: 90}\n",
                                 "2027-01-04", "2030-01-04");
  REQUIRE(plan.fits);
  CHECK(plan.days.size() == 1096);
  CHECK(plan.pieces[0].chunks.size() == 1250);
  CHECK(count(plan, Drill::learn) == 1250);
  CHECK(count(plan, Drill::run_through) == 5);
  std::size_t on_dice = 0;
  for (const DiceTable& table : plan.pieces[0].dice) on_dice += table.rows.size();
  CHECK(on_dice == plan.pieces[0].cues.size());
  // Every chunk comes back to the end: by then the longest gap is four days.
  for (const auto& [chunk, played] : days_played(plan)) CHECK(played.back() >= 1096 - 4);
}

TEST_CASE("three days are too few for a single bar, and all that is missing is named") {
  // Nothing new in the last two days, and run-throughs on three days after that of learning.
  const Plan plan = sample::plan("title: One\nbars: 1\ntempo: 60\npractice: {minutes: 60}\n",
                                 "2027-01-04", "2027-01-07");
  CHECK_FALSE(plan.fits);
  int runs = count(plan, Drill::run_through);
  int learns = count(plan, Drill::learn);
  for (const Unplaced& work : plan.unplaced) {
    runs += work.drill == Drill::run_through ? 1 : 0;
    learns += work.drill == Drill::learn ? 1 : 0;
  }
  CHECK(runs == 5);
  CHECK(learns == 1);
  CHECK(sample::plan("title: One\nbars: 1\ntempo: 60\npractice: {minutes: 60}\n", "2027-01-04",
                     "2027-01-08")
            .fits);
}

TEST_CASE("in three days what fits of a longer piece is learned on the first") {
  const Plan plan = sample::plan(
      "title: Short of time\nbars: 32\ntempo: 100\n"
      "practice: {minutes: 30}\n",
      "2027-01-04", "2027-01-07");
  CHECK_FALSE(plan.fits);
  CHECK(count(plan, Drill::learn) >= 3);
  std::set<int> bars;  // learned or named
  each_task(plan, [&](int day, const Task& task) {
    if (task.drill != Drill::learn) return;
    CHECK(day == 0);
    for (int bar = task.bars.first; bar <= task.bars.last; ++bar) bars.insert(bar);
  });
  for (const Unplaced& work : plan.unplaced)
    if (work.drill == Drill::learn)
      for (int bar = work.bars.first; bar <= work.bars.last; ++bar) bars.insert(bar);
  CHECK(bars.size() == 32);
}

TEST_CASE("three years for a short piece keep it alive to the end") {
  const Plan plan =
      sample::plan("title: Long ago\nbars: 8\ntempo: 100\n", "2027-01-04", "2030-01-04");
  REQUIRE(plan.fits);
  // Often at the end, seldom in between: best gaps fall with the time left.
  for (const auto& [chunk, played] : days_played(plan)) {
    CHECK(played.front() < 14);
    const auto plays = [&played = played](int from, int to) {
      return std::count_if(played.begin(), played.end(),
                           [&](int day) { return from <= day && day < to; });
    };
    CHECK(plays(0, 30) >= 2);
    CHECK(plays(400, 700) >= 5);
    CHECK(plays(400, 700) <= 45);
    CHECK(plays(1066, 1096) >= 5);
  }
}

TEST_CASE("with one practice day a week everything comes a multiple of seven days apart") {
  const Plan plan =
      sample::plan("title: Weekly\nbars: 16\ntempo: 100\npractice: {minutes: {sat: 40}}\n",
                   "2027-01-04", "2027-06-26");
  REQUIRE(plan.fits);
  for (const Day& day : plan.days)
    if (!day.tasks.empty()) CHECK(weekday_index(day.date) == 5);
  for (const auto& [chunk, played] : days_played(plan)) {
    CHECK(played.size() >= 6);
    CHECK(played[1] - played[0] <= 21);  // three practice days
    for (std::size_t at = 1; at < played.size(); ++at)
      CHECK((played[at] - played[at - 1]) % 7 == 0);
  }
}

TEST_CASE("each weekday has its own allowance, and the long days are used") {
  const Plan plan = sample::plan(
      "title: By weekday\nbars: 48\ntempo: 100\n"
      "practice: {minutes: {mon: 8, wed: 20, sat: 45}}\n",
      "2027-01-04", "2027-03-20");
  REQUIRE(plan.fits);
  double longest = 0;
  for (const Day& day : plan.days) {
    const int weekday = weekday_index(day.date);
    CHECK(day.minutes() <= (weekday == 0 ? 8 : weekday == 2 ? 20 : weekday == 5 ? 45 : 0));
    longest = std::max(longest, day.minutes());
  }
  CHECK(longest >= 20);
}

TEST_CASE("after days off in the middle all comes back that could not wait") {
  const Plan plan = sample::plan(
      "title: Away\nbars: 48\ntempo: 100\n"
      "practice: {minutes: 20, days off: [2027-02-08..2027-02-28]}\n",
      "2027-01-04", "2027-04-10");
  REQUIRE(plan.fits);
  const int off = 35;
  const int back = 56;
  REQUIRE(iso(plan.days[back].date) == "2027-03-01");
  for (int day = off; day < back; ++day) CHECK(plan.days[day].tasks.empty());
  CHECK_FALSE(plan.days[back].tasks.empty());
  int on_return = 0;
  int in_time = 0;
  for (const auto& [chunk, played] : days_played(plan)) {
    const auto next = std::lower_bound(played.begin(), played.end(), off);
    REQUIRE(next != played.end());
    if (next == played.begin()) continue;  // learned later
    const int before = *(next - 1);
    const int limit = before + longest_gap_days(plan.method, 96 - before);
    if (limit < back) {
      CHECK(*next == back);
      ++on_return;
    } else {
      CHECK(*next <= limit);
      ++in_time;
    }
  }
  CHECK(on_return + in_time >= 8);
  CHECK(on_return > 0);
}

TEST_CASE("what is learned of too long a piece comes back in time, also where runs were to be") {
  const Plan plan = sample::plan(
      "title: Too much\nmeter: 4/4\nlevel: 1\ntempo: 55\ninstrument: violin\nsections:\n"
      "  - {name: A, bars: 1-5, same as: 25-29}\n"
      "  - {name: B, bars: 6-8, same as: 1-3}\n"
      "  - {name: C, bars: 9-12}\n"
      "  - {name: D, bars: 13-14, same as: 1-2}\n"
      "  - {name: E, bars: 15-21, phrases: [15-17, 18-21]}\n"
      "  - {name: F, bars: 22-31}\n"
      "practice: {minutes: 3, new to performing: yes, order: hardest first, temper: no,\n"
      "  days off: [2027-09-20..2027-09-27, 2027-10-02..2027-11-22]}\n",
      "2027-09-12", "2027-12-13");
  REQUIRE_FALSE(plan.fits);
  CHECK(count(plan, Drill::run_through) == 0);
  for (const Day& day : plan.days) CHECK(day.note != DayNote::run_alone);
  const auto all = days_played(plan);
  REQUIRE(all.size() >= 2);
  for (const auto& [chunk, played] : all)
    for (std::size_t at = 1; at < played.size(); ++at) {
      const int from = played[at - 1];
      int latest = from + 1;
      while (plan.days[latest].allowance <= 0) ++latest;
      latest = std::max(latest, from + longest_gap_days(plan.method, 92 - from));
      CHECK(played[at] <= latest);
    }
}

TEST_CASE("blocks follow one another with a break between, and no sitting is too long") {
  const Plan plan = sample::plan(
      "title: Blocks\nbars: 96\ntempo: 100\nlevel: 4\n"
      "practice: {minutes: 75, blocks: 3}\n",
      "2027-01-04", "2027-01-18");
  REQUIRE(plan.fits);
  int full_days = 0;
  for (const Day& day : plan.days) {
    std::vector<double> sittings;
    std::vector<int> tasks_in;
    for (const Task& task : day.tasks) {
      if (task.block == static_cast<int>(sittings.size())) {
        sittings.push_back(0);
        tasks_in.push_back(0);
      }
      REQUIRE(task.block == static_cast<int>(sittings.size()) - 1);
      sittings.back() += task.minutes;
      ++tasks_in.back();
    }
    INFO(iso(day.date) << ", " << day.minutes() << " minutes");
    // Five minutes in every half-hour: performing-arts medicine charity guidance.
    for (std::size_t at = 0; at < sittings.size(); ++at)
      CHECK((sittings[at] <= plan.method.break_after || tasks_in[at] == 1));
    if (day.minutes() < 0.9 * day.allowance) continue;
    ++full_days;
    CHECK(sittings.size() >= 3);
    CHECK((sittings[0] <= day.minutes() / 2 || tasks_in[0] == 1));
  }
  CHECK(full_days >= 2);
}

TEST_CASE("look-alikes of several groups are never new on one day, and all forks are drilled") {
  // Side by side, so that in any order the next chunk is one that must wait for another day, and
  // fewer days than chunks.
  const Plan plan = sample::plan(
      "title: Mirrors\nbars: 48\ntempo: 100\npractice: {minutes: 60}\n"
      "look-alikes:\n"
      "  - {bars: [1-4, 5-8, 9-12], fork: [3, 7, 11]}\n"
      "  - {bars: [13-16, 17-20], fork: [15, 19]}\n"
      "  - {bars: [21-24, 25-28], fork: [21, 25]}\n"
      "  - {bars: [29-32, 33-36, 37-40, 41-44], fork: [32, 36, 40, 44]}\n",
      "2027-01-04", "2027-01-14");
  REQUIRE(plan.fits);
  for (const LookAlikes& group : plan.pieces[0].piece.look_alikes) {
    std::vector<std::set<int>> days_new(group.passages.size());
    int all_known = 0;
    for (std::size_t at = 0; at < group.passages.size(); ++at)
      for (int bar = group.passages[at].first; bar <= group.passages[at].last; ++bar) {
        days_new[at].insert(day_learned(plan, bar));
        all_known = std::max(all_known, day_learned(plan, bar));
      }
    for (std::size_t one = 0; one < days_new.size(); ++one)
      for (std::size_t other = one + 1; other < days_new.size(); ++other)
        for (const int day : days_new[one]) CHECK(days_new[other].count(day) == 0);
    int drills = 0;
    each_task(plan, [&](int day, const Task& task) {
      if (!task.fork || day <= all_known) return;
      bool every_fork = true;
      for (const int fork : group.forks)
        every_fork = every_fork && std::any_of(task.cues.begin(), task.cues.end(), [&](int number) {
                       const int bar = plan.pieces[0].cues[number - 1].bar;
                       return bar <= fork && fork - bar <= plan.method.chunk_most;
                     });
      drills += every_fork ? 1 : 0;
    });
    CHECK(drills >= 1);
  }
}

TEST_CASE("returns of returns are learned once and joined on both sides") {
  const Plan plan = sample::plan(
      "title: Round and round\nmeter: 4/4\ntempo: 100\npractice: {minutes: 30}\nsections:\n"
      "  - {name: Before, bars: 1-4, same as: 53-56}\n"  // of what is learned later
      "  - {name: A, bars: 5-12}\n"
      "  - {name: B, bars: 13-20}\n"
      "  - {name: A again, bars: 21-28, same as: 5-12}\n"
      "  - {name: C, bars: 29-36}\n"
      "  - {name: A and B, bars: 37-52, same as: 5-20}\n"
      "  - {name: D, bars: 53-60}\n"
      "  - {name: Once more, bars: 61-76, same as: 21-36}\n"       // a return and C
      "  - {name: And more, bars: 77-92, same as: 61-76}\n"        // the same, once removed
      "  - {name: The middle, bars: 93-100, same as: 73-80}\n"     // across the two
      "  - {name: Before again, bars: 101-104, same as: 1-4}\n");  // a return of a return
  REQUIRE(plan.fits);
  std::map<int, int> times_learned;
  each_task(plan, [&](int, const Task& task) {
    if (task.drill == Drill::learn)
      for (int bar = task.bars.first; bar <= task.bars.last; ++bar) ++times_learned[bar];
  });
  CHECK(times_learned.size() == 32);  // A, B, C and D
  for (const auto& [bar, times] : times_learned) {
    CHECK(times == 1);
    CHECK(((5 <= bar && bar <= 20) || (29 <= bar && bar <= 36) || (53 <= bar && bar <= 60)));
  }
  for (const int bar : {4, 20, 28, 36, 52, 60, 76, 92, 100}) {
    INFO("into or out of a return after bar " << bar);
    CHECK(times_played_across(plan, bar) >= 1);
  }
  CHECK(times_played_across(plan, 12) >= 1);  // A to B, where it is learned
  // The end of C and the beginning of A meet within "The middle" alone, and after bar 76.
  CHECK(plan.pieces[0].piece.learned_bar(96) == 36);
  CHECK(plan.pieces[0].piece.learned_bar(97) == 5);
}

TEST_CASE("a piece that comes round again at once has its join at the turn") {
  const Plan plan = sample::plan(
      "title: Twice\nmeter: 4/4\ntempo: 100\nsections:\n"
      "  - {name: A, bars: 1-2}\n  - {name: A again, bars: 3-4, same as: 1-2}\n");
  REQUIRE(plan.fits);
  CHECK(plan.pieces[0].chunks.size() == 1);
  CHECK(times_played_across(plan, 2) >= 1);
}

TEST_CASE("a date nearly ten years away is planned like any other") {
  const Plan plan = sample::plan("title: Far\nbars: 4\ntempo: 100\n", "2027-01-04", "2037-02-01");
  REQUIRE(plan.fits);
  CHECK(plan.days.size() == 3681);
  CHECK(days_played(plan)[0].size() >= 30);
}

}  // namespace cahier
