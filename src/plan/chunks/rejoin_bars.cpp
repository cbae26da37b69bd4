#include "plan/chunks/rejoin_bars.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

class Rejoins {
 public:
  Rejoins(const PlannedPiece& planned, const Method& method)
      : planned_(planned),
        most_(method.chunk_most),
        hardest_(planned.piece.hardest_level({1, planned.piece.bars})) {}

  std::vector<int> find(const std::set<int>& inside) const {
    const Piece& piece = planned_.piece;
    std::set<int> places = places_of_phrases(inside);
    for (const int cue : piece.cues) places.insert(cue);
    std::erase_if(places, [this](int bar) { return leads_into_fork(bar); });
    std::vector<int> found;
    int last = std::max(1, piece.first_bar());
    for (const int bar : places) {
      const bool section = begins_section(bar);
      const bool wished = std::ranges::find(piece.cues, bar) != piece.cues.end();
      const int apart = wished                             ? 2
                        : piece.bars > numbers::kLongPiece ? numbers::kRejoinFarApart
                                                           : numbers::kRejoinApart;
      if (is_hard_before_easier(bar, places)) continue;
      // What nobody jumps over.
      if (bar <= std::max(1, piece.first_bar()) && !is_gone_back_to(bar)) continue;
      if (!section && bar > 1 && bar - last < apart) continue;
      // A section's beginning is better than a place just before it.
      if (!found.empty() && section && bar - found.back() < 2 && !begins_section(found.back()))
        found.pop_back();
      found.push_back(bar);
      last = bar;
    }
    return found;
  }

 private:
  std::set<int> places_of_phrases(const std::set<int>& inside) const {
    const Piece& piece = planned_.piece;
    const std::vector<int> learned = piece.learned_bars();
    std::vector<bool> known(learned.size(), false);
    std::vector<bool> begins(learned.size(), false);
    for (const Section& section : piece.sections)
      for (const BarRange& phrase : section.phrases) {
        begins[phrase.first] = true;
        for (int bar = phrase.first; bar <= phrase.last; ++bar) known[bar] = true;
      }
    std::set<int> places;
    for (const PlannedSection& section : planned_.sections) {
      places.insert(std::max(1, section.bars.first));
      for (int bar = section.bars.first; bar <= section.bars.last; ++bar) {
        const int source = known[bar] ? bar : learned[bar];
        if (known[source] ? begins[source] : inside.contains(bar)) places.insert(std::max(1, bar));
      }
    }
    return places;
  }

  bool begins_section(int bar) const {
    return std::ranges::any_of(planned_.sections, [&](const PlannedSection& section) {
      return section.bars.first == bar;
    });
  }

  bool is_gone_back_to(int bar) const {
    return std::ranges::any_of(planned_.piece.repeats,
                               [&](const Repeat& repeat) { return repeat.bars.first == bar; });
  }

  // A return has to be entered somewhere; named look-alikes are those that were confused.
  bool leads_into_fork(int bar) const {
    return std::ranges::any_of(planned_.forks, [&](const Fork& fork) {
      if (fork.from != ForkFrom::look_alikes && fork.from != ForkFrom::return_) return false;
      const bool anywhere = fork.from == ForkFrom::look_alikes;
      return std::ranges::any_of(fork.ways, [&](const WayOn& way) {
        return way.alike.first <= bar && bar <= way.at && bar != way.to &&
               (anywhere || way.at + 1 - bar <= most_);
      });
    });
  }

  // Of the bars that one lands on.
  int landing_level(int bar) const {
    const int first = std::max(1, bar);
    return planned_.piece.hardest_level(
        {first, std::min(planned_.piece.bars, first + numbers::kRejoinLanding - 1)});
  }

  bool is_hard_before_easier(int bar, const std::set<int>& places) const {
    const int level = landing_level(bar);
    if (level < hardest_) return false;
    const auto first = places.upper_bound(bar);
    const auto last = places.upper_bound(bar + numbers::kRejoinPhrase);
    return std::any_of(first, last, [&](int place) { return landing_level(place) < level; });
  }

  const PlannedPiece& planned_;
  int most_;     // bars of a chunk
  int hardest_;  // level of the piece's hardest bars
};

}  // namespace

std::vector<int> rejoin_bars(const PlannedPiece& planned, const Method& method,
                             const std::set<int>& inside) {
  return Rejoins(planned, method).find(inside);
}

}  // namespace cahier
