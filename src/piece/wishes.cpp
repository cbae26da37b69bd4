#include "piece/wishes.h"

#include <string>

namespace cahier {
namespace {

// One spelling for what a shell, a list and a map key may each write: lower case, hyphens as
// spaces.
std::string plain(std::string_view text) {
  std::string spelled(text);
  for (char& letter : spelled) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    if (letter == '-' || letter == '_') letter = ' ';
  }
  return spelled;
}

template <typename T>
void fill(std::optional<T>& wish, const std::optional<T>& fallback) {
  if (!wish) wish = fallback;
}

}  // namespace

Wishes Wishes::over(const Wishes& fallback) const {
  Wishes both = *this;
  fill(both.minutes, fallback.minutes);
  fill(both.blocks, fallback.blocks);
  fill(both.days_off, fallback.days_off);
  fill(both.lesson, fallback.lesson);
  fill(both.order, fallback.order);
  fill(both.new_to_performing, fallback.new_to_performing);
  fill(both.temper, fallback.temper);
  fill(both.dice, fallback.dice);
  return both;
}

std::optional<Order> parse_order(std::string_view text) {
  const std::string word = plain(text);
  if (word == "forward") return Order::forward;
  if (word == "backward") return Order::backward;
  if (word == "hardest first") return Order::hardest_first;
  return std::nullopt;
}

std::optional<Temper> parse_temper(std::string_view text) {
  const std::string word = plain(text);
  if (word == "yes" || word == "true" || word == "on") return Temper::yes;
  if (word == "no" || word == "false" || word == "off") return Temper::no;
  if (word == "weak" || word == "weak bars only") return Temper::weak;
  return std::nullopt;
}

std::optional<Throw> parse_throw(std::string_view text) {
  const std::string word = plain(text);
  if (word == "two dice") return Throw::two_dice;
  if (word == "one die") return Throw::one_die;
  if (word == "d20") return Throw::d20;
  if (word == "coins") return Throw::coins;
  return std::nullopt;
}

std::string_view throw_word(Throw thrown) {
  switch (thrown) {
    case Throw::two_dice:
      return "two dice";
    case Throw::one_die:
      return "one die";
    case Throw::d20:
      return "d20";
    case Throw::coins:
      return "coins";
  }
  return "two dice";
}

bool parse_day_off(std::string_view text, DaysOff& days_off) {
  if (const auto weekday = parse_weekday(text)) {
    days_off.weekdays[static_cast<std::size_t>(*weekday)] = true;
    return true;
  }
  const std::size_t dots = text.find("..");
  const auto first = parse_date(text.substr(0, dots));
  const auto last = dots == std::string_view::npos ? first : parse_date(text.substr(dots + 2));
  if (!first || !last || *last < *first) return false;
  days_off.dates.push_back({*first, *last});
  return true;
}

}  // namespace cahier
