// What was asked for on the command line.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/typed_line.h"
#include "paper/margins.h"
#include "paper/page_size.h"
#include "piece/occasion.h"
#include "piece/wishes.h"
#include "text/date.h"
#include "text/source.h"

namespace cahier {

// As a file name: standard input, or standard output.
inline constexpr std::string_view kTerminal = "-";

inline constexpr int kMostChunkBars = 16;  // that --chunk-bars takes

enum class Command { help, print, plan, report, check, import, start };

// What a studio says of the student whose workbook is asked for: over the piece's file, under the
// command line.
struct FromStudio {
  std::shared_ptr<const Source> source;
  Place student_at;
  Occasion occasion;
  std::string note;
};

struct Request {
  Command command = Command::help;
  std::string help;                // what to print for Command::help
  std::vector<std::string> files;  // "-" for standard input, here and in `logs`
  std::string output;              // -o; empty when not given, "-" for standard output
  std::optional<Date> from;
  std::optional<Date> today;  // in place of the clock's
  std::optional<Date> by;
  std::optional<Date> keep;  // until when to keep what is learned by `by`
  std::string student;       // as typed, and the next; empty when not given
  std::string teacher;
  std::optional<FromStudio> studio;
  bool allow_outside = false;  // files of a studio that lie outside its folder
  int jobs = 0;                // workbooks made at a time; 0 for as many as the machine can
  std::vector<std::string> logs;
  std::string report_to;     // where to write the log of a week; "-" for standard output
  std::optional<Date> week;  // a day of it
  bool as_text = false;      // the workbook in words, not as a PDF
  std::string part;          // of a score, its id or name; empty for the program's choice
  bool replace = false;      // an existing file, whoever made it
  bool json = false;
  bool why = false;
  bool spacing = false;
  bool traps = false;
  bool anyway = false;
  std::string packet = "full";
  PageSize paper = kA4;
  std::optional<double> staff_height;  // millimetres, as printed
  PunchedEdge punched = PunchedEdge::inner;
  int print_weeks = 0;  // whose day panels are printed; 0 for all
  bool clear_print = false;
  bool large_print = false;
  bool booklet = false;
  std::string templates;
  std::string language = "en";
  std::string method = "steady";
  std::optional<int> repetitions;
  std::optional<int> chunk_bars;  // most bars in a chunk
  Wishes wishes;

  // What "today" means for the whole run. With --from or --today the clock has no say in a plan:
  // the same command gives the same output on any day. The --from of a report only names the
  // workbook; its week is the one that has just been practised.
  Date day_of_planning(Date clock) const {
    if (today) return *today;
    return command == Command::report ? clock : from.value_or(clock);
  }
};

// Reads the arguments (without the program's name). Throws InputError that names every wrong
// value, with a caret under it.
Request parse_command_line(const std::vector<std::string>& arguments, const TypedLine& typed);

}  // namespace cahier
