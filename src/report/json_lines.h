// JSON laid out for people: a space after each comma and colon, and new lines where they help.
#pragma once

#include <map>
#include <nlohmann/json_fwd.hpp>
#include <set>
#include <string>
#include <string_view>

namespace cahier {

// Where new lines begin, by the number of spaces they begin with. A place is a path of members and
// items: ".days" before that member, ".days:" between its name and its value, ".days[]" before each
// item but the first, ".days[].note" before that member of each item.
using JsonLineBreaks = std::map<int, std::set<std::string_view>>;

// UTF-8 without a newline at the end; bytes that are not UTF-8 become U+FFFD. Members in the order
// in which they were added.
std::string json_lines(const nlohmann::ordered_json& json, const JsonLineBreaks& breaks);

}  // namespace cahier
