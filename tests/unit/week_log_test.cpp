#include "log/write_week_log.h"

#include <set>

#include "catch.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "random_work.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"

using namespace cahier;
using sample::count_of;

namespace {

std::string said(const Diagnostics& diagnostics) {
  std::string text;
  for (const Diagnostic& one : diagnostics.all()) text += compose(one);
  return text;
}

// Entries that ask for mended bars: of a day, for each piece with slow passes.
int entries_with_slow_passes(const Plan& plan) {
  int number = 0;
  for (const Day& day : plan.days) {
    std::set<int> pieces;
    for (const Task& task : day.tasks)
      if (task.drill == Drill::slow_pass) pieces.insert(task.piece);
    number += static_cast<int>(pieces.size());
  }
  return number;
}

// A day of each week of the plan.
std::vector<Date> weeks_of(const Plan& plan) {
  std::vector<Date> weeks;
  for (const Day& day : plan.days)
    if (weeks.empty() || weekday_index(day.date) == 0) weeks.push_back(day.date);
  return weeks;
}

}  // namespace

TEST_CASE("week log: what it writes is read without a word, and nothing is done") {
  int programmes = 0;
  int runs = 0;
  int starts = 0;
  for (unsigned seed = 1; seed <= 120; ++seed) {
    sample::RandomWork random(seed);
    const std::vector<Piece> pieces = random.pieces(40);
    const Date from = sample::date("2027-01-04") + days{random.number(0, 60)};
    const Wishes wishes = random.wishes(from);
    Terms terms = settle(from, from + days{random.number(5, 90)}, wishes, sample::steady());
    const Plan plan = make_plan(pieces, terms);
    CAPTURE(seed);
    std::vector<Log> logs;
    std::size_t tasks = 0;
    int throws = 0;
    int mended = 0;
    double minutes = 0;
    for (const Date day : weeks_of(plan)) {
      const std::string text = week_log(plan, terms, english_words(), day);
      Diagnostics diagnostics;
      auto log = read_log(Source("week.yaml", text), diagnostics);
      INFO(text);
      REQUIRE(said(diagnostics) == "");
      REQUIRE(log);
      tasks += log->editions.front().tasks.size();
      for (const LoggedTask& task : log->editions.front().tasks) {
        throws += task.throws;
        minutes += task.minutes.value_or(0);
      }
      logs.push_back(std::move(*log));
      runs += text.find("run: ") != std::string::npos ? 1 : 0;
      mended += count_of(text, "done: [], minutes: , slips: [], mended: []");
      starts += text.find("starts: {") != std::string::npos ? 1 : 0;
    }
    programmes += pieces.size() > 1 ? 1 : 0;
    std::size_t planned = 0;
    int thrown = 0;
    for (const Day& day : plan.days) {
      planned += day.tasks.size();
      for (const Task& task : day.tasks) thrown += task.throws;
    }
    CHECK(tasks == planned);
    CHECK(throws == thrown);
    CHECK(mended == entries_with_slow_passes(plan));
    CHECK(minutes == Approx(plan.minutes_total()));

    Terms next = terms;
    next.from = terms.by;
    next.by = terms.by + days{30};
    Diagnostics diagnostics;
    const Record record = record_of(logs, pieces, next, diagnostics);
    REQUIRE(said(diagnostics) == "");
    CHECK(record.done.empty());
    CHECK(record.minutes.empty());
    CHECK(record.edition == 2);
    REQUIRE(record.last);
    CHECK(record.last->tasks == static_cast<int>(planned));
    CHECK(record.last->tasks_done == 0);
  }
  CHECK(programmes > 10);
  CHECK(runs > 10);
  CHECK(starts > 10);
}

TEST_CASE("week log: all of a week done is what the plan had") {
  const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
  const Terms terms =
      settle(sample::date("2027-01-04"), sample::date("2027-03-20"), {}, sample::steady());
  const Plan plan = make_plan(pieces, terms);
  std::string text;
  for (const Date day : weeks_of(plan)) text += week_log(plan, terms, english_words(), day);
  for (std::size_t at = 0; (at = text.find("done: []", at)) != std::string::npos;)
    text.replace(at, 8, "done: all");
  Diagnostics diagnostics;
  const auto log = read_log(Source("season.yaml", text), diagnostics);
  REQUIRE(log);
  Terms next = terms;
  next.from = terms.by;
  next.by = terms.by + days{30};
  const Record record = record_of({*log}, pieces, next, diagnostics);
  REQUIRE(said(diagnostics) == "");
  std::vector<const Task*> tasks;
  std::vector<Date> dates;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      tasks.push_back(&task);
      dates.push_back(day.date);
    }
  REQUIRE(record.done.size() == tasks.size());
  for (std::size_t at = 0; at < tasks.size(); ++at) {
    const Done& done = record.done[at];
    CHECK(done.date == dates[at]);
    CHECK(done.drill == tasks[at]->drill);
    if (done.drill != Drill::cue_starts) CHECK(done.bars == tasks[at]->bars);
    CHECK(done.slips.has_value() == (done.drill != Drill::run_through));
    CHECK(done.starts.size() == tasks[at]->cues.size());
  }
  CHECK(record.last->tasks_done == record.last->tasks);
  CHECK(record.last->bars_learned == record.last->bars_new);
  CHECK(record.last->bars_learned == 36);  // 48 without the twelve of the return
  CHECK(record.last->days_behind == 0);
}

TEST_CASE("week log: a programme has an entry for each piece, and upkeep says so") {
  std::vector<Piece> pieces = {sample::piece(sample::kStudy), sample::piece(sample::kLantern)};
  Terms terms =
      settle(sample::date("2027-01-04"), sample::date("2027-04-20"), {}, sample::steady());
  terms.minutes.fill(30);
  terms.upkeep = true;
  terms.record.edition = 7;
  const Plan plan = make_plan(pieces, terms);
  const std::string text = week_log(plan, terms, english_words(), sample::date("2027-01-20"));
  CHECK(text.find("# 18–24 January 2027\n") == 0);
  CHECK(text.find("- edition: 7\n  from: 2027-01-04\n  by: 2027-04-20\n  minutes: 30\n"
                  "  keep: yes\n  cues: [[1, ") != std::string::npos);
  CHECK(text.find("piece: 2, done: []") != std::string::npos);
  CHECK(text.find(", piece: 2, minutes: ") != std::string::npos);
}
