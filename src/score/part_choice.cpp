#include "score/part_choice.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "score/xml/score_text.h"
#include "text/did_you_mean.h"
#include "text/small_letters.h"

namespace cahier {
namespace {

bool holds_word(const std::string& name, std::initializer_list<std::string_view> words) {
  const std::string small = in_small_letters(name);
  return std::ranges::any_of(
      words, [&](std::string_view word) { return small.find(word) != std::string::npos; });
}

bool is_keyboard(const WrittenPart& part) {
  return part.sound.starts_with("keyboard.") || part.sound.starts_with("pluck.harp") ||
         holds_word(part.name, {"piano", "klavier", "organ", "orgel", "orgue", "harpsi", "cembalo",
                                "clavecin", "keyboard", "celesta", "harmonium", "hammerklavier"});
}

bool is_organ(const WrittenPart& part) {
  return part.sound.starts_with("keyboard.organ") ||
         holds_word(part.name, {"organ", "orgel", "orgue"});
}

bool is_named_for_a_hand(const WrittenPart& part) {
  return holds_word(
      part.name, {"right hand", "left hand", "r.h", "l.h", "rechte hand", "linke hand",
                  "main droite", "main gauche", "mano destra", "mano sinistra", "upper", "lower"});
}

// Two parts of one staff each that are one keyboard.
bool are_two_hands(const WrittenPart& top, const WrittenPart& low) {
  if (top.staves != 1 || low.staves != 1) return false;
  if (is_named_for_a_hand(top) && is_named_for_a_hand(low)) return true;
  const auto without_number = [](std::string name) {
    while (!name.empty() && (name.back() == ' ' || name.back() == '.' ||
                             (name.back() >= '0' && name.back() <= '9') || name.back() == 'I'))
      name.pop_back();
    return name;
  };
  return is_keyboard(top) && is_keyboard(low) &&
         (without_number(top.name) == without_number(low.name) || low.name.empty());
}

std::vector<int> staves_from(int first, int count) {
  std::vector<int> staves;
  for (int staff = first; staff < first + count; ++staff) staves.push_back(staff);
  return staves;
}

std::vector<ScoreHand> hands_of(const std::vector<WrittenPart>& all,
                                const std::vector<std::size_t>& chosen) {
  const WrittenPart& part = all[chosen.front()];
  if (chosen.size() > 1)
    return {{"right hand", staves_from(1, part.staves)},
            {"left hand", staves_from(part.staves + 1, all[chosen.back()].staves)}};
  if (part.staves == 1) return {{part.name.empty() ? "part" : part.name, {1}}};
  const bool has_pedals = part.staves >= 3 && is_organ(part);
  std::vector<ScoreHand> hands = {
      {"right hand", {1}}, {"left hand", staves_from(2, part.staves - (has_pedals ? 2 : 1))}};
  if (has_pedals) hands.push_back({"pedals", {part.staves}});
  return hands;
}

[[noreturn]] void refuse_unknown(const std::string& file, const std::vector<WrittenPart>& parts,
                                 const std::string& wanted) {
  std::string list;
  std::vector<std::string> names;
  for (const WrittenPart& part : parts) {
    list += (list.empty() ? "" : ", ") + part.called();
    names.push_back(part.id);
    if (!part.name.empty()) names.push_back(part.name);
  }
  refuse_score_file(file,
                    fmt::format("no part is called \"{}\"{}", wanted, did_you_mean(wanted, names)),
                    "the parts are " + list);
}

using Chosen = std::vector<std::size_t>;

Chosen choose_wanted(const std::string& file, const std::vector<WrittenPart>& parts,
                     const std::string& wanted, ScoreWarnings& warnings) {
  const auto of_id = std::ranges::find(parts, wanted, &WrittenPart::id);
  if (of_id != parts.end()) return {static_cast<std::size_t>(of_id - parts.begin())};
  // "P1+P2": two parts that are the two hands of one player.
  if (const std::size_t plus = wanted.find('+'); plus != std::string::npos) {
    const auto top = std::ranges::find(parts, wanted.substr(0, plus), &WrittenPart::id);
    const auto low = std::ranges::find(parts, wanted.substr(plus + 1), &WrittenPart::id);
    if (top != parts.end() && low != parts.end() && top != low)
      return {static_cast<std::size_t>(top - parts.begin()),
              static_cast<std::size_t>(low - parts.begin())};
  }
  Chosen of_name;
  for (std::size_t at = 0; at < parts.size(); ++at)
    if (in_small_letters(parts[at].name) == in_small_letters(wanted)) of_name.push_back(at);
  if (of_name.empty()) refuse_unknown(file, parts, wanted);
  if (of_name.size() == 2 && of_name[1] == of_name[0] + 1 &&
      are_two_hands(parts[of_name[0]], parts[of_name[1]]))
    return of_name;
  if (of_name.size() > 1)
    warnings.add(0, fmt::format("{} parts are called \"{}\"; the first, {}, is taken: choose with "
                                "--part",
                                of_name.size(), wanted, parts[of_name.front()].id));
  return {of_name.front()};
}

Chosen choose_by_rule(const std::vector<WrittenPart>& parts, std::string& reason,
                      ScoreWarnings& warnings) {
  Chosen grand;
  for (std::size_t at = 0; at < parts.size(); ++at)
    if (parts[at].staves > 1) grand.push_back(at);
  if (parts.size() == 1) {
    reason = "the only part";
    return {0};
  }
  if (grand.size() == 1) {
    reason = "the only part with more than one staff";
    return grand;
  }
  if (grand.size() > 1) {
    const auto keyboard =
        std::ranges::find_if(grand, [&](std::size_t at) { return is_keyboard(parts[at]); });
    reason = keyboard == grand.end() ? "the first part with more than one staff"
                                     : "the first keyboard part with more than one staff";
    const std::size_t chosen = keyboard == grand.end() ? grand.front() : *keyboard;
    warnings.add(0,
                 fmt::format("{} parts have more than one staff; {} is taken: choose with --part",
                             grand.size(), parts[chosen].called()));
    return {chosen};
  }
  const bool are_two_keyboards = std::ranges::count_if(parts, is_keyboard) == 2;
  for (std::size_t at = 0; at + 1 < parts.size(); ++at)
    if (are_two_hands(parts[at], parts[at + 1]) ||
        (are_two_keyboards && is_keyboard(parts[at]) && is_keyboard(parts[at + 1]))) {
      reason = "two parts of one staff each that are one keyboard";
      return {at, at + 1};
    }
  const auto keyboard = std::ranges::find_if(parts, is_keyboard);
  const auto chosen =
      static_cast<std::size_t>(keyboard == parts.end() ? 0 : keyboard - parts.begin());
  reason = keyboard == parts.end() ? "the first part" : "the only keyboard part";
  warnings.add(0, fmt::format("no part has more than one staff; {} is taken: choose with --part",
                              parts[chosen].called()));
  return {chosen};
}

}  // namespace

PartChoice choose_part(const std::string& file, const std::vector<WrittenPart>& parts,
                       const std::string& wanted, ScoreWarnings& warnings) {
  PartChoice choice;
  if (wanted.empty()) {
    choice.parts = choose_by_rule(parts, choice.reason, warnings);
  } else {
    choice.parts = choose_wanted(file, parts, wanted, warnings);
    choice.reason = "asked for";
  }
  choice.hands = hands_of(parts, choice.parts);
  return choice;
}

}  // namespace cahier
