#include "cli/run/run.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/commands.h"
#include "cli/say.h"
#include "cli/studio/commands.h"
#include "cli/studio/studio_file.h"
#include "text/errors.h"
#include "text/terminal.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

int check_all(const Request& request, const TypedLine& typed, Date today) {
  Request others = request;
  others.files.clear();
  int worst = 0;
  for (const std::string& path : request.files)
    if (is_studio_file(path))
      worst = std::max(worst, check_studio(request, typed, path, today));
    else
      others.files.push_back(path);
  return others.files.empty() ? worst : std::max(worst, check_files(others, typed));
}

int run_command(const std::vector<std::string>& arguments, Date by_clock) {
  const TypedLine typed(arguments);
  const Request request = parse_command_line(arguments, typed);
  const Date today = request.day_of_planning(by_clock);
  switch (request.command) {
    case Command::help:
      say_out(request.help);
      return 0;
    case Command::print:
      return is_studio_file(request.files.front()) ? print_studio(request, typed, today)
                                                   : print_workbook(request, typed, today);
    case Command::plan:
      return is_studio_file(request.files.front()) ? plan_studio(request, typed, today)
                                                   : show_plan(request, typed, today);
    case Command::report:
      return write_week_log(request, typed, today);
    case Command::check:
      return check_all(request, typed, today);
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
