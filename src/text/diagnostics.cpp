#include "text/diagnostics.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "text/line_part.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::size_t kStored = 400;  // characters kept of a very long line

}  // namespace

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
    const LinePart window = part_of_line(
        decode_utf8(line), static_cast<std::size_t>(std::max(1, at.column)) - 1, kStored);
    diagnostic.source_line = encode_utf8(window.characters);
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

}  // namespace cahier
