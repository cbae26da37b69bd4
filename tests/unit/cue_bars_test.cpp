// Where starts from the middle lie, and where to rejoin.
#include <algorithm>
#include <map>
#include <set>

#include "catch.h"
#include "laid_out.h"
#include "piece_file.h"
#include "plan/chunks/divide.h"
#include "random_work.h"
#include "workbook/sheets/runs/rejoin_points.h"

namespace cahier {
namespace {

Analysis analysis_of(const Piece& piece) {
  std::vector<BarRange> chunks;
  for (int bar = 1; bar <= piece.bars; bar += 4)
    chunks.push_back({bar, std::min(bar + 3, piece.bars)});
  return analyse(piece, sample::steady(), sample::LaidOut::named(piece, chunks));
}

// How many starts a piece of one section has.
std::size_t starts_in(int bars, const std::string& more = {}) {
  const Piece piece =
      sample::piece("title: Starts\nbars: " + std::to_string(bars) +
                    "\nsections: [{name: A, bars: 1-" + std::to_string(bars) + more + "}]\n");
  return analysis_of(piece).planned.cues.size();
}

// Where to rejoin when phrases begin at bar 1 and at these.
std::vector<int> rejoin(int bars, std::vector<int> begins) {
  std::string phrases;
  int first = 1;
  begins.push_back(bars + 1);
  for (const int next : begins) {
    phrases +=
        (phrases.empty() ? "" : ", ") + std::to_string(first) + "-" + std::to_string(next - 1);
    first = next;
  }
  const Piece piece = sample::piece("title: Rejoin\nbars: " + std::to_string(bars) +
                                    "\nsections: [{name: A, bars: 1-" + std::to_string(bars) +
                                    ", phrases: [" + phrases + "]}]\n");
  return analysis_of(piece).planned.rejoin;
}

// A piece of random form, cut into chunks.
PlannedPiece random_piece(unsigned seed) {
  sample::RandomWork random(seed);
  const Piece piece = random.piece(80);
  const Method method = sample::steady();
  return analyse(piece, method,
                 divide_into_chunks(piece, divide_into_sections(piece), {}, method,
                                    TimeModel(piece, method), 10))
      .planned;
}

// The level of two bars that one lands on, from the piece alone.
int landing(const Piece& piece, int bar) {
  int level = 0;
  for (int at = bar; at <= std::min(piece.bars, bar + 1); ++at)
    level = std::max(level, piece.level_at(at));
  return level;
}

bool before_a_named_fork(const Piece& piece, int bar) {
  for (const LookAlikes& alike : piece.look_alikes)
    for (std::size_t at = 0; at < alike.passages.size(); ++at)
      if (alike.passages[at].first <= bar && bar < alike.forks[at]) return true;
  return false;
}

// Whether a bar comes once only: nothing returns to it, and it is no return.
bool comes_once(const Piece& piece, int bar) {
  for (const Section& section : piece.sections)
    if (section.same_as && (section.bars.contains(bar) || section.same_as->contains(bar)))
      return false;
  return true;
}

}  // namespace

TEST_CASE("one never rejoins inside look-alikes before they part") {
  int places = 0;
  int inside = 0;
  for (unsigned seed = 0; seed < 600; ++seed) {
    const PlannedPiece planned = random_piece(seed);
    INFO("seed " << seed << "\n" << sample::piece_file(planned.piece));
    for (const int bar : planned.rejoin) CHECK_FALSE(before_a_named_fork(planned.piece, bar));
    places += static_cast<int>(planned.rejoin.size());
    for (const PlannedSection& section : planned.sections)
      inside += before_a_named_fork(planned.piece, section.bars.first) ? 1 : 0;
  }
  CHECK(places > 1000);
  CHECK(inside > 50);  // sections that begin there
}

TEST_CASE("one never rejoins in the hardest bars where an easier phrase follows soon") {
  int hard = 0;
  for (unsigned seed = 0; seed < 600; ++seed) {
    const PlannedPiece planned = random_piece(seed);
    const Piece& piece = planned.piece;
    INFO("seed " << seed << "\n" << sample::piece_file(piece));
    int hardest = 0;
    for (int bar = 1; bar <= piece.bars; ++bar) hardest = std::max(hardest, piece.level_at(bar));
    std::set<int> begins(piece.cues.begin(), piece.cues.end());
    for (const Section& section : piece.sections) {
      begins.insert(section.bars.first);
      for (const BarRange& phrase : section.phrases) begins.insert(phrase.first);
    }
    std::erase_if(begins, [&](int bar) {
      return bar == 0 || before_a_named_fork(piece, bar) || !comes_once(piece, bar);
    });
    const auto easier_follows = [&](int from) {
      return std::any_of(begins.begin(), begins.end(), [&](int bar) {
        return from < bar && bar <= from + 8 && landing(piece, bar) < hardest;
      });
    };
    for (const int bar : planned.rejoin)
      CHECK_FALSE((landing(piece, bar) == hardest && easier_follows(bar)));
    for (const int bar : begins)
      hard += landing(piece, bar) == hardest && easier_follows(bar) ? 1 : 0;
  }
  CHECK(hard > 100);
}

TEST_CASE("from every bar, at every time of a repeat, the card leads to the next place ahead") {
  for (unsigned seed = 0; seed < 600; ++seed) {
    const PlannedPiece planned = random_piece(seed);
    INFO("seed " << seed << "\n" << sample::piece_file(planned.piece));
    std::vector<int> played;
    for (const BarRange& bars : planned.piece.playing_order())
      for (int bar = bars.first; bar <= bars.last; ++bar) played.push_back(bar);
    const std::set<int> places(planned.rejoin.begin(), planned.rejoin.end());
    const std::vector<Rejoin> rows = rejoins(planned);
    // What the card must say of each leg, in the order of playing: where it leads, and, where a
    // leg that begins at the same bar goes elsewhere at another time, at which times.
    std::map<int, int> times;
    for (std::size_t at = 0; at < played.size();) {
      std::size_t next = at + 1;
      while (next < played.size() && !places.contains(played[next])) ++next;
      const int to = next < played.size() ? played[next] : 0;
      const int time = ++times[played[at]];
      const std::set<int> leg(played.begin() + static_cast<std::ptrdiff_t>(at),
                              played.begin() + static_cast<std::ptrdiff_t>(next));
      const bool pickup_alone = leg == std::set<int>{0};
      int told = 0;
      for (const Rejoin& row : rows) {
        if (row.from.front().first != played[at]) continue;
        const bool now = std::ranges::find(row.times, time) != row.times.end();
        if (!now) continue;
        ++told;
        CHECK(row.to == to);
        for (const int bar : leg)
          CHECK(std::ranges::any_of(row.from,
                                    [&](const BarRange& bars) { return bars.contains(bar); }));
      }
      if (!pickup_alone) CHECK(told == 1);
      at = next;
    }
  }
}

TEST_CASE("a start comes about every eight bars, in a piece of more than 200 every sixteen",
          "[numbers]") {
  CHECK(starts_in(40) == 5);
  CHECK(starts_in(200) == 25);
  CHECK(starts_in(208) == 13);
}

TEST_CASE("a phrase of more than sixteen bars has a start inside", "[numbers]") {
  CHECK(starts_in(16, ", phrases: [1-16]") == 1);
  CHECK(starts_in(17, ", phrases: [1-17]") > 1);
}

TEST_CASE("places to rejoin lie four bars apart, in a long piece eight", "[numbers]") {
  using Bars = std::vector<int>;
  CHECK(rejoin(16, {4, 6}) == Bars{6});
  CHECK(rejoin(16, {5, 9}) == Bars{5, 9});
  CHECK(rejoin(204, {8, 20}) == Bars{20});
  CHECK(rejoin(204, {9, 20}) == Bars{9, 20});
}

}  // namespace cahier
