#include "cli/studio/student_workbook.h"

#include <fmt/format.h>

#include <filesystem>

#include "cli/output.h"
#include "cli/studio/studio_folder.h"
#include "text/errors.h"
#include "text/terminal.h"
#include "workbook/workbook.h"

namespace cahier {
namespace {

namespace fs = std::filesystem;

void add_all(const std::vector<Diagnostic>& from, std::vector<Diagnostic>& to) {
  to.insert(to.end(), from.begin(), from.end());
}

// What `step` throws becomes part of the outcome, as run() would say it.
template <typename Step>
void keep_errors(Outcome& outcome, Step step) {
  try {
    step();
  } catch (const InputError& error) {
    outcome.exit_code = std::max(outcome.exit_code, 2);
    add_all(error.diagnostics(), outcome.said);
  } catch (const FileError& error) {
    outcome.exit_code = 3;
    outcome.error = line_for_terminal(error.what()) + "\n";
  } catch (const UnsettledPages& error) {
    outcome.exit_code = 2;
    outcome.error = fmt::format("cahier: {}\n", error.what());
  } catch (const std::exception& error) {
    outcome.exit_code = 4;
    outcome.error = fmt::format("cahier: internal error: {}\n", error.what());
  }
}

// Larger print asks for paper that a student's entry may not have.
void refuse_small_paper(const StudioFiles& files, const Request& request) {
  if (request.paper != kA5 || (!request.booklet && !request.large_print && !request.clear_print))
    return;
  Diagnostics diagnostics;
  diagnostics.error(*files.source, request.studio->student_at,
                    request.booklet ? "a booklet needs paper larger than a5"
                                    : "larger print needs paper larger than a5",
                    "add --paper a4 or --paper letter, or print this student apart");
  throw InputError(diagnostics.all());
}

// A packet that is not there is a fault of the line that names it.
void refuse_packet(const StudioFiles& files, const Student& student, const Request& request,
                   const TypedLine& typed) {
  if (student.packing.packet.empty() || typed.option("--packet")) return;
  const Templates templates(request.templates);
  const std::vector<std::string> names = templates.names("packets");
  if (std::ranges::find(names, request.packet) != names.end()) return;
  Diagnostics diagnostics;
  diagnostics.error(*files.source, student.packing.packet_at,
                    fmt::format("there is no packet \"{}\"", request.packet),
                    fmt::format("the packets are {}", fmt::join(names, ", ")));
  throw InputError(diagnostics.all());
}

}  // namespace

// A piece that cannot be read is a fault of the line that names it.
void StudentWork::refuse_files(const Student& student, Outcome& outcome) const {
  Diagnostics diagnostics;
  for (const StudioFile& piece : student.pieces) {
    const std::string path = files_.path_of(piece);
    std::error_code none;
    if (fs::exists(path, none) && !fs::is_directory(path, none) && !fs::is_regular_file(path, none))
      continue;  // a pipe can be read only once
    try {
      Source::from_file(path);
    } catch (const FileError& error) {
      diagnostics.error(*files_.source, piece.at, error.what(),
                        "name the piece by its path from this file's folder");
    }
  }
  if (!diagnostics.has_errors()) return;
  outcome.exit_code = 3;
  throw InputError(diagnostics.all());
}

Inputs StudentWork::inputs_for(const Student& student, const Request& request,
                               Outcome& outcome) const {
  if (!request_.allow_outside) refuse_outside(files_, student);
  refuse_files(student, outcome);
  Inputs inputs = read_inputs(request, typed_, today_);
  outcome.inputs = input_paths(request, inputs);
  if (!request_.allow_outside) refuse_outside(files_, student, inputs);
  add_all(inputs.warnings, outcome.said);
  return inputs;
}

StudentWorkbook StudentWork::workbook(const Student& student,
                                      std::optional<Typefaces>& typefaces) const {
  StudentWorkbook made;
  keep_errors(made, [&] {
    made.request = files_.request_for(student, request_, typed_);
    refuse_packet(files_, student, made.request, typed_);
    refuse_small_paper(files_, made.request);
    const Inputs inputs = inputs_for(student, made.request, made);
    if (!typefaces) typefaces.emplace();
    made.printed =
        printed_workbook(*typefaces, made.request, typed_, inputs, today_, Waiting::out_of_sight);
    made.exit_code = made.printed.fits ? 0 : 1;
  });
  return made;
}

StudentPlan StudentWork::plan(const Student& student) const {
  StudentPlan planned;
  keep_errors(planned, [&] {
    const Request request = files_.request_for(student, request_, typed_);
    const Inputs inputs = inputs_for(student, request, planned);
    planned.found = find_plan(inputs, today_, Waiting::out_of_sight);
    planned.exit_code = planned.found->plan.fits ? 0 : 1;
  });
  return planned;
}

}  // namespace cahier
