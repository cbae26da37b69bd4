#include "practice/method_reader.h"

#include <fmt/format.h>

#include <charconv>
#include <optional>

namespace cahier {
namespace {

constexpr std::string_view kShape =
    "write it as {value: 5, source: common practice}; every number of a method names its source";

std::optional<double> number_in(const YamlNode& node) {
  if (node.kind != YamlNode::Kind::scalar || node.quoted) return std::nullopt;
  double value = 0;
  const char* end = node.text.data() + node.text.size();
  const auto read = std::from_chars(node.text.data(), end, value);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

}  // namespace

void MethodReader::number(std::string_view key, double& target, double least, double most) {
  if (const YamlNode* value = sourced(key)) take(*value, key, target, least, most);
}

void MethodReader::whole(std::string_view key, int& target, int least, int most) {
  double value = target;
  number(key, value, least, most);
  if (value != static_cast<int>(value)) {
    faulty_.insert(std::string(key));
    if (const YamlNode* node = sourced(key))
      diagnostics_.error(source_, node->at, fmt::format("\"{}\" must be a whole number", key));
    return;
  }
  target = static_cast<int>(value);
}

void MethodReader::by_level(std::string_view key, ByLevel& target, double least, double most,
                            std::string_view example) {
  const YamlNode* value = sourced(key);
  if (!value) return;
  if (value->kind != YamlNode::Kind::list || value->items.size() != target.size()) {
    diagnostics_.error(source_, value->at,
                       fmt::format("\"{}\" needs five numbers, one for each level", key),
                       fmt::format("for example {}", example));
    return;
  }
  for (std::size_t i = 0; i < target.size(); ++i)
    take(value->items[i], key, target[i], least, most);
}

void MethodReader::spacing(std::vector<Method::Spacing>& target) {
  const YamlNode* value = sourced("spacing");
  if (!value) return;
  for (const YamlNode& pair : value->items) {
    Method::Spacing point{};
    if (pair.kind != YamlNode::Kind::list || pair.items.size() != 2) {
      diagnostics_.error(source_, pair.at, "a spacing pair must be [delay, gap], both in days");
      return;
    }
    take(pair.items[0], "spacing", point.delay, 1, 4000);
    take(pair.items[1], "spacing", point.gap, 0.5, 400);
    if (!target.empty() && (point.delay <= target.back().delay || point.gap <= target.back().gap ||
                            (point.gap + point.delay) * target.back().gap <=
                                point.gap * (target.back().gap + target.back().delay)))
      diagnostics_.error(source_, pair.at,
                         "longer delays need longer gaps, but a smaller share of the time left",
                         "for example [[7, 3], [35, 8], [70, 12]]");
    target.push_back(point);
  }
  if (target.size() < 2)
    diagnostics_.error(source_, value->at, "spacing needs at least two pairs of [delay, gap]");
}

void MethodReader::falling_days(std::string_view key, std::vector<int>& target, int most) {
  const YamlNode* value = sourced(key);
  if (!value) return;
  const std::string example = "for example [14, 9, 5]";
  if (value->kind != YamlNode::Kind::list || value->items.empty() || value->items.size() > 10) {
    diagnostics_.error(source_, value->at, fmt::format("\"{}\" needs one to ten days", key),
                       example);
    return;
  }
  for (const YamlNode& item : value->items) {
    int day = 1;
    if (!take_whole(item, key, day, 1, most)) return;
    if (!target.empty() && day >= target.back())
      diagnostics_.error(source_, item.at,
                         fmt::format("the days of \"{}\" must come nearer to the date", key),
                         example);
    target.push_back(day);
  }
}

void MethodReader::runs_apart(std::vector<Method::RunsApart>& target) {
  const YamlNode* value = sourced("days between runs");
  if (!value) return;
  const std::string example = "for example [[0, 10], [70, 14], [180, 21]]";
  for (const YamlNode& pair : value->items) {
    Method::RunsApart step{};
    if (pair.kind != YamlNode::Kind::list || pair.items.size() != 2) {
      diagnostics_.error(source_, pair.at,
                         "a pair must be [days left, days between two run-throughs]", example);
      return;
    }
    if (!take_whole(pair.items[0], "days between runs", step.left, 0, 4000) ||
        !take_whole(pair.items[1], "days between runs", step.days, 1, 400))
      return;
    if (target.empty() ? step.left != 0 : step.left <= target.back().left)
      diagnostics_.error(source_, pair.at, "the days left must rise, from 0 on", example);
    target.push_back(step);
  }
  if (target.empty())
    diagnostics_.error(source_, value->at,
                       "\"days between runs\" needs pairs of [days left, days between]", example);
}

void MethodReader::require(bool holds, std::string_view key, std::string_view other,
                           std::string message) {
  if (holds || faulty_.contains(key) || faulty_.contains(other)) return;
  const YamlNode* node = fields_.node(key);
  diagnostics_.error(source_, node ? node->at : Place{}, std::move(message));
}

const YamlNode* MethodReader::sourced(std::string_view key) {
  const YamlNode* node = fields_.node(key);
  if (!node) {
    faulty_.insert(std::string(key));
    fields_.missing(key, std::string(kShape));
    return nullptr;
  }
  const YamlNode* value = node->find("value");
  const YamlNode* from = node->find("source");
  if (!value || !from || from->text.empty()) {
    faulty_.insert(std::string(key));
    diagnostics_.error(source_, node->at, fmt::format("\"{}\" has no value or no source", key),
                       std::string(kShape));
    return nullptr;
  }
  return value;
}

bool MethodReader::take(const YamlNode& node, std::string_view key, double& target, double least,
                        double most) {
  const std::optional<double> value = number_in(node);
  if (value && *value >= least && *value <= most) {
    target = *value;
    return true;
  }
  faulty_.insert(std::string(key));
  diagnostics_.error(source_, node.at,
                     fmt::format("\"{}\" must be a number from {} to {}", key, least, most));
  return false;
}

bool MethodReader::take_whole(const YamlNode& node, std::string_view key, int& target, int least,
                              int most) {
  double value = target;
  if (!take(node, key, value, least, most)) return false;
  target = static_cast<int>(value);
  if (value == target) return true;
  diagnostics_.error(source_, node.at, fmt::format("\"{}\" needs whole numbers", key));
  return false;
}

}  // namespace cahier
