#include "text/diagnostics.h"

#include <algorithm>
#include <utility>

#include "text/line_part.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::size_t kStored = 400;  // characters kept of a very long line

}  // namespace

Diagnostics::Kind* Diagnostics::kind_of(const Diagnostic& diagnostic) {
  const auto found = std::ranges::find_if(
      kinds_, [&](const Kind& kind) { return is_alike(all_[kind.one], diagnostic); });
  return found == kinds_.end() ? nullptr : &*found;
}

bool Diagnostics::counted_only(const Diagnostic& diagnostic) {
  const Kind* kind = kind_of(diagnostic);
  if (!kind || kind->kept < kMostKept) return false;
  all_[kind->one].more += 1 + diagnostic.more;
  return true;
}

void Diagnostics::keep(Diagnostic diagnostic) {
  Kind* kind = kind_of(diagnostic);
  if (!kind) kind = &kinds_.emplace_back(Kind{all_.size(), 0});
  ++kind->kept;
  all_.push_back(std::move(diagnostic));
}

void Diagnostics::add(Diagnostic diagnostic) {
  if (diagnostic.severity == Diagnostic::Severity::error) errors_ += 1 + diagnostic.more;
  if (!counted_only(diagnostic)) keep(std::move(diagnostic));
}

void Diagnostics::report(Diagnostic::Severity severity, const Source& source, Place at,
                         std::string message, std::string hint, MessageKind kind) {
  Diagnostic diagnostic;
  diagnostic.severity = severity;
  diagnostic.file = source.name();
  diagnostic.at = at;
  diagnostic.message = std::move(message);
  diagnostic.hint = std::move(hint);
  diagnostic.kind = kind;
  if (severity == Diagnostic::Severity::error) ++errors_;
  if (counted_only(diagnostic)) return;
  diagnostic.chain.assign(chain_.rbegin(), chain_.rend());
  const std::string_view line = source.line(at.line);
  if (line.size() <= kStored) {
    diagnostic.source_line = line;
  } else {
    const LinePart window = part_of_line(
        decode_utf8(line), static_cast<std::size_t>(std::max(1, at.column)) - 1, kStored);
    diagnostic.source_line = encode_utf8(window.characters);
    diagnostic.caret_column = static_cast<int>(window.caret) + 1;
  }
  keep(std::move(diagnostic));
}

void Diagnostics::error(const Source& source, Place at, std::string message, std::string hint,
                        MessageKind kind) {
  report(Diagnostic::Severity::error, source, at, std::move(message), std::move(hint), kind);
}

void Diagnostics::warning(const Source& source, Place at, std::string message, std::string hint,
                          MessageKind kind) {
  report(Diagnostic::Severity::warning, source, at, std::move(message), std::move(hint), kind);
}

void Diagnostics::sort_by_place(std::size_t from) {
  const auto begin = all_.begin() + static_cast<std::ptrdiff_t>(std::min(from, all_.size()));
  std::stable_sort(begin, all_.end(), [](const Diagnostic& one, const Diagnostic& other) {
    return std::pair(one.at.line, one.at.column) < std::pair(other.at.line, other.at.column);
  });
  std::vector<Diagnostic> sorted = std::exchange(all_, {});
  kinds_.clear();
  for (Diagnostic& diagnostic : sorted) keep(std::move(diagnostic));
}

bool Diagnostics::has_errors() const { return errors_ > 0; }

Diagnostics::Within::Within(Diagnostics& owner, std::string what) : owner_(owner) {
  owner_.chain_.push_back(std::move(what));
}

Diagnostics::Within::~Within() { owner_.chain_.pop_back(); }

std::vector<Diagnostic> first_of_each_kind(const std::vector<Diagnostic>& all) {
  std::vector<Diagnostic> shown;
  for (const Diagnostic& diagnostic : all) {
    int alike = 0;
    Diagnostic* last = nullptr;
    for (Diagnostic& each : shown) {
      if (!is_alike(each, diagnostic)) continue;
      ++alike;
      last = &each;
    }
    if (alike == kMostShown) {
      last->more += 1 + diagnostic.more;
      continue;
    }
    const int more = last ? std::exchange(last->more, 0) : 0;
    shown.push_back(diagnostic);
    shown.back().more += more;
  }
  return shown;
}

}  // namespace cahier
