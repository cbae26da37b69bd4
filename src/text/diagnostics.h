// Everything that is wrong with the input, collected.
#pragma once

#include <string>
#include <vector>

#include "text/diagnostic.h"
#include "text/source.h"

namespace cahier {

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

}  // namespace cahier
