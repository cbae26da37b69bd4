// The log of a practised week, as a player would type it.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "catch.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "log/write_week_log.h"
#include "simulated_season.h"
#include "text/words.h"

namespace cahier::sample {

// The line of the edition, short: its tasks are worked out again.
inline std::string typed_edition(const PractisedEdition& edition) {
  return fmt::format("- {{edition: {}, from: {}, by: {}, minutes: {:g}}}\n",
                     edition.terms.record.edition, iso(edition.terms.from), iso(edition.terms.by),
                     longest_day(edition.terms));
}

// The same as the log to be filled in has it, with tasks and cue starts.
inline std::string reported_edition(const PractisedEdition& edition) {
  const std::string log =
      week_log(edition.plan, edition.terms, english_words(), edition.terms.from);
  const std::size_t entries = log.find("\n# ", log.find("\n  tasks:"));
  return entries == std::string::npos ? log : log.substr(0, entries + 1);
}

// A code of the day itself by its number, one of another day in full.
inline std::string typed_code(const std::string& code, Date date) {
  const std::string today = iso(date).substr(5, 2) + iso(date).substr(8, 2) + "-";
  return code.starts_with(today) ? code.substr(today.size()) : code;
}

inline std::string typed_list(const std::vector<int>& numbers) {
  return fmt::format("[{}]", fmt::join(numbers, ", "));
}

// The entry of a day: codes, the day's minutes, on days of even number also those of each new
// chunk, slips, starts, runs. A recall that could not go as far as it was set is reported by its
// bars.
inline std::string typed_day(const PlannedPiece& planned, const PractisedDay& day) {
  std::vector<std::string> codes;
  std::vector<std::string> learned;
  std::vector<std::string> runs;
  std::vector<int> slips;
  std::vector<int> hit;
  std::vector<int> missed;
  for (const ReportedTask& deed : day.deeds) {
    const Task& task = deed.task;
    codes.push_back(typed_code(task.id, day.date));
    if (task.drill == Drill::learn && is_timed(day.date))
      learned.push_back(fmt::format("{}: {{minutes: {:g}}}", planned.chunks[task.chunks.front()].id,
                                    deed.minutes));
    slips.insert(slips.end(), deed.slips.begin(), deed.slips.end());
    hit.insert(hit.end(), deed.hit.begin(), deed.hit.end());
    missed.insert(missed.end(), deed.missed.begin(), deed.missed.end());
    for (const std::vector<int>& run : deed.runs)
      runs.push_back(fmt::format("{{slips: {}}}", run.empty() ? "none" : typed_list(run)));
  }
  std::string text = fmt::format("- {{date: {}, done: [{}], minutes: {:g}", iso(day.date),
                                 fmt::join(codes, ", "), day.minutes());
  if (!slips.empty()) text += ", slips: " + typed_list(slips);
  if (!learned.empty()) text += fmt::format(",\n   learned: {{{}}}", fmt::join(learned, ", "));
  if (!hit.empty() || !missed.empty())
    text += ",\n   starts: {hit: " + typed_list(hit) + ", miss: " + typed_list(missed) + "}";
  if (!runs.empty()) text += fmt::format(",\n   run: [{}]", fmt::join(runs, ", "));
  return text + "}\n";
}

// The whole week; days on which nothing was done are left out. Every other edition goes by the log
// that is to be filled in.
inline std::string typed_log(const PractisedEdition& edition) {
  std::string text =
      edition.terms.record.edition % 2 == 0 ? reported_edition(edition) : typed_edition(edition);
  for (const PractisedDay& day : edition.days)
    if (!day.deeds.empty()) text += typed_day(edition.plan.pieces.front(), day);
  return text;
}

// What the reader makes of the logs of all editions so far, a file each.
inline Record read_back(const std::vector<PractisedEdition>& editions, const Piece& piece,
                        const Terms& terms) {
  Diagnostics diagnostics;
  std::vector<Log> logs;
  for (const PractisedEdition& edition : editions) {
    const std::string name = "week-" + std::to_string(logs.size() + 1) + ".yaml";
    auto log = read_log(Source(name, typed_log(edition)), diagnostics);
    if (log) logs.push_back(std::move(*log));
  }
  Record record = record_of(logs, {piece}, terms, diagnostics);
  std::string said;
  for (const Diagnostic& diagnostic : diagnostics.all()) said += compose(diagnostic) + "\n";
  REQUIRE(said == "");
  return record;
}

// What a log that was read back tells of a day, without the order of the day and without the drill
// that a slip is laid to.
inline std::vector<std::string> told(const Record& record) {
  std::vector<std::string> lines;
  const auto sorted = [](std::vector<int> numbers) {
    std::sort(numbers.begin(), numbers.end());
    return fmt::format("{}", fmt::join(numbers, " "));
  };
  std::map<Date, std::vector<int>> slips;
  std::map<Date, std::vector<int>> hit;
  std::map<Date, std::vector<int>> missed;
  const auto append = [](std::vector<int>& to, const std::vector<int>& from) {
    to.insert(to.end(), from.begin(), from.end());
  };
  for (const Done& done : record.done) {
    append(hit[done.date], done.hit);
    append(missed[done.date], done.missed);
    if (done.drill == Drill::run_through)
      lines.push_back(fmt::format("{} run, slips {}", iso(done.date), sorted(done.slips.value())));
    else
      append(slips[done.date], done.slips.value());
    if (done.drill != Drill::cue_starts)
      lines.push_back(fmt::format("{} {} {}-{} {}", iso(done.date), drill_word(done.drill),
                                  done.bars.first, done.bars.last, done.minutes.value_or(0)));
    CHECK(done.starts.empty());
  }
  for (const auto& [date, bars] : slips)
    lines.push_back(fmt::format("{} slips {}, hit {}, missed {}", iso(date), sorted(bars),
                                sorted(hit[date]), sorted(missed[date])));
  for (const DayMinutes& day : record.minutes)
    lines.push_back(fmt::format("{} {} minutes", iso(day.date), day.minutes));
  std::sort(lines.begin(), lines.end());
  return lines;
}

}  // namespace cahier::sample
