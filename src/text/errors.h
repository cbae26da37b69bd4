// The errors that end a command, by its exit code.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "text/diagnostic.h"

namespace cahier {

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
