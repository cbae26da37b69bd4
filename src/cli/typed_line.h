// The command as it was typed, so that messages can quote it with a caret like any other line.
#pragma once

#include <optional>
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

  // The place of the value of an option ("--by"), or of the option itself when it has no value, or
  // the end of the line when it was not typed; for an option typed twice, of the last one.
  Place value_of(std::string_view option) const;
  // The first option that is typed with an equals sign and nothing after it, as "--by" in "--by=".
  std::optional<std::string> option_without_value() const;
  bool is_typed(std::string_view argument) const;
  // The place of an option, its value behind it or joined to it by "="; none where it is not typed.
  std::optional<Place> option(std::string_view name) const;
  // The place of an argument typed exactly like this, the first or a later one (counted from 1);
  // the end of the line when there are not as many.
  Place argument(std::string_view text, int occurrence = 1) const;

 private:
  std::vector<std::string> arguments_;
  std::vector<int> columns_;
  int end_column_ = 1;
  Source source_;
};

}  // namespace cahier
