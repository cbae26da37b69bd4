#include "plan/schedule/tight_variants.h"

#include "practice/numbers.h"

namespace cahier {
namespace {

using Turn = TightVariant::Turn;

}  // namespace

std::vector<TightVariant> tight_variants(bool every_one) {
  std::vector<Turn> turns = {Turn::in_order, Turn::filling};
  std::vector<RunPlacing> runs_in = {RunPlacing::late};
  std::vector<Reach> reaches = {Reach::unsettled, Reach::ripe};
  if (every_one) {
    turns.push_back(Turn::backward);
    runs_in.insert(runs_in.end(), {RunPlacing::early, RunPlacing::late_odd_last, RunPlacing::even});
    reaches.push_back(Reach::all);
  }
  std::vector<TightVariant> ways;
  for (const Turn turn : turns)
    for (const RunPlacing runs : runs_in)
      for (const bool recalls_grow : {false, true})
        for (const Reach reach : reaches) ways.push_back({reach, turn, runs, recalls_grow});
  for (unsigned seed = 1; every_one && seed <= numbers::kRestarts; ++seed)
    for (const RunPlacing runs : runs_in) {
      TightVariant restarted;
      restarted.runs = runs;
      restarted.seed = seed;
      ways.push_back(restarted);
    }
  return ways;
}

}  // namespace cahier
