#include "log/read_log_values.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "piece/read_bars.h"

namespace cahier {
namespace {

constexpr long long kMostNumber = 100000;

bool all_figures(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// "0105-2" of a month and day that there are.
bool is_code(std::string_view text) {
  if (text.size() < 6 || text.size() > 8 || text[4] != '-' || text[5] == '0') return false;
  if (!all_figures(text.substr(0, 4)) || !all_figures(text.substr(5))) return false;
  // 2028 has a 29 February.
  return parse_date(fmt::format("2028-{}-{}", text.substr(0, 2), text.substr(2, 2))).has_value();
}

std::optional<LoggedBars> read_one(const Source& source, const YamlNode& node, std::string_view key,
                                   bool chunks, Diagnostics& diagnostics) {
  const auto text = yaml_text(source, node, fmt::format("\"{}\"", key), 60, diagnostics);
  if (!text) return std::nullopt;
  std::string_view bars = *text;
  bool named_bars = false;
  for (const std::string_view word : {"bars ", "bar "})
    if (bars.starts_with(word)) {
      bars.remove_prefix(word.size());
      named_bars = true;
      break;
    }
  LoggedBars read{{*text, node.at}, parse_bars(bars), std::nullopt};
  const bool may_be_chunk =
      chunks && !named_bars && std::isalpha(static_cast<unsigned char>(text->front()));
  if (read.bars || may_be_chunk) return read;
  diagnostics.error(source, node.at, fmt::format("\"{}\" is not valid for \"{}\"", *text, key),
                    chunks ? "write bars, as in bars 17-20, or the name of a chunk, as in A3"
                           : "write bars, as in bars 1-8");
  return std::nullopt;
}

}  // namespace

bool is_blank(const YamlNode& node) {
  return node.kind == YamlNode::Kind::null ||
         (node.kind == YamlNode::Kind::list && node.items.empty()) ||
         (node.kind == YamlNode::Kind::map && node.entries.empty());
}

std::optional<Written<Date>> read_log_date(YamlFields& fields, std::string_view key) {
  const auto text = fields.text(key);
  if (!text) return std::nullopt;
  const Place at = fields.node(key)->at;
  if (const auto date = parse_date(*text)) return Written<Date>{*date, at};
  fields.diagnostics().error(fields.source(), at, fmt::format("\"{}\" is not a valid date", *text),
                             "write year, month and day, as in 2027-01-05");
  return std::nullopt;
}

std::optional<Written<double>> read_log_minutes(YamlFields& fields) {
  const YamlNode* node = fields.node("minutes");
  if (!node || is_blank(*node)) return std::nullopt;
  const auto minutes = yaml_number(*node);
  if (minutes && std::isfinite(*minutes) && *minutes > 0 && *minutes <= kMostMinutesOfADay)
    return Written<double>{*minutes, node->at};
  fields.diagnostics().error(
      fields.source(), node->at,
      fmt::format("\"minutes\" must be a number above 0 and at most {}", kMostMinutesOfADay),
      "write it in digits, as in minutes: 14; leave it blank if nobody kept the time");
  return std::nullopt;
}

std::optional<bool> read_told(YamlFields& fields, std::string_view key) {
  const YamlNode* node = fields.node(key);
  if (!node || is_blank(*node)) return std::nullopt;
  return fields.yes_no(key);
}

std::vector<Written<int>> read_numbers(const Source& source, const YamlNode* node,
                                       std::string_view what, Diagnostics& diagnostics) {
  std::vector<Written<int>> numbers;
  if (!node || node->refused || is_blank(*node)) return numbers;
  const auto read = [&](const YamlNode& item) {
    if (item.refused) return;
    const auto number = yaml_whole(item);
    if (number && *number >= 0 && *number <= kMostNumber)
      numbers.push_back({static_cast<int>(*number), item.at});
    else
      diagnostics.error(source, item.at, fmt::format("{} must be a whole number", what),
                        "write numbers with commas between them, as in [7, 12]");
  };
  if (node->kind == YamlNode::Kind::list)
    for (const YamlNode& item : node->items) read(item);
  else
    read(*node);
  return numbers;
}

std::optional<std::vector<Written<int>>> read_bars_or_none(YamlFields& fields, std::string_view key,
                                                           std::string_view what) {
  const YamlNode* node = fields.node(key);
  if (!node || node->kind == YamlNode::Kind::null) return std::nullopt;
  if (node->kind == YamlNode::Kind::scalar && node->text == "none")
    return std::vector<Written<int>>{};
  return read_numbers(fields.source(), node, what, fields.diagnostics());
}

std::vector<LoggedBars> read_logged_bars(YamlFields& fields, std::string_view key, bool chunks) {
  std::vector<LoggedBars> all;
  const YamlNode* node = fields.node(key);
  if (!node || is_blank(*node)) return all;
  const auto add = [&](const YamlNode& name, const YamlNode* numbers) {
    auto one = read_one(fields.source(), name, key, chunks, fields.diagnostics());
    if (numbers && !is_blank(*numbers)) {
      YamlFields inner(fields.source(), *numbers, fields.diagnostics());
      const auto minutes = read_log_minutes(inner);
      inner.refuse_unknown();
      if (one && minutes) one->minutes = minutes;
    }
    if (one) all.push_back(std::move(*one));
  };
  const auto add_map = [&](const YamlNode& map) {
    for (const YamlNode::Entry& entry : map.entries) add(entry.key, &entry.value);
  };
  if (node->kind == YamlNode::Kind::map) {
    add_map(*node);
  } else if (node->kind == YamlNode::Kind::list) {
    for (const YamlNode& item : node->items)
      item.kind == YamlNode::Kind::map ? add_map(item) : add(item, nullptr);
  } else {
    add(*node, nullptr);
  }
  return all;
}

std::optional<Written<std::string>> read_code(const Source& source, const YamlNode& node,
                                              std::optional<Date> date, Diagnostics& diagnostics) {
  const auto text = yaml_text(source, node, "the code of a task", 60, diagnostics);
  if (!text) return std::nullopt;
  if (is_code(*text)) return Written<std::string>{*text, node.at};
  if (date && all_figures(*text) && text->size() <= 3 && text->front() != '0') {
    const std::chrono::year_month_day day{*date};
    return Written<std::string>{fmt::format("{:02}{:02}-{}", static_cast<unsigned>(day.month()),
                                            static_cast<unsigned>(day.day()), *text),
                                node.at};
  }
  diagnostics.error(source, node.at, fmt::format("\"{}\" is not a task code", *text),
                    date ? "write it as on the day panel, for example 0105-2; 2 alone is the "
                           "second task of the entry's own date"
                         : "write it as on the day panel, for example 0105-2");
  return std::nullopt;
}

}  // namespace cahier
