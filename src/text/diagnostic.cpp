#include "text/diagnostic.h"

#include <fmt/core.h>

#include <algorithm>

#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::size_t kShown = 80;    // characters of a quoted line
constexpr std::size_t kStored = 400;  // characters kept of a very long line
constexpr char32_t kEllipsis = U'…';

std::string_view severity_name(Diagnostic::Severity severity) {
  return severity == Diagnostic::Severity::error ? "error" : "warning";
}

struct Window {
  std::vector<char32_t> characters;
  std::size_t caret;  // index; may be one past the end
};

// At most `width` characters of a line with the caret inside, cut ends shown as an ellipsis.
Window cut(std::vector<char32_t> line, std::size_t caret, std::size_t width) {
  caret = std::min(caret, line.size());
  if (line.size() <= width) return {std::move(line), caret};
  const std::size_t half = width / 2;
  std::size_t start = caret > half ? caret - half : 0;
  start = std::min(start, line.size() - width);
  Window window{{line.begin() + static_cast<std::ptrdiff_t>(start),
                 line.begin() + static_cast<std::ptrdiff_t>(start + width)},
                caret - start};
  if (start > 0) window.characters.front() = kEllipsis;
  if (start + width < line.size()) window.characters.back() = kEllipsis;
  return window;
}

std::string encode(const std::vector<char32_t>& characters) {
  std::string text;
  for (const char32_t character : characters) text += encode_utf8(character);
  return text;
}

// One line without control characters, fit for a terminal.
std::string harmless(std::string_view text) {
  std::vector<char32_t> characters = decode_utf8(text);
  for (char32_t& character : characters) {
    if (character == U'\t') character = U' ';
    if (is_control(character)) character = U'\uFFFD';
  }
  return encode(characters);
}

std::string quoted_line(const Diagnostic& diagnostic) {
  const int column = diagnostic.caret_column > 0 ? diagnostic.caret_column : diagnostic.at.column;
  const Window window = cut(decode_utf8(diagnostic.source_line),
                            static_cast<std::size_t>(std::max(1, column)) - 1, kShown);
  return fmt::format("    {}\n    {}^\n", harmless(encode(window.characters)),
                     std::string(window.caret, ' '));
}

std::string compose_all(const std::vector<Diagnostic>& diagnostics) {
  std::string text;
  for (const Diagnostic& diagnostic : diagnostics) text += compose(diagnostic);
  return text;
}

}  // namespace

std::string compose(const Diagnostic& diagnostic) {
  std::string text;
  if (!diagnostic.file.empty()) {
    text = fmt::format("{}:{}:{}: ", harmless(diagnostic.file), diagnostic.at.line,
                       diagnostic.at.column);
  }
  text += fmt::format("{}: {}\n", severity_name(diagnostic.severity), harmless(diagnostic.message));
  if (!diagnostic.source_line.empty()) text += quoted_line(diagnostic);
  if (!diagnostic.hint.empty()) text += fmt::format("  {}\n", harmless(diagnostic.hint));
  for (const std::string& link : diagnostic.chain) text += fmt::format("  {}\n", harmless(link));
  return text;
}

void Diagnostics::add(Diagnostic diagnostic) {
  int& count = diagnostic.severity == Diagnostic::Severity::error ? errors_ : warnings_;
  if (++count > kMost + 1) return;
  if (count > kMost) {
    diagnostic.message = fmt::format("too many {}s; the rest of them are not shown",
                                     severity_name(diagnostic.severity));
    diagnostic.hint.clear();
  }
  all_.push_back(std::move(diagnostic));
}

void Diagnostics::report(Diagnostic::Severity severity, const Source& source, Place at,
                         std::string message, std::string hint) {
  Diagnostic diagnostic;
  diagnostic.severity = severity;
  diagnostic.file = source.name();
  diagnostic.at = at;
  diagnostic.message = std::move(message);
  diagnostic.hint = std::move(hint);
  diagnostic.chain.assign(chain_.rbegin(), chain_.rend());
  const std::string_view line = source.line(at.line);
  if (line.size() <= kStored) {
    diagnostic.source_line = line;
  } else if ((severity == Diagnostic::Severity::error ? errors_ : warnings_) <= kMost) {
    const Window window =
        cut(decode_utf8(line), static_cast<std::size_t>(std::max(1, at.column)) - 1, kStored);
    diagnostic.source_line = encode(window.characters);
    diagnostic.caret_column = static_cast<int>(window.caret) + 1;
  }
  add(std::move(diagnostic));
}

void Diagnostics::error(const Source& source, Place at, std::string message, std::string hint) {
  report(Diagnostic::Severity::error, source, at, std::move(message), std::move(hint));
}

void Diagnostics::warning(const Source& source, Place at, std::string message, std::string hint) {
  report(Diagnostic::Severity::warning, source, at, std::move(message), std::move(hint));
}

void Diagnostics::sort_by_place(std::size_t from) {
  if (errors_ > kMost || warnings_ > kMost) return;  // "the rest are not shown" stays last
  const auto begin = all_.begin() + static_cast<std::ptrdiff_t>(std::min(from, all_.size()));
  std::stable_sort(begin, all_.end(), [](const Diagnostic& one, const Diagnostic& other) {
    return std::pair(one.at.line, one.at.column) < std::pair(other.at.line, other.at.column);
  });
}

bool Diagnostics::has_errors() const { return errors_ > 0; }

Diagnostics::Within::Within(Diagnostics& owner, std::string what) : owner_(owner) {
  owner_.chain_.push_back(std::move(what));
}

Diagnostics::Within::~Within() { owner_.chain_.pop_back(); }

InputError::InputError(std::vector<Diagnostic> diagnostics)
    : std::runtime_error(compose_all(diagnostics)), diagnostics_(std::move(diagnostics)) {}

}  // namespace cahier
