#include "plan/chunks/every_division.h"

#include <algorithm>
#include <map>

#include "practice/numbers.h"

namespace cahier {
namespace {

using Cuts = std::vector<BarRange>;

// Adds to `all` the ways of cutting the bars from `first` to `last`, each after `before`; stops
// where there are too many.
void add_ways(int first, int last, const Method& method, Cuts before, std::vector<Cuts>& all) {
  if (all.size() > numbers::kTinyDivisions) return;
  if (first > last) {
    all.push_back(std::move(before));
    return;
  }
  const int longest = std::min(method.chunk_most, last - first + 1);
  for (int size = method.chunk_least; size <= longest; ++size) {
    before.push_back({first, first + size - 1});
    add_ways(first + size, last, method, before, all);
    before.pop_back();
  }
}

std::vector<Cuts> ways_to_cut(BarRange phrase, const Method& method) {
  const int first = std::max(1, phrase.first);  // a pickup rides with its first chunk
  if (phrase.last < first) return {{phrase}};   // the pickup alone
  std::vector<Cuts> all;
  add_ways(first, phrase.last, method, {}, all);
  if (all.empty()) return {{phrase}};
  for (Cuts& way : all) way.front().first = phrase.first;
  return all;
}

}  // namespace

std::vector<std::vector<Chunk>> every_division(const Piece& piece,
                                               const std::vector<BarRange>& learned,
                                               const Method& method) {
  const std::vector<Section> sections = divide_into_sections(piece);
  std::map<int, std::vector<Cuts>> ways;  // by the phrase's first bar
  std::size_t count = 1;
  for (const Section& section : sections) {
    if (section.same_as) continue;
    for (const Uncut& uncut : uncut_bars(section, learned, method)) {
      if (uncut.whole) continue;
      count *= (ways[uncut.bars.first] = ways_to_cut(uncut.bars, method)).size();
      if (count > numbers::kTinyDivisions) return {};
    }
  }
  std::vector<std::vector<Chunk>> all;
  for (std::size_t number = 0; number < count; ++number) {
    std::map<int, const Cuts*> chosen;
    std::size_t rest = number;
    for (const auto& [first, of_phrase] : ways) {
      chosen[first] = &of_phrase[rest % of_phrase.size()];
      rest /= of_phrase.size();
    }
    all.push_back(cut_into_chunks(piece, sections, learned, method,
                                  [&](BarRange phrase) { return *chosen.at(phrase.first); }));
  }
  return all;
}

}  // namespace cahier
