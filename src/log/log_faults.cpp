#include "log/log_faults.h"

#include <fmt/format.h>

#include "piece/read_bars.h"
#include "text/did_you_mean.h"

namespace cahier {
namespace {

constexpr std::size_t kMostNamed = 12;

std::string some_of(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t at = 0; at < names.size() && at < kMostNamed; ++at)
    text.append(at == 0 ? "" : ", ").append(names[at]);
  return names.size() > kMostNamed ? text + " …" : text;
}

}  // namespace

LogFaults::LogFaults(const std::vector<Log>& logs) : logs_(logs), of_(logs.size()) {
  for (const Log& log : logs) unread_ += log.unread;
}

void LogFaults::refuse(const Spot& spot, const Fault& fault) {
  of_[spot.log].error(logs_[spot.log].source, spot.at, fault.message, fault.hint, fault.kind);
}

void LogFaults::warn(const Spot& spot, const Fault& fault) {
  of_[spot.log].warning(logs_[spot.log].source, spot.at, fault.message, fault.hint, fault.kind);
}

void LogFaults::refuse_unread(const Spot& spot, const Fault& fault) {
  refuse(spot, fault);
  ++unread_;
}

std::string LogFaults::place_of(const Spot& spot, const Spot& seen_from) const {
  if (spot.log == seen_from.log) return fmt::format("line {}", spot.at.line);
  return fmt::format("line {} of {}", spot.at.line, logs_[spot.log].source.name());
}

void LogFaults::hand_over(Diagnostics& diagnostics) {
  for (Diagnostics& of : of_) {
    of.sort_by_place();
    for (const Diagnostic& one : of.all()) diagnostics.add(one);
  }
}

Fault another_date_of_edition(int number, Date there, std::string_view where) {
  return {fmt::format("edition {} has a different date on {}: {}", number, where, iso(there)),
          "a workbook has one first day and one date: write those on its cover, or give another "
          "workbook its own number"};
}

Fault edition_out_of_order(int number, int before, Date from) {
  return {fmt::format("edition {} does not begin after edition {}, which began on {}", number,
                      before, iso(from)),
          "editions are numbered in the order of their first days"};
}

Fault edition_begins_too_late(Date from, Date new_from) {
  return {fmt::format("this edition begins on {}, after the new workbook begins on {}", iso(from),
                      iso(new_from)),
          "choose a later --from for the new workbook"};
}

Fault edition_too_long() {
  return {"this day is more than ten years before the date", "check the year"};
}

Fault code_outside_edition(const std::string& code, Date from, Date by) {
  return {fmt::format("{} is not the code of a day in this edition", code),
          fmt::format("it runs from {} to the day before {}", iso(from), iso(by))};
}

Fault code_stands_for_two_things(const std::string& code, std::string_view where) {
  return {fmt::format("{} stands for something else on {}", code, where),
          "keep the line that matches the workbook"};
}

Fault no_such_piece_number(int number, std::size_t pieces) {
  return {fmt::format("there is no piece {}", number),
          pieces == 1 ? "there is one piece; leave out piece:"
                      : fmt::format("the pieces of the programme are numbered 1 to {}", pieces)};
}

Fault cues_of_how_many_pieces(std::size_t lists, std::size_t pieces) {
  return {fmt::format("cue starts for {} piece{}, but there {} {}", lists, lists == 1 ? "" : "s",
                      pieces == 1 ? "is" : "are", pieces),
          "write one list for each piece, as in [[1, 9, 17], [1, 13]]; for one piece [1, 9, 17]"};
}

Fault no_edition_line(Date from, Date by) {
  return {fmt::format("no line says which workbook this log is for; assuming one that began on {}",
                      iso(from)),
          fmt::format("add a line with the dates on its cover: - {{edition: 1, from: {}, by: {}}}",
                      iso(from), iso(by))};
}

Fault before_the_first_edition(Date date, Date from) {
  return {fmt::format("{} is before the first day of the first workbook, {}", iso(date), iso(from)),
          "correct the date, or from: in the edition line"};
}

Fault in_the_new_workbook(Date date, Date new_from) {
  return {fmt::format("{} is not before the first day of the new workbook, {}", iso(date),
                      iso(new_from)),
          "correct the date, or choose a later --from"};
}

Fault after_the_edition(Date date, Date by) {
  return {fmt::format("{} is after the date of that workbook, {}", iso(date), iso(by)),
          "correct the date, or add a line for a later edition"};
}

Fault no_such_code(const std::string& code, Date date, const std::vector<std::string>& codes) {
  return {fmt::format("no task has the code {}{}", code, did_you_mean(code, codes)),
          codes.empty() ? fmt::format("nothing was planned for {}; copy the code from the workbook",
                                      iso(date))
                        : fmt::format("planned for {}: {}", iso(date), some_of(codes))};
}

Fault no_tasks_that_day(Date date) {
  return {fmt::format("\"all\" has no meaning here: no task was planned for {}", iso(date)),
          "list the codes of what was done"};
}

Fault no_such_chunk(const std::string& name, const std::vector<std::string>& chunks) {
  return {fmt::format("there is no chunk {}{}", name, did_you_mean(name, chunks)),
          chunks.empty()
              ? "write the bars instead, as in learned: bars 17-20"
              : fmt::format("the chunks are {}; or write bars, as in bars 17-20", some_of(chunks))};
}

Fault no_such_cue_start(int number, std::size_t cues) {
  return {fmt::format("there is no cue start {}", number),
          cues == 1 ? "there is only cue start 1"
                    : fmt::format("cue starts are numbered 1 to {}", cues)};
}

Fault cue_start_twice(int bar) {
  return {fmt::format("bar {} stands twice among the cue starts", bar),
          "write each bar once, in the order of their numbers, as report does"};
}

Fault no_such_bar(int bar, BarRange piece) {
  return {fmt::format("there is no bar {}", bar),
          fmt::format("the piece runs from bar {} to bar {}", piece.first, piece.last)};
}

Fault no_such_piece(const std::string& name, const std::vector<std::string>& titles) {
  return {
      fmt::format("there is no piece \"{}\"{}", name, did_you_mean(name, titles)),
      fmt::format("write a number from 1 to {}, or the title: {}", titles.size(), some_of(titles))};
}

Fault which_piece(const std::vector<std::string>& titles) {
  return {"this entry does not say which piece it is for",
          fmt::format("add piece: and a number from 1 to {}, or the title: {}", titles.size(),
                      some_of(titles))};
}

Fault done_twice(const std::string& code, std::string_view where) {
  return {fmt::format("{} is already listed as done, on {}", code, where),
          "a task is done once; list only what was done that day"};
}

Fault learned_twice(BarRange bars, int bar, Date when, std::string_view where) {
  return {fmt::format("{} learned here, but bar {} was learned on {} ({})",
                      bars_phrase(bars, "is", "are"), bar, iso(when), where),
          "bars are learned once; keep one of the two, or write recalled: instead"};
}

Fault learned_on_two_days(BarRange bars, Date here, Date there, std::string_view where) {
  return {fmt::format("{} learned on {} here, but on {} according to {}",
                      bars_phrase(bars, "is", "are"), iso(here), iso(there), where),
          "done: and learned: must give the same day for a chunk; correct one of the two dates"};
}

Fault not_learned_by_then(std::string_view what, BarRange bars, int bar, Date date) {
  // When only a part could be played, that part can be reported instead.
  const BarRange played{bars.first, bar - 1};
  const std::string instead =
      played.size() < 1
          ? "remove this"
          : fmt::format("write what was played instead, as in recalled: {}",
                        played.size() == 1 ? fmt::format("bars {}", played.first)
                                           : fmt::format("bars {}-{}", played.first, played.last));
  return {fmt::format("{} bar {}, which was not learned by {}", what, bar, iso(date)),
          fmt::format("add the day it was learned, as in - {{date: {}, learned: bars {}}}, or {}",
                      iso(date), bar, instead)};
}

Fault slip_not_played(int bar, Date date) {
  return {fmt::format("a slip at bar {}, but nothing done on {} includes it", bar, iso(date)),
          "add what was played to done:, or correct the bar"};
}

Fault slip_of_a_run(int bar) {
  return {fmt::format("only a run-through played bar {} from memory that day", bar),
          fmt::format("put slips of a run-through under run:, as in run: {{slips: [{}]}}", bar)};
}

Fault slip_while_learning(int bar) {
  return {fmt::format("the slip at bar {} is not counted: the bar was not yet played from memory "
                      "that day",
                      bar),
          "slips count in recalls, joins, cue starts, passes and run-throughs"};
}

Fault rejoined_without_slips() {
  return {"rejoined, but no slip is given",
          "add the bar of the slip, as in run: {slips: [17], rejoined: [21]}"};
}

Fault rejoined_before_the_slip(int bar, int slip) {
  return {fmt::format("rejoined at bar {}, before the first slip, at bar {}", bar, slip),
          "rejoining means jumping forward after a slip; correct one of the two bars"};
}

Fault too_many_minutes(Date date) {
  return {fmt::format("the minutes for {} add up to more than a day", iso(date)),
          "minutes in several entries for the same day are added together; correct them"};
}

Fault minutes_beyond_belief(double minutes, Date date, double planned, double most) {
  return {
      fmt::format("{:g} minutes on {}, over ten times the {:g} planned", minutes, iso(date),
                  planned),
      fmt::format("expected at most {:g}: correct it if it is a mistake; else it counts as that",
                  most)};
}

}  // namespace cahier
