#include "plan/chunks/rejoin_bars.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

class Rejoins {
 public:
  Rejoins(const PlannedPiece& planned, const Method& method)
      : planned_(planned), most_(method.chunk_most) {}

  std::vector<int> find(const std::set<int>& inside) const {
    const Piece& piece = planned_.piece;
    std::set<int> places = places_of_phrases(inside);
    for (const int cue : piece.cues) places.insert(cue);
    std::vector<int> found;
    int last = std::max(1, piece.first_bar());
    for (const int bar : places) {
      const bool section = begins_section(bar);
      const bool wished = std::ranges::find(piece.cues, bar) != piece.cues.end();
      const int apart = wished                             ? 2
                        : piece.bars > numbers::kLongPiece ? numbers::kRejoinFarApart
                                                           : numbers::kRejoinApart;
      if (leads_into_fork(bar)) continue;
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

  bool leads_into_fork(int bar) const {
    return std::ranges::any_of(planned_.forks, [&](const Fork& fork) {
      if (fork.from != ForkFrom::look_alikes && fork.from != ForkFrom::return_) return false;
      return std::ranges::any_of(fork.ways, [&](const WayOn& way) {
        return way.alike.first <= bar && bar <= way.at && bar != way.to &&
               way.at + 1 - bar <= most_;
      });
    });
  }

  const PlannedPiece& planned_;
  int most_;  // bars of a chunk
};

}  // namespace

std::vector<int> rejoin_bars(const PlannedPiece& planned, const Method& method,
                             const std::set<int>& inside) {
  return Rejoins(planned, method).find(inside);
}

}  // namespace cahier
