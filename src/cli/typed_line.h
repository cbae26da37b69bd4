// The command as it was typed, so that messages can quote it with a caret like any other line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/source.h"

namespace cahier {

class TypedLine {
 public:
  // `arguments` without the program's name.
  explicit TypedLine(const std::vector<std::string>& arguments);

  const Source& source() const { return source_; }

  // Where the value of an option stands ("--by"), or the option itself when it has none, or the end
  // of the line when it was not typed; of an option typed twice the last, which is the one that
  // counts.
  Place value_of(std::string_view option) const;
  // Where an argument stands that was typed just so, counted from the left from 1; the end of the
  // line when it was not typed so often.
  Place argument(std::string_view text, int occurrence = 1) const;

 private:
  std::vector<std::string> arguments_;
  std::vector<int> columns_;
  int end_column_ = 1;
  Source source_;
};

}  // namespace cahier
