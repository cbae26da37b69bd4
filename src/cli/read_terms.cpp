#include "cli/read_terms.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/file_kind.h"
#include "cli/read_template.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "piece/read_bars.h"
#include "practice/learned_bars.h"
#include "practice/read_method.h"
#include "text/errors.h"

namespace cahier {
namespace {

constexpr int kMostDays = 3700;  // about ten years

Method with_larger_or_smaller_chunks(const Method& method, int bars, const TypedLine& typed) {
  if (bars >= method.least_chunk_most()) return method.with_chunks_up_to(bars);
  Diagnostics diagnostics;
  diagnostics.error(
      typed.source(), typed.value_of("--chunk-bars"),
      fmt::format(
          "with chunks of at least {} bars, --chunk-bars {} is too small to divide every phrase",
          method.chunk_least, bars),
      fmt::format("write a whole number of bars from {} to {}", method.least_chunk_most(),
                  kMostChunkBars));
  throw InputError(diagnostics.all());
}

// Where the date of a plan stands: on the command line, in a studio, or in a piece's file.
struct DatePlace {
  const Source& source;
  Place at;
};

DatePlace place_of_date(const Request& request, const TypedLine& typed, const PieceFiles& files) {
  if (request.keep) return {typed.source(), typed.value_of("--keep")};
  if (request.by) return {typed.source(), typed.value_of("--by")};
  if (request.studio && request.studio->occasion.by)
    return {*request.studio->source, request.studio->occasion.by_at};
  if (files.occasion.by) return {files.sources.front(), files.occasion.by_at};
  return {typed.source(), typed.value_of("--by")};
}

void check_dates(const Request& request, const TypedLine& typed, const PieceFiles& files,
                 const Terms& terms) {
  Diagnostics diagnostics;
  const std::string option = request.keep ? "--keep" : "--by";
  const bool is_in_file = !request.keep && !request.by;
  const auto refuse = [&](std::string message, std::string hint) {
    const DatePlace place = place_of_date(request, typed, files);
    diagnostics.error(place.source, place.at, std::move(message), std::move(hint));
    throw InputError(diagnostics.all());
  };
  if (terms.by <= terms.from)
    refuse("the date " + iso(terms.by) + " is not after the first day, " + iso(terms.from),
           is_in_file
               ? "write a later date, or an earlier first day; without one, practice begins today"
               : "choose a later " + option +
                     (request.from ? ", or an earlier --from"
                                   : "; without --from, practice begins today"));
  if ((terms.by - terms.from).count() > kMostDays)
    refuse("the date is more than ten years after the first day",
           "choose an earlier date, or a later first day");
  const std::vector<Day> days_of_plan = calendar(terms);
  if (std::none_of(days_of_plan.begin(), days_of_plan.end(),
                   [](const Day& day) { return day.allowance > 0; }))
    refuse("there is no practice day between " + iso(terms.from) + " and " + iso(terms.by),
           "allow some days: see --minutes and --days-off, or minutes: and days off: in the piece "
           "file");
}

// The dates of a plan, and whether it keeps what is learned.
struct Span {
  Date from;
  Date by;
  bool upkeep = false;
};

// The edition that began last.
const LoggedEdition* last_edition(const std::vector<Log>& logs) {
  const LoggedEdition* last = nullptr;
  for (const Log& log : logs)
    for (const LoggedEdition& edition : log.editions)
      if (!last || edition.from.value >= last->from.value) last = &edition;
  return last;
}

[[noreturn]] void refuse_without_date(const Request& request, const TypedLine& typed) {
  Diagnostics diagnostics;
  if (request.studio)
    diagnostics.error(*request.studio->source, request.studio->student_at,
                      "no date for this student",
                      "write it for all at the top, as in by: 2027-03-20, or with the student");
  else
    diagnostics.error(typed.source(), typed.value_of("--by"), "missing date",
                      "add --by and the day it must be ready, as in --by 2027-03-20");
  throw InputError(diagnostics.all());
}

// The day after the last one in the logs.
std::optional<Date> day_after(const std::vector<Log>& logs) {
  std::optional<Date> last;
  const auto note = [&](Date date) { last = std::max(last.value_or(date), date); };
  for (const Log& log : logs) {
    for (const LoggedDay& day : log.days) note(day.date.value);
    for (const LoggedEdition& edition : log.editions) note(edition.from.value);
  }
  if (last) *last += days{1};
  return last;
}

// The first day where the command line gives none. A file is written once and names the first day
// of the first workbook: one that is printed when the log has days since then begins after these.
Date first_day(const std::optional<Date>& in_file, const std::vector<Log>& logs,
               const Request& request, Date today) {
  if (!in_file) return today;
  const std::optional<Date> after = day_after(logs);
  if (request.command == Command::report || !after || *after <= *in_file) return *in_file;
  return std::max(*after, today);
}

// A report is for the workbook in use: the one that began last, unless the request says otherwise.
Span span_of(const Request& request, const PieceFiles& files, const std::vector<Log>& logs,
             const TypedLine& typed, Date today) {
  std::optional<Date> from = request.from;
  const Occasion occasion = occasion_of(request, files);
  std::optional<Date> by = occasion.by;
  bool upkeep = request.keep.has_value();
  if (const LoggedEdition* last = last_edition(logs); last && request.command == Command::report &&
                                                      !upkeep &&
                                                      (!from || *from == last->from.value)) {
    from = last->from.value;
    if (!request.by && last->by) by = last->by->value;
    upkeep = last->keep;
  }
  if (request.keep) {
    if (!from && by) from = std::max(*by + days{1}, today);
    by = request.keep;
  }
  if (!by) refuse_without_date(request, typed);
  return {from ? *from : first_day(occasion.from, logs, request, today), *by, upkeep};
}

// Only what is learned can be kept; without a log, everything counts as learned.
void check_learned(const std::vector<Piece>& pieces, const Record& record, const TypedLine& typed) {
  Diagnostics diagnostics;
  if (record.done.empty()) return;
  for (int piece = 0; piece < static_cast<int>(pieces.size()); ++piece)
    for (const BarRange& bars : LearnedBars(record, piece, pieces[piece]).unlearned())
      diagnostics.error(
          typed.source(), typed.value_of("--keep"),
          fmt::format(
              "{}: {} not learned according to the log, and only what is learned can be kept",
              pieces[piece].title, bars_phrase(bars, "is", "are")),
          fmt::format("learn what is left with --by alone, or add the day it was learned to the "
                      "log, as in - {{date: …, learned: bars {}-{}}}",
                      bars.first, bars.last));
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

Terms settled(const Request& request, const PieceFiles& files, const Method& method, Date from,
              Date by) {
  return settle(from, by, request.wishes.over(files.practice), method);
}

}  // namespace

Occasion occasion_of(const Request& request, const PieceFiles& files) {
  const Occasion typed{request.by, request.from, request.student, request.teacher, {}};
  const Occasion in_studio = request.studio ? request.studio->occasion : Occasion{};
  return typed.over(in_studio).over(files.occasion);
}

Method read_terms_method(const Request& request, const TypedLine& typed,
                         const Templates& templates) {
  Method method = read_template(templates, "methods", request.method,
                                [&](const Source& source, Diagnostics& diagnostics) {
                                  return read_method(source, request.method, diagnostics);
                                });
  if (request.repetitions) method.repetitions = *request.repetitions;
  if (request.chunk_bars) return with_larger_or_smaller_chunks(method, *request.chunk_bars, typed);
  return method;
}

std::vector<Log> read_logs(const std::vector<Source>& sources, Diagnostics& diagnostics) {
  std::vector<Log> logs;
  for (const Source& source : sources)
    if (admit(source, "a log", diagnostics))
      if (auto log = read_log_in_part(source, diagnostics)) logs.push_back(std::move(*log));
  if (logs.size() < sources.size()) throw InputError(diagnostics.all());
  return logs;
}

Terms read_terms(const Request& request, const TypedLine& typed, Date today,
                 const PieceFiles& files, const Method& method, const std::vector<Log>& logs,
                 Diagnostics& diagnostics) {
  const Span span = span_of(request, files, logs, typed, today);
  Terms terms = settled(request, files, method, span.from, span.by);
  terms.upkeep = span.upkeep;
  check_dates(request, typed, files, terms);
  terms.record = record_of(
      logs, files.pieces, terms, diagnostics,
      request.command == Command::report ? LaterEntries::left_out : LaterEntries::refused);
  if (logs.size() == 1) diagnostics.sort_by_place();
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
  if (terms.upkeep) check_learned(files.pieces, terms.record, typed);
  return terms;
}

bool dates_are_known(const Request& request, const PieceFiles& files,
                     const std::vector<Log>& logs) {
  if (request.by || files.occasion.by) return true;
  const LoggedEdition* last = last_edition(logs);
  return last && std::ranges::all_of(logs, [](const Log& log) {
           return std::ranges::all_of(
               log.editions, [](const LoggedEdition& edition) { return edition.by.has_value(); });
         });
}

void compare_logs(const Request& request, const PieceFiles& files, const Method& method,
                  const std::vector<Log>& logs, Diagnostics& diagnostics) {
  const std::optional<Date> after = request.from ? request.from : day_after(logs);
  if (!after) return;  // they are empty
  const LoggedEdition* last = last_edition(logs);
  const std::optional<Date> by = occasion_of(request, files).by;
  const Terms terms = settled(request, files, method, *after, by ? *by : last->by->value);
  record_of(logs, files.pieces, terms, diagnostics);
}

}  // namespace cahier
