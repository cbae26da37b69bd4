#include "oracle.h"

#include <algorithm>

#include "chunkings.h"
#include "plan/chunks/analyse.h"
#include "written_plan.h"

namespace cahier::brute {
namespace {

constexpr int kEndless = 2000;  // half minutes, more than a tiny piece could ever fill

}  // namespace

Terms with_halves(Terms terms, int halves) {
  for (double& minutes : terms.minutes) minutes = halves / 2.0;
  return terms;
}

Oracle::Oracle(const Piece& piece, const Terms& terms) : piece_(piece), terms_(terms) {
  for (Piece& cut : chunkings(piece_, terms_.method)) {
    auto way = std::make_unique<Way>();
    way->cut = std::move(cut);
    way->analysis = std::make_unique<Analysis>(analyse(way->cut, terms_.method, kNeverCut));
    way->facts = std::make_unique<Facts>(*way->analysis, terms_);
    ways_.push_back(std::move(way));
  }
}

std::optional<Plan> Oracle::plan(const Way& way, int halves, const Freedom& freedom) const {
  const Terms terms = with_halves(terms_, halves);
  const Deadlines deadlines(terms);
  const auto choices = Search(*way.facts, deadlines, terms, freedom).plan();
  if (!choices) return std::nullopt;
  return written_plan(piece_, *way.facts, terms, *choices);
}

std::optional<Plan> Oracle::plan(int halves, const Freedom& freedom) const {
  for (const auto& way : ways_)
    if (auto found = plan(*way, halves, freedom)) return found;
  return std::nullopt;
}

std::optional<Plan> Oracle::plan_cut_as(const std::vector<Chunk>& chunks, int halves) const {
  for (const auto& way : ways_) {
    const auto& own = way->analysis->planned.chunks;
    if (std::equal(own.begin(), own.end(), chunks.begin(), chunks.end(),
                   [](const Chunk& one, const Chunk& other) { return one.bars == other.bars; }))
      return plan(*way, halves, {});
  }
  return std::nullopt;
}

std::optional<int> Oracle::least(const Way& way, int below) const {
  const Freedom all;
  if (!plan(way, below - 1, all)) return std::nullopt;
  int fits = below - 1;
  int too_few = 0;
  if (below == kEndless)
    for (int step = 8; step < fits; step *= 2) {
      if (plan(way, step, all))
        fits = step;
      else
        too_few = step;
    }
  while (fits - too_few > 1) {
    const int middle = (fits + too_few) / 2;
    (plan(way, middle, all) ? fits : too_few) = middle;
  }
  return fits;
}

std::optional<int> Oracle::least() const {
  std::optional<int> best;
  for (const auto& way : ways_)
    if (const auto own = least(*way, best.value_or(kEndless))) best = own;
  return best;
}

}  // namespace cahier::brute
