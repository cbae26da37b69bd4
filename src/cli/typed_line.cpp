#include "cli/typed_line.h"

#include <algorithm>

#include "text/utf8.h"

namespace cahier {
namespace {

std::string typed(const std::string& argument) {
  const bool plain =
      !argument.empty() && argument.find_first_of(" \t\n'\"\\$*?;&|<>()") == std::string::npos;
  return plain ? argument : "'" + argument + "'";
}

std::string joined(const std::vector<std::string>& arguments) {
  std::string line = "cahier";
  for (const std::string& argument : arguments) line += " " + typed(argument);
  return line;
}

}  // namespace

TypedLine::TypedLine(const std::vector<std::string>& arguments)
    : arguments_(arguments), source_("command line", joined(arguments)) {
  int column = 1 + static_cast<int>(std::string_view("cahier").size());
  for (const std::string& argument : arguments_) {
    columns_.push_back(column + 1);
    column += 1 + static_cast<int>(count_characters(typed(argument)));
  }
  end_column_ = column;
}

Place TypedLine::value_of(std::string_view option) const {
  for (std::size_t i = arguments_.size(); i-- > 0;) {
    if (arguments_[i] == option)
      return {1, i + 1 < arguments_.size() ? columns_[i + 1] : columns_[i]};
    if (arguments_[i].starts_with(option) && arguments_[i].size() > option.size() &&
        arguments_[i][option.size()] == '=')
      return {1, columns_[i] + static_cast<int>(option.size()) + 1};
  }
  return {1, end_column_};
}

bool TypedLine::is_typed(std::string_view argument) const {
  return std::ranges::find(arguments_, argument) != arguments_.end();
}

std::optional<Place> TypedLine::option(std::string_view name) const {
  for (std::size_t i = 0; i < arguments_.size(); ++i)
    if (arguments_[i] == name || arguments_[i].starts_with(std::string(name) + "="))
      return Place{1, columns_[i]};
  return std::nullopt;
}

std::optional<std::string> TypedLine::option_without_value() const {
  for (const std::string& argument : arguments_)
    if (argument.starts_with('-') && argument.find('=') == argument.size() - 1)
      return argument.substr(0, argument.size() - 1);
  return std::nullopt;
}

Place TypedLine::argument(std::string_view text, int occurrence) const {
  for (std::size_t i = 0; i < arguments_.size(); ++i)
    if (arguments_[i] == text && --occurrence == 0) return {1, columns_[i]};
  return {1, end_column_};
}

}  // namespace cahier
