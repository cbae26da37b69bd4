#include "text/diagnostic.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "text/line_part.h"
#include "text/terminal.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::size_t kShown = 80;  // characters of a quoted line

std::string quoted_line(const Diagnostic& diagnostic) {
  const int column = diagnostic.caret_column > 0 ? diagnostic.caret_column : diagnostic.at.column;
  const LinePart window = part_of_line(decode_utf8(diagnostic.source_line),
                                       static_cast<std::size_t>(std::max(1, column)) - 1, kShown);
  return fmt::format("    {}\n    {}^\n", line_for_terminal(encode_utf8(window.characters)),
                     std::string(window.caret, ' '));
}

}  // namespace

std::string_view severity_name(Diagnostic::Severity severity) {
  return severity == Diagnostic::Severity::error ? "error" : "warning";
}

bool is_alike(const Diagnostic& one, const Diagnostic& other) {
  return one.kind == other.kind && one.severity == other.severity && one.file == other.file;
}

std::string compose(const Diagnostic& diagnostic) {
  std::string text;
  if (!diagnostic.file.empty()) {
    text = fmt::format("{}:{}:{}: ", line_for_terminal(diagnostic.file), diagnostic.at.line,
                       diagnostic.at.column);
  }
  text += fmt::format("{}: {}\n", severity_name(diagnostic.severity),
                      line_for_terminal(diagnostic.message));
  if (!diagnostic.source_line.empty()) text += quoted_line(diagnostic);
  if (!diagnostic.hint.empty()) text += fmt::format("  {}\n", line_for_terminal(diagnostic.hint));
  for (const std::string& link : diagnostic.chain)
    text += fmt::format("  {}\n", line_for_terminal(link));
  if (diagnostic.more > 0) text += fmt::format("  and {} more like this\n", diagnostic.more);
  return text;
}

}  // namespace cahier
