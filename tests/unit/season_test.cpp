// A season of twelve weeks, practised by a player whose pace and weak bars are known here and
// nowhere else: the estimates come near them, the weak bars get more turns, and both what each
// edition sets and what was really done keep the rules.
#include <catch2/catch.hpp>
#include <iostream>

#include "attention.h"
#include "practice/slip_chance.h"
#include "sample_plan.h"
#include "simulated_season.h"
#include "typed_log.h"

namespace cahier {
namespace {

constexpr const char* kBells = R"(
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

sample::PlayerTruth truth() {
  sample::PlayerTruth player;
  player.pace = {1.6, 1.5, 1.4, 1.3, 1.2};
  player.weak = {{13, 16}, {53, 56}};
  return player;
}

struct Season {
  Piece piece = sample::piece(kBells);
  std::vector<sample::PractisedEdition> editions;
};

Season season(unsigned seed) {
  Season made;
  const Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-03-29"),
                             made.piece.practice, sample::steady());
  sample::SimulatedPlayer player(made.piece, sample::steady(), truth(), seed);
  made.editions = sample::practise_season(made.piece, terms, player,
                                          [&](const auto& editions, const Terms& now) {
                                            return sample::read_back(editions, made.piece, now);
                                          });
  return made;
}

}  // namespace

TEST_CASE("a season", "[.season]") {
  const char* env = std::getenv("SEED");
  const Season made = season(env ? static_cast<unsigned>(std::atoi(env)) : 1);
  for (const auto& edition : made.editions) {
    const PlannedPiece& planned = edition.plan.pieces.front();
    std::cout << iso(edition.plan.from) << (edition.plan.fits ? " fits" : " DOES NOT FIT")
              << " pace " << edition.plan.method.pace[1] << " " << edition.plan.method.pace[3]
              << "\n";
    for (const Chunk& chunk : planned.chunks)
      if (chunk.slips.trials > 0)
        std::cout << "  " << chunk.id << " " << chunk.bars.first << "-" << chunk.bars.last << " "
                  << chunk.slips.slips << "/" << chunk.slips.trials << " level " << chunk.level
                  << (chunk.raised ? " raised" : "") << "\n";
    std::cout << sample::faults_of(edition.plan);
    for (const Unplaced& u : edition.plan.unplaced) std::cout << "  UNPLACED " << drill_word(u.drill) << " " << u.bars.first << "-" << u.bars.last << " " << u.minutes << " why " << int(u.why) << "\n";
    for (const Day& day : edition.plan.days) {
      std::cout << "   set " << iso(day.date) << ":";
      for (const Task& task : day.tasks)
        std::cout << "  " << drill_word(task.drill) << " " << task.bars.first << "-"
                  << task.bars.last << (task.fork ? " fork" : "");
      std::cout << "\n";
    }
    for (const auto& day : edition.days)
      std::cout << "  " << iso(day.date) << (day.missed ? " missed" : "") << " " << day.minutes()
                << " of " << day.allowance << ", " << day.deeds.size() << " done, "
                << day.undone.size() << " not\n"
                <<
          [&] {
            std::string t;
            for (const auto& deed : day.deeds) {
              t += std::string(" | ") + std::string(drill_word(deed.task.drill)) + " " +
                   std::to_string(deed.task.bars.first) + "-" + std::to_string(deed.task.bars.last);
              for (int n : deed.hit) t += " h" + std::to_string(planned.cues[n - 1].bar);
              for (int n : deed.missed) t += " m" + std::to_string(planned.cues[n - 1].bar);
            }
            return t + "\n";
          }();
  }
  std::cout << sample::faults_of(sample::SeasonAsOnePlan(made.editions).plan());
}

}  // namespace cahier
namespace cahier {
TEST_CASE("seeds", "[.seeds]") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const Season made = season(seed);
    for (const auto& edition : made.editions) {
      if (!edition.plan.fits)
        std::cout << seed << " " << iso(edition.plan.from)
                  << " unfit: " << edition.plan.unplaced.size() << " "
                  << drill_word(edition.plan.unplaced[0].drill) << " "
                  << edition.plan.unplaced[0].bars.first << "\n";
      const std::string faults = sample::faults_of(edition.plan);
      if (!faults.empty())
        std::cout << seed << " " << iso(edition.plan.from) << " edition " << faults;
    }
    const sample::SeasonAsOnePlan whole(made.editions);
    for (const Breach& breach : breaches(whole.plan()))
      if (breach.what.find("comes before a weaker chunk") == std::string::npos)
        std::cout << seed << " rule " << breach.rule << " " << breach.what << "\n";
  }
}
}  // namespace cahier
