#include "cli/inputs.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "inputs/read_programme.h"
#include "log/read_log.h"
#include "log/record_of_log.h"
#include "piece/read_bars.h"
#include "piece/read_piece.h"
#include "practice/learned_bars.h"
#include "practice/method.h"
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
          "with chunks of at least {} bars, --chunk-bars {} leaves phrases that cannot be cut",
          method.chunk_least, bars),
      fmt::format("write a whole number of bars from {} to {}", method.least_chunk_most(),
                  kMostChunkBars));
  throw InputError(diagnostics.all());
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

void check_dates(const Request& request, const TypedLine& typed, const Terms& terms) {
  Diagnostics diagnostics;
  const std::string option = request.keep ? "--keep" : "--by";
  const auto refuse = [&](std::string message, std::string hint) {
    diagnostics.error(typed.source(), typed.value_of(option), std::move(message), std::move(hint));
    throw InputError(diagnostics.all());
  };
  if (terms.by <= terms.from)
    refuse(
        "the date " + iso(terms.by) + " is not after the first day, " + iso(terms.from),
        "choose a later " + option +
            (request.from ? ", or an earlier --from" : "; without --from, practice begins today"));
  if ((terms.by - terms.from).count() > kMostDays)
    refuse("the date is more than ten years after the first day", "plan nearer to the date");
  const std::vector<Day> days_of_plan = calendar(terms);
  if (std::none_of(days_of_plan.begin(), days_of_plan.end(),
                   [](const Day& day) { return day.allowance > 0; }))
    refuse("there is no practice day between " + iso(terms.from) + " and " + iso(terms.by),
           "allow some days: see --minutes and --days-off, or minutes: and days off: in the piece "
           "file");
}

// The pieces and what is asked for beside the command line: one piece, or a programme of several.
class PieceFiles {
 public:
  explicit PieceFiles(const std::string& path) {
    const Source source = Source::from_file(path);
    Diagnostics unread;
    const auto root = parse_yaml(source, unread);
    if (!root || !is_programme(*root)) {
      add_piece(source);
      if (!pieces.empty()) practice = pieces.front().practice;
    } else if (const auto programme = read_programme(source, diagnostics_)) {
      paths.push_back(path);
      title = programme->title;
      by = programme->by;
      from = programme->from;
      practice = programme->practice;
      const std::filesystem::path folder = std::filesystem::path(path).parent_path();
      for (const Programme::File& file : programme->pieces)
        add_piece(Source::from_file((folder / file.path).string()));
    }
    if (diagnostics_.has_errors()) throw InputError(diagnostics_.all());
  }

  const std::vector<Diagnostic>& warnings() const { return diagnostics_.all(); }

  std::string title;
  std::vector<std::string> paths;
  std::optional<Date> by;
  std::optional<Date> from;
  Wishes practice;
  std::vector<Piece> pieces;

 private:
  void add_piece(const Source& source) {
    paths.push_back(source.name());
    if (auto piece = read_piece(source, diagnostics_)) pieces.push_back(std::move(*piece));
  }

  Diagnostics diagnostics_;
};

// What can be read of the logs; throws where that is not enough to go on with.
std::vector<Log> read_logs(const std::vector<std::string>& paths, Diagnostics& diagnostics) {
  std::vector<Log> logs;
  for (const std::string& path : paths)
    if (auto log = read_log_in_part(Source::from_file(path), diagnostics))
      logs.push_back(std::move(*log));
  if (logs.size() < paths.size()) throw InputError(diagnostics.all());
  return logs;
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

[[noreturn]] void refuse_without_date(const TypedLine& typed) {
  Diagnostics diagnostics;
  diagnostics.error(typed.source(), typed.value_of("--by"), "the date is missing",
                    "add --by and the day it must be ready, as in --by 2027-03-20");
  throw InputError(diagnostics.all());
}

// A report is of the workbook in use: where nothing else is asked for, of the one that began last.
Span span_of(const Request& request, const PieceFiles& files, const std::vector<Log>& logs,
             const TypedLine& typed, Date today) {
  std::optional<Date> from = request.from;
  std::optional<Date> by = request.by ? request.by : files.by;
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
  if (!by) refuse_without_date(typed);
  return {from ? *from : files.from.value_or(today), *by, upkeep};
}

// Only what is learned can be kept; of a piece that no log tells of, that is taken for granted.
void check_learned(const Inputs& inputs, const TypedLine& typed) {
  Diagnostics diagnostics;
  if (inputs.terms.record.done.empty()) return;
  for (int piece = 0; piece < static_cast<int>(inputs.pieces.size()); ++piece)
    for (const BarRange& bars :
         LearnedBars(inputs.terms.record, piece, inputs.pieces[piece]).unlearned())
      diagnostics.error(
          typed.source(), typed.value_of("--keep"),
          fmt::format("{}: {} not learned as the log tells, and only what is learned can be kept",
                      inputs.pieces[piece].title, bars_phrase(bars, "is", "are")),
          fmt::format(
              "learn what is left with --by alone, or add to the log the day it was learned, "
              "as in - {{date: …, learned: bars {}-{}}}",
              bars.first, bars.last));
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace

std::optional<Date> earliest_start(const Terms& terms, Date today) {
  if (terms.from < today) return std::nullopt;
  return today;
}

Inputs read_inputs(const Request& request, const TypedLine& typed, Date today) {
  Templates templates(request.templates);
  Words words = read_template(templates, "words", request.language, read_words);
  const Method method = read_terms_method(request, typed, templates);
  PieceFiles files(request.files.front());
  Diagnostics diagnostics;
  const std::vector<Log> logs = read_logs(request.logs, diagnostics);
  const Span span = span_of(request, files, logs, typed, today);
  Inputs inputs{std::move(templates),
                std::move(words),
                files.title,
                files.paths,
                std::move(files.pieces),
                settle(span.from, span.by, request.wishes.over(files.practice), method),
                files.warnings()};
  inputs.terms.upkeep = span.upkeep;
  check_dates(request, typed, inputs.terms);
  inputs.terms.record = record_of(
      logs, inputs.pieces, inputs.terms, diagnostics,
      request.command == Command::report ? LaterEntries::left_out : LaterEntries::refused);
  if (logs.size() == 1) diagnostics.sort_by_place();
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
  if (inputs.terms.upkeep) check_learned(inputs, typed);
  inputs.warnings.insert(inputs.warnings.end(), diagnostics.all().begin(), diagnostics.all().end());
  return inputs;
}

}  // namespace cahier
