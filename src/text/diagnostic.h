// One thing that is wrong with the input, as a value; composed into text in one place.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/place.h"

namespace cahier {

// Messages of one kind differ only in the values they name. A kind is identified by the place in
// the program that makes its messages.
class MessageKind {
 public:
  static constexpr MessageKind current(std::string_view file = __builtin_FILE(),
                                       unsigned line = __builtin_LINE()) {
    return {file, line};
  }
  bool operator==(const MessageKind&) const = default;

 private:
  constexpr MessageKind(std::string_view file, unsigned line) : file_(file), line_(line) {}

  std::string_view file_;
  unsigned line_;
};

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
  MessageKind kind = MessageKind::current();
  int more = 0;  // messages of the same kind in the same file that are not shown
};

// Whether both are of one kind and in one file.
bool is_alike(const Diagnostic& one, const Diagnostic& other);

// "error" or "warning".
std::string_view severity_name(Diagnostic::Severity severity);

// file:line:col: error: message, the source line with a caret, the hint, the chain, and how many
// more there are of the kind.
// Lines longer than the terminal are cut around the caret; control characters of the quoted line
// are shown as a replacement character. Every line of the answer, the last too, ends with a
// newline.
std::string compose(const Diagnostic& diagnostic);

}  // namespace cahier
