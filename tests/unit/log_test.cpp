
#include "log/read_log.h"

#include "catch.h"

using namespace cahier;

namespace {

std::optional<Log> read(const std::string& yaml, std::string* said = nullptr) {
  Diagnostics diagnostics;
  auto log = read_log(Source("log.yaml", yaml), diagnostics);
  if (said)
    for (const Diagnostic& one : diagnostics.all())
      *said += std::to_string(one.at.line) + ":" + std::to_string(one.at.column) + " " +
               one.message + "\n";
  CHECK(log.has_value() == !diagnostics.has_errors());
  return log;
}

std::string faults_of(const std::string& yaml) {
  std::string said;
  CHECK_FALSE(read(yaml, &said));
  return said;
}

std::vector<int> values(const std::vector<Written<int>>& written) {
  std::vector<int> all;
  for (const Written<int>& one : written) all.push_back(one.value);
  return all;
}

}  // namespace

TEST_CASE("log: every kind of entry is read") {
  const auto log = read(R"(
- {edition: 2, from: 2027-01-11, by: 2027-03-20, minutes: 15, cues: [1, 9, 17], tasks: {0112-1: {recall: 1-4}, 0112-2: {learn: 9-11, chunk: A3, minutes: 8.5}, 0112-3: {cue_starts: [1, 3], throws: 4}}}
- {date: 2027-01-05, done: [0105-1, 0105-2], minutes: 14}
- {date: 2027-01-05, done: [1, 2], minutes: 14, slips: [7, 12]}
- {date: 2027-01-06, done: all}
- {date: 2027-02-03, starts: {hit: [1, 3, 7], miss: [4, 4]}}
- {date: 2027-02-20, run: {slips: [17, 43], rejoined: [21], recorded: yes, listener: no}}
- {date: 2027-02-21, learned: {A3: {minutes: 11}}}
- {date: 2027-02-22, learned: bars 17-20}
- {date: 2027-02-22, learned: [bars 17-20, bar 30]}
- {date: 2027-02-22, learned: "17-20"}
- {date: 2027-02-22, learned: {bars 17-20: {minutes: 9}}}
- {date: 2027-02-23, recalled: bars 1-8, piece: 2}
)");
  REQUIRE(log);
  REQUIRE(log->editions.size() == 1);
  const LoggedEdition& edition = log->editions.front();
  CHECK(edition.number.value == 2);
  CHECK(edition.number.at.line == 2);
  CHECK(iso(edition.from.value) == "2027-01-11");
  CHECK(iso(edition.by->value) == "2027-03-20");
  CHECK(edition.minutes == 15);
  CHECK_FALSE(edition.keep);
  REQUIRE(edition.cues.size() == 1);
  CHECK(values(edition.cues.front()) == std::vector<int>{1, 9, 17});
  REQUIRE(edition.tasks.size() == 3);
  CHECK(edition.tasks[0].code.value == "0112-1");
  CHECK(edition.tasks[0].drill == Drill::recall);
  CHECK(edition.tasks[0].bars.value == BarRange{1, 4});
  CHECK(edition.tasks[1].chunk == "A3");
  CHECK(edition.tasks[1].minutes == 8.5);
  CHECK(values(edition.tasks[2].cues) == std::vector<int>{1, 3});
  CHECK(edition.tasks[2].throws == 4);

  REQUIRE(log->days.size() == 11);
  const auto& days_read = log->days;
  CHECK(days_read[0].done[1].value == "0105-2");
  CHECK(days_read[0].done[1].at.column == 37);
  CHECK(days_read[1].done[1].value == "0105-2");
  CHECK(values(*days_read[1].slips) == std::vector<int>{7, 12});
  CHECK(days_read[1].minutes->value == 14);
  CHECK(days_read[2].all);
  CHECK(values(days_read[3].hit) == std::vector<int>{1, 3, 7});
  CHECK(values(days_read[3].missed) == std::vector<int>{4, 4});
  REQUIRE(days_read[4].runs.size() == 1);
  CHECK(values(*days_read[4].runs[0].slips) == std::vector<int>{17, 43});
  CHECK(values(days_read[4].runs[0].rejoined) == std::vector<int>{21});
  CHECK(days_read[4].runs[0].recorded == true);
  CHECK(days_read[4].runs[0].listener == false);
  CHECK_FALSE(days_read[5].learned[0].bars);
  CHECK(days_read[5].learned[0].what.value == "A3");
  CHECK(days_read[5].learned[0].minutes->value == 11);
  CHECK(days_read[6].learned[0].bars == BarRange{17, 20});
  REQUIRE(days_read[7].learned.size() == 2);
  CHECK(days_read[7].learned[1].bars == BarRange{30, 30});
  CHECK(days_read[8].learned[0].bars == BarRange{17, 20});
  CHECK(days_read[9].learned[0].minutes->value == 9);
  CHECK(days_read[10].recalled[0].bars == BarRange{1, 8});
  CHECK(days_read[10].piece->value == "2");
}

TEST_CASE("log: blank is not told, and none is told") {
  const auto log = read(R"(
- {date: 2027-01-05, done: [], minutes: , slips: [], starts: {hit: [], miss: []},
   run: {slips: , rejoined: , recorded: , listener: }, learned: , recalled: [], piece: }
- {date: 2027-01-05, done: , slips: , starts: , run: }
- {date: 2027-01-05, slips: none, run: [{slips: none}, {slips: [], listener: yes}, {slips: }]}
- {edition: 1, from: 2027-01-04, by: 2027-02-04, minutes: , cues: [], tasks: , keep: yes}
)");
  REQUIRE(log);
  REQUIRE(log->days.size() == 3);
  for (int at : {0, 1}) {
    const LoggedDay& day = log->days[at];
    CHECK(day.done.empty());
    CHECK_FALSE(day.all);
    CHECK_FALSE(day.minutes);
    CHECK(day.runs.empty());
    CHECK(day.learned.empty());
    CHECK_FALSE(day.piece);
  }
  CHECK_FALSE(log->days[1].slips);
  CHECK(log->days[2].slips->empty());
  REQUIRE(log->days[2].runs.size() == 2);
  CHECK(log->days[2].runs[0].slips->empty());
  CHECK(log->days[2].runs[1].listener == true);
  CHECK(log->editions[0].keep);
  CHECK(read("[]")->days.empty());
}

TEST_CASE("log: every fault is named at its place") {
  CHECK(faults_of("") == "1:1 the log is empty\n");
  CHECK(faults_of("# a remark\n\n") == "1:1 the log is empty\n");
  CHECK(faults_of("title: A\n") == "1:1 a log is a list of entries\n");
  CHECK(faults_of("- 2027-01-05\n") == "1:3 expected \"name: value\" here, found \"2027-01-05\"\n");
  CHECK(faults_of(R"(
- {date: 2027-02-30, done: 7}
- {done: [1]}
- {date: 2027-01-05, done: [0005-1, 5-1, one, 0, 0105-0], minutes: 0}
- {date: 2027-01-05, minutes: 1441, slip: [3]}
- {date: 2027-01-05, minutes: a lot, slips: [three, -1]}
- {date: 2027-01-05, starts: {hits: [1], miss: no}, run: [clean]}
- {date: 2027-01-05, run: {recorded: perhaps, where: here}}
- {date: 2027-01-05, learned: [bars 9-8, 17-20-3, {A3: {hours: 1}}], recalled: A3}
)") == "2:10 \"2027-02-30\" is not a valid date\n"
       "3:3 \"date\" is missing\n"
       "4:29 \"0005-1\" is not a task code\n"
       "4:37 \"5-1\" is not a task code\n"
       "4:42 \"one\" is not a task code\n"
       "4:47 \"0\" is not a task code\n"
       "4:50 \"0105-0\" is not a task code\n"
       "4:68 \"minutes\" must be a number above 0 and at most 1440\n"
       "5:31 \"minutes\" must be a number above 0 and at most 1440\n"
       "5:37 unknown key \"slip\"; did you mean \"slips\"?\n"
       "6:31 \"minutes\" must be a number above 0 and at most 1440\n"
       "6:46 the bar of a slip must be a whole number\n"
       "6:53 the bar of a slip must be a whole number\n"
       "7:31 unknown key \"hits\"; did you mean \"hit\"?\n"
       "7:48 the number of a cue start must be a whole number\n"
       "7:59 expected \"name: value\" here, found \"clean\"\n"
       "8:38 \"recorded\" must be yes or no, found \"perhaps\"\n"
       "8:47 unknown key \"where\"\n"
       "9:32 \"bars 9-8\" is not valid for \"learned\"\n"
       "9:42 \"17-20-3\" is not valid for \"learned\"\n"
       "9:57 unknown key \"hours\"\n"
       "9:80 \"A3\" is not valid for \"recalled\"\n");
  CHECK(faults_of(R"(
- {edition: 0, from: 2027-01-04, by: 2027-01-04, cues: [x]}
- {edition: 1, tasks: {0104-1: {recal: 1-4}, 0104-2: {recall: 4-1}, one: {learn: 1-4}, 0104-3: {join: 1-8, recall: 1-8, piece: 13}}}
- {edition: 1, from: 2027-01-04, date: 2027-01-05}
)") == "2:13 \"edition\" must be a whole number from 1 to 9999, found \"0\"\n"
       "2:38 this workbook ends before it begins, on 2027-01-04\n"
       "2:57 the bar of a cue start must be a whole number\n"
       "3:3 \"from\" is missing\n"
       "3:32 this task has no drill\n"
       "3:33 unknown key \"recal\"; did you mean \"recall\"?\n"
       "3:63 \"recall\" must be written like 1-16 or 17, found \"4-1\"\n"
       "3:69 \"one\" is not a task code\n"
       "3:96 this task has more than one drill\n"
       "3:128 \"piece\" must be a whole number from 1 to 12, found \"13\"\n"
       "4:4 unknown key \"edition\"\n"
       "4:16 unknown key \"from\"\n");
}
