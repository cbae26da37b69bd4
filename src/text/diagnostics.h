// Everything that is wrong with the input, collected.
#pragma once

#include <string>
#include <vector>

#include "text/diagnostic.h"
#include "text/source.h"

namespace cahier {

// Collects every problem of a file, so that one run names them all. Of each kind of message in a
// file the first kMostKept are kept and the others counted: a hostile file must not fill the memory
// with messages.
class Diagnostics {
 public:
  static constexpr int kMostKept = 100;

  void add(Diagnostic diagnostic);
  // `kind` is only passed by functions that report for their callers.
  void error(const Source& source, Place at, std::string message, std::string hint = {},
             MessageKind kind = MessageKind::current());
  void warning(const Source& source, Place at, std::string message, std::string hint = {},
               MessageKind kind = MessageKind::current());
  bool has_errors() const;
  // Puts what was added from index `from` on into the order of the file. REQUIRES: it all is of one
  // file.
  void sort_by_place(std::size_t from = 0);
  // How many errors were added so far, also those that were not kept.
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
  struct Kind {
    std::size_t one = 0;  // index in all_ of one of them
    int kept = 0;
  };

  Kind* kind_of(const Diagnostic& diagnostic);
  // Counts this one without keeping it if enough of its kind are kept; else returns false.
  bool counted_only(const Diagnostic& diagnostic);
  void keep(Diagnostic diagnostic);
  void report(Diagnostic::Severity severity, const Source& source, Place at, std::string message,
              std::string hint, MessageKind kind);

  int errors_ = 0;
  std::vector<Diagnostic> all_;
  std::vector<Kind> kinds_;  // of all_, by file
  std::vector<std::string> chain_;
};

inline constexpr int kMostShown = 10;  // messages of one kind in one file

// What is shown of all: the first kMostShown of each kind in each file, in their order, the last
// of them with the number of the rest.
std::vector<Diagnostic> first_of_each_kind(const std::vector<Diagnostic>& all);

}  // namespace cahier
