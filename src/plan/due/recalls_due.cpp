#include "plan/due/recalls_due.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {
RecallsDue::RecallsDue(const Analysis& analysis, const Method& method,
                       const std::vector<int>& practice_days, int first, int end, bool to_the_edge)
    : analysis_(analysis),
      method_(method),
      practice_days_(practice_days),
      end_(end),
      tempo_(analysis, method, end) {
  slips_ = std::any_of(analysis.planned.chunks.begin(), analysis.planned.chunks.end(),
                       [](const Chunk& chunk) { return chunk.raised; });
  best_gap_.push_back(1);
  for (int left = 1; left <= end; ++left) best_gap_.push_back(best_gap(method, left));
  learned_.assign(analysis.planned.chunks.size(), -1);
  recalled_.assign(analysis.planned.chunks.size(), -1);
  turns_.assign(analysis.planned.chunks.size(), 0);
  passed_.assign(analysis.planned.chunks.size(), -1);
  const Piece& piece = analysis.planned.piece;
  source_of_ = piece.learned_bars();
  played_.assign(source_of_.size(), -1);
  chunk_of_.assign(source_of_.size(), -1);
  for (int chunk = 0; chunk < static_cast<int>(recalled_.size()); ++chunk) {
    const BarRange& bars = analysis.planned.chunks[chunk].bars;
    std::fill(chunk_of_.begin() + bars.first, chunk_of_.begin() + bars.last + 1, chunk);
  }
  std::size_t position = 0;
  for (int day = 0; day <= end; ++day) {
    while (position < practice_days.size() && practice_days[position] < day) ++position;
    position_of_.push_back(static_cast<int>(position));
  }
  for (int day = 0; day < end; ++day) {
    const int longest = to_the_edge ? longest_gap_days(method, end - day)
                                    : std::max(1, static_cast<int>(method.longest_gap * best(day)));
    const std::size_t next = position_of_[day + 1];
    // Where no practice day lies within the limit, the next one is in time.
    int latest = std::max(day + longest, next < practice_days.size() ? practice_days[next] : end);
    if (day + longest < first)
      for (const int practice : practice_days)
        if (practice < first + numbers::kOverdueWeek) latest = std::max(latest, practice);
    latest_.push_back(latest);
  }
}

void RecallsDue::learn(int chunk, int day) {
  learned_[chunk] = day;
  tempo_.learned(chunk, day);
  ++learned_count_;
  last_learning_day_ = std::max(last_learning_day_, day);
}

void RecallsDue::retrieve(const Task& task, int day) {
  if (task.drill == Drill::recall) {
    std::vector<int> known;
    for (const int chunk : task.chunks)
      if (learned_before(chunk, day)) known.push_back(chunk);
    tempo_.recalled(task, known);
  }
  if (task.drill == Drill::run_through) tempo_.ran_through();
  for (const int chunk : task.chunks)
    if (learned_before(chunk, day) && std::exchange(recalled_[chunk], day) != day) ++turns_[chunk];
  if (task.drill == Drill::slow_pass || task.drill == Drill::counted_pass)
    for (const int chunk : task.chunks)
      if (passed_[chunk] < 0 && task.bars.contains(analysis_.planned.chunks[chunk].bars))
        passed_[chunk] = day;
  for (const BarRange& bars : task.played())
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      const int source = source_of_[bar];
      if (learned_before(chunk_of_[source], day)) played_[source] = day;
    }
}

bool RecallsDue::learned_before(const std::vector<int>& chunks, int day) const {
  return std::all_of(chunks.begin(), chunks.end(),
                     [&](int chunk) { return learned_before(chunk, day); });
}

double RecallsDue::ripeness(int chunk, int day) const {
  return (day - last(chunk)) / best(last(chunk));
}

bool RecallsDue::ripe_enough(const std::vector<int>& chunks, int day, double gaps) const {
  return std::all_of(chunks.begin(), chunks.end(), [&](int chunk) {
    return learned_before(chunk, day) && !waits_for_first(chunk) && ripeness(chunk, day) >= gaps;
  });
}

bool RecallsDue::ripe_enough(const BarRange& bars, int day, double gaps) const {
  for (int bar = bars.first; bar <= bars.last; ++bar) {
    const int last = played_[source_of_[bar]];
    if (last < 0 || (day - last) / best(last) < gaps) return false;
  }
  return true;
}

// The last day on which the next recall is in time, for each of its bars.
int RecallsDue::limit_day(int chunk) const {
  int limit = latest_[last(chunk)];
  if (waits_for_first(chunk)) {
    const int position = position_of_[learned_[chunk] + 1] + method_.first_recall_days - 1;
    const int by_rule =
        position < static_cast<int>(practice_days_.size()) ? practice_days_[position] : end_;
    limit = std::min(by_rule, limit);
  }
  const BarRange& bars = analysis_.planned.chunks[chunk].bars;
  for (int bar = bars.first; bar <= bars.last; ++bar)
    if (played_[bar] >= 0) limit = std::min(limit, latest_[played_[bar]]);
  return limit;
}

bool RecallsDue::must(int chunk, int position) const {
  const int next =
      position + 1 < static_cast<int>(practice_days_.size()) ? practice_days_[position + 1] : end_;
  return next > limit_day(chunk);
}

bool RecallsDue::better_left(int chunk, int position, int next_played) const {
  if (next_played < 0 || waits_for_first(chunk) || must(chunk, position)) return false;
  if (next_played > limit_day(chunk)) return false;
  // A recall now would make the one to come an early one.
  const int today = practice_days_[position];
  if (next_played - today < numbers::kEarlyGap * best(today)) return true;
  return next_played - last(chunk) <= numbers::kLateGap * best(last(chunk));
}

// What slips is not left for a run-through to come.
bool RecallsDue::weak_and_due(int chunk, int position) const {
  const int today = practice_days_[position];
  return analysis_.planned.chunks[chunk].raised && learned_before(chunk, today) &&
         !waits_for_first(chunk) && ripeness(chunk, today) >= method_.slip_gap;
}

// Whether a recall that began with the chunk `first` ends before this one: what begins inside a
// phrase goes no farther than that phrase.
bool RecallsDue::ends_before(int chunk, int first) const {
  return chunk > first && analysis_.begins_phrase[chunk] && !analysis_.begins_phrase[first];
}

void RecallsDue::add_wants(const Stretch& stretch, int index, int position, int next_played,
                           std::vector<Want>& wants) const {
  const int today = practice_days_[position];
  double ripest = 0;
  double least_ripe = 1e9;
  bool complete = true;
  bool first = false;
  bool pressing = false;
  bool weak = false;
  for (int chunk = stretch.first_chunk; chunk <= stretch.last_chunk; ++chunk) {
    if (!learned_before(chunk, today)) {
      complete = false;
      continue;
    }
    if (waits_for_first(chunk)) {
      first = true;
      continue;
    }
    weak = weak || weak_and_due(chunk, position);
    if (better_left(chunk, position, next_played)) continue;
    ripest = std::max(ripest, ripeness(chunk, today));
    least_ripe = std::min(least_ripe, ripeness(chunk, today));
    pressing = pressing || must(chunk, position);
  }
  const bool whole = complete && !first && least_ripe >= numbers::kEarlyGap;
  // Neighbours that are not yet ripe are worth waiting for, as long as nothing gets late.
  const bool due = pressing || ripest >= (whole || !complete ? 1.0 : numbers::kLateGap);
  if (!due && !first && !weak) return;
  const auto belongs = [&](int chunk) {
    if (!learned_before(chunk, today)) return false;
    if (waits_for_first(chunk)) return true;
    if (!due) return weak_and_due(chunk, position);
    if (better_left(chunk, position, next_played)) return whole;
    return ripeness(chunk, today) >= numbers::kEarlyGap || must(chunk, position);
  };
  for (int chunk = stretch.first_chunk; chunk <= stretch.last_chunk; ++chunk) {
    if (!belongs(chunk)) continue;
    Want want;
    want.stretch = index;
    want.bars = analysis_.planned.chunks[chunk].bars;
    want.whole = whole;
    const int opens = chunk;
    for (; chunk <= stretch.last_chunk && belongs(chunk) && !ends_before(chunk, opens); ++chunk) {
      want.chunks.push_back(chunk);
      want.bars.last = analysis_.planned.chunks[chunk].bars.last;
      want.first = want.first || waits_for_first(chunk);
      want.must = want.must || must(chunk, position);
      want.ripeness = std::max(want.ripeness, ripeness(chunk, today));
    }
    want.whole = whole && want.bars == stretch.bars;
    want.weak = !due && !want.first;
    if (want.weak) want.ripeness /= method_.slip_gap;
    wants.push_back(std::move(want));
    --chunk;
  }
}

bool RecallsDue::sooner(int chunk, int day) const {
  if (!learned_before(chunk, day) || waits_for_first(chunk)) return false;
  const int since = day - recalled_[chunk];
  // What slips comes up every day that has room for it.
  if (analysis_.planned.chunks[chunk].raised) return since >= 1;
  if (turns_[chunk] < method_.criterion && day - learned_[chunk] <= method_.criterion_days)
    return since >= numbers::kCriterionGap;
  // Where something slips, the minutes are its own.
  return tempo_.wants_tempo(chunk, day) &&
         since >= (slips_ ? numbers::kCriterionGap : numbers::kTempoGap);
}

template <typename Belongs>
std::vector<Want> RecallsDue::runs_of(Belongs belongs) const {
  std::vector<Want> wants;
  for (int index = 0; index < static_cast<int>(analysis_.stretches.size()); ++index) {
    const Stretch& stretch = analysis_.stretches[index];
    for (int chunk = stretch.first_chunk; chunk <= stretch.last_chunk; ++chunk) {
      if (!belongs(chunk)) continue;
      Want want;
      want.stretch = index;
      want.bars = analysis_.planned.chunks[chunk].bars;
      const int opens = chunk;
      for (; chunk <= stretch.last_chunk && belongs(chunk) && !ends_before(chunk, opens); ++chunk) {
        want.chunks.push_back(chunk);
        want.bars.last = analysis_.planned.chunks[chunk].bars.last;
      }
      wants.push_back(std::move(want));
      --chunk;
    }
  }
  return wants;
}

std::vector<Want> RecallsDue::wants_sooner(int day) const {
  return runs_of([&](int chunk) { return sooner(chunk, day); });
}

std::vector<Want> RecallsDue::hard_on(int day) const {
  const auto& chunks = analysis_.planned.chunks;
  const bool all_hard = std::all_of(chunks.begin(), chunks.end(), [&](const Chunk& chunk) {
    return chunk.level >= method_.weak_level;
  });
  if (all_hard) return {};
  return runs_of([&](int chunk) {
    return chunks[chunk].level >= method_.weak_level && learned_before(chunk, day) &&
           !waits_for_first(chunk) && ripeness(chunk, day) >= method_.hard_gap;
  });
}

std::vector<Want> RecallsDue::weak_on(int day) const {
  return runs_of([&](int chunk) {
    const Chunk& of = analysis_.planned.chunks[chunk];
    return (of.raised || of.level >= method_.weak_level) && learned_before(chunk, day) &&
           recalled_[chunk] >= 0 && recalled_[chunk] < day;
  });
}

std::vector<Want> RecallsDue::wants(int position, const std::vector<int>& next_played) const {
  std::vector<Want> wants;
  for (int index = 0; index < static_cast<int>(analysis_.stretches.size()); ++index)
    if (next_played[index] != practice_days_[position])
      add_wants(analysis_.stretches[index], index, position, next_played[index], wants);
  return wants;
}

bool RecallsDue::holds_to_the_end(int chunk) const {
  return waits_for_first(chunk)
             ? position_of_[learned_[chunk] + 1] >= static_cast<int>(practice_days_.size())
             : end_ <= limit_day(chunk);
}

}  // namespace cahier
