#include "cli/printed_workbook.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/find_plan.h"
#include "cli/printable.h"
#include "cli/read_template.h"
#include "cli/unfit.h"
#include "report/plan_text.h"
#include "text/errors.h"
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

Print print_for(const Request& request, const Packet& packet, const PrintedNames& names) {
  Print print = request.booklet       ? booklet_print(request.paper)
                : request.large_print ? large_print(request.paper, request.punched)
                : request.clear_print ? clear_print(request.paper, request.punched)
                                      : usual_print(request.paper, request.punched);
  // Staves grow with large print, unless their printed height was asked for.
  if (request.staff_height) print.staff_height = print.laid_out(*request.staff_height);
  print.teacher = packet.teacher;
  print.names = names;
  print.most_weeks = request.print_weeks;
  return print;
}

[[noreturn]] void refuse_empty(const Request& request, const TypedLine& typed) {
  Diagnostics diagnostics;
  const bool in_studio = request.studio && !typed.is_typed("--packet");
  diagnostics.error(
      in_studio ? *request.studio->source : typed.source(),
      in_studio ? request.studio->student_at : typed.value_of("--packet"),
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

// A name typed on the command line stands in no file that was looked through.
void refuse_unprintable_names(const Typefaces& typefaces, const TypedLine& typed,
                              const Request& request) {
  Diagnostics diagnostics;
  for (const auto& [option, name] :
       {std::pair<std::string_view, const std::string&>{"--student", request.student},
        {"--teacher", request.teacher}})
    for (const char32_t character : typefaces.missing(name, Face::sans))
      diagnostics.error(typed.source(), typed.value_of(option),
                        fmt::format("the character {} of {} cannot be printed",
                                    code_point_name(character), option),
                        "write it in Latin, Greek or Cyrillic letters, or leave it out");
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
}

}  // namespace

std::string PrintedWorkbook::paper_taken() const {
  return fmt::format("{} {}, {} {} of paper", pages, pages == 1 ? "page" : "pages", sheets,
                     sheets == 1 ? "sheet" : "sheets");
}

std::string_view how_printed(const Request& request) {
  if (request.booklet) return "printed on both sides, turned on the short edge, and folded";
  if (request.punched == PunchedEdge::inner) return "printed on both sides";
  return "printed on one side";
}

PrintedWorkbook printed_workbook(const Typefaces& typefaces, const Request& request,
                                 const TypedLine& typed, const Inputs& inputs, Date today,
                                 Waiting waiting) {
  Packet packet = read_template(inputs.templates, "packets", request.packet, read_packet);
  packet.name = request.packet;
  refuse_unprintable(typefaces, inputs.printed);
  refuse_unprintable_names(typefaces, typed, request);
  FoundPlan found = find_plan(inputs, today, waiting);
  const Plan& plan = found.plan;
  PrintedWorkbook printed;
  printed.fits = plan.fits;
  printed.warnings = std::move(found.warnings);
  if (!plan.fits && !request.anyway) {
    printed.plan = plan_text(plan, inputs.words, false);
    printed.misfit = misfit_text(plan, inputs.words);
    return printed;
  }
  if (request.as_text) {
    printed.bytes = text_edition(plan, inputs.words, request.print_weeks, inputs.names);
    return printed;
  }
  const Print print = print_for(request, packet, inputs.names);
  PrintedBook book = printed_book(typefaces, plan, packet, inputs, print);
  if (book.pages == 0) refuse_empty(request, typed);
  refuse_unfit(book.unfit, inputs.printed);
  printed.notes = smaller_staves(typefaces, plan, packet, print);
  printed.bytes = std::move(book.pdf);
  printed.pages = book.pages;
  printed.sheets = book.sheets;
  return printed;
}

}  // namespace cahier
