#include "piece/parting.h"

#include <string_view>

#include "text/phrasing.h"

namespace cahier {
namespace {

constexpr double kBarsOfHalfDanger = 0.75;

std::string_view key_of(HandChange::Kind kind) {
  switch (kind) {
    case HandChange::Kind::instead:
      return "differences.instead";
    case HandChange::Kind::added:
      return "differences.added";
    case HandChange::Kind::left_out:
      return "differences.left_out";
    case HandChange::Kind::held_longer:
      return "differences.held_longer";
    case HandChange::Kind::held_shorter:
      return "differences.held_shorter";
    case HandChange::Kind::other_notes:
      return "differences.other_notes";
    case HandChange::Kind::ornaments:
      return "differences.ornaments";
    case HandChange::Kind::length:
      return "differences.length";
  }
  return "differences.other_notes";
}

}  // namespace

std::string say_changes(const Words& words, const std::vector<HandChange>& changes) {
  std::string text;
  for (const HandChange& change : changes) {
    std::string one = words.say(key_of(change.kind), {{"is", list_text(words, change.is)},
                                                      {"was", list_text(words, change.was)}});
    if (!change.hand.empty())
      one = words.say("differences.of_hand", {{"hand", change.hand}, {"change", one}});
    text = text.empty() ? one : words.say("differences.and", {{"before", text}, {"next", one}});
  }
  return text;
}

double fork_danger(int bars_alike, double likeness) {
  const double alike = bars_alike + likeness;
  return alike / (alike + kBarsOfHalfDanger);
}

}  // namespace cahier
