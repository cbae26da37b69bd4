// A season to be measured: the piece, the player, what the editions take to be true, and how much
// attention they give to weak bars and to strong ones.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include "attention.h"
#include "catch.h"
#include "plan/quality/quality.h"
#include "practice/slip_chance.h"
#include "sample_plan.h"
#include "simulated_season.h"
#include "typed_log.h"

namespace cahier::sample {

inline constexpr const char* kBells = R"(
title: Bells over the Harbour
bars: 64
meter: 3/4
key: G minor
tempo: 104
sections:
  - {name: A, bars: 1-16, phrases: 4}
  - {name: B, bars: 17-32, phrases: 4, level: 4}
  - {name: A again, bars: 33-44, same as: 1-12}
  - {name: C, bars: 45-56, phrases: 4}
  - {name: Close, bars: 57-64, phrases: 4}
look-alikes: [{bars: [9-12, 49-52], fork: [11, 51]}]
practice: {minutes: 20, days off: [sun]}
)";

inline constexpr unsigned kSeasons = 6;

inline PlayerTruth truth() {
  PlayerTruth player;
  player.pace = {1.6, 1.5, 1.4, 1.3, 1.2};
  player.weak = {{13, 16}, {53, 56}};
  return player;
}

struct Season {
  Piece piece = sample::piece(kBells);
  std::vector<PractisedEdition> editions;
};

inline Season practise(unsigned seed, const PlayerTruth& player_is = truth()) {
  Season season;
  const Terms terms =
      settle(date("2027-01-04"), date("2027-03-29"), season.piece.practice, steady());
  SimulatedPlayer player(season.piece, steady(), player_is, seed);
  season.editions =
      practise_season(season.piece, terms, player, [&](const auto& editions, const Terms& now) {
        return read_back(editions, season.piece, now);
      });
  return season;
}

inline const std::vector<Season>& seasons() {
  static const std::vector<Season> all = [] {
    std::vector<Season> made;
    for (unsigned seed = 1; seed <= kSeasons; ++seed) made.push_back(practise(seed));
    return made;
  }();
  return all;
}

inline double mean(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.) / static_cast<double>(values.size());
}

// What an edition takes to be true, of chunks that were played.
struct Estimates {
  double pace_2 = 1;
  double pace_4 = 1;
  std::vector<double> weak;    // chances of a slip
  std::vector<double> strong;  // of bars of the same level
  int trials = 0;              // of the weak
};

inline Estimates estimates_of(const Piece& piece, const Plan& plan) {
  Estimates made;
  made.pace_2 = plan.method.pace[1];
  made.pace_4 = plan.method.pace[3];
  for (const Chunk& chunk : plan.pieces.front().chunks) {
    const int level = piece.level_at(chunk.bars.first);
    if (chunk.slips.trials == 0 || level != 2) continue;
    const bool weak = truth().is_weak(chunk.bars);
    (weak ? made.weak : made.strong).push_back(slip_chance(plan.method, level, chunk.slips));
    if (weak) made.trials += chunk.slips.trials;
  }
  return made;
}

// The guess where none was played yet.
inline double mean_or_guess(const std::vector<double>& chances) {
  return chances.empty() ? steady().slip_chance[1] : mean(chances);
}

// Turns a bar and week that the weeks of the editions set, from the one on in which bars are first
// known to be weak. Beside them, in the same weeks, the strong bars of the same level that were
// learned by then: all of them, and those of which the log says nothing worse.
struct Turns {
  std::vector<double> weak;
  std::vector<double> strong;
  std::vector<double> strong_and_known_so;
};

inline Turns turns_of(const Season& season) {
  Turns found;
  for (const BarRange& weak : truth().weak) {
    bool known = false;
    for (const PractisedEdition& edition : season.editions) {
      const PlannedPiece& planned = edition.plan.pieces.front();
      for (const Chunk& chunk : planned.chunks)
        known = known || (chunk.raised && chunk.bars.overlaps(weak));
      if (!known) continue;
      Attention attention(planned);
      for (const Day& day : edition.plan.days)
        if (day.date < edition.plan.from + days{7})
          for (const Task& task : day.tasks) attention.add(task);
      for (const Chunk& chunk : planned.chunks) {
        if (chunk.slips.trials == 0 || season.piece.level_at(chunk.bars.first) != 2) continue;
        for (int bar = chunk.bars.first; bar <= chunk.bars.last; ++bar) {
          const double turns = attention.turns()[bar];
          if (weak.contains(bar)) found.weak.push_back(turns);
          if (truth().is_weak(chunk.bars)) continue;
          found.strong.push_back(turns);
          if (!chunk.raised) found.strong_and_known_so.push_back(turns);
        }
      }
    }
  }
  return found;
}

// How far estimates are from the truth, as they stand in the edition of that week (the first is 0).
struct Errors {
  double pace = 0;   // of the logarithm, the mean of both levels
  double slips = 0;  // of the chance, the mean of the weak chunks
};

inline Errors errors_in(const Season& season, std::size_t week) {
  const Estimates made = estimates_of(season.piece, season.editions[week].plan);
  Errors errors;
  errors.pace = (std::abs(std::log(made.pace_2 / truth().pace[1])) +
                 std::abs(std::log(made.pace_4 / truth().pace[3]))) /
                2;
  errors.slips = std::abs(truth().weak_slip - mean_or_guess(made.weak));
  return errors;
}

inline Errors mean_errors_in(std::size_t week) {
  Errors sum;
  for (const Season& season : seasons()) {
    const Errors errors = errors_in(season, week);
    sum.pace += errors.pace / kSeasons;
    sum.slips += errors.slips / kSeasons;
  }
  return sum;
}

// "16 of 17 figures, short: tempo".
inline std::string figures_of(const Plan& plan) {
  const std::vector<QualityFigure> figures = quality(plan);
  std::string names;
  for (const QualityFigure& figure : figures)
    if (!figure.met) names += " " + std::string(figure_word(figure.name));
  const auto met = std::ranges::count(figures, true, &QualityFigure::met);
  return fmt::format("{} of {} figures{}{}", met, figures.size(),
                     names.empty() ? "" : ", short:", names);
}

inline std::string table(const Season& season) {
  std::string text =
      fmt::format("{:<12}{:>8}{:>8}{:>8}{:>8}\n", "edition", "pace 2", "pace 4", "weak", "strong");
  const auto row = [&](const std::string& name, double pace_2, double pace_4, double weak,
                       double strong) {
    text +=
        fmt::format("{:<12}{:>8.2f}{:>8.2f}{:>8.2f}{:>8.2f}\n", name, pace_2, pace_4, weak, strong);
  };
  for (const PractisedEdition& edition : season.editions) {
    const Estimates made = estimates_of(season.piece, edition.plan);
    row(iso(edition.plan.from), made.pace_2, made.pace_4, mean_or_guess(made.weak),
        mean_or_guess(made.strong));
    text.insert(text.size() - 1, "  " + figures_of(edition.plan));
  }
  row("truth", truth().pace[1], truth().pace[3], truth().weak_slip, truth().strong_slip);
  const Turns turns = turns_of(season);
  return text + fmt::format("turns a bar and week: weak {:.2f}, strong {:.2f}, known so {:.2f}\n",
                            mean(turns.weak), mean(turns.strong), mean(turns.strong_and_known_so));
}

}  // namespace cahier::sample
