#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "cli/commands.h"
#include "cli/inputs.h"
#include "cli/output.h"
#include "cli/say.h"
#include "cli/waiting_line.h"
#include "log/write_week_log.h"
#include "plan/search/planner.h"
#include "text/errors.h"
#include "text/terminal.h"

namespace cahier {
namespace {

// The day whose week is reported: the one asked for, or today, or the plan's day nearest to it.
Date day_to_report(const Request& request, const TypedLine& typed, const Terms& terms, Date today) {
  const Date last = terms.by - days{1};
  if (!request.week) return std::clamp(today, terms.from, last);
  if (terms.from <= *request.week && *request.week <= last) return *request.week;
  Diagnostics diagnostics;
  diagnostics.error(typed.source(), typed.value_of("--week"),
                    iso(*request.week) + " is not a day of this workbook",
                    fmt::format("it runs from {} to {}; give --from and --by as on its cover",
                                iso(terms.from), iso(last)));
  throw InputError(diagnostics.all());
}

Plan make_plan_waiting(const Inputs& inputs) {
  WaitingLine waiting(inputs.words, "waiting.plan");
  Effort effort(kMostEffort, &waiting);
  return make_plan(inputs.pieces, inputs.terms, effort);
}

}  // namespace

int write_week_log(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  const bool to_terminal = is_standard_output(request.report_to);
  std::optional<Output> output;
  if (!to_terminal)
    output.emplace(request.report_to, Replaces::nothing, request.replace,
                   input_paths(request, inputs));
  say_all(inputs.warnings);
  const Date day = day_to_report(request, typed, inputs.terms, today);
  const Plan plan = make_plan_waiting(inputs);
  const std::string text = week_log(plan, inputs.terms, inputs.words, day);
  if (to_terminal) {
    say_out(text);
    return 0;
  }
  output->write(text);
  const std::string name = line_for_terminal(request.report_to);
  say_text(fmt::format("{}: fill it in, then add --log {} to the command for the next workbook\n",
                       name, name));
  output->commit();
  return 0;
}

}  // namespace cahier
