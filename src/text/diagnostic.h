// One thing that is wrong with the input, as a value; composed into text in one place.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/place.h"

namespace cahier {

struct Diagnostic {
  enum class Severity { error, warning };
  Severity severity = Severity::error;
  std::string file;
  Place at;
  std::string message;             // what is wrong: "a return must have as many bars as its source"
  std::string hint;                // what was expected and what to do; may be empty
  std::string source_line;         // the quoted line; may be empty
  std::vector<std::string> chain;  // innermost first: "while reading section \"B\""
  // Where the caret stands in source_line when that is only a part of a very long line; 0 when it
  // is the whole line and the caret stands at at.column.
  int caret_column = 0;
};

// "error" or "warning".
std::string_view severity_name(Diagnostic::Severity severity);

// file:line:col: error: message, the source line with a caret, the hint and the chain.
// Lines longer than the terminal are cut around the caret; control characters of the quoted line
// are shown as a replacement character. Every line of the answer, the last too, ends with a
// newline.
std::string compose(const Diagnostic& diagnostic);

}  // namespace cahier
