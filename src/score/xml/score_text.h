// The XML text of a score in memory, with the names that messages call it by.
#pragma once

#include <cstddef>
#include <string>

#include "text/diagnostic.h"

namespace cahier {

class ScoreText {
 public:
  // `file` is the file as it was named, `inside` the file in a compressed score that `text` is of,
  // or empty. `text` is UTF-8 without a byte order mark.
  ScoreText(std::string file, std::string inside, std::string text);

  const std::string& text() const { return text_; }
  const std::string& file() const { return file_; }
  const std::string& inside() const { return inside_; }

  // From now on messages may quote lines: it is known to be a score, and no stranger's file.
  void may_be_quoted() { quotable_ = true; }

  // An error at the byte `offset`; `where` names the bar and may be empty.
  Diagnostic error(std::size_t offset, std::string message, std::string hint,
                   std::string where = {}) const;
  // Throws InputError with that.
  [[noreturn]] void refuse(std::size_t offset, std::string message, std::string hint,
                           std::string where = {}) const;

 private:
  std::string file_;
  std::string inside_;
  std::string text_;
  bool quotable_ = false;
};

// An error about the whole file `file`. Throws InputError.
[[noreturn]] void refuse_score_file(const std::string& file, std::string message, std::string hint);

}  // namespace cahier
