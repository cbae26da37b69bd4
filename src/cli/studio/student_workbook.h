// One student's workbook, made without a word: what went wrong is kept for whoever says it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/find_plan.h"
#include "cli/printed_workbook.h"
#include "cli/studio/studio_file.h"
#include "text/date.h"
#include "text/diagnostic.h"

namespace cahier {

// Of a command for one student.
struct Outcome {
  int exit_code = 0;                // as run() returns it
  std::vector<Diagnostic> said;     // warnings, and the errors of exit code 2
  std::string error;                // that is no diagnostic; a line or more, or empty
  std::vector<std::string> inputs;  // paths of every file that was read
};

struct StudentWorkbook : Outcome {
  Request request;
  PrintedWorkbook printed;  // nothing in it where the exit code is 2 or more
};

struct StudentPlan : Outcome {
  std::optional<FoundPlan> found;
};

// Workbooks and plans of one studio. For several threads at a time, each with its own Typefaces.
class StudentWork {
 public:
  // REQUIRES: all outlive this object.
  StudentWork(const StudioFiles& files, const Request& request, const TypedLine& typed, Date today)
      : files_(files), request_(request), typed_(typed), today_(today) {}

  // `typefaces` are loaded when they are first needed. Neither throws.
  StudentWorkbook workbook(const Student& student, std::optional<Typefaces>& typefaces) const;
  StudentPlan plan(const Student& student) const;

 private:
  Inputs inputs_for(const Student& student, const Request& request, Outcome& outcome) const;
  void refuse_files(const Student& student, Outcome& outcome) const;

  const StudioFiles& files_;
  const Request& request_;
  const TypedLine& typed_;
  const Date today_;
};

}  // namespace cahier
