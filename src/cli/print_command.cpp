#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <optional>

#include "cli/commands.h"
#include "cli/find_plan.h"
#include "cli/inputs.h"
#include "cli/output.h"
#include "cli/printable.h"
#include "cli/read_template.h"
#include "cli/say.h"
#include "cli/unfit.h"
#include "report/plan_text.h"
#include "text/errors.h"
#include "text/terminal.h"
#include "workbook/sheets/write_outs/write_out_staves.h"
#include "workbook/text_edition/text_edition.h"
#include "workbook/too_many_pages.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

// A line for each piece whose staves cannot be as high as asked for.
std::string smaller_staves(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                           const Print& print) {
  std::string said;
  const bool has_staves =
      std::any_of(packet.sheets.begin(), packet.sheets.end(),
                  [](const Sheet& sheet) { return sheet.kind == SheetKind::write_outs; });
  for (const PlannedPiece& piece : plan.pieces) {
    const double height = fitting_measures(typefaces, piece.piece, print).height;
    if (has_staves && height < print.staff_height)
      said += fmt::format(
          "{}: staves of {:.4g} mm do not fit on this paper with room to write; they are {:.4g} mm "
          "high\n",
          piece.piece.title, print.printed(print.staff_height), print.printed(height));
  }
  return said;
}

std::string output_path(const Request& request) {
  if (!request.output.empty()) return request.output;
  return std::filesystem::path(request.files.front()).stem().string() +
         (request.as_text ? "-workbook.txt" : "-workbook.pdf");
}

Print print_for(const Request& request, const Packet& packet) {
  Print print = request.booklet       ? booklet_print(request.paper)
                : request.large_print ? large_print(request.paper, request.punched)
                : request.clear_print ? clear_print(request.paper, request.punched)
                                      : usual_print(request.paper, request.punched);
  // Staves grow with large print, unless their printed height was asked for.
  if (request.staff_height) print.staff_height = print.laid_out(*request.staff_height);
  print.teacher = packet.teacher;
  print.most_weeks = request.print_weeks;
  return print;
}

std::string_view how_printed(const Print& print) {
  if (print.booklet) return "printed on both sides, turned on the short edge, and folded";
  if (print.margins.edge == PunchedEdge::inner) return "printed on both sides";
  return "printed on one side";
}

[[noreturn]] void refuse_empty(const Request& request, const TypedLine& typed) {
  Diagnostics diagnostics;
  diagnostics.error(
      typed.source(), typed.value_of("--packet"),
      fmt::format("no sheet in the packet \"{}\" has anything to show for this plan",
                  request.packet),
      "add a sheet that every plan has, such as cover or form map, or choose another packet");
  throw InputError(diagnostics.all());
}

PrintedBook printed_book(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                         const Inputs& inputs, const Print& print) {
  try {
    return print_book(typefaces, plan, packet, inputs.words, print);
  } catch (const TooManyPages& error) {
    Diagnostics diagnostics;
    diagnostics.error(inputs.printed.back(), {1, 1}, error.what(),
                      "choose a packet of fewer sheets, larger paper, or divide the piece");
    throw InputError(diagnostics.all());
  }
}

void write_text(const std::string& text, const std::string& path, std::optional<Output>& output) {
  if (!output) return say_out(text);
  output->write(text);
  say_text(fmt::format("{}: the workbook in words\n", line_for_terminal(path)));
  output->commit();
}

}  // namespace

int print_workbook(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  const Packet packet = read_template(inputs.templates, "packets", request.packet, read_packet);
  const Typefaces typefaces;
  refuse_unprintable(typefaces, inputs.printed);
  // With the PDF on standard output, everything else goes to standard error.
  const std::string path = output_path(request);
  const bool to_terminal = is_standard_output(path);
  const auto say = to_terminal ? say_err : say_text;
  std::optional<Output> output;
  if (!to_terminal)
    output.emplace(path, request.as_text ? Replaces::own_text : Replaces::own_pdf, request.replace,
                   input_paths(request, inputs));
  say_all(inputs.warnings);
  const Plan plan = find_plan(inputs, today);
  if (!plan.fits && !request.anyway) {
    say(plan_text(plan, inputs.words, false));
    say("\nNothing was written. --anyway prints what fits, and a sheet of what does not.\n");
    return 1;
  }
  if (request.as_text) {
    write_text(text_edition(plan, inputs.words, request.print_weeks), path, output);
    return plan.fits ? 0 : 1;
  }
  const Print print = print_for(request, packet);
  const PrintedBook book = printed_book(typefaces, plan, packet, inputs, print);
  if (book.pages == 0) refuse_empty(request, typed);
  refuse_unfit(book.unfit, inputs.printed);
  say(smaller_staves(typefaces, plan, packet, print));
  if (to_terminal)
    say_out(book.pdf);
  else
    output->write(book.pdf);
  say(fmt::format("{}: {} {}, {} {} of paper {}\n",
                  to_terminal ? "standard output" : line_for_terminal(path), book.pages,
                  book.pages == 1 ? "page" : "pages", book.sheets,
                  book.sheets == 1 ? "sheet" : "sheets", how_printed(print)));
  if (output) output->commit();
  return plan.fits ? 0 : 1;
}

}  // namespace cahier
