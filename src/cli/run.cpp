#include "cli/run.h"

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/say.h"
#include "text/errors.h"
#include "text/terminal.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

int run_command(const std::vector<std::string>& arguments, Date by_clock) {
  const TypedLine typed(arguments);
  const Request request = parse_command_line(arguments, typed);
  const Date today = request.day_of_planning(by_clock);
  switch (request.command) {
    case Command::help:
      say_out(request.help);
      return 0;
    case Command::print:
      return print_workbook(request, typed, today);
    case Command::plan:
      return show_plan(request, typed, today);
    case Command::report:
      return write_week_log(request, typed, today);
    case Command::check:
      return check_files(request, typed);
    case Command::import:
      return import_score(request);
    case Command::start:
      return write_starter(request);
  }
  return 0;
}

}  // namespace

int run(const std::vector<std::string>& arguments, Date today) {
  try {
    return run_command(arguments, today);
  } catch (const InputError& error) {
    say_all(error.diagnostics());
    return 2;
  } catch (const NobodyReads&) {
    return 3;
  } catch (const FileError& error) {
    say_err(line_for_terminal(error.what()) + "\n");
    return 3;
  } catch (const UnsettledPages& error) {
    say_err(fmt::format("cahier: {}\nNothing was written.\n", error.what()));
    return 2;
  } catch (const std::exception& error) {
    say_err(fmt::format("cahier: internal error: {}\nNothing was written.\n", error.what()));
    return 4;
  }
}

}  // namespace cahier
