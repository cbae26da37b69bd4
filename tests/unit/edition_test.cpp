#include <algorithm>
#include <map>
#include <set>

#include "catch.h"
#include "played.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

const Date kFrom = sample::date("2027-01-04");
const Date kBy = sample::date("2027-03-20");

struct Season {
  explicit Season(const std::string& yaml) : pieces{sample::piece(yaml)} {}
  Terms terms(Date from, Record record = {}) const {
    Terms all = settle(from, kBy, pieces.front().practice, sample::steady());
    all.record = std::move(record);
    return all;
  }
  Plan first() const { return make_plan(pieces, terms(kFrom)); }
  Plan next(Date from, Record record) const { return make_plan(pieces, terms(from, record)); }
  std::vector<Piece> pieces;
};

// Everything learned on one day, and recalled on others with these slips.
Record known(const Piece& piece, Date learned, const std::vector<Date>& recalled,
             const std::vector<int>& slips = {}) {
  Record record;
  Done done;
  done.bars = piece.whole();
  done.slips.emplace();
  done.date = learned;
  done.drill = Drill::learn;
  record.done.push_back(done);
  done.drill = Drill::recall;
  done.slips = slips;
  for (const Date date : recalled) {
    done.date = date;
    record.done.push_back(done);
  }
  return record;
}

int new_chunks(const Plan& plan) {
  int count = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) count += task.drill == Drill::learn ? 1 : 0;
  return count;
}

int runs(const Plan& plan) {
  int count = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) count += task.drill == Drill::run_through ? 1 : 0;
  return count;
}

}  // namespace

TEST_CASE("an edition goes on from what was done, whenever it is made") {
  for (const char* yaml : {sample::kStudy, sample::kLantern}) {
    const Season season(yaml);
    const Plan first = season.first();
    for (Date from = kFrom + days{1}; from < kBy - days{1}; from += days{1}) {
      INFO(iso(from));
      const Plan next = season.next(from, sample::played(first, from));
      CHECK(next.fits);
      CHECK(sample::faults_of(next) == "");
      CHECK(next.days.front().date == from);
      // What is learned stays learned, in the same chunks.
      std::set<BarRange> learned;
      for (const Day& day : next.past)
        for (const Task& task : day.tasks)
          if (task.drill == Drill::learn) learned.insert(task.bars);
      for (const Day& day : first.days)
        for (const Task& task : day.tasks)
          if (task.drill == Drill::learn && day.date < from) CHECK(learned.count(task.bars) == 1);
      CHECK(learned.size() + new_chunks(next) == next.pieces[0].chunks.size());
    }
  }
}

TEST_CASE("what was missed is placed anew") {
  const Season season(sample::kStudy);
  const Plan first = season.first();
  const Date from = kFrom + days{14};
  const Record record = sample::played(first, from, [&](const Day& day, const Task& task) {
    return day.date < kFrom + days{7} || task.drill != Drill::learn;
  });
  const Plan next = season.next(from, record);
  CHECK(next.fits);
  CHECK(sample::faults_of(next) == "");
  CHECK(new_chunks(next) > new_chunks(season.next(from, sample::played(first, from))));
}

TEST_CASE("after a fortnight without the instrument the date holds, or what is missing is named") {
  const Season season(sample::kStudy);
  const Plan first = season.first();
  for (int week = 1; week <= 7; ++week) {
    const Date stop = kFrom + days{7 * week};
    const Plan next = season.next(stop + days{14}, sample::played(first, stop));
    INFO(week);
    CHECK(sample::faults_of(next) == "");
    CHECK(next.fits);
  }
}

TEST_CASE("run-throughs are counted from those made") {
  const Season season(sample::kStudy);
  const Plan first = season.first();
  Date second_run;
  int seen = 0;
  for (const Day& day : first.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through && ++seen == 2) second_run = day.date;
  REQUIRE(runs(first) >= 5);
  const Date from = second_run + days{1};
  const Plan next = season.next(from, sample::played(first, from));
  REQUIRE(next.fits);
  CHECK(runs(next) >= 3);
  CHECK(sample::faults_of(next) == "");
}

TEST_CASE("what slips comes up more often") {
  const Season season(sample::kStudy);
  const Plan first = season.first();
  const Date from = kFrom + days{42};
  Record record = sample::played(first, from);
  const BarRange weak = first.pieces[0].chunks[1].bars;
  int told = 0;
  for (Done& done : record.done)
    if (done.slips && done.drill != Drill::learn && done.drill != Drill::silent_run &&
        done.bars.contains(weak) && told < 8) {
      done.slips->push_back(weak.first);
      ++told;
    }
  REQUIRE(told == 8);
  const Plan next = season.next(from, record);
  REQUIRE(next.fits);
  CHECK(sample::faults_of(next) == "");
  const PlannedPiece& piece = next.pieces[0];
  const auto& chunk = piece.chunks[1];
  CHECK(chunk.raised);
  INFO(chunk.slips.trials);
  CHECK(chunk.slips.slips == 8);
  CHECK(chunk.level >= 4);
  std::map<int, int> turns;  // by chunk: besides run-throughs
  std::set<BarRange> tempered;
  bool slow = false;
  for (const Day& day : next.days)
    for (const Task& task : day.tasks) {
      if (retrieves(task.drill) && task.drill != Drill::run_through)
        for (const int played : task.chunks) ++turns[played];
      if (stage_of(task.drill) == Stage::temper) tempered.insert(task.bars);
      slow = slow || (task.drill == Drill::slow_pass && task.bars == weak);
    }
  CHECK(turns[1] >= turns[0] + 3);
  CHECK(turns[1] >= turns[2] + 3);
  CHECK(slow);
  CHECK(tempered.count(weak) == 1);
  CHECK(tempered.count(piece.chunks[0].bars) == 0);
  // It has a start of its own, and twice the outcomes of the dice.
  std::map<int, std::size_t> outcomes;
  for (const auto& row : piece.dice[0].rows) outcomes[row.cue] = row.outcomes.size();
  const auto own = std::find_if(piece.cues.begin(), piece.cues.end(),
                                [&](const CueStart& cue) { return cue.bar == weak.first; });
  REQUIRE(own != piece.cues.end());
  CHECK(outcomes[own->number] == 2 * outcomes[1]);
}

TEST_CASE("one who is ahead gets time to prove, not more new bars a day") {
  const Season season(sample::kStudy);
  const Plan first = season.first();
  const Date from = kFrom + days{14};
  Record record = sample::played(first, from);
  // The chunks of the third and fourth week, too.
  for (const Day& day : first.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn && day.date >= from && day.date < from + days{14}) {
        record.done.push_back(sample::done_of(first, day, task));
        record.done.back().date = from - days{3};
      }
  std::stable_sort(record.done.begin(), record.done.end(),
                   [](const Done& one, const Done& other) { return one.date < other.date; });
  const Plan next = season.next(from, record);
  REQUIRE(next.fits);
  CHECK(sample::faults_of(next) == "");
  const auto busiest = [](const Plan& plan) {
    int most = 0;
    for (const Day& day : plan.days) {
      int bars = 0;
      for (const Task& task : day.tasks)
        if (task.drill == Drill::learn) bars += task.bars.size();
      most = std::max(most, bars);
    }
    return most;
  };
  const auto last_new = [](const Plan& plan) {
    Date last;
    for (const Day& day : plan.days)
      for (const Task& task : day.tasks)
        if (task.drill == Drill::learn) last = day.date;
    return last;
  };
  CHECK(busiest(next) <= busiest(first));
  CHECK(last_new(next) < last_new(first));
}

TEST_CASE("a learned piece is kept at growing distances until the next date") {
  const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
  for (const char* until : {"2027-03-30", "2027-05-01", "2027-09-18", "2028-03-20"}) {
    INFO(until);
    Terms terms =
        settle(kBy + days{1}, sample::date(until), pieces.front().practice, sample::steady());
    terms.upkeep = true;
    const Plan plan = make_plan(pieces, terms);
    CHECK(plan.fits);
    CHECK(sample::faults_of(plan) == "");
    CHECK(new_chunks(plan) == 0);
    CHECK(runs(plan) >= 5);
    // The gaps grow until they are the best for the time left, and shrink with it to the date.
    std::vector<long> gaps;
    Date last = kBy;
    for (const Day& day : plan.days)
      if (!day.tasks.empty()) {
        gaps.push_back((day.date - last).count());
        last = day.date;
      }
    const auto longest = std::max_element(gaps.begin(), gaps.end());
    CHECK(std::is_sorted(gaps.begin(), longest));
    for (auto gap = longest; gap + 1 < gaps.end(); ++gap) CHECK(*(gap + 1) <= *gap + 1);
    CHECK(plan.by - last <= days{2});
  }
}

TEST_CASE("what was overdue comes back within a week, also where one day cannot hold it all") {
  const std::vector<Piece> pieces = {sample::piece(
      "title: Long Rest\nbars: 200\nmeter: 4/4\ntempo: 60\npractice: {minutes: 15, temper: no}\n")};
  Terms terms = settle(sample::date("2027-03-01"), sample::date("2027-04-15"),
                       pieces.front().practice, sample::steady());
  terms.record = known(pieces[0], terms.from - days{60}, {terms.from - days{50}});
  const Plan plan = make_plan(pieces, terms);
  CHECK(plan.fits);
  CHECK(sample::faults_of(plan) == "");
  std::set<int> back;
  double minutes = 0;
  for (const Day& day : plan.days)
    if (day.date < terms.from + days{7})
      for (const Task& task : day.tasks)
        if (retrieves(task.drill)) {
          CHECK(task.drill != Drill::run_through);
          minutes += task.minutes;
          back.insert(task.chunks.begin(), task.chunks.end());
        }
  CHECK(back.size() == plan.pieces[0].chunks.size());
  CHECK(minutes > 15);
}

TEST_CASE("Temper that only slips ask for makes no plan a misfit") {
  const std::vector<Piece> pieces = {sample::piece(
      "title: Last Days\nbars: 16\nmeter: 4/4\ntempo: 120\npractice: {minutes: 4}\n")};
  Terms terms = settle(sample::date("2027-03-10"), sample::date("2027-03-15"),
                       pieces.front().practice, sample::steady());
  const Date from = terms.from;
  terms.record = known(pieces[0], from - days{20},
                       {from - days{10}, from - days{7}, from - days{4}, from - days{1}},
                       {1, 3, 5, 7, 9, 11, 13, 15});
  const Plan plan = make_plan(pieces, terms);
  for (const Chunk& chunk : plan.pieces[0].chunks) CHECK(chunk.raised);
  CHECK(plan.fits);
  CHECK(sample::faults_of(plan) == "");
}

TEST_CASE("with hardly a day left the run-throughs that fit are still set") {
  const std::vector<Piece> pieces = {sample::piece(
      "title: Eve\nbars: 16\nmeter: 4/4\ntempo: 120\npractice: {minutes: 15, temper: no}\n")};
  Terms terms = settle(sample::date("2027-03-13"), sample::date("2027-03-15"),
                       pieces.front().practice, sample::steady());
  terms.record = known(pieces[0], terms.from - days{20}, {terms.from - days{2}});
  const Plan plan = make_plan(pieces, terms);
  CHECK(plan.fits);  // five on three days cannot be had: it says so
  CHECK(plan.gave_way == std::vector<GaveWay>{GaveWay::passes, GaveWay::run_throughs});
  CHECK(runs(plan) == 2);
  CHECK(sample::faults_of(plan) == "");
}
