// The workbook that a request asks for, in memory: nothing is said and nothing written.
#pragma once

#include <string>

#include "cli/find_plan.h"
#include "cli/inputs.h"
#include "cli/request.h"
#include "paper/typeface.h"

namespace cahier {

struct PrintedWorkbook {
  bool fits = true;
  std::string bytes;     // of the PDF or the text; empty where the work does not fit
  std::string plan;      // as text, where there are no bytes; ends in what would make it fit
  std::string misfit;    // only how much does not fit and what would make it fit
  std::string warnings;  // for standard error
  std::string notes;     // of what is printed otherwise than asked for, a line each
  int pages = 0;         // none of a text
  int sheets = 0;

  // "12 pages, 6 sheets of paper".
  std::string paper_taken() const;
};

// Plans and prints. `typed` is quoted in messages. The same request gives the same bytes. Throws
// InputError where there is nothing to show, or a text fits no page.
// For one thread at a time with each Typefaces, and with Waiting::on_terminal.
PrintedWorkbook printed_workbook(const Typefaces& typefaces, const Request& request,
                                 const TypedLine& typed, const Inputs& inputs, Date today,
                                 Waiting waiting);

// How the request is printed: "printed on both sides".
std::string_view how_printed(const Request& request);

}  // namespace cahier
