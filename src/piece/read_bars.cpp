#include "piece/read_bars.h"

#include <fmt/core.h>

namespace cahier {
namespace {

constexpr std::size_t kMostDigits = 6;  // far past any piece, far below what an int holds

std::optional<int> parse_number(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  if (text.empty() || text.size() > kMostDigits) return std::nullopt;
  int number = 0;
  for (const char letter : text) {
    if (letter < '0' || letter > '9') return std::nullopt;
    number = number * 10 + (letter - '0');
  }
  return number;
}

// Adds an error and returns false when the bars lie outside the piece.
bool inside(const Source& source, Place at, std::string_view what, const BarRange& bars,
            const Extent& extent, Diagnostics& diagnostics) {
  if (bars.first < extent.first) {
    diagnostics.error(source, at, fmt::format("{} cannot begin at bar {}", what, bars.first),
                      extent.first == 1
                          ? "the first bar is 1; bar 0 is there only with \"pickup: beats\""
                          : "the first bar is 0, the pickup");
    return false;
  }
  if (extent.last > 0 && bars.last > extent.last) {
    diagnostics.error(source, at,
                      fmt::format("{} reach bar {}, but the piece ends with bar {}", what,
                                  bars.last, extent.last),
                      "correct these bars, or \"bars:\" at the top of the file");
    return false;
  }
  return true;
}

}  // namespace

std::string bars_text(const BarRange& bars) {
  if (bars.first == bars.last) return fmt::format("{}", bars.first);
  return fmt::format("{}–{}", bars.first, bars.last);
}

std::string bars_phrase(const BarRange& bars, std::string_view verb, std::string_view verbs) {
  return bars.size() == 1 ? fmt::format("bar {} {}", bars_text(bars), verb)
                          : fmt::format("bars {} {}", bars_text(bars), verbs);
}

std::optional<BarRange> parse_bars(std::string_view text) {
  constexpr std::string_view kEnDash = "–";
  std::size_t dash = text.find('-');
  std::size_t width = 1;
  if (dash == std::string_view::npos) {
    dash = text.find(kEnDash);
    width = kEnDash.size();
  }
  const auto first = parse_number(text.substr(0, dash));
  const auto last =
      dash == std::string_view::npos ? first : parse_number(text.substr(dash + width));
  if (!first || !last || *last < *first) return std::nullopt;
  return BarRange{*first, *last};
}

std::optional<BarRange> read_bars(const Source& source, const YamlNode& node, std::string_view what,
                                  const Extent& extent, Diagnostics& diagnostics) {
  const auto text = yaml_text(source, node, what, 100, diagnostics);
  if (!text) return std::nullopt;
  const auto bars = parse_bars(*text);
  if (!bars) {
    diagnostics.error(source, node.at,
                      fmt::format("{} must be written like 1-16 or 17, found \"{}\"", what, *text),
                      "write the first bar, a hyphen and the last bar, in that order");
    return std::nullopt;
  }
  if (!inside(source, node.at, what, *bars, extent, diagnostics)) return std::nullopt;
  return bars;
}

std::optional<int> read_bar(const Source& source, const YamlNode& node, std::string_view what,
                            const Extent& extent, Diagnostics& diagnostics) {
  const auto text = yaml_text(source, node, what, 100, diagnostics);
  if (!text) return std::nullopt;
  const auto bar = parse_number(*text);
  if (!bar) {
    diagnostics.error(source, node.at,
                      fmt::format("{} must be one bar number, found \"{}\"", what, *text),
                      "write the number as printed in your score, for example 17");
    return std::nullopt;
  }
  const bool before = *bar < extent.first;
  const bool after = extent.last > 0 && *bar > extent.last;
  if (!before && !after) return bar;
  diagnostics.error(source, node.at,
                    fmt::format("{} names bar {}, which is not in the piece", what, *bar),
                    after ? fmt::format("the piece ends with bar {}", extent.last)
                          : "the first bar is 1; bar 0 is there only with \"pickup: beats\"");
  return std::nullopt;
}

std::optional<BarRange> require_bars(YamlFields& fields, std::string_view key,
                                     const Extent& extent) {
  if (const YamlNode* node = fields.node(key)) {
    return read_bars(fields.source(), *node, fmt::format("\"{}\"", key), extent,
                     fields.diagnostics());
  }
  if (fields.lacks(key)) fields.missing(key, fmt::format("write for example {}: 9-16", key));
  return std::nullopt;
}

std::optional<int> require_bar(YamlFields& fields, std::string_view key, const Extent& extent) {
  if (const YamlNode* node = fields.node(key)) {
    return read_bar(fields.source(), *node, fmt::format("\"{}\"", key), extent,
                    fields.diagnostics());
  }
  if (fields.lacks(key)) fields.missing(key, fmt::format("write for example {}: 17", key));
  return std::nullopt;
}

}  // namespace cahier
