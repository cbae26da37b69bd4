// The files a request names, read and checked.
#pragma once

#include <optional>
#include <vector>

#include "cli/request.h"
#include "piece/piece.h"
#include "plan/terms.h"
#include "text/errors.h"
#include "text/templates.h"
#include "text/words.h"

namespace cahier {

struct Inputs {
  Templates templates;
  Words words;
  std::string programme;        // its title; empty for a single piece
  std::vector<Source> printed;  // whose texts are printed: the words, the programme, the pieces
  std::vector<Piece> pieces;
  Terms terms;
  std::vector<Diagnostic> warnings;
};

// Reads everything a plan needs. `today` is the first day when the request names none. Throws
// InputError with every problem of a file, FileError when a file cannot be read.
Inputs read_inputs(const Request& request, const TypedLine& typed, Date today);

// The first day that a remedy may begin on: none before today. A plan that itself begins in the
// past is a reckoning, and there any day may be asked for.
std::optional<Date> earliest_start(const Terms& terms, Date today);

// Reads a template of a kind with `read`, and throws InputError with every problem found.
template <typename Read>
auto read_template(const Templates& templates, std::string_view kind, const std::string& name,
                   Read read) {
  const Source source = templates.read(kind, name);
  Diagnostics diagnostics;
  auto result = read(source, diagnostics);
  if (diagnostics.has_errors()) throw InputError(diagnostics.all());
  return result;
}

}  // namespace cahier
