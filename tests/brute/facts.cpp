#include "facts.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>

namespace cahier::brute {
namespace {

int halves(double minutes) { return static_cast<int>(std::lround(minutes * 2)); }

// The chunk that holds the notes of each bar.
std::vector<int> chunk_at_bar(const Analysis& analysis) {
  const Piece& piece = analysis.planned.piece;
  std::vector<int> held(piece.bars + 1, -1);
  for (int bar = piece.first_bar(); bar <= piece.bars; ++bar)
    for (int chunk = 0; chunk < static_cast<int>(analysis.planned.chunks.size()); ++chunk)
      if (analysis.planned.chunks[chunk].bars.contains(piece.learned_bar(bar))) held[bar] = chunk;
  return held;
}

Mask touched(const std::vector<int>& chunk_at, BarRange bars) {
  Mask mask = 0;
  for (int bar = bars.first; bar <= bars.last; ++bar) mask |= Mask{1} << chunk_at[bar];
  return mask;
}

// A boundary inside a return is the one its source has. Named by the bar before it.
int boundary_of(const Analysis& analysis, int bar) {
  const auto& sections = analysis.planned.sections;
  for (std::size_t follow = 0; follow <= sections.size(); ++follow) {
    const auto at = std::find_if(sections.begin(), sections.end(),
                                 [&](const PlannedSection& one) { return one.bars.contains(bar); });
    if (!at->same_as || bar + 1 > at->bars.last) break;
    bar = at->same_as->first + bar - at->bars.first;
  }
  return bar;
}

void find_ranges(Facts& facts) {
  const Analysis& analysis = facts.analysis;
  const auto& passages = analysis.passages;
  std::map<int, int> join_of;  // by boundary
  std::vector<int> after;      // by passage: the join at its end
  for (std::size_t at = 0; at + 1 < passages.size(); ++at) {
    const int boundary = boundary_of(analysis, passages[at].bars.last);
    after.push_back(join_of.emplace(boundary, static_cast<int>(join_of.size())).first->second);
  }
  facts.join_count = static_cast<int>(join_of.size());
  facts.joins = (Mask{1} << facts.join_count) - 1;
  for (std::size_t first = 0; first < passages.size(); ++first) {
    if (passages[first].learned != analysis.planned.chunks[passages[first].chunk].bars)
      throw std::logic_error("a return cuts a chunk");
    Range range{passages[first].bars, 0, 0, 0, 0, passages[first].section};
    for (std::size_t last = first; last < passages.size(); ++last) {
      if (last > first) range.joins |= Mask{1} << after[last - 1];
      range.bars.last = passages[last].bars.last;
      range.chunks |= Mask{1} << passages[last].chunk;
      if (passages[last].section != range.section) range.section = -1;
      const int level = analysis.level_in(range.bars);
      range.recall = halves(analysis.time.recall(range.bars, level));
      range.join = halves(analysis.time.join(range.bars, level));
      facts.ranges.push_back(range);
    }
  }
}

struct Pair {
  int one;    // fork bar
  int other;  // fork bar
};

std::vector<Pair> find_rivals(Facts& facts) {
  const std::vector<int> chunk_at = chunk_at_bar(facts.analysis);
  std::vector<Pair> pairs;
  facts.rivals.assign(facts.chunks, 0);
  for (const LookAlikes& group : facts.analysis.planned.piece.look_alikes)
    for (std::size_t one = 0; one < group.passages.size(); ++one)
      for (std::size_t other = one + 1; other < group.passages.size(); ++other) {
        const Mask some = touched(chunk_at, group.passages[one]);
        const Mask others = touched(chunk_at, group.passages[other]);
        for (int chunk = 0; chunk < facts.chunks; ++chunk) {
          if ((some & ~others) >> chunk & 1) facts.rivals[chunk] |= others & ~some;
          if ((others & ~some) >> chunk & 1) facts.rivals[chunk] |= some & ~others;
        }
        pairs.push_back({group.forks[one], group.forks[other]});
        facts.fork_passages.push_back(some | others);
      }
  facts.fork_count = static_cast<int>(pairs.size());
  facts.forks = (Mask{1} << facts.fork_count) - 1;
  return pairs;
}

void find_starts(Facts& facts, const std::vector<Pair>& pairs, int most_before) {
  const auto& cues = facts.analysis.planned.cues;
  for (Mask chosen = 1; chosen < Mask{1} << cues.size(); ++chosen) {
    Starts starts;
    std::set<int> forks_met;
    for (const CueStart& cue : cues) {
      if (!(chosen >> (cue.number - 1) & 1)) continue;
      starts.cues.push_back(cue.number);
      const StartFromCue& start = facts.analysis.starts[cue.number - 1];
      for (const int chunk : start.chunks) starts.chunks |= Mask{1} << chunk;
      for (const int chunk : start.touched) starts.touched |= Mask{1} << chunk;
      for (const Pair& pair : pairs)
        for (const int fork : {pair.one, pair.other})
          if (cue.bar <= fork && fork <= cue.bar + most_before) forks_met.insert(fork);
    }
    for (std::size_t pair = 0; pair < pairs.size(); ++pair)
      if (forks_met.count(pairs[pair].one) > 0 && forks_met.count(pairs[pair].other) > 0)
        starts.forks |= Mask{1} << pair;
    starts.cost = halves(facts.analysis.time.cue_starts(static_cast<int>(starts.cues.size())));
    facts.starts.push_back(std::move(starts));
  }
}

}  // namespace

Facts::Facts(const Analysis& of, const Terms& terms) : analysis(of) {
  chunks = static_cast<int>(analysis.planned.chunks.size());
  if (chunks > 6) throw std::logic_error("too many chunks for every plan to be tried");
  all = (Mask{1} << chunks) - 1;
  for (const double minutes : analysis.learn_minutes) learn.push_back(halves(minutes));
  run = halves(analysis.time.run_through());
  find_ranges(*this);
  find_starts(*this, find_rivals(*this), terms.method.chunk_most);
}

}  // namespace cahier::brute
