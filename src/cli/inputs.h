// The files a request names, read and checked.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/request.h"
#include "piece/piece.h"
#include "plan/terms.h"
#include "text/diagnostic.h"
#include "text/source.h"
#include "text/templates.h"
#include "text/words.h"
#include "workbook/print.h"

namespace cahier {

struct Inputs {
  Templates templates;
  Words words;
  std::string programme;        // its title; empty for a single piece
  std::vector<Source> printed;  // whose texts are printed: the words, the programme, the pieces
  std::vector<Piece> pieces;
  Terms terms;
  PrintedNames names;
  std::vector<Diagnostic> warnings;
  std::vector<std::string>
      piece_files;                  // paths of the pieces, and of the programme that lists them
  std::vector<std::string> scores;  // paths of those that pieces name
};

// Reads the templates that are asked for, so that what is wrong with them is said once and not for
// each student. Throws InputError.
void check_templates(const Request& request, const TypedLine& typed);

// Reads everything a plan needs. `today` is the first day when the request names none. Throws
// InputError with every problem of a file, FileError when a file cannot be read.
Inputs read_inputs(const Request& request, const TypedLine& typed, Date today);

// The first day that a remedy may begin on: not before today. A plan that itself begins in the past
// is only a calculation; there a remedy may begin on any day, and this is empty.
std::optional<Date> earliest_start(const Terms& terms, Date today);

}  // namespace cahier
