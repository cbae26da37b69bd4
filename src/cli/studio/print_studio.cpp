#include <fmt/format.h>

#include <cerrno>
#include <filesystem>
#include <optional>
#include <vector>

#include "cli/output.h"
#include "cli/read_terms.h"
#include "cli/say.h"
#include "cli/studio/commands.h"
#include "cli/studio/in_order.h"
#include "cli/studio/said.h"
#include "cli/studio/student_workbook.h"
#include "text/diagnostics.h"
#include "text/errors.h"
#include "text/terminal.h"

namespace cahier {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse_option(const TypedLine& typed, Place at, std::string message,
                                std::string hint) {
  Diagnostics diagnostics;
  diagnostics.error(typed.source(), at, std::move(message), std::move(hint));
  throw InputError(diagnostics.all());
}

// What belongs to one student cannot be said of all.
void check_options(const Request& request, const TypedLine& typed) {
  for (const std::string_view option : {"--log", "--student"})
    if (const auto place = typed.option(option))
      refuse_option(typed, *place, fmt::format("{} is for one student, not for a studio", option),
                    option == "--log" ? "write log: with each student in the studio's file"
                                      : "the names stand in the studio's file");
  if (request.output.empty())
    refuse_option(typed, typed.value_of("--output"), "missing folder for the workbooks of a studio",
                  "add -o and a folder, as in -o out; it is made where it is missing");
  if (is_standard_output(request.output))
    refuse_option(typed, typed.value_of("-o"), "a studio has a workbook for each student",
                  "name a folder, as in -o out");
}

void make_folder(const std::string& path) {
  std::error_code failed;
  fs::create_directories(path, failed);
  if (!fs::is_directory(path, failed)) refuse_to_write(path, failed ? failed.value() : ENOTDIR);
}

// Says what comes of each student's workbook, and writes it.
class Printing {
 public:
  Printing(const StudioFiles& files, const Request& request, const TypedLine& typed)
      : files_(files), request_(request), typed_(typed) {}

  void take(const Student& student, const StudentWorkbook& made) {
    said_.say(made);
    int code = made.exit_code;
    if (!made.printed.bytes.empty()) {
      code = std::max(code, write(student, made));
    } else if (code == 1) {
      say_misfit(student, made);
    }
    if (made.printed.bytes.empty() || code >= 2) left_.push_back(student.name);
    worst_ = std::max(worst_, code);
  }

  void say_sum() const {
    const std::size_t all = files_.studio.students.size();
    std::string text = fmt::format("{}: {} of {} printed", line_for_terminal(files_.source->name()),
                                   all - left_.size(), all);
    if (pages_ > 0) text += fmt::format(", {} pages, {} sheets of paper", pages_, sheets_);
    if (!left_.empty()) text += fmt::format("; not printed: {}", fmt::join(left_, ", "));
    say_text(text + "\n");
  }

  int worst() const { return worst_; }

 private:
  void say_misfit(const Student& student, const StudentWorkbook& made) const {
    say_warnings(student, made);
    say_text(
        fmt::format("{}, {}:\n{}", student.name, made.request.files.front(), made.printed.misfit) +
        "Write what is to change with the student, or print what fits with --anyway.\n");
  }

  static void say_warnings(const Student& student, const StudentWorkbook& made) {
    if (!made.printed.warnings.empty()) say_err(student.name + ": " + made.printed.warnings);
  }

  int write(const Student& student, const StudentWorkbook& made) {
    const std::string name =
        stem_for(student, made.request, typed_) + (request_.as_text ? ".txt" : ".pdf");
    const std::string path = (fs::path(request_.output) / name).string();
    try {
      std::vector<std::string> inputs = made.inputs;
      inputs.push_back(files_.source->name());
      Output output(path, request_.as_text ? Replaces::own_text : Replaces::own_pdf,
                    request_.replace, std::move(inputs), made.request.packet);
      output.write(made.printed.bytes);
      say_warnings(student, made);
      say_text(made.printed.notes + line_for(student, made, path));
      output.commit();
    } catch (const FileError& error) {
      say_err(line_for_terminal(error.what()) + "\n");
      return 3;
    }
    pages_ += made.printed.pages;
    sheets_ += made.printed.sheets;
    return 0;
  }

  std::string line_for(const Student& student, const StudentWorkbook& made,
                       const std::string& path) const {
    std::string line = line_for_terminal(path) + ": ";
    line += request_.as_text
                ? "the workbook in words"
                : fmt::format("{} {}", made.printed.paper_taken(), how_printed(made.request));
    for (const std::string& log : files_.logs_to_come(student))
      line += fmt::format("; no log yet, {}", line_for_terminal(log));
    return line + "\n";
  }

  const StudioFiles& files_;
  const Request& request_;
  const TypedLine& typed_;
  Said said_;
  std::vector<std::string> left_;  // names of those without a workbook
  int pages_ = 0;
  int sheets_ = 0;
  int worst_ = 0;
};

}  // namespace

int print_studio(const Request& request, const TypedLine& typed, Date today) {
  check_options(request, typed);
  const StudioFiles files(request.files.front());
  const std::vector<Student>& students = files.studio.students;
  check_templates(request, typed);
  make_folder(request.output);
  const StudentWork work(files, request, typed, today);
  std::vector<StudentWorkbook> made(students.size());
  const auto worker = [&] {
    auto typefaces = std::make_shared<std::optional<Typefaces>>();
    return [&, typefaces](std::size_t number) {
      made[number] = work.workbook(students[number], *typefaces);
    };
  };
  Printing printing(files, request, typed);
  Progress progress;
  const auto wait_for = [&](std::size_t number) {
    if (number < students.size())
      progress.show(
          fmt::format("printing {} of {}: {}", number + 1, students.size(), students[number].name));
  };
  wait_for(0);
  in_order(students.size(), threads_for(request), worker, [&](std::size_t number) {
    progress.clear();
    printing.take(students[number], std::exchange(made[number], {}));
    wait_for(number + 1);
  });
  printing.say_sum();
  return printing.worst();
}

}  // namespace cahier
