#include <fmt/format.h>

#include <filesystem>

#include "cli/commands.h"
#include "cli/inputs.h"
#include "cli/printable.h"
#include "cli/say.h"
#include "paper/whole_file.h"
#include "plan/feasibility.h"
#include "plan/plan_text.h"
#include "plan/planner.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

std::string output_path(const Request& request) {
  if (!request.output.empty()) return request.output;
  return std::filesystem::path(request.files.front()).stem().string() + ".pdf";
}

}  // namespace

int print_workbook(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  const Packet packet = read_template(inputs.templates, "packets", request.packet, read_packet);
  const Typefaces typefaces;
  for (const std::string& file : inputs.files) refuse_unprintable(typefaces, file);
  say_all(inputs.warnings);
  Plan plan = make_plan(inputs.pieces, inputs.terms);
  plan.programme = inputs.programme;
  if (!plan.fits)
    plan.remedies = remedies(inputs.pieces, inputs.terms, earliest_start(inputs.terms, today));
  if (!plan.fits && !request.anyway) {
    say_out(plan_text(plan, inputs.words, false));
    say_out("\nNothing was written. --anyway prints what fits, and a sheet of what does not.\n");
    return 1;
  }
  const Print print{request.paper, request.staff_height, packet.teacher};
  const std::string path = output_path(request);
  const PrintedBook book = print_book(typefaces, plan, packet, inputs.words, print);
  write_whole(path, book.pdf);
  say_out(fmt::format("{}: {} pages, {} sheets of paper printed on both sides\n", path, book.pages,
                      (book.pages + 1) / 2));
  return plan.fits ? 0 : 1;
}

}  // namespace cahier
