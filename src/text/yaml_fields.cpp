#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

#include "text/did_you_mean.h"
#include "text/utf8.h"
#include "text/yaml.h"

namespace cahier {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// What stands there, for "expected …, found …".
std::string found(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return "nothing";
    case YamlNode::Kind::list:
      return "a list";
    case YamlNode::Kind::map:
      return "several lines \"name: value\"";
    case YamlNode::Kind::scalar:
      break;
  }
  constexpr std::size_t kMostQuoted = 40;
  if (count_characters(node.text) > kMostQuoted) return "a longer text";
  return fmt::format("\"{}\"", node.text);
}

// Reads the whole of `text` as a plain decimal number: no hexadecimal, no exponent, no infinity.
template <typename Number>
std::optional<Number> plain_number(std::string_view text) {
  if (text.find_first_not_of("0123456789+-.") != std::string_view::npos) return std::nullopt;
  if (text.starts_with('+')) text.remove_prefix(1);
  if (text.starts_with('+')) return std::nullopt;
  Number number{};
  const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (problem != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return number;
}

// The character at the front of a text that is UTF-8 and not empty, and how many bytes it takes.
struct Spelled {
  char32_t character = 0;
  std::size_t bytes = 1;
};

Spelled raw(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t bytes = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
  return {decode_utf8(text.substr(0, bytes)).front(), std::min(bytes, text.size())};
}

// A backslash code of a text in double quotes (YAML 1.2, 5.7).
Spelled coded(std::string_view text) {
  constexpr std::string_view kLetters = "0abtnvfreNLP_";
  constexpr std::array<char32_t, 13> kMeant = {0,  7,    8,    9,      10,     11,  12,
                                               13, 0x1B, 0x85, 0x2028, 0x2029, 0xA0};
  if (text.size() < 2) return {U'\\', 1};
  const std::size_t figures = text[1] == 'x' ? 2 : text[1] == 'u' ? 4 : text[1] == 'U' ? 8 : 0;
  if (figures > 0) {
    std::uint32_t code = 0;
    const std::string_view hex = text.substr(2, figures);
    std::from_chars(hex.data(), hex.data() + hex.size(), code, 16);
    return {code, 2 + hex.size()};
  }
  const std::size_t letter = kLetters.find(text[1]);
  const Spelled next = raw(text.substr(1));
  return {letter == std::string_view::npos ? next.character : kMeant.at(letter), 1 + next.bytes};
}

}  // namespace

Place place_in(const Source& source, const YamlNode& node,
               const std::function<bool(char32_t)>& is_meant) {
  const std::string_view text = source.text();
  const char quote = node.offset < text.size() ? text[node.offset] : '\0';
  for (std::size_t at = node.offset; at < text.size();) {
    const bool code = quote == '"' && text[at] == '\\';
    const Spelled one = code ? coded(text.substr(at)) : raw(text.substr(at));
    const bool line_end = !code && (text[at] == '\n' || text[at] == '\r');
    if (!line_end && is_meant(one.character)) return source.place(at);
    if (quote == '"' && at > node.offset && text[at] == quote) break;
    at += one.bytes;
  }
  return node.at;
}

std::optional<std::string> yaml_text(const Source& source, const YamlNode& node,
                                     std::string_view what, std::size_t most,
                                     Diagnostics& diagnostics) {
  if (node.refused) return std::nullopt;
  if (node.kind == YamlNode::Kind::null) {
    diagnostics.error(source, node.at, fmt::format("{} is empty", what),
                      "write its value, or remove it; text such as \"null\" must be in quotes");
    return std::nullopt;
  }
  if (node.kind != YamlNode::Kind::scalar) {
    diagnostics.error(source, node.at,
                      fmt::format("{} must be a single text, not {}", what, found(node)),
                      "if brackets or colons belong to the text, put the text in quotes");
    return std::nullopt;
  }
  const std::string text(trimmed(node.text));
  if (text.empty()) {
    diagnostics.error(source, node.at, fmt::format("{} is empty", what),
                      "write its value, or remove it");
    return std::nullopt;
  }
  const std::vector<char32_t> characters = decode_utf8(text);
  if (characters.size() > most) {
    diagnostics.error(
        source, node.at,
        fmt::format("{} is {} characters long; at most {} fit", what, characters.size(), most),
        "shorten it");
    return std::nullopt;
  }
  if (std::any_of(characters.begin(), characters.end(), is_control)) {
    diagnostics.error(
        source, place_in(source, node, is_control),
        fmt::format("{} contains a line break, a tab or an invisible character", what),
        "write it on one line, in visible characters");
    return std::nullopt;
  }
  return text;
}

std::optional<long long> yaml_whole(const YamlNode& node) {
  if (node.kind != YamlNode::Kind::scalar || node.quoted || node.refused) return std::nullopt;
  return plain_number<long long>(node.text);
}

std::optional<double> yaml_number(const YamlNode& node) {
  if (node.kind != YamlNode::Kind::scalar || node.quoted || node.refused) return std::nullopt;
  return plain_number<double>(node.text);
}

std::optional<bool> yaml_yes_no(std::string_view text) {
  for (const auto& [yes, no] : {std::pair{"yes", "no"},
                                {"Yes", "No"},
                                {"YES", "NO"},
                                {"true", "false"},
                                {"True", "False"},
                                {"TRUE", "FALSE"},
                                {"on", "off"},
                                {"On", "Off"},
                                {"ON", "OFF"}}) {
    if (text == yes) return true;
    if (text == no) return false;
  }
  return std::nullopt;
}

YamlFields::YamlFields(const Source& source, const YamlNode& node, Diagnostics& diagnostics)
    : source_(source), node_(node), diagnostics_(diagnostics) {
  if (is_map() || node.refused) return;
  diagnostics_.error(source_, node_.at,
                     fmt::format("expected \"name: value\" here, found {}", found(node_)),
                     "write one \"name: value\" on each line, or {name: value, name: value}");
}

const YamlNode* YamlFields::node(std::string_view key) {
  accept(key);
  const YamlNode* value = node_.find(key);
  return value && !value->refused ? value : nullptr;
}

std::optional<std::string> YamlFields::text(std::string_view key, std::size_t most) {
  const YamlNode* value = node(key);
  if (!value) return std::nullopt;
  return yaml_text(source_, *value, fmt::format("\"{}\"", key), most, diagnostics_);
}

std::optional<int> YamlFields::whole(std::string_view key, int least, int most) {
  const YamlNode* value = node(key);
  if (!value) return std::nullopt;
  const auto number = yaml_whole(*value);
  if (number && least <= *number && *number <= most) return static_cast<int>(*number);
  diagnostics_.error(source_, value->at,
                     fmt::format("\"{}\" must be a whole number from {} to {}, found {}", key,
                                 least, most, found(*value)),
                     value->quoted
                         ? "write the number without quotes"
                         : fmt::format("for example \"{}: {}\"", key, std::clamp(4, least, most)));
  return std::nullopt;
}

std::optional<double> YamlFields::number(std::string_view key, double least, double most) {
  const YamlNode* value = node(key);
  if (!value) return std::nullopt;
  const auto number = yaml_number(*value);
  if (number && std::isfinite(*number) && least <= *number && *number <= most) return number;
  diagnostics_.error(source_, value->at,
                     fmt::format("\"{}\" must be a number from {} to {}, found {}", key, least,
                                 most, found(*value)),
                     value->quoted ? "write the number without quotes"
                     : number      ? ""
                              : "write it in digits, with a point as in 2.5, and nothing after it");
  return std::nullopt;
}

std::optional<bool> YamlFields::yes_no(std::string_view key) {
  const YamlNode* value = node(key);
  if (!value) return std::nullopt;
  const auto answer =
      value->kind == YamlNode::Kind::scalar ? yaml_yes_no(value->text) : std::nullopt;
  if (!answer) {
    diagnostics_.error(source_, value->at,
                       fmt::format("\"{}\" must be yes or no, found {}", key, found(*value)),
                       fmt::format("write \"{0}: yes\" or \"{0}: no\"", key));
  }
  return answer;
}

std::vector<const YamlNode*> YamlFields::list(std::string_view key) {
  std::vector<const YamlNode*> items;
  const YamlNode* value = node(key);
  if (!value) return items;
  if (value->kind == YamlNode::Kind::null) {
    diagnostics_.error(source_, value->at, fmt::format("\"{}\" is empty", key),
                       "write its list, or remove the line");
  } else if (value->kind == YamlNode::Kind::list) {
    for (const YamlNode& item : value->items) items.push_back(&item);
  } else {
    items.push_back(value);
  }
  return items;
}

void YamlFields::missing(std::string_view key, std::string hint) {
  diagnostics_.error(source_, node_.at, fmt::format("\"{}\" is missing", key), std::move(hint));
}

void YamlFields::refuse_unknown() {
  std::vector<std::string> known = asked_;
  std::sort(known.begin(), known.end());
  known.erase(std::unique(known.begin(), known.end()), known.end());
  std::string list;
  for (const std::string& each : known) list += (list.empty() ? "" : ", ") + each;
  int unknown = 0;
  for (const YamlNode::Entry& entry : node_.entries) {
    if (std::binary_search(known.begin(), known.end(), entry.key.text)) continue;
    // Beyond that number messages are only counted.
    const bool is_kept = ++unknown <= Diagnostics::kMostKept;
    diagnostics_.error(source_, entry.key.at,
                       fmt::format("unknown key {}{}", found(entry.key),
                                   is_kept ? did_you_mean(entry.key.text, known) : ""),
                       fmt::format("known keys: {}", list));
  }
}

}  // namespace cahier
