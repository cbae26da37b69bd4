// A season of twelve weeks, practised by a player whose pace and weak bars are known here and
// nowhere else: the estimates come near them, the weak bars get more turns, and both what each
// edition sets and what was really done keep the rules.
#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>
#include <map>
#include <numeric>

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

constexpr unsigned kSeasons = 10;

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

Season practise(unsigned seed) {
  Season season;
  const Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-03-29"),
                             season.piece.practice, sample::steady());
  sample::SimulatedPlayer player(season.piece, sample::steady(), truth(), seed);
  season.editions = sample::practise_season(season.piece, terms, player,
                                            [&](const auto& editions, const Terms& now) {
                                              return sample::read_back(editions, season.piece, now);
                                            });
  return season;
}

const std::vector<Season>& seasons() {
  static const std::vector<Season> all = [] {
    std::vector<Season> made;
    for (unsigned seed = 1; seed <= kSeasons; ++seed) made.push_back(practise(seed));
    return made;
  }();
  return all;
}

double mean(const std::vector<double>& values) {
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

Estimates estimates_of(const Piece& piece, const Plan& plan) {
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

// Turns a bar and week that the weeks of the editions set, from the one on in which bars are first
// known to be weak. Beside them, in the same weeks, the strong bars of the same level that were
// learned by then: all of them, and those of which the log says nothing worse.
struct Turns {
  std::vector<double> weak;
  std::vector<double> strong;
  std::vector<double> strong_and_known_so;
};

Turns turns_of(const Season& season) {
  Turns found;
  for (const BarRange& weak : truth().weak) {
    bool known = false;
    for (const sample::PractisedEdition& edition : season.editions) {
      const PlannedPiece& planned = edition.plan.pieces.front();
      for (const Chunk& chunk : planned.chunks)
        known = known || (chunk.raised && chunk.bars.overlaps(weak));
      if (!known) continue;
      sample::Attention attention(planned);
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

Errors errors_in(const Season& season, std::size_t week) {
  const Estimates made = estimates_of(season.piece, season.editions[week].plan);
  Errors errors;
  errors.pace = (std::abs(std::log(made.pace_2 / truth().pace[1])) +
                 std::abs(std::log(made.pace_4 / truth().pace[3]))) /
                2;
  const double guess = sample::steady().slip_chance[1];
  errors.slips = std::abs(truth().weak_slip - (made.weak.empty() ? guess : mean(made.weak)));
  return errors;
}

Errors mean_errors_in(std::size_t week) {
  Errors sum;
  for (const Season& season : seasons()) {
    const Errors errors = errors_in(season, week);
    sum.pace += errors.pace / kSeasons;
    sum.slips += errors.slips / kSeasons;
  }
  return sum;
}

std::string table(const Season& season) {
  std::string text =
      fmt::format("{:<12}{:>8}{:>8}{:>8}{:>8}\n", "edition", "pace 2", "pace 4", "weak", "strong");
  const auto row = [&](const std::string& name, double pace_2, double pace_4, double weak,
                       double strong) {
    text +=
        fmt::format("{:<12}{:>8.2f}{:>8.2f}{:>8.2f}{:>8.2f}\n", name, pace_2, pace_4, weak, strong);
  };
  for (const sample::PractisedEdition& edition : season.editions) {
    const Estimates made = estimates_of(season.piece, edition.plan);
    row(iso(edition.plan.from), made.pace_2, made.pace_4, mean(made.weak), mean(made.strong));
  }
  row("truth", truth().pace[1], truth().pace[3], truth().weak_slip, truth().strong_slip);
  const Turns turns = turns_of(season);
  return text + fmt::format("turns a bar and week: weak {:.2f}, strong {:.2f}, known so {:.2f}\n",
                            mean(turns.weak), mean(turns.strong), mean(turns.strong_and_known_so));
}

// What a log that was read back tells of a day, without the order of the day and without the drill
// that a slip is laid to.
std::vector<std::string> told(const Record& record) {
  std::vector<std::string> lines;
  const auto sorted = [](std::vector<int> numbers) {
    std::sort(numbers.begin(), numbers.end());
    return fmt::format("{}", fmt::join(numbers, " "));
  };
  std::map<Date, std::vector<int>> slips;
  std::map<Date, std::vector<int>> hit;
  std::map<Date, std::vector<int>> missed;
  const auto append = [](std::vector<int>& to, const std::vector<int>& from) {
    to.insert(to.end(), from.begin(), from.end());
  };
  for (const Done& done : record.done) {
    append(hit[done.date], done.hit);
    append(missed[done.date], done.missed);
    if (done.drill == Drill::run_through)
      lines.push_back(fmt::format("{} run, slips {}", iso(done.date), sorted(done.slips.value())));
    else
      append(slips[done.date], done.slips.value());
    if (done.drill != Drill::cue_starts)
      lines.push_back(fmt::format("{} {} {}-{} {}", iso(done.date), drill_word(done.drill),
                                  done.bars.first, done.bars.last, done.minutes.value_or(0)));
    CHECK(done.starts.empty());
  }
  for (const auto& [date, bars] : slips)
    lines.push_back(fmt::format("{} slips {}, hit {}, missed {}", iso(date), sorted(bars),
                                sorted(hit[date]), sorted(missed[date])));
  for (const DayMinutes& day : record.minutes)
    lines.push_back(fmt::format("{} {} minutes", iso(day.date), day.minutes));
  std::sort(lines.begin(), lines.end());
  return lines;
}

}  // namespace

TEST_CASE("season: the log that a player types is read back as what was done") {
  for (const Season& season : seasons()) {
    Terms after = season.editions.back().terms;
    after.from = after.by - days{1};
    const Record read = sample::read_back(season.editions, season.piece, after);
    CHECK(told(read) == told(sample::record_of_editions(season.editions)));
    CHECK(read.edition == static_cast<int>(season.editions.size()) + 1);
  }
}

TEST_CASE("season: days are missed, time runs out, and recalls are cut short") {
  int missed = 0;
  int undone = 0;
  int cut_short = 0;
  int late = 0;
  for (const Season& season : seasons())
    for (const sample::PractisedEdition& edition : season.editions)
      for (const sample::PractisedDay& day : edition.days) {
        missed += day.missed ? 1 : 0;
        undone += day.missed ? 0 : static_cast<int>(day.undone.size());
        for (const sample::Deed& deed : day.deeds) {
          cut_short += deed.by_code ? 0 : 1;
          late += sample::typed_code(deed.task.id, day.date) == deed.task.id ? 1 : 0;
        }
      }
  CHECK(missed >= 2 * static_cast<int>(kSeasons));
  CHECK(undone >= 20);
  CHECK(cut_short >= 5);
  CHECK(late >= 20);
}

TEST_CASE("season: the estimates of pace and slips come near what is true of the player") {
  for (const Season& season : seasons()) {
    INFO(table(season));
    const Estimates last = estimates_of(season.piece, season.editions.back().plan);
    // Three times the spread of the mean of nine times, .2/3.
    CHECK(std::abs(std::log(last.pace_2 / truth().pace[1])) < .2);
    CHECK(std::abs(std::log(last.pace_4 / truth().pace[3])) < .2);
    // Three times the spread of a share of sixty trials of one half, √(.25/60) = .065.
    CHECK(last.trials >= 60);
    CHECK(mean(last.weak) == Approx(truth().weak_slip).margin(.195).epsilon(0));
    CHECK(mean(last.strong) == Approx(truth().strong_slip).margin(.04).epsilon(0));
    for (const double weak : last.weak) CHECK(weak > .2);
    for (const double strong : last.strong) CHECK(strong < .2);
  }
}

TEST_CASE("season: the estimates err less and less") {
  const Errors before = mean_errors_in(0);
  const Errors soon = mean_errors_in(2);
  const Errors later = mean_errors_in(5);
  const Errors last = mean_errors_in(11);
  INFO("pace: " << before.pace << ", " << soon.pace << ", " << later.pace << ", " << last.pace);
  INFO("slips: " << before.slips << ", " << soon.slips << ", " << later.slips << ", "
                 << last.slips);
  // All is learned by the fifth week: then the pace is known as well as it can be.
  CHECK(soon.pace < before.pace / 2);
  CHECK(last.pace < soon.pace);
  CHECK(last.pace < .08);
  CHECK(soon.slips < before.slips);
  CHECK(later.slips < soon.slips);
  CHECK(last.slips < later.slips);
  CHECK(last.slips < .1);
}

TEST_CASE("season: bars known to be weak get twice the turns of strong ones") {
  double of_all = 0;
  for (const Season& season : seasons()) {
    INFO(table(season));
    const Turns turns = turns_of(season);
    CHECK(mean(turns.weak) >= 2 * mean(turns.strong_and_known_so));
    CHECK(mean(turns.weak) >= 1.7 * mean(turns.strong));
    of_all += mean(turns.weak) / mean(turns.strong) / kSeasons;
  }
  // Strong bars that slipped by chance are among all the strong ones.
  INFO("over all seasons " << of_all);
  CHECK(of_all >= 2);
}

TEST_CASE("season: every edition fits and keeps every rule") {
  for (const Season& season : seasons())
    for (const sample::PractisedEdition& edition : season.editions) {
      INFO(iso(edition.plan.from));
      CHECK(edition.plan.fits);
      CHECK(sample::faults_of(edition.plan) == "");
    }
}

// Two things cannot be asked of what was done. Temper goes by the levels of the edition that set
// it, and the next log changes them: rule 9's order, and which bars are asked for, are judged
// edition by edition. And of a day missed at the very end no edition and no day is left to make
// good its run-through. Every other rule is asked of the whole season.
TEST_CASE("season: what was really done keeps the rules as one plan") {
  for (const Season& season : seasons()) {
    const bool missed_the_last_day = season.editions.back().days.back().missed;
    std::string faults;
    for (const Breach& breach : breaches(sample::SeasonAsOnePlan(season.editions).plan())) {
      const auto says = [&](const char* words) {
        return breach.what.find(words) != std::string::npos;
      };
      if (breach.rule == 9 && (says("comes before a weaker chunk") || says("which is not weak") ||
                               says("is asked for in Temper but has no")))
        continue;
      if (breach.rule == 6 && missed_the_last_day && says("run-throughs instead of")) continue;
      faults += fmt::format("rule {}: {}\n", breach.rule, breach.what);
    }
    CHECK(faults == "");
  }
}

TEST_CASE("season: the table of every season", "[.table]") {
  for (const Season& season : seasons()) std::cout << table(season) << '\n';
}

}  // namespace cahier
