#include "log/record_of_log.h"

#include <algorithm>

#include "catch.h"
#include "log/read_log.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

// Logs beside the study (48 bars, 33–44 the same as 1–12), planned again from 1 March 2027.
class Reading {
 public:
  explicit Reading(const std::vector<std::string>& logs, const std::string& from = "2027-03-01",
                   LaterEntries later = LaterEntries::refused)
      : Reading({sample::piece(sample::kStudy)}, logs, from, later) {}

  Reading(const std::vector<Piece>& pieces, const std::vector<std::string>& texts,
          const std::string& from, LaterEntries later = LaterEntries::refused) {
    const Terms terms =
        settle(sample::date(from), sample::date("2027-03-20"), {}, sample::steady());
    Diagnostics diagnostics;
    std::vector<Log> logs;
    for (std::size_t at = 0; at < texts.size(); ++at) {
      const std::string name = at == 0 ? "log.yaml" : "more.yaml";
      auto log = read_log(Source(name, texts[at]), diagnostics);
      REQUIRE(log);
      logs.push_back(std::move(*log));
    }
    record = record_of(logs, pieces, terms, diagnostics, later);
    for (const Diagnostic& one : diagnostics.all()) {
      said += one.severity == Diagnostic::Severity::warning ? "warning " : "";
      said += std::to_string(one.at.line) + ":" + std::to_string(one.at.column) + " " +
              one.message + "\n";
      hints += one.hint + "\n";
    }
  }

  Record record;
  std::string said;
  std::string hints;
};

std::string told(const std::string& entries, const std::string& tasks = "") {
  return "- {edition: 1, from: 2027-01-04, by: 2027-03-20, minutes: 15, cues: [1, 9, 17, 25, 33, "
         "41, "
         "45], tasks: {0104-1: {learn: 1-4, chunk: A1}, 0105-1: {recall: 1-4}, 0105-2: {learn: "
         "5-8, "
         "chunk: A2}, 0106-1: {join: 1-8}, 0106-2: {cue_starts: [1], throws: 0}, 0107-1: "
         "{run_through: 1-48}, 0107-2: {write_out: 1-4}" +
         tasks + "}}\n" + entries;
}

const std::string kAllLearned = "- {date: 2027-01-04, learned: bars 1-48}\n";

}  // namespace

TEST_CASE("record: codes become what was done, on the day it was done") {
  const Reading read(
      {told("- {date: 2027-01-06, done: [0105-2, 1], slips: [7, 7], minutes: 14}\n"
            "- {date: 2027-01-04, done: all, minutes: 6}\n"
            "- {date: 2027-01-06, minutes: 2.5}\n")});
  CHECK(read.said == "");
  const auto& done = read.record.done;
  REQUIRE(done.size() == 3);
  CHECK(iso(done[0].date) == "2027-01-04");
  CHECK(done[0].drill == Drill::learn);
  CHECK(done[0].bars == BarRange{1, 4});
  CHECK(done[1].drill == Drill::learn);
  CHECK(done[1].bars == BarRange{5, 8});
  CHECK(iso(done[1].date) == "2027-01-06");
  CHECK(done[1].slips == std::vector<int>{});
  CHECK(done[2].drill == Drill::join);
  CHECK(done[2].slips == std::vector<int>{7, 7});
  REQUIRE(read.record.minutes.size() == 2);
  CHECK(read.record.minutes[0].minutes == 6);
  CHECK(read.record.minutes[1].minutes == 16.5);
  CHECK(read.record.edition == 2);
  CHECK_FALSE(read.record.empty());
}

TEST_CASE("record: learned and recalled bars without codes, and minutes of a chunk") {
  const Reading read(
      {told("- {date: 2027-01-04, done: [1], learned: {A1: {minutes: 11}}}\n"
            "- {date: 2027-01-05, learned: {A2: {minutes: 9}, bars 37-40: {minutes: "
            "8}}}\n"
            "- {date: 2027-01-06, recalled: [bars 1-8, 33-34]}\n")});
  // 37–40 return to 5–8, which A2 is.
  CHECK(read.said ==
        "3:50 bars 37–40 are learned here, but bar 37 was learned on 2027-01-05 (line 3)\n");
  const Reading sound(
      {told("- {date: 2027-01-04, done: [1], learned: {A1: {minutes: 11}}}\n"
            "- {date: 2027-01-05, learned: {bars 37-40: {minutes: 8}}}\n"
            "- {date: 2027-01-06, recalled: [bars 1-8, 33-34]}\n")});
  CHECK(sound.said == "");
  const auto& done = sound.record.done;
  REQUIRE(done.size() == 4);
  CHECK(done[0].minutes == 11);
  CHECK(done[1].bars == BarRange{5, 8});
  CHECK(done[1].minutes == 8);
  CHECK(done[2].drill == Drill::recall);
  CHECK(done[3].bars == BarRange{33, 34});
  CHECK(sound.record.last->tasks_done == 2);
}

TEST_CASE("record: cue starts told one by one are one with their code") {
  const Reading read(
      {told(kAllLearned + "- {date: 2027-01-06, done: [2], starts: {hit: [3, 1], miss: [4, 4]}, "
                          "slips: [27, 9]}\n")});
  CHECK(read.said == "3:82 a slip at bar 9, but nothing done on 2027-01-06 includes it\n");
  const Reading sound(
      {told(kAllLearned + "- {date: 2027-01-06, done: [2], starts: {hit: [3], miss: [4, 4]}, "
                          "slips: [27, 3]}\n"
                          "- {date: 2027-01-07, starts: {hit: [2]}}\n")});
  CHECK(sound.said == "");
  REQUIRE(sound.record.done.size() == 3 + 1);  // 1–32, 45–48, and two
  const Done& starts = sound.record.done[2];
  CHECK(starts.drill == Drill::cue_starts);
  CHECK(starts.starts == std::vector<int>{1});
  CHECK(starts.hit == std::vector<int>{17});
  CHECK(starts.missed == std::vector<int>{25, 25});
  CHECK(starts.bars == BarRange{1, 25});
  CHECK(starts.slips == std::vector<int>{27, 3});
  CHECK(sound.record.done[3].hit == std::vector<int>{9});
  const Reading met(
      {told(kAllLearned + "- {date: 2027-01-06, done: [2], starts: {hit: [1, 3]}}\n")});
  CHECK(met.record.done[2].starts.empty());
  CHECK(met.record.done[2].hit == std::vector<int>{1, 17});
}

TEST_CASE("record: dice may begin anywhere, and all cue starts of a day are told together") {
  const std::string dice = ", 0106-3: {cue_starts: [3], throws: 4}";
  const Reading untold(
      {told(kAllLearned + "- {date: 2027-01-06, done: [3], slips: [30]}\n", dice)});
  CHECK(untold.said == "");
  CHECK(untold.record.done[2].slips == std::vector<int>{30});
  const Reading both({told(
      kAllLearned + "- {date: 2027-01-06, done: [2, 3], starts: {hit: [5], miss: [3]}}\n", dice)});
  CHECK(both.said == "");
  REQUIRE(both.record.done.size() == 3);
  CHECK(both.record.done[2].starts == std::vector<int>{1});
  CHECK(both.record.done[2].hit == std::vector<int>{33});
  CHECK(both.record.done[2].missed == std::vector<int>{17});
  const Reading apart({told(kAllLearned + "- {date: 2027-01-06, done: [2, 3]}\n", dice)});
  REQUIRE(apart.record.done.size() == 4);
}

TEST_CASE("record: run-throughs tell of themselves") {
  const Reading read(
      {told(kAllLearned +
            "- {date: 2027-01-07, done: [1], run: [{slips: [17, 43], rejoined: [21], recorded: "
            "yes}, {slips: none, listener: no}]}\n"
            "- {date: 2027-01-08, run: {recorded: no}}\n")});
  CHECK(read.said == "");
  REQUIRE(read.record.done.size() == 5);
  const Done& first = read.record.done[2];
  CHECK(first.drill == Drill::run_through);
  CHECK(first.bars == BarRange{1, 48});
  CHECK(first.slips == std::vector<int>{17, 43});
  CHECK(first.rejoined == std::vector<int>{21});
  CHECK(first.recorded == true);
  CHECK_FALSE(first.listener);
  CHECK(read.record.done[3].slips == std::vector<int>{});
  CHECK(read.record.done[3].listener == false);
  CHECK_FALSE(read.record.done[4].slips);
  const Reading code({told(kAllLearned + "- {date: 2027-01-07, done: [1]}\n")});
  CHECK_FALSE(code.record.done[2].slips);
}

TEST_CASE("record: what became of the last edition") {
  const std::string more = ", 0108-1: {learn: 9-12, chunk: A3}, 0115-1: {learn: 13-16, chunk: A4}";
  const auto last = [&](const std::string& entries, const std::string& from) {
    const Reading read({told(entries, more)}, from);
    CHECK(read.said == "");
    return *read.record.last;
  };
  const LastEdition behind = last("- {date: 2027-01-04, done: [1]}\n", "2027-01-11");
  CHECK(behind.number == 1);
  CHECK(iso(behind.from) == "2027-01-04");
  CHECK(behind.minutes == 15);
  CHECK(behind.tasks == 8);
  CHECK(behind.tasks_done == 1);
  CHECK(behind.bars_new == 12);
  CHECK(behind.bars_learned == 4);
  CHECK(behind.days_behind == 2);
  CHECK(last("", "2027-01-05").days_behind == 1);
  CHECK(last("- {date: 2027-01-04, learned: bars 1-12}\n", "2027-01-11").days_behind == 0);
  CHECK(last("- {date: 2027-01-04, learned: bars 1-12}\n", "2027-01-11").tasks_done == 3);
  // Bars of 15 January are learned before their time.
  CHECK(last("- {date: 2027-01-04, learned: bars 1-16}\n", "2027-01-11").days_behind == -1);
}

TEST_CASE("record: bars set to be learned and still not learned are kept with their day") {
  const std::string more = ", 0108-1: {learn: 9-12, chunk: A3}, 0115-1: {learn: 13-16, chunk: A4}";
  const Reading read({told("- {date: 2027-01-04, done: [1]}\n"
                           "- {date: 2027-01-08, learned: bars 9-10}\n",
                           more)},
                     "2027-01-11");
  CHECK(read.said == "");
  const std::vector<MissedBars>& missed = read.record.last->missed;
  REQUIRE(missed.size() == 2);
  CHECK(missed[0].bars == BarRange{5, 8});
  CHECK(iso(missed[0].set_for) == "2027-01-05");
  CHECK(missed[1].bars == BarRange{11, 12});
  CHECK(iso(missed[1].set_for) == "2027-01-08");
}

TEST_CASE("record: a mended bar is kept beside its slip") {
  const Reading read({told("- {date: 2027-01-04, done: [1]}\n"
                           "- {date: 2027-01-05, done: [1, 2], slips: [3, 4], mended: 3}\n"
                           "- {date: 2027-01-06, done: [1], slips: [7], mended: []}\n"
                           "- {date: 2027-01-06, slips: [2], mended: none}\n")},
                     "2027-01-11");
  CHECK(read.said == "");
  REQUIRE(read.record.done.size() == 4);
  CHECK(read.record.done[1].slips == std::vector<int>{3, 4});
  CHECK(read.record.done[1].mended == std::vector<int>{3});
  CHECK(read.record.done[3].slips == std::vector<int>{7, 2});
  CHECK(read.record.done[3].mended.empty());
}

TEST_CASE("record: minutes over ten times what was planned are doubted, and count as ten times") {
  // Told: 5.5 minutes of learning on the 4th, a recall and learning on the 5th, nothing on the 9th.
  const auto reading = [](const std::string& entries) {
    return Reading(
        {"- {edition: 1, from: 2027-01-04, by: 2027-03-20, minutes: 15, cues: [1], tasks: "
         "{0104-1: {learn: 1-4, chunk: A1, minutes: 5.5}, 0105-1: {recall: 1-4, minutes: "
         "1}, 0105-2: {learn: 5-8, chunk: A2, minutes: 5.5}, 0106-1: {join: 1-8}}}\n" +
         entries},
        "2027-01-11");
  };
  const Reading at_most = reading("- {date: 2027-01-05, minutes: 65}\n");
  CHECK(at_most.said == "");
  CHECK(at_most.record.minutes[0].minutes == 65);
  const Reading beyond = reading(
      "- {date: 2027-01-05, minutes: 40}\n"
      "- {date: 2027-01-05, starts: , minutes: 25.5}\n");
  CHECK(beyond.said == "warning 3:41 65.5 minutes on 2027-01-05, over ten times the 6.5 planned\n");
  CHECK(beyond.hints ==
        "expected at most 65: correct it if it is a mistake; else it counts as that\n");
  CHECK(beyond.record.minutes[0].minutes == 65);
  // What was missed is made up: 12 minutes were planned for what was done.
  const Reading made_up = reading("- {date: 2027-01-05, done: [0104-1, 1, 2], minutes: 120}\n");
  CHECK(made_up.said == "");
  CHECK(made_up.record.minutes[0].minutes == 120);
  // Of a chunk, too.
  const Reading chunk = reading("- {date: 2027-01-04, learned: {A1: {minutes: 600}}}\n");
  CHECK(chunk.said == "warning 2:46 600 minutes on 2027-01-04, over ten times the 5.5 planned\n");
  CHECK(chunk.record.done[0].minutes == 55);
  // Where the plan is not known, or nothing was planned, nothing is doubted.
  CHECK(reading("- {date: 2027-01-06, minutes: 600}\n").said == "");
  CHECK(reading("- {date: 2027-01-09, minutes: 600}\n").said == "");
  // What was done ahead of its day counts by what the method expects of it.
  CHECK(reading("- {date: 2027-01-05, learned: bars 9-24, minutes: 100}\n").said == "");
}

TEST_CASE("record: what no line gives is worked out again") {
  const Piece study = sample::piece(sample::kStudy);
  const Plan plan = sample::plan(sample::kStudy);
  const Reading read({"- {edition: 1, from: 2027-01-04, by: 2027-03-20}\n"
                      "- {date: 2027-01-04, done: all}\n"
                      "- {date: 2027-01-05, done: all}\n"
                      "- {date: 2027-01-06, learned: A3}\n"
                      "- {date: 2027-01-06, starts: {hit: [1]}}\n"},
                     "2027-01-11");
  CHECK(read.said == "");
  const std::size_t two_days = plan.days[0].tasks.size() + plan.days[1].tasks.size();
  REQUIRE(read.record.done.size() == two_days + 2);
  CHECK(read.record.done[0].bars == plan.days[0].tasks[0].bars);
  CHECK(read.record.done[two_days].bars == plan.pieces[0].chunks[2].bars);
  CHECK(read.record.done.back().hit == std::vector<int>{1});
  int tasks = 0;
  for (int day = 0; day < 7; ++day) tasks += static_cast<int>(plan.days[day].tasks.size());
  CHECK(read.record.last->tasks == tasks);
}

TEST_CASE("record: a log without an edition is of a first one, which is said") {
  const Reading read({"- {date: 2027-01-05, done: [0104-1]}\n- {date: 2027-01-05, done: [1]}\n"});
  CHECK(read.said ==
        "warning 1:29 no line says which workbook this log is for; assuming one that began on "
        "2027-01-04\n");
  CHECK(read.hints ==
        "add a line with the dates on its cover: - {edition: 1, from: 2027-01-04, by: "
        "2027-03-20}\n");
  CHECK(read.record.edition == 2);
  CHECK(read.record.done.size() == 2);
  const Reading bars({"- {date: 2027-01-05, learned: bars 1-4}\n"});
  CHECK(bars.said == "");
  CHECK(bars.record.edition == 2);
  CHECK_FALSE(bars.record.last);
  CHECK(Reading({"[]"}).record.edition == 1);
  CHECK(Reading({"[]"}).record.empty());
}

TEST_CASE("record: an entry in which nothing is told is as if it were not there") {
  const Reading read(
      {told("- {date: 2027-03-02, done: [], minutes: , slips: []}\n"
            "- {date: 2026-01-02, starts: {hit: [], miss: []}, run: {slips: }}\n")});
  CHECK(read.said == "");
  CHECK(read.record.done.empty());
}

TEST_CASE("record: several logs and several editions are read as one") {
  const std::string second =
      "- {edition: 2, from: 2027-01-11, by: 2027-03-20, tasks: {0112-1: {recall: 1-4}}}\n"
      "- {date: 2027-01-12, done: [1, 0105-2]}\n"
      "- {edition: 2, from: 2027-01-11, tasks: {0112-1: {recall: 1-4}, 0119-1: {recall: 5-8}}}\n"
      "- {date: 2027-01-19, done: [1]}\n";
  const Reading read({told("- {date: 2027-01-04, done: [1]}\n"), second});
  CHECK(read.said == "");
  CHECK(read.record.edition == 3);
  REQUIRE(read.record.done.size() == 4);
  CHECK(read.record.last->number == 2);
  CHECK(read.record.done[1].bars == BarRange{5, 8});

  // The log may already have the line of the new workbook.
  const Reading same({told("- {date: 2027-01-04, done: [1]}\n"), second}, "2027-01-11",
                     LaterEntries::left_out);
  CHECK(same.said == "");
  CHECK(same.record.edition == 2);
  CHECK(same.record.done.size() == 1);
  CHECK(same.record.last->number == 1);

  CHECK(Reading({"- {edition: 1, from: 2027-01-04, by: 2027-03-20}\n"
                 "- {edition: 1, from: 2027-01-05, by: 2027-03-20}\n",
                 "- {edition: 1, from: 2027-01-04, by: 2027-03-21}\n"
                 "- {edition: 2, from: 2027-01-04, by: 2027-03-20}\n"
                 "- {edition: 3, from: 2027-03-02}\n"})
            .said ==
        "2:22 edition 1 has a different date on line 1: 2027-01-04\n"
        "1:38 edition 1 has a different date on line 1 of log.yaml: 2027-03-20\n"
        "2:13 edition 2 does not begin after edition 1, which began on 2027-01-04\n"
        "3:22 this edition begins on 2027-03-02, after the new workbook begins on 2027-03-01\n");
}

TEST_CASE("record: an edition of upkeep finds everything learned") {
  const Reading read(
      {"- {edition: 1, from: 2027-02-01, by: 2027-03-20, keep: yes, cues: [1]}\n"
       "- {date: 2027-02-02, recalled: bars 1-48}\n"});
  CHECK(read.said == "");
  CHECK(read.record.done.front().drill == Drill::learn);
  CHECK(read.record.done.back().drill == Drill::recall);
  const Done& performed = read.record.done[read.record.done.size() - 2];
  CHECK(performed.drill == Drill::run_through);
  CHECK(iso(performed.date) == "2027-01-31");

  // Of several pieces in the order of the dates.
  const Reading two({sample::piece(sample::kStudy), sample::piece(sample::kLantern)},
                    {"- {edition: 1, from: 2027-02-01, by: 2027-03-20, keep: yes}\n"},
                    "2027-03-01");
  CHECK(two.said == "");
  CHECK(two.record.done.back().piece == 1);
  CHECK(std::ranges::is_sorted(two.record.done, {}, &Done::date));

  // When something is reported, only what is missing is added.
  const Reading more(
      {"- {date: 2027-01-05, learned: bars 1-32}\n"
       "- {edition: 1, from: 2027-01-04, by: 2027-01-31}\n"
       "- {edition: 2, from: 2027-02-01, by: 2027-03-20, keep: yes, cues: [1]}\n"
       "- {date: 2027-02-02, recalled: bars 1-48}\n"});
  CHECK(more.said == "");
  REQUIRE(more.record.done.size() == 3);
  CHECK(more.record.done[1].drill == Drill::learn);
  CHECK(iso(more.record.done[1].date) == "2027-01-31");
  CHECK(more.record.done[1].bars == BarRange{45, 48});
}

TEST_CASE("record: contradictions are named, each at its place") {
  CHECK(Reading({told("- {date: 2027-01-03, learned: bars 1-4}\n"
                      "- {date: 2027-03-01, learned: bars 5-8}\n")})
            .said ==
        "2:10 2027-01-03 is before the first day of the first workbook, 2027-01-04\n"
        "3:10 2027-03-01 is not before the first day of the new workbook, 2027-03-01\n");
  CHECK(Reading({"- {edition: 1, from: 2027-01-04, by: 2027-02-01}\n"
                 "- {date: 2027-02-02, learned: bars 1-4}\n"})
            .said == "2:10 2027-02-02 is after the date of that workbook, 2027-02-01\n");
  // The performance itself can be reported.
  CHECK(Reading({"- {edition: 1, from: 2027-01-04, by: 2027-02-01}\n"
                 "- {date: 2027-01-05, learned: bars 1-48}\n"
                 "- {date: 2027-02-01, run: {slips: none}}\n"})
            .said == "");
  CHECK(Reading({told("- {date: 2027-01-04, done: [1, 0105-7], learned: [A9, bars 48-49, 0]}\n"
                      "- {date: 2027-01-05, starts: {hit: [8]}, recalled: bars 49-50}\n"
                      "- {date: 2027-01-05, piece: 2, learned: bars 5-8}\n"
                      "- {date: 2027-01-06, piece: Lantern Stud, learned: bars 5-8}\n")})
            .said ==
        "2:32 no task has the code 0105-7; did you mean \"0105-1\"?\n"
        "2:51 there is no chunk A9; did you mean \"A1\"?\n"
        "2:55 there is no bar 49\n"
        "2:67 there is no bar 0\n"
        "3:37 there is no cue start 8\n"
        "3:52 there is no bar 49\n"
        "4:29 there is no piece 2\n"
        "5:29 there is no piece \"Lantern Stud\"; did you mean \"Lantern Study\"?\n");
  CHECK(Reading({told("- {date: 2027-01-04, done: [1]}\n"
                      "- {date: 2027-01-05, done: [1, 1, 0104-1]}\n"
                      "- {date: 2027-01-06, done: [0105-1], learned: [A1, bars 3-5]}\n")})
            .said ==
        "3:32 0105-1 is already listed as done, on line 3\n"
        "3:35 0104-1 is already listed as done, on line 2\n"
        "4:29 0105-1 is already listed as done, on line 3\n"
        "4:48 bars 1–4 are learned on 2027-01-06 here, but on 2027-01-04 according to line 2\n"
        "4:52 bars 3–5 are learned on 2027-01-06 here, but on 2027-01-04 according to line 2\n");
  CHECK(Reading({told("- {date: 2027-01-04, learned: bars 1-4}\n"
                      "- {date: 2027-01-05, done: [2], learned: [A2, A2, bars 2-3]}\n")})
            .said ==
        "3:47 bars 5–8 are learned here, but bar 5 was learned on 2027-01-05 (line 3)\n"
        "3:51 bars 2–3 are learned here, but bar 2 was learned on 2027-01-04 (line 2)\n");
}

TEST_CASE("record: nothing is played before it is learned") {
  const auto said = [](const std::string& entries) { return Reading({told(entries)}).said; };
  const std::string some = "- {date: 2027-01-04, learned: bars 1-8}\n";
  CHECK(said("- {date: 2027-01-05, done: [1]}\n") ==
        "2:29 0105-1, a recall of bars 1–4, includes bar 1, which was not learned by 2027-01-05\n");
  CHECK(said("- {date: 2027-01-06, done: [1]}\n") ==
        "2:29 0106-1, a join of bars 1–8, includes bar 1, which was not learned by 2027-01-06\n");
  CHECK(said("- {date: 2027-01-06, done: [2]}\n") ==
        "2:29 0106-2, a cue start, begins at bar 1, which was not learned by 2027-01-06\n");
  CHECK(said(some + "- {date: 2027-01-07, done: [1]}\n") ==
        "3:29 0107-1, a run-through of bars 1–48, includes bar 9, which was not learned by "
        "2027-01-07\n");
  CHECK(said(some + "- {date: 2027-01-07, run: {slips: none}}\n") ==
        "3:27 this run-through of bars 1–48 includes bar 9, which was not learned by 2027-01-07\n");
  CHECK(said("- {date: 2027-01-07, done: [2]}\n") ==
        "2:29 0107-2, a write-out of bars 1–4, includes bar 1, which was not learned by "
        "2027-01-07\n");
  CHECK(said(some + "- {date: 2027-01-07, starts: {hit: [1, 3]}, recalled: bars 6-9}\n") ==
        "3:40 this cue start begins at bar 17, which was not learned by 2027-01-07\n"
        "3:55 this recall of bars 6–9 includes bar 9, which was not learned by 2027-01-07\n");
  // The same day will do, in any order; what is missing is said once.
  CHECK(said("- {date: 2027-01-04, recalled: bars 1-4}\n" + some) == "");
  CHECK(said("- {date: 2027-01-04, recalled: bars 1-4}\n"
             "- {date: 2027-01-05, recalled: bars 1-4}\n") ==
        "2:32 this recall of bars 1–4 includes bar 1, which was not learned by 2027-01-04\n");
  // A return is learned with its source.
  CHECK(said(some + "- {date: 2027-01-05, recalled: bars 33-40}\n") == "");
}

TEST_CASE("record: slips belong to what was played from memory that day") {
  const auto said = [](const std::string& entries) { return Reading({told(entries)}).said; };
  const std::string all = kAllLearned;
  CHECK(said(all + "- {date: 2027-01-05, done: [1], slips: [5, 49]}\n") ==
        "3:41 a slip at bar 5, but nothing done on 2027-01-05 includes it\n"
        "3:44 there is no bar 49\n");
  CHECK(said(all + "- {date: 2027-01-05, slips: 5}\n") ==
        "3:29 a slip at bar 5, but nothing done on 2027-01-05 includes it\n");
  CHECK(said(all + "- {date: 2027-01-07, done: [1], slips: [5]}\n") ==
        "3:41 only a run-through played bar 5 from memory that day\n");
  CHECK(said(all + "- {date: 2027-01-07, run: {slips: [50], rejoined: [60]}}\n") ==
        "3:36 there is no bar 50\n3:52 there is no bar 60\n");
  CHECK(said(all + "- {date: 2027-01-07, run: {rejoined: [21]}}\n") ==
        "3:39 rejoined, but no slip is given\n");
  CHECK(said(all + "- {date: 2027-01-07, run: {slips: none, rejoined: [21]}}\n") ==
        "3:52 rejoined, but no slip is given\n");
  CHECK(said(all + "- {date: 2027-01-07, run: {slips: [30, 17], rejoined: [21, 16]}}\n") ==
        "3:60 rejoined at bar 16, before the first slip, at bar 17\n");
  CHECK(said("- {date: 2027-01-04, done: [1], slips: [2]}\n") ==
        "warning 2:41 the slip at bar 2 is not counted: the bar was not yet played from memory "
        "that day\n");
  CHECK(said("- {date: 2027-01-05, minutes: 1000}\n- {date: 2027-01-05, minutes: 441}\n") ==
        "3:31 the minutes for 2027-01-05 add up to more than a day\n");
  // A recall before a run-through takes the slip, and of two recalls the first.
  const Reading read({told(all + "- {date: 2027-01-07, done: [1, 0105-1], slips: [2], recalled: "
                                 "bars 1-8}\n")});
  CHECK(read.said == "");
  CHECK(read.record.done[2].bars == BarRange{1, 4});
  CHECK(read.record.done[2].slips == std::vector<int>{2});
  CHECK(read.record.done[4].slips == std::vector<int>{});
}

TEST_CASE("record: the line of an edition agrees with the pieces and with itself") {
  CHECK(Reading({"- {edition: 1, from: 2027-01-04, by: 2027-02-04, cues: [1, 60], tasks: {0104-1: "
                 "{learn: 47-50}, 0105-1: {recall: 1-4, piece: 2}, 0301-1: {recall: 1-4}, 0106-1: "
                 "{recall: 1-4}}}\n"
                 "- {edition: 1, from: 2027-01-04, tasks: {0106-1: {recall: 1-5}}}\n"
                 "- {edition: 2, from: 2027-02-04, cues: [[1], [2]]}\n"
                 "- {edition: 3, from: 1927-02-04}\n"})
            .said ==
        "1:60 there is no bar 60\n"
        "1:89 there is no bar 49\n"
        "1:126 there is no piece 2\n"
        "1:130 0301-1 is not the code of a day in this edition\n"
        "2:42 0106-1 stands for something else on line 1\n"
        "3:13 cue starts for 2 pieces, but there is 1\n"
        "4:22 this day is more than ten years before the date\n");
}

TEST_CASE("record: in a programme an entry without codes says which piece it is of") {
  std::vector<Piece> pieces = {sample::piece(sample::kStudy), sample::piece(sample::kLantern)};
  pieces[1].title = "Other";
  const std::string edition =
      "- {edition: 1, from: 2027-01-04, by: 2027-03-20, cues: [[1], [1, 9]], tasks: {0104-1: "
      "{learn: 1-4}, 0104-2: {learn: 0-4, piece: 2, chunk: A1}}}\n";
  const Reading read(pieces,
                     {edition + "- {date: 2027-01-04, done: [1, 2]}\n"
                                "- {date: 2027-01-05, piece: 2, recalled: bars 0-4, slips: 3}\n"
                                "- {date: 2027-01-05, piece: Other, learned: bars 5-9, starts: "
                                "{hit: [2]}}\n"},
                     "2027-02-01");
  CHECK(read.said == "");
  REQUIRE(read.record.done.size() == 5);
  CHECK(read.record.done[1].piece == 1);
  CHECK(read.record.done[4].hit == std::vector<int>{9});
  const Reading unsaid(pieces,
                       {edition + "- {date: 2027-01-04, done: [1, 2], learned: bars 5-8}\n"
                                  "- {date: 2027-01-05, recalled: bars 1-4, slips: 3, run: "
                                  "{slips: none}}\n"
                                  "- {date: 2027-01-06, piece: 3, starts: {hit: [1]}}\n"
                                  "- {date: 2027-01-06, slips: [], starts: , minutes: 3}\n"},
                       "2027-02-01");
  CHECK(unsaid.said ==
        "2:10 this entry does not say which piece it is for\n"
        "3:10 this entry does not say which piece it is for\n"
        "4:29 there is no piece 3\n");
}

TEST_CASE("record: the cue starts of the last workbook keep their numbers") {
  CHECK(Reading({"- {date: 2027-01-04, learned: bars 1-48}\n"}).record.starts.empty());
  const Reading first({told("")});
  REQUIRE(first.record.starts.size() == 1);
  CHECK(first.record.starts[0].bars == std::vector<int>{1, 9, 17, 25, 33, 41, 45});
  CHECK(first.record.starts[0].before == 7);
  // A second one, which has one more at the end, then a third.
  const std::string second =
      "- {edition: 2, from: 2027-02-01, by: 2027-03-20, cues: [1, 9, 17, 25, 33, 41, 45, 6]}\n";
  const std::string third =
      "- {edition: 3, from: 2027-02-15, by: 2027-03-20, cues: [1, 9, 17, 25, 33, 41, 45, 6, 3]}\n";
  const Reading all({told("") + third + second});
  CHECK(all.said == "");
  CHECK(all.record.starts[0].bars == std::vector<int>{1, 9, 17, 25, 33, 41, 45, 6, 3});
  CHECK(all.record.starts[0].before == 9);
  // The new workbook's own line, where report was asked for one of its weeks.
  const Reading own({told("") + second + third}, "2027-02-15", LaterEntries::left_out);
  CHECK(own.record.starts[0].bars == std::vector<int>{1, 9, 17, 25, 33, 41, 45, 6, 3});
  CHECK(own.record.starts[0].before == 8);
}

TEST_CASE("record: numbers that no line tells are those of the workbooks planned again") {
  const auto line = [](int number, const char* from) {
    return "- {edition: " + std::to_string(number) + ", from: " + from +
           ", by: 2027-03-20, minutes: 15}\n";
  };
  const std::string slips =
      "- {date: 2027-01-04, learned: bars 1-48}\n"
      "- {date: 2027-01-08, recalled: bars 1-8, slips: [6, 6, 6]}\n"
      "- {date: 2027-01-09, recalled: bars 1-8, slips: [6, 6]}\n";
  const auto numbered = [](const std::string& log) {
    const Reading read({log});
    CHECK(read.said == "");
    REQUIRE(read.record.starts.size() == 1);
    CHECK(read.record.starts[0].before == static_cast<int>(read.record.starts[0].bars.size()));
    return read.record.starts[0].bars;
  };
  const std::vector<int> first = numbered(line(1, "2027-01-04") + slips);
  CHECK(std::is_sorted(first.begin(), first.end()));
  const std::vector<int> second = numbered(line(1, "2027-01-04") + slips + line(2, "2027-01-18"));
  REQUIRE(second.size() == first.size() + 1);
  CHECK(std::equal(first.begin(), first.end(), second.begin()));
  CHECK(second.back() == 5);
  // The third was told of no slip, and has the second's all the same.
  CHECK(numbered(line(1, "2027-01-04") + slips + line(2, "2027-01-18") + line(3, "2027-02-01")) ==
        second);
}

TEST_CASE("record: a bar that stands twice among the cue starts is refused") {
  const Reading read(
      {"- {edition: 1, from: 2027-01-04, by: 2027-03-20, cues: [1, 9, 9]}\n" + kAllLearned});
  CHECK_THAT(read.said, Catch::Contains("1:63 bar 9 stands twice among the cue starts"));
  CHECK_THAT(read.hints, Catch::Contains("write each bar once, in the order of their numbers"));
}

TEST_CASE("record: a line of the new workbook that the piece no longer holds counts for nothing") {
  for (const char* cues : {"[1, 99]", "[1, 9, 9]", "[[1, 9], [1]]"}) {
    const Reading read(
        {told("") + "- {edition: 2, from: 2027-03-01, by: 2027-03-20, cues: " + cues + "}\n"});
    CHECK(read.said == "");
    CHECK(read.record.starts[0].bars == std::vector<int>{1, 9, 17, 25, 33, 41, 45});
  }
}

TEST_CASE("record: from a cue start one plays on as far as the next by bar, not by number") {
  const std::string line =
      "- {edition: 1, from: 2027-01-04, by: 2027-03-20, cues: [1, 9, 17, 25, 33, 41, 45, 5, 3], "
      "tasks: {0108-1: {cue_starts: [8]}, 0109-1: {cue_starts: [1]}}}\n";
  const Reading inside({line + kAllLearned + "- {date: 2027-01-08, done: 1, slips: 7}\n"});
  CHECK(inside.said == "");
  REQUIRE(inside.record.done.back().drill == Drill::cue_starts);
  CHECK(inside.record.done.back().slips == std::vector<int>{7});
  const Reading before({line + kAllLearned + "- {date: 2027-01-09, done: 1, slips: 7}\n"});
  CHECK_THAT(before.said, Catch::Contains("7"));
  CHECK(before.said != "");
}
