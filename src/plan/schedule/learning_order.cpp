#include <algorithm>
#include <numeric>

#include "plan/schedule/learning_order.h"
#include "plan/schedule/work.h"

namespace cahier {
namespace {

// Mean level of a section's chunks, weighted by bars.
double hardness(const Analysis& analysis, int section) {
  double sum = 0;
  double bars = 0;
  for (const Chunk& chunk : analysis.planned.chunks)
    if (chunk.section == section) {
      sum += chunk.level * chunk.bars.size();
      bars += chunk.bars.size();
    }
  return bars > 0 ? sum / bars : 0;
}

}  // namespace

std::vector<int> sections_in_order(const Analysis& analysis, Order order) {
  std::vector<int> sections(analysis.planned.sections.size());
  std::iota(sections.begin(), sections.end(), 0);
  if (order == Order::backward) std::reverse(sections.begin(), sections.end());
  if (order == Order::hardest_first) {
    std::vector<double> hard;
    for (const int section : sections) hard.push_back(hardness(analysis, section));
    std::stable_sort(sections.begin(), sections.end(),
                     [&](int a, int b) { return hard[a] > hard[b]; });
  }
  return sections;
}

namespace {

std::vector<int> order_of_one(const Analysis& analysis, Order order) {
  const std::vector<int> sections = sections_in_order(analysis, order);
  std::vector<std::vector<int>> chunks_of(sections.size());
  for (int chunk = 0; chunk < static_cast<int>(analysis.planned.chunks.size()); ++chunk)
    chunks_of[analysis.planned.chunks[chunk].section].push_back(chunk);
  std::vector<int> result;
  for (const int section : sections)
    result.insert(result.end(), chunks_of[section].begin(), chunks_of[section].end());
  return result;
}

}  // namespace

std::vector<Work::Item> learning_order(const std::vector<Analysis>& analyses, Order order) {
  struct Turn {
    double share;  // how far through its piece
    Work::Item item;
  };
  std::vector<Turn> turns;
  for (int piece = 0; piece < static_cast<int>(analyses.size()); ++piece) {
    const std::vector<int> chunks = order_of_one(analyses[piece], order);
    for (std::size_t i = 0; i < chunks.size(); ++i)
      turns.push_back({(static_cast<double>(i) + 0.5) / static_cast<double>(chunks.size()),
                       {piece, chunks[i]}});
  }
  std::stable_sort(turns.begin(), turns.end(),
                   [](const Turn& a, const Turn& b) { return a.share < b.share; });
  std::vector<Work::Item> result;
  for (const Turn& turn : turns) result.push_back(turn.item);
  return result;
}

}  // namespace cahier
