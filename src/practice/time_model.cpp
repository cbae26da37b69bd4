#include "practice/time_model.h"

#include <algorithm>
#include <cmath>

#include "practice/beat_units.h"
#include "practice/metronome.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

double up_to_half(double minutes) {
  // A hair below the next half, so that rounding noise never costs half a minute.
  return std::max(0.5, std::ceil(minutes * 2 - 1e-9) / 2);
}

}  // namespace

Tempo tempo_or_usual(const Piece& piece, int bar) {
  if (const auto tempo = piece.tempo_at(bar)) return *tempo;
  return {80, natural_beat(piece.meter_at(bar))};
}

TimeModel::TimeModel(const Piece& piece, const Method& method) : piece_(&piece), method_(&method) {
  minutes_until_.reserve(piece.bars + 2);
  minutes_until_.push_back(0);
  for (int bar = piece.first_bar(); bar <= piece.bars; ++bar)
    minutes_until_.push_back(minutes_until_.back() +
                             piece.quarters_in(bar) /
                                 tempo_or_usual(piece, bar).quarters_per_minute());
}

double TimeModel::mark(int bar, double share_of_tempo) const {
  const double per_minute = tempo_or_usual(*piece_, bar).per_minute;
  return share_of_tempo >= 1 ? per_minute : metronome_mark(per_minute * share_of_tempo);
}

double TimeModel::mark(int bar, double share_of_tempo, Beat unit) const {
  return counted_in({mark(bar, share_of_tempo), tempo_or_usual(*piece_, bar).beat}, unit,
                    share_of_tempo >= 1);
}

TempoLadder TimeModel::ladder(int level) const {
  const double recall = share(Drill::recall, level);
  return {share(Drill::learn, level), recall, std::max(recall, method_->proved_tempo), 1};
}

double TimeModel::playing(BarRange bars, double share_of_tempo) const {
  const int origin = piece_->first_bar();
  const double at_tempo =
      minutes_until_[bars.last - origin + 1] - minutes_until_[bars.first - origin];
  const double ratio =
      mark(bars.first, share_of_tempo) / tempo_or_usual(*piece_, bars.first).per_minute;
  return at_tempo / ratio;
}

int TimeModel::learning_steps() const {
  const int parts = static_cast<int>(piece_->parts().size());
  return parts == 1 ? 1 : parts + 1;
}

double TimeModel::share(Drill drill, int level) const {
  const double for_level = method_->learn_tempo[level - 1] / method_->learn_tempo[1];
  const DrillFacts& facts = facts_of(drill);
  switch (facts.tempo) {
    case AtTempo::of_learning:
      return method_->learn_tempo[level - 1];
    case AtTempo::share:
      return std::min(1.0, method_->*facts.share * for_level);
    case AtTempo::full:
    case AtTempo::none:
      return 1;
  }
  return 1;
}

double TimeModel::minutes(Drill drill, BarRange bars, int level, int starts) const {
  switch (drill) {
    case Drill::learn:
      return learn(bars, level);
    case Drill::join:
      return join(bars, level);
    case Drill::recall:
      return recall(bars, level);
    case Drill::cue_starts:
      return cue_starts(starts);
    case Drill::slow_pass:
      return slow_pass(bars, level);
    case Drill::counted_pass:
      return counted_pass(bars, level);
    case Drill::run_through:
      return run_through();
    case Drill::spoken_part:
      return spoken_part(bars, level);
    case Drill::write_out:
      return write_out(bars, level);
    case Drill::silent_run:
      return silent_run(bars);
  }
  return 0;
}

double TimeModel::learn(BarRange bars, int level) const {
  const double once =
      playing(bars, share(Drill::learn, level)) * method_->learn_stumble[level - 1] +
      method_->learn_pause / 60;
  return up_to_half(method_->learn_factor * method_->pace[level - 1] *
                    (method_->setup / 60 + learning_steps() * method_->repetitions * once));
}

double TimeModel::from_memory(BarRange bars, double share_of_tempo, double times) const {
  return up_to_half(
      times * (method_->setup / 60 + playing(bars, share_of_tempo) * method_->recall_stumble));
}

double TimeModel::slip_somewhere(BarRange bars, int level) const {
  const double passages = static_cast<double>(bars.size()) / method_->chunk_most;
  return 1 - std::pow(1 - method_->slip_chance[level - 1], passages);
}

double TimeModel::join(BarRange bars, int level) const {
  return from_memory(bars, share(Drill::join, level));
}

double TimeModel::recall(BarRange bars, int level) const {
  return from_memory(bars, share(Drill::recall, level));
}

double TimeModel::slow_pass(BarRange bars, int level) const {
  return from_memory(bars, share(Drill::slow_pass, level), 1 + slip_somewhere(bars, level));
}

double TimeModel::counted_pass(BarRange bars, int level) const {
  return from_memory(bars, share(Drill::counted_pass, level));
}

double TimeModel::cue_starts(int starts) const {
  return up_to_half(starts * method_->cue_start_seconds / 60);
}

double TimeModel::run_through() const {
  double minutes = method_->run_setup / 60;
  for (const BarRange& bars : piece_->playing_order()) minutes += playing(bars, 1);
  return up_to_half(minutes);
}

double TimeModel::spoken_part(BarRange bars, int level) const {
  const double once = playing(bars, share(Drill::spoken_part, level)) * method_->recall_stumble +
                      method_->learn_pause / 60;
  return up_to_half(method_->setup / 60 + spoken_turns() * once);
}

int TimeModel::spoken_turns() const {
  const std::size_t parts = piece_->parts().size();
  const int alone = parts <= numbers::kMostPartsAlone ? method_->spoken_own_times : 0;
  return static_cast<int>(parts) * (method_->spoken_times + alone) + method_->spoken_together_times;
}

double TimeModel::write_out(BarRange bars, int level) const {
  const double parts = static_cast<double>(piece_->parts().size());
  return up_to_half(method_->setup / 60 +
                    bars.size() * parts * method_->write_out_seconds[level - 1] / 60);
}

double TimeModel::silent_run(BarRange bars) const {
  return up_to_half(method_->setup / 60 + playing(bars, 1) * method_->silent_stumble);
}

}  // namespace cahier
