#include <fmt/format.h>

#include <filesystem>
#include <optional>

#include "cli/commands.h"
#include "cli/output.h"
#include "cli/printed_workbook.h"
#include "cli/say.h"
#include "text/terminal.h"

namespace cahier {
namespace {

std::string output_path(const Request& request) {
  if (!request.output.empty()) return request.output;
  return std::filesystem::path(request.files.front()).stem().string() +
         (request.as_text ? "-workbook.txt" : "-workbook.pdf");
}

}  // namespace

int print_workbook(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  const Typefaces typefaces;
  // With the PDF on standard output, everything else goes to standard error.
  const std::string path = output_path(request);
  const bool to_terminal = is_standard_output(path);
  const auto say = to_terminal ? say_err : say_text;
  std::optional<Output> output;
  if (!to_terminal)
    output.emplace(path, request.as_text ? Replaces::own_text : Replaces::own_pdf, request.replace,
                   input_paths(request, inputs));
  say_all(inputs.warnings);
  const PrintedWorkbook printed =
      printed_workbook(typefaces, request, typed, inputs, today, Waiting::on_terminal);
  say_err(printed.warnings);
  if (printed.bytes.empty()) {
    say(printed.plan);
    say("\nNothing was written. --anyway prints what fits, and a sheet of what does not.\n");
    return 1;
  }
  say(printed.notes);
  if (to_terminal)
    say_out(printed.bytes);
  else
    output->write(printed.bytes);
  const std::string name = to_terminal ? "standard output" : line_for_terminal(path);
  if (!request.as_text)
    say(fmt::format("{}: {} {}\n", name, printed.paper_taken(), how_printed(request)));
  else if (!to_terminal)
    say(fmt::format("{}: the workbook in words\n", name));
  if (output) output->commit();
  return printed.fits ? 0 : 1;
}

}  // namespace cahier
