// What is wrong with the input, as values; composed into text in one place.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "text/source.h"

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

// file:line:col: error: message, the source line with a caret, the hint and the chain.
// Lines longer than the terminal are cut around the caret; control characters of the quoted line
// are shown as a replacement character. Every line of the answer, the last too, ends with a
// newline.
std::string compose(const Diagnostic& diagnostic);

// Collects every problem of a file, so that one run names them all. After kMost errors (and as many
// warnings) further ones of that kind are counted as one last "too many" and dropped: a hostile
// file must not fill the memory with complaints.
class Diagnostics {
 public:
  static constexpr int kMost = 200;

  void add(Diagnostic diagnostic);
  void error(const Source& source, Place at, std::string message, std::string hint = {});
  void warning(const Source& source, Place at, std::string message, std::string hint = {});
  bool has_errors() const;
  // Puts what was added from index `from` on into the order of the file. REQUIRES: it all is of one
  // file.
  void sort_by_place(std::size_t from = 0);
  // How many errors were added so far, also those past kMost.
  int error_count() const { return errors_; }
  const std::vector<Diagnostic>& all() const { return all_; }

  // Opens a link of the chain for every diagnostic added while the returned object lives.
  class Within {
   public:
    Within(Diagnostics& owner, std::string what);
    ~Within();
    Within(const Within&) = delete;
    Within& operator=(const Within&) = delete;

   private:
    Diagnostics& owner_;
  };

 private:
  friend class Within;
  void report(Diagnostic::Severity severity, const Source& source, Place at, std::string message,
              std::string hint);

  int errors_ = 0;
  int warnings_ = 0;
  std::vector<Diagnostic> all_;
  std::vector<std::string> chain_;
};

// Something in the input is wrong (exit code 2). Carries at least one error.
class InputError : public std::runtime_error {
 public:
  explicit InputError(std::vector<Diagnostic> diagnostics);
  const std::vector<Diagnostic>& diagnostics() const { return diagnostics_; }

 private:
  std::vector<Diagnostic> diagnostics_;
};

// A file could not be read or written (exit code 3). what() names the file and the reason.
class FileError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace cahier
