#include "piece/read_practice.h"

#include <fmt/core.h>

#include <algorithm>

#include "text/did_you_mean.h"

namespace cahier {
namespace {

constexpr double kMostMinutes = 480;  // eight hours a day
constexpr int kMostBlocks = 6;
constexpr std::string_view kWeekdayHint = "weekdays are mon, tue, wed, thu, fri, sat and sun";

std::string weekday_suggestion(std::string_view text) {
  // "Sunday" is too far from "sun" to be a typing error.
  std::string beginning(text.substr(0, 3));
  for (char& letter : beginning) letter = static_cast<char>(letter | 0x20);
  if (parse_weekday(beginning)) return fmt::format("; did you mean \"{}\"?", beginning);
  return did_you_mean(text, {kWeekdays.begin(), kWeekdays.end()});
}

std::optional<WeekMinutes> read_week(const Source& source, const YamlNode& node,
                                     Diagnostics& diagnostics) {
  WeekMinutes week{};
  bool sound = true;
  for (const YamlNode::Entry& entry : node.entries) {
    const auto weekday = parse_weekday(entry.key.text);
    if (!weekday) {
      diagnostics.error(source, entry.key.at,
                        fmt::format("\"{}\" is not a weekday{}", entry.key.text,
                                    weekday_suggestion(entry.key.text)),
                        std::string(kWeekdayHint));
      sound = false;
      continue;
    }
    const auto minutes = yaml_number(entry.value);
    if (!minutes || *minutes < 0 || *minutes > kMostMinutes) {
      diagnostics.error(source, entry.value.at,
                        fmt::format("the minutes of {} must be a number from 0 to {}",
                                    entry.key.text, kMostMinutes),
                        fmt::format("for example {}: 30", entry.key.text));
      sound = false;
      continue;
    }
    week[static_cast<std::size_t>(*weekday)] = *minutes;
  }
  if (!sound) return std::nullopt;
  if (std::all_of(week.begin(), week.end(), [](double minutes) { return minutes == 0; })) {
    diagnostics.error(source, node.at, "no weekday has any minutes",
                      "give at least one weekday more than 0, for example {mon: 15, sat: 30}");
    return std::nullopt;
  }
  return week;
}

std::optional<WeekMinutes> read_minutes(YamlFields& fields) {
  const YamlNode* node = fields.node("minutes");
  if (!node) return std::nullopt;
  if (node->kind == YamlNode::Kind::map) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"minutes\"");
    return read_week(fields.source(), *node, fields.diagnostics());
  }
  const auto minutes = fields.number("minutes", 1, kMostMinutes);
  if (!minutes) return std::nullopt;
  WeekMinutes week{};
  week.fill(*minutes);
  return week;
}

std::optional<DaysOff> read_days_off(YamlFields& fields) {
  const YamlNode* node = fields.node("days off");
  if (!node) return std::nullopt;
  DaysOff days_off;
  bool sound = node->kind != YamlNode::Kind::null;
  for (const YamlNode* item : fields.list("days off")) {
    const auto text = yaml_text(fields.source(), *item, "a day off", 100, fields.diagnostics());
    if (!text) {
      sound = false;
    } else if (!parse_day_off(*text, days_off)) {
      fields.diagnostics().error(
          fields.source(), item->at,
          fmt::format("\"{}\" is neither a weekday nor a valid date{}", *text,
                      weekday_suggestion(*text)),
          "write sun, or 2027-02-14, or 2027-02-20..2027-02-23 with the earlier day first");
      sound = false;
    }
  }
  return sound ? std::optional(days_off) : std::nullopt;
}

// A field whose value is one of a few words.
template <typename Parse>
auto read_word(YamlFields& fields, std::string_view key, Parse parse,
               const std::vector<std::string>& words) -> decltype(parse(std::string_view())) {
  const auto text = fields.text(key);
  if (!text) return std::nullopt;
  const auto value = parse(*text);
  if (value) return value;
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  fields.diagnostics().error(
      fields.source(), fields.node(key)->at,
      fmt::format("\"{}\" is not valid for \"{}\"{}", *text, key,
                  key == "lesson" ? weekday_suggestion(*text) : did_you_mean(*text, words)),
      fmt::format("write one of: {}", list));
  return std::nullopt;
}

}  // namespace

Wishes read_wishes(YamlFields& fields) {
  Wishes wishes;
  wishes.minutes = read_minutes(fields);
  wishes.blocks = fields.whole("blocks", 1, kMostBlocks);
  wishes.days_off = read_days_off(fields);
  wishes.lesson = read_word(fields, "lesson", parse_weekday, {kWeekdays.begin(), kWeekdays.end()});
  wishes.order = read_word(fields, "order", parse_order, {"forward", "backward", "hardest first"});
  wishes.new_to_performing = fields.yes_no("new to performing");
  wishes.temper = read_word(fields, "temper", parse_temper, {"yes", "no", "weak bars only"});
  wishes.dice = read_word(fields, "dice", parse_throw, {"two dice", "one die", "d20", "coins"});
  return wishes;
}

Wishes read_practice(const Source& source, const YamlNode& node, Diagnostics& diagnostics) {
  const Diagnostics::Within link(diagnostics, "while reading \"practice\"");
  YamlFields fields(source, node, diagnostics);
  const Wishes wishes = read_wishes(fields);
  fields.refuse_unknown();
  return wishes;
}

}  // namespace cahier
