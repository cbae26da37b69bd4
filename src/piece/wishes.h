// How and when the player practises, as asked for in the piece file or on the command line.
// Whatever is not asked for stays empty, so that the command line can override the piece file,
// and the piece file the method.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/date.h"

namespace cahier {

enum class Order { forward, backward, hardest_first };
enum class Temper { yes, no, weak };
// What is thrown to choose among cue starts.
enum class Throw { two_dice, one_die, d20, coins };

// Minutes for each weekday, Monday first.
using WeekMinutes = std::array<double, 7>;

struct DaysOff {
  std::array<bool, 7> weekdays{};  // Monday first
  std::vector<DateSpan> dates;
};

struct Wishes {
  std::optional<WeekMinutes> minutes;
  std::optional<int> blocks;
  std::optional<DaysOff> days_off;
  std::optional<int> lesson;  // weekday, Monday 0
  std::optional<Order> order;
  std::optional<bool> new_to_performing;
  std::optional<Temper> temper;
  std::optional<Throw> dice;

  // These wishes, with `fallback` for whatever they leave empty.
  Wishes over(const Wishes& fallback) const;
};

std::optional<Order> parse_order(std::string_view text);    // forward, backward, hardest first
std::optional<Temper> parse_temper(std::string_view text);  // yes, no, weak, weak bars only
std::optional<Throw> parse_throw(std::string_view text);    // two dice, one die, d20, coins
std::string_view throw_word(Throw thrown);                  // as parse_throw reads it
// "sun", "2027-02-14" or "2027-02-20..2027-02-23"; adds to `days_off`, false when it is not one
// of them.
bool parse_day_off(std::string_view text, DaysOff& days_off);

}  // namespace cahier
