// Which spoken and written work a day takes.
#include "plan/due/temper_due.h"

#include "catch.h"
#include "plan/chunks/analyse.h"
#include "sample_plan.h"

namespace cahier {
namespace {

using Chunks = std::vector<int>;

constexpr int kEnd = 60;         // the date
constexpr int kAllLearned = 3;   // the day of the last new bars
constexpr int kPassed = 5;       // the day of the first pass over everything
constexpr double kPlenty = 600;  // minutes
constexpr TemperRoom kBegun{kPlenty, true, 20};

// Four chunks of four bars, of levels 2, 4, 3 and 5; every day is a practice day, from day 0 on.
struct FourChunks {
  int end;
  Piece piece;
  Terms terms;
  Analysis analysis;
  std::vector<int> days;
  RecallsDue recalls;
  TaskMaker make;
  TemperDue due;

  explicit FourChunks(int to = kEnd, const std::string& more = {})
      : end(to),
        piece(sample::piece("title: Four Chunks\nbars: 16\npractice: {temper: yes}\n"
                            "sections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}]\n"
                            "hard: [{bars: 1-4, level: 2}, {bars: 5-8, level: 4}, "
                            "{bars: 9-12, level: 3}, {bars: 13-16, level: 5}]\n" +
                            more)),
        terms(settle(sample::date("2027-01-04"), sample::date("2027-01-04") + cahier::days{end},
                     piece.practice, sample::steady())),
        analysis(analyse(piece, terms.method,
                         {{"A1", {1, 4}, 0, 2},
                          {"A2", {5, 8}, 0, 4},
                          {"B1", {9, 12}, 1, 3},
                          {"B2", {13, 16}, 1, 5}})),
        days(every_day(end)),
        recalls(analysis, terms.method, days, 0, end, true),
        make(analysis, terms.method, 0),
        due(analysis, terms) {}

  FourChunks(const FourChunks&) = delete;

  static std::vector<int> every_day(int end) {
    std::vector<int> all;
    for (int day = 0; day < end; ++day) all.push_back(day);
    return all;
  }

  void learn_all() {
    for (int chunk = 0; chunk < 4; ++chunk) recalls.learn(chunk, std::min(chunk, kAllLearned));
  }
  void pass(BarRange bars, int day) { recalls.retrieve(make.slow_pass(bars), day); }

  std::vector<Task> take(int day, TemperRoom of_day = kBegun) {
    return due.take(day, days, end, recalls, make, of_day);
  }
};

// Everything is learned, and in a pass on the day `kPassed`.
struct Passed : FourChunks {
  explicit Passed(int to = kEnd, const std::string& more = {}) : FourChunks(to, more) {
    learn_all();
    pass({1, 16}, kPassed);
  }
};

Chunks chunks_of(const std::vector<Task>& tasks, Drill drill) {
  Chunks chunks;
  for (const Task& task : tasks)
    if (task.drill == drill) chunks.push_back(task.chunks.front());
  return chunks;
}

// So many days before the date a day takes this many of all.
std::size_t taken_with_left(int days_left) { return Passed().take(kEnd - days_left).size(); }

}  // namespace

TEST_CASE("an empty day has no spoken and written work that would not fill it", "[numbers]") {
  Passed work;
  double all = 0;
  for (const Task& task : work.due.left_over(work.make)) all += task.minutes;
  CHECK(work.take(10, {kPlenty, false, all + 0.5}).empty());
  const std::vector<Task> one = Passed().take(10, {kPlenty, false, 0.5});
  REQUIRE(one.size() == 1);
  // As many as fill it, and no more.
  const double first = one.front().minutes;
  CHECK(work.take(10, {kPlenty, false, first + 0.5}).size() == 2);
}

TEST_CASE("a day with other work takes a share of what waits, by the days left", "[numbers]") {
  // Eight wait; of about every other day of those before the last week each has as many.
  CHECK(taken_with_left(50) == 1);  // 16 / 43
  CHECK(taken_with_left(23) == 1);  // 16 / 16
  CHECK(taken_with_left(22) == 2);  // 16 / 15
  CHECK(taken_with_left(14) == 3);  // 16 / 7
  CHECK(taken_with_left(8) == 8);   // all, on the last of them
}

TEST_CASE("spoken and written work: the weaker chunk first, one drill after the next is spoken",
          "[numbers]") {
  Passed work;
  const std::vector<Task> all = work.take(kEnd - 8);
  CHECK(chunks_of(all, Drill::spoken_part) == Chunks{3, 1, 2, 0});
  CHECK(chunks_of(all, Drill::write_out) == Chunks{3, 1, 2, 0});
  REQUIRE(all.size() == 8);
  CHECK(all[0].drill == Drill::spoken_part);
  CHECK(all[1].drill == Drill::spoken_part);
  CHECK(all[2].drill == Drill::write_out);
  for (const Task& task : all) CHECK(task.reason == Reason::weakest_first);
  CHECK(work.due.left_over(work.make).empty());
}

TEST_CASE("what a day took of spoken and written work waits no longer", "[numbers]") {
  Passed work;
  const Task first = work.take(10).at(0);
  const Task second = work.take(11).at(0);
  CHECK(first.chunks == Chunks{3});
  CHECK(second.chunks == Chunks{1});
  CHECK(work.due.left_over(work.make).size() == 6);
}

TEST_CASE("no spoken and written work in the last week where the date leaves the choice",
          "[numbers]") {
  CHECK(taken_with_left(8) > 0);
  CHECK(taken_with_left(7) == 0);
  CHECK(taken_with_left(1) == 0);
  // With three weeks after the last new bars and with a day less: then all but the quiet days.
  const int weeks = kAllLearned + 21;
  CHECK(Passed(weeks).take(weeks - 7).empty());
  CHECK_FALSE(Passed(weeks - 1).take(weeks - 1 - 7).empty());
  REQUIRE(sample::steady().quiet_days == 2);
  CHECK_FALSE(Passed(weeks - 1).take(weeks - 1 - 3).empty());
  CHECK(Passed(weeks - 1).take(weeks - 1 - 2).empty());
}

TEST_CASE("spoken and written work waits until all is learned, and in a pass on an earlier day",
          "[numbers]") {
  FourChunks unlearned;
  for (const int chunk : {0, 1, 2}) unlearned.recalls.learn(chunk, 0);
  unlearned.pass({1, 12}, 5);
  CHECK(unlearned.take(10).empty());
  // On the day of the last new bars nothing, though the first were in a pass long before.
  unlearned.recalls.learn(3, 10);
  CHECK(unlearned.take(10).empty());
  CHECK_FALSE(unlearned.take(11).empty());
  FourChunks work;
  work.learn_all();
  CHECK(work.take(10).empty());
  work.pass({1, 16}, 10);
  CHECK(work.take(10).empty());
  CHECK_FALSE(work.take(11).empty());
}

TEST_CASE("what is less weak waits with what is in a pass only today", "[numbers]") {
  FourChunks work;
  work.learn_all();
  work.pass({1, 8}, 5);
  work.pass({9, 16}, 10);
  // Before that pass nothing weaker waits.
  CHECK(work.due.next(work.recalls, 9)->chunk == 1);
  CHECK(work.take(10).empty());
  CHECK(work.take(11).at(0).chunks == Chunks{3});
}

TEST_CASE("a day without room for the weakest takes nothing easier", "[numbers]") {
  Passed work;
  const double weakest = Passed().take(10).at(0).minutes;
  CHECK(work.take(10, {weakest - 0.5, true, 20}).empty());
  CHECK(work.take(10, {weakest, true, 20}).size() == 1);
}

TEST_CASE("a single part is written out, never spoken", "[numbers]") {
  Passed work(kEnd, "instrument: violin\n");
  const std::vector<Task> all = work.take(kEnd - 8);
  CHECK(chunks_of(all, Drill::write_out) == Chunks{3, 1, 2, 0});
  CHECK(all.size() == 4);
}

}  // namespace cahier
