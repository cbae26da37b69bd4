// Rule 8: passages that begin alike are not both new on one day, and where they part is drilled;
// and every drill of a fork plays ways that the piece has.
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

struct Passage {
  BarRange bars;
  int fork = 0;
  std::vector<int> chunks;  // sorted
  bool learned = false;     // every chunk of it
  Moment when;              // the last of them
};

using Group = std::vector<Passage>;

Group passages_of(const IndexedPiece& piece, const LookAlikes& look_alikes) {
  Group group;
  for (std::size_t at = 0; at < look_alikes.passages.size(); ++at) {
    Passage passage;
    passage.bars = look_alikes.passages[at];
    passage.fork = look_alikes.forks[at];
    passage.chunks = piece.touched(passage.bars);
    passage.learned = true;
    for (const int chunk : passage.chunks) {
      passage.learned = passage.learned && piece.learned[chunk];
      if (piece.learned[chunk]) passage.when = std::max(passage.when, *piece.learned[chunk]);
    }
    group.push_back(std::move(passage));
  }
  return group;
}

std::vector<int> days_new_only_in(const IndexedPiece& piece, const Passage& one,
                                  const Passage& other) {
  std::vector<int> new_days;
  for (const int chunk : one.chunks)
    if (piece.learned[chunk] &&
        !std::binary_search(other.chunks.begin(), other.chunks.end(), chunk))
      new_days.push_back(piece.learned[chunk]->day);
  std::sort(new_days.begin(), new_days.end());
  return new_days;
}

void check_not_both_new(IndexedPlan& indexed, const IndexedPiece& piece, const Passage& one,
                        const Passage& other) {
  const std::vector<int> some = days_new_only_in(piece, one, other);
  const std::vector<int> others = days_new_only_in(piece, other, one);
  const auto both = std::find_first_of(some.begin(), some.end(), others.begin(), others.end());
  if (both != some.end() && *both >= indexed.first)
    indexed.violation(8, Kind::both_new,
                      fmt::format("look-alikes {} and {} are both new on {}", in_words(one.bars),
                                  in_words(other.bars), iso(indexed.days[*both]->date)));
}

// For each piece, its fork bars and, for each pair of a group, the last drill that meets both.
struct Forks {
  std::vector<Group> groups;
  std::multimap<int, std::pair<int, int>> at_bar;  // fork bar to group and passage
  std::map<std::pair<int, std::pair<int, int>>, Moment> drilled;
};

void note_drill(Forks& forks, const IndexedPiece& piece, const Task& task, const Moment& moment,
                int length) {
  std::set<std::pair<int, int>> met;
  for (const int number : task.cues)
    if (const CueStart* cue = piece.find_cue(number)) {
      const auto end = forks.at_bar.upper_bound(cue->bar + length);
      for (auto at = forks.at_bar.lower_bound(cue->bar); at != end; ++at) met.insert(at->second);
    }
  for (auto one = met.begin(); one != met.end(); ++one)
    for (auto other = std::next(one); other != met.end() && other->first == one->first; ++other)
      forks.drilled[{one->first, {one->second, other->second}}] = moment;
}

void check_pair(IndexedPlan& indexed, const IndexedPiece& piece, const Forks& forks, int group,
                int first, int second) {
  const Passage& one = forks.groups[group][first];
  const Passage& other = forks.groups[group][second];
  check_not_both_new(indexed, piece, one, other);
  if (!indexed.plan.fits || !one.learned || !other.learned) return;
  const auto drilled = forks.drilled.find({group, {first, second}});
  if (drilled == forks.drilled.end() || drilled->second < std::max(one.when, other.when))
    indexed.violation(8, Kind::fork_not_drilled,
                      fmt::format("the forks at bars {} and {} are not drilled together after "
                                  "both passages are learned",
                                  one.fork, other.fork));
}

// Whether one of the piece's forks, or a way back of its repeats, leads there.
bool is_way_of(const Fork& fork, const PlayedWay& played) {
  const auto is_same = [&](const WayOn& way) { return way.at == played.at && way.to == played.to; };
  return std::ranges::any_of(fork.ways, is_same) || std::ranges::any_of(fork.back, is_same);
}

// That what a fork drill plays is a way on that the piece has, begun from a start just before it,
// and learned on both sides.
void check_ways(IndexedPlan& indexed, const Moment& moment, const Task& task) {
  const IndexedPiece& piece = indexed.pieces[task.piece];
  const auto leads_to = [&](int number, int at) {
    const CueStart* cue = piece.find_cue(number);
    return cue && cue->bar <= at + 1 && at + 1 - cue->bar <= indexed.plan.method.chunk_most;
  };
  for (const PlayedWay& way : task.ways) {
    const std::string what =
        fmt::format("{} goes from bar {} to bar {}", in_words(indexed, moment), way.at, way.to);
    if (std::ranges::none_of(piece.planned->forks,
                             [&](const Fork& fork) { return is_way_of(fork, way); })) {
      indexed.violation(8, Kind::way_of_no_fork, what + ", where the piece has no fork");
      continue;
    }
    if (!way.goes_on &&
        std::ranges::none_of(task.cues, [&](int number) { return leads_to(number, way.at); }))
      indexed.violation(8, Kind::way_without_start, what + " without a cue start just before it");
    for (const int bar : {way.at, way.to}) {
      const int chunk = piece.chunk_at[bar];
      if (chunk >= 0 && piece.learned[chunk] && piece.learned[chunk]->day < moment.day) continue;
      indexed.violation(8, Kind::not_learned_before,
                        what + ", which are not both learned on an earlier day");
    }
  }
}

}  // namespace

void check_look_alikes(IndexedPlan& indexed) {
  indexed.each_planned(
      [&](const Moment& moment, const Task& task) { check_ways(indexed, moment, task); });
  std::vector<Forks> forks(indexed.pieces.size());
  for (const IndexedPiece& piece : indexed.pieces)
    for (const LookAlikes& look_alikes : piece.planned->piece.look_alikes) {
      Forks& own = forks[piece.index];
      const int group = static_cast<int>(own.groups.size());
      own.groups.push_back(passages_of(piece, look_alikes));
      for (std::size_t at = 0; at < own.groups.back().size(); ++at)
        own.at_bar.insert({own.groups.back()[at].fork, {group, static_cast<int>(at)}});
    }
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::cue_starts && !forks[task.piece].groups.empty())
      note_drill(forks[task.piece], indexed.pieces[task.piece], task, moment,
                 indexed.plan.method.chunk_most);
  });
  for (const IndexedPiece& piece : indexed.pieces) {
    const Forks& own = forks[piece.index];
    for (int group = 0; group < static_cast<int>(own.groups.size()); ++group)
      for (int one = 0; one < static_cast<int>(own.groups[group].size()); ++one)
        for (int other = one + 1; other < static_cast<int>(own.groups[group].size()); ++other)
          check_pair(indexed, piece, own, group, one, other);
  }
}

}  // namespace cahier
