#include "plan/schedule/tight_variants.h"

namespace cahier {
namespace {

constexpr unsigned kMixes = 40;  // where every way is tried

using Turn = Packing::Turn;

}  // namespace

std::vector<Packing> ways_of_packing(bool every_one, Temper temper) {
  std::vector<Turn> turns = {Turn::in_order, Turn::filling};
  std::vector<RunPacking> runs_in = {RunPacking::late};
  std::vector<Reach> reaches = {Reach::unsettled, Reach::ripe};
  if (every_one) {
    turns.push_back(Turn::backward);
    runs_in.insert(runs_in.end(), {RunPacking::early, RunPacking::late_odd_last, RunPacking::even});
    reaches.push_back(Reach::all);
  }
  std::vector<Packing> ways;
  for (const Turn turn : turns)
    for (const RunPacking runs : runs_in)
      for (const bool temper_first : {false, true}) {
        if (temper_first && temper == Temper::no) continue;
        for (const bool recalls_grow : {false, true})
          for (const Reach reach : reaches)
            ways.push_back({reach, turn, runs, recalls_grow, temper_first});
      }
  for (unsigned mix = 1; every_one && mix <= kMixes; ++mix)
    for (const RunPacking runs : runs_in) {
      Packing mixed;
      mixed.runs = runs;
      mixed.mix = mix;
      ways.push_back(mixed);
    }
  return ways;
}

}  // namespace cahier
