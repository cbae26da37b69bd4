#include "cli/read_request.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/values.h"
#include "text/diagnostics.h"
#include "text/did_you_mean.h"
#include "text/errors.h"

namespace cahier {
namespace {

constexpr int kMostJobs = 256;
constexpr int kMostWeeks = 1000;  // more than any plan has

void read_wishes(const TypedOptions& typed, Values& values, Request& request) {
  Wishes& wishes = request.wishes;
  if (!typed.minutes.empty()) wishes.minutes = values.minutes("--minutes", typed.minutes);
  if (!typed.days_off.empty()) wishes.days_off = values.days_off("--days-off", typed.days_off);
  if (!typed.blocks.empty())
    wishes.blocks = values.whole("--blocks", typed.blocks, 1, 6, "sittings");
  if (!typed.lesson.empty()) wishes.lesson = values.weekday("--lesson", typed.lesson);
  if (!typed.new_to_performing.empty())
    wishes.new_to_performing = values.yes_no("--new-to-performing", typed.new_to_performing);
  if (!typed.order.empty() && !(wishes.order = parse_order(typed.order)))
    values.refuse("--order", "\"" + typed.order + "\" is not a valid value for --order",
                  "write forward, backward or hardest-first");
  if (!typed.temper.empty() && !(wishes.temper = parse_temper(typed.temper)))
    values.refuse("--temper", "\"" + typed.temper + "\" is not a valid value for --temper",
                  "write yes, no or weak");
  if (!typed.dice.empty() && !(wishes.dice = parse_throw(typed.dice)))
    values.refuse("--dice",
                  "\"" + typed.dice + "\" is not a valid value for --dice" +
                      did_you_mean(typed.dice, {"two-dice", "one-die", "d20", "coins"}),
                  "write two-dice, one-die, d20 or coins");
}

void read_print(const TypedOptions& typed, Values& values, Request& request) {
  if (const auto paper = parse_page_size(typed.paper))
    request.paper = *paper;
  else
    values.refuse("--paper", "\"" + typed.paper + "\" is not a valid value for --paper",
                  "write a4, letter or a5");
  if (!typed.staff.empty())
    request.staff_height = values.millimetres("--staff", typed.staff, 6, 20);
  if (const auto edge = parse_punched_edge(typed.punched))
    request.punched = *edge;
  else
    values.refuse("--punched", "\"" + typed.punched + "\" is not a valid value for --punched",
                  "write inner (for printing on both sides), left or right");
  request.clear_print = typed.clear_print;
  request.large_print = typed.large_print;
  request.booklet = typed.booklet;
  const bool enlarged = typed.large_print || typed.clear_print;
  const std::string_view larger = typed.large_print ? "large print" : "clear print";
  const std::string option = typed.large_print ? "--large-print" : "--clear-print";
  if (typed.large_print && typed.clear_print)
    values.refuse_argument("--clear-print", 1, "clear print and large print are two sizes",
                           "leave out --large-print or --clear-print");
  else if (typed.booklet && enlarged)
    values.refuse_argument(option, 1,
                           fmt::format("{} does not fit on the half pages of a booklet", larger),
                           "leave out " + option + " or --booklet");
  else if ((typed.booklet || enlarged) && request.paper == kA5)
    values.refuse("--paper",
                  fmt::format("{} needs paper larger than {}", typed.booklet ? "a booklet" : larger,
                              typed.paper),
                  "write --paper a4 or --paper letter");
}

// A text has no paper, and one sheet of its own.
void read_format(const TypedOptions& typed, const TypedLine& line, Values& values,
                 Diagnostics& diagnostics, Request& request) {
  request.as_text = typed.format == "text";
  if (!request.as_text && typed.format != "pdf")
    return values.refuse("--format", "\"" + typed.format + "\" is not a valid value for --format",
                         "write pdf or text");
  if (!request.as_text) return;
  for (const std::string_view option : {"--paper", "--clear-print", "--large-print", "--booklet",
                                        "--punched", "--staff", "--packet"})
    if (const auto place = line.option(option))
      diagnostics.error(line.source(), *place,
                        fmt::format("{} is for paper, not for --format text", option),
                        "leave out one of the two");
}

// Standard input can be read once, and has no file name that a PDF could be called after.
void check_terminal(const Request& request, Values& values) {
  const auto of_files = std::ranges::count(request.files, kTerminal);
  const auto of_logs = std::ranges::count(request.logs, kTerminal);
  const std::string message = "standard input, \"-\", can be read only once";
  const std::string hint = "use it once, and name files otherwise";
  if (of_logs > 0 && of_files + of_logs > 1)
    values.refuse("--log", message, hint);
  else if (of_files > 1)
    values.refuse_argument(kTerminal, 2, message, hint);
  if (request.command == Command::print && of_files > 0 && request.output.empty())
    values.refuse("--output", "missing file name for the PDF",
                  "a piece from standard input has no file name to take it from: add -o "
                  "workbook.pdf, or -o - for standard output");
}

}  // namespace

Request read_request(std::string_view name, const TypedOptions& typed, const TypedLine& line) {
  Diagnostics diagnostics;
  Values values(line, diagnostics);
  Request request;
  request.command = name == "print"    ? Command::print
                    : name == "plan"   ? Command::plan
                    : name == "report" ? Command::report
                    : name == "check"  ? Command::check
                    : name == "import" ? Command::import
                                       : Command::start;
  request.files = typed.piece.empty() ? typed.files : std::vector<std::string>{typed.piece};
  request.output = typed.output;
  request.json = typed.json;
  request.why = typed.why;
  request.spacing = typed.spacing;
  request.traps = typed.traps;
  request.anyway = typed.anyway;
  request.replace = typed.replace;
  request.allow_outside = typed.allow_outside;
  request.part = typed.part;
  request.packet = typed.packet;
  request.templates = typed.templates;
  request.language = typed.language;
  request.method = typed.method;
  if (!typed.by.empty()) request.by = values.date("--by", typed.by);
  if (!typed.from.empty()) request.from = values.date("--from", typed.from);
  if (!typed.today.empty()) request.today = values.date("--today", typed.today);
  if (!typed.keep.empty()) request.keep = values.date("--keep", typed.keep);
  if (!typed.week.empty()) request.week = values.date("--week", typed.week);
  if (request.keep && request.by && *request.keep <= *request.by)
    values.refuse("--keep", iso(*request.keep) + " is not after --by, " + iso(*request.by),
                  "what is learned by --by is kept until a later date");
  request.logs = typed.logs;
  request.student = values.name("--student", typed.student);
  request.teacher = values.name("--teacher", typed.teacher);
  if (!typed.jobs.empty())
    request.jobs = values.whole("--jobs", typed.jobs, 1, kMostJobs, "workbooks").value_or(0);
  request.report_to = typed.report_to;
  if (!typed.repetitions.empty())
    request.repetitions = values.whole("--repetitions", typed.repetitions, 1, 20, "repetitions");
  if (!typed.chunk_bars.empty())
    request.chunk_bars = values.whole("--chunk-bars", typed.chunk_bars, 1, kMostChunkBars, "bars");
  if (!typed.weeks.empty())
    request.print_weeks = values.whole("--weeks", typed.weeks, 1, kMostWeeks, "weeks").value_or(0);
  read_format(typed, line, values, diagnostics, request);
  if (!request.as_text) read_print(typed, values, request);
  read_wishes(typed, values, request);
  check_terminal(request, values);
  diagnostics.sort_by_place(0);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
  return request;
}

}  // namespace cahier
