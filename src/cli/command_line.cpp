#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "cli/read_request.h"
#include "text/diagnostics.h"
#include "text/did_you_mean.h"
#include "text/errors.h"

namespace cahier {
namespace {

constexpr std::string_view kCommandHint =
    "the commands are print, plan, report, check, import and new; see cahier --help";

// Everything that determines a plan, apart from its logs.
void add_terms(CLI::App& command, TypedOptions& typed) {
  command.add_option("--by", typed.by, "the date it must be ready by, as in 2027-03-20");
  command.add_option("--from", typed.from, "first day of practice; today when not given");
  command.add_option("--minutes", typed.minutes, "minutes a day, or mon:15,sat:30");
  command.add_option("--days-off", typed.days_off, "sun,2027-02-14,2027-02-20..2027-02-23");
  command.add_option("--blocks", typed.blocks, "sittings a day, with a break between");
  command.add_option("--lesson", typed.lesson, "weekday of the lesson");
  command.add_option("--order", typed.order, "forward, backward or hardest-first");
  command.add_option("--temper", typed.temper, "yes, no or weak");
  command.add_option("--dice", typed.dice,
                     "what to throw for cue starts: two-dice, one-die, d20 or coins");
  command.add_option("--new-to-performing", typed.new_to_performing, "yes or no");
  command.add_option("--repetitions", typed.repetitions,
                     "of each step of learning, in place of the method's number");
  command.add_option("--chunk-bars", typed.chunk_bars,
                     "most bars in a chunk, in place of the method's number");
  command.add_option("--method", typed.method, "a file of templates/methods, without .yaml");
  command.add_option("--templates", typed.templates,
                     "a folder whose files replace built-in templates");
}

// The options of every command that makes a plan.
void add_shared(CLI::App& command, TypedOptions& typed) {
  add_terms(command, typed);
  command.add_option("--keep", typed.keep,
                     "keep what is learned up to this later date: nothing new, only upkeep");
  command
      .add_option("--log", typed.logs,
                  "a log of what has been done so far; may be given several times")
      ->allow_extra_args(false);
  command.add_option("--today", typed.today,
                     "the day to plan on, in place of the clock's; --from when not given");
  command.add_option("--words", typed.language, "a file of templates/words, without .yaml");
}

// The options of every command that writes a file.
void add_replace(CLI::App& command, TypedOptions& typed) {
  command.add_flag("--replace", typed.replace,
                   "overwrite an existing file, whoever made it; never one that is also read");
}

// The options of every command that takes a studio.
void add_studio(CLI::App& command, TypedOptions& typed) {
  command.add_option("--jobs", typed.jobs,
                     "of a studio, students at a time; as many as the machine can unless said");
  command.add_flag("--allow-outside", typed.allow_outside,
                   "of a studio, also files outside its folder");
}

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options())
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  return names;
}

[[noreturn]] void refuse(const TypedLine& typed, Place at, std::string message, std::string hint) {
  Diagnostics diagnostics;
  diagnostics.error(typed.source(), at, std::move(message), std::move(hint));
  throw InputError(diagnostics.all());
}

// Reports what CLI11 did not understand.
[[noreturn]] void refuse_extras(const CLI::App& app, const TypedLine& typed) {
  const auto& commands = app.get_subcommands();
  if (commands.empty()) {
    const auto left = app.remaining();
    const std::string word = left.empty() ? "" : left.front();
    refuse(typed, typed.argument(word),
           "unknown command \"" + word + "\"" +
               did_you_mean(word, {"print", "plan", "report", "check", "import", "new"}),
           std::string(kCommandHint));
  }
  const CLI::App& command = *commands.front();
  const std::string word = command.remaining().empty() ? "" : command.remaining().front();
  const std::string bare = word.substr(0, word.find('='));
  refuse(typed, typed.argument(word),
         (word.starts_with('-') ? "unknown option \"" : "unexpected argument \"") + word +
             "\" for cahier " + command.get_name() + did_you_mean(bare, option_names(command)),
         "cahier " + command.get_name() + " --help lists its options");
}

// The name of an option as it was typed, or the long one.
std::string name_of(const CLI::Option& option, const TypedLine& line) {
  for (const std::string& letter : option.get_snames())
    if (line.is_typed("-" + letter)) return "-" + letter;
  return "--" + option.get_lnames().front();
}

// An empty value is a slip of the shell, as in --minutes "$MINUTES": never the same as no option.
void refuse_empty(const CLI::App& command, const TypedLine& line, Diagnostics& diagnostics) {
  for (const CLI::Option* option : command.get_options()) {
    if (std::ranges::find(option->results(), "") == option->results().end()) continue;
    if (option->get_positional())
      diagnostics.error(line.source(), line.argument(""), "the name of a file is empty",
                        "write the name of a file, or - for standard input");
    else
      diagnostics.error(line.source(), line.value_of(name_of(*option, line)),
                        name_of(*option, line) + " has an empty value",
                        "write a value, or leave the option out");
  }
}

// The same value twice is no contradiction; logs may be several.
void refuse_contradictions(const CLI::App& command, const TypedLine& line,
                           Diagnostics& diagnostics) {
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_positional() || option->check_lname("log") || option->results().empty())
      continue;
    const std::string& first = option->results().front();
    const auto other = std::ranges::find_if(
        option->results(), [&](const std::string& value) { return value != first; });
    if (other == option->results().end() || first.empty() || other->empty()) continue;
    const std::string name = name_of(*option, line);
    diagnostics.error(
        line.source(), line.value_of(name),
        fmt::format("{} is given twice, as \"{}\" and as \"{}\"", name, first, *other),
        "keep one of the two");
  }
}

void refuse_values(const CLI::App& command, const TypedLine& line) {
  Diagnostics diagnostics;
  refuse_empty(command, line, diagnostics);
  refuse_contradictions(command, line, diagnostics);
  diagnostics.sort_by_place(0);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace

Request parse_command_line(const std::vector<std::string>& arguments, const TypedLine& line) {
  TypedOptions typed;
  CLI::App app("cahier: a dated workbook for playing from memory", "cahier");
  app.set_version_flag("--version", CAHIER_VERSION);
  app.require_subcommand(1);

  CLI::App* print = app.add_subcommand("print", "write the workbook, as a PDF or as text");
  print->add_option("PIECE", typed.piece, "the YAML file of a piece, programme or studio")
      ->required();
  add_shared(*print, typed);
  print->add_option("--packet", typed.packet,
                    "which sheets: full, student, wall, staves, child, or your own");
  print->add_option("--paper", typed.paper, "a4, letter or a5");
  print->add_option("--staff", typed.staff,
                    "height of a staff for handwriting: 8mm, or 6mm to 20mm");
  print->add_option("--weeks", typed.weeks,
                    "day panels for so many weeks alone; the plan stays whole");
  print->add_flag("--clear-print", typed.clear_print,
                  "everything 1.41 times as large: type of 14 points");
  print->add_flag("--large-print", typed.large_print,
                  "everything 1.8 times as large: type of 18 points");
  print->add_flag("--booklet", typed.booklet,
                  "two pages a side, in the order for folding; print turned on the short edge");
  print->add_option("--punched", typed.punched,
                    "the edge kept clear for punched holes: inner, left or right");
  print->add_option("--format", typed.format,
                    "pdf, or text: the days in words, for screen readers and braille printers");
  print->add_option("--student", typed.student, "whose workbook it is, for the cover and the feet");
  print->add_option("--teacher", typed.teacher, "whose student that is, for the cover");
  add_studio(*print, typed);
  print->add_flag("--anyway", typed.anyway, "print what fits when not everything does");
  print->add_option(
      "-o,--output", typed.output,
      "where to write; the piece's name and -workbook.pdf (or .txt) when not given; of a "
      "studio the folder");
  add_replace(*print, typed);

  CLI::App* plan = app.add_subcommand("plan", "show the plan as text");
  plan->add_option("PIECE", typed.piece, "the YAML file of a piece, programme or studio")
      ->required();
  add_shared(*plan, typed);
  add_studio(*plan, typed);
  plan->add_flag("--json", typed.json, "as JSON, format cahier-plan-1");
  plan->add_flag("--why", typed.why, "with the reason for each task");
  plan->add_flag("--traps", typed.traps,
                 "with what can lead a memory astray, the most dangerous first");
  plan->add_flag("--spacing", typed.spacing, "with each chunk's recall days beside the best ones");

  CLI::App* report = app.add_subcommand("report", "write the log of a week, to be filled in");
  report->add_option("PIECE", typed.piece, "the YAML file of a piece or programme")->required();
  report->add_option("LOG", typed.report_to, "a new file for the log; - writes to standard output")
      ->required();
  add_shared(*report, typed);
  report->add_option("--week", typed.week, "a day of the week; today when not given");
  add_replace(*report, typed);

  CLI::App* check = app.add_subcommand("check", "report every problem in files");
  check->add_option("FILE", typed.files, "pieces, studios, logs, methods, packets or words")
      ->required();
  add_terms(*check, typed);
  add_studio(*check, typed);
  check->add_option("--words", typed.language, "a file of templates/words, without .yaml");
  check->add_option("--packet", typed.packet, "a file of templates/packets, without .yaml");

  CLI::App* import = app.add_subcommand("import", "make a piece file from a score in MusicXML");
  import->add_option("SCORE", typed.piece, "a score: .musicxml, .xml or .mxl")->required();
  import->add_option("-o,--output", typed.output, "where to write; standard output when not given");
  add_replace(*import, typed);
  import->add_flag("--json", typed.json,
                   "what the score holds, as JSON, format cahier-score-1, and not a piece file");
  import->add_option("--part", typed.part,
                     "the id or the name of your part; chosen by its staves when not given");

  CLI::App* start = app.add_subcommand("new", "write a commented piece file to start from");
  start->add_option("-o,--output", typed.output, "where to write; standard output when not given");
  add_replace(*start, typed);

  // Values that contradict one another are refused below, in our own words.
  for (CLI::App* command : app.get_subcommands({}))
    for (CLI::Option* option : command->get_options())
      if (!option->get_positional() && option->get_items_expected_max() == 1 &&
          !option->check_lname("log"))
        option->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);

  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  // CLI11 would take the next argument for the value.
  if (const auto bare = line.option_without_value())
    refuse(line, line.value_of(*bare), *bare + " has no value",
           "write the value after the equals sign, or leave the option out");
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    Request request;
    request.help = app.help();
    return request;
  } catch (const CLI::CallForVersion&) {
    Request request;
    request.help = "cahier " CAHIER_VERSION "\n";
    return request;
  } catch (const CLI::ExtrasError&) {
    refuse_extras(app, line);
  } catch (const CLI::RequiredError&) {
    if (app.get_subcommands().empty()) {
      if (!app.remaining().empty()) refuse_extras(app, line);
      refuse(line, line.argument(""), "no command given", std::string(kCommandHint));
    }
    refuse(line, line.argument(""), "missing file name",
           "for example: cahier " + app.get_subcommands().front()->get_name() +
               (import->parsed() ? " study.mxl" : " piece.yaml") +
               (report->parsed() ? " january.yaml" : ""));
  } catch (const CLI::ArgumentMismatch&) {
    const std::string last = arguments.empty() ? "" : arguments.back();
    refuse(line, line.argument(""), "missing value for \"" + last + "\"",
           "write the value after the option, as in --by 2027-03-20");
  } catch (const CLI::ParseError& error) {
    refuse(line, line.argument(""), error.what(), "see cahier --help");
  }
  const CLI::App& command = *app.get_subcommands().front();
  refuse_values(command, line);
  return read_request(command.get_name(), typed, line);
}

}  // namespace cahier
