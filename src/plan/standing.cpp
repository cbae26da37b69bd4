#include "plan/standing.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "practice/learned_bars.h"
#include "practice/time_model.h"

namespace cahier {
namespace {

double slips_in_a_trial(const SlipCount& count) {
  return count.trials > 0 ? static_cast<double>(count.slips) / count.trials : 0;
}

// The day on which the plan has taught the last of these bars; none where it leaves some out.
std::optional<Date> learned_by(const Plan& plan, int piece, BarRange bars) {
  LearnedBars learned(plan.record, piece, plan.pieces[piece].piece);
  for (const Day& day : plan.days) {
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::learn) learned.learn(task.bars, day.date);
    if (!learned.first_unlearned(bars)) return day.date;
  }
  return std::nullopt;
}

}  // namespace

bool has_new_bars(const Plan& plan) {
  const auto is_new = [](const auto& work) { return work.drill == Drill::learn; };
  return std::ranges::any_of(plan.unplaced, is_new) ||
         std::ranges::any_of(
             plan.days, [&](const Day& day) { return std::ranges::any_of(day.tasks, is_new); });
}

std::vector<std::optional<Date>> learned_before(const Plan& plan, int piece) {
  const PlannedPiece& planned = plan.pieces[piece];
  const LearnedBars known(plan.record, piece, planned.piece);
  std::vector<std::optional<Date>> learned;
  for (const Chunk& chunk : planned.chunks)
    learned.push_back(known.first_unlearned(chunk.bars) ? std::nullopt
                                                        : known.since(chunk.bars.last));
  return learned;
}

std::vector<const Done*> runs_made(const Plan& plan, int piece) {
  std::vector<const Done*> runs;
  if (!is_later_edition(plan)) return runs;
  for (const Done& done : plan.record.done)
    if (done.piece == piece && done.drill == Drill::run_through) runs.push_back(&done);
  return runs;
}

RunScore score_of(const std::vector<const Done*>& runs) {
  RunScore score;
  for (const Done* run : runs) {
    if (!run->slips) {
      ++score.untold;
      continue;
    }
    ++score.told;
    if (run->slips->empty()) ++score.clean;
  }
  return score;
}

std::vector<WeakSpot> weak_spots(const Plan& plan) {
  std::vector<WeakSpot> spots;
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece)
    for (std::size_t chunk = 0; chunk < plan.pieces[piece].chunks.size(); ++chunk)
      if (plan.pieces[piece].chunks[chunk].raised)
        spots.push_back({static_cast<int>(piece), static_cast<int>(chunk)});
  const auto weakness_of = [&](const WeakSpot& spot) {
    const Chunk& chunk = plan.pieces[spot.piece].chunks[spot.chunk];
    return std::tuple(slips_in_a_trial(chunk.slips), chunk.level);
  };
  std::stable_sort(spots.begin(), spots.end(), [&](const WeakSpot& a, const WeakSpot& b) {
    return weakness_of(a) > weakness_of(b);
  });
  return spots;
}

std::optional<Date> last_mended(const Plan& plan, const WeakSpot& spot) {
  const PlannedPiece& planned = plan.pieces[spot.piece];
  const LearnedBars known(planned.piece);
  std::optional<Date> last;
  for (const Done& done : plan.record.done)
    for (const int bar : done.mended)
      if (done.piece == spot.piece && planned.chunks[spot.chunk].bars.contains(known.source(bar)))
        last = std::max(last, std::optional(done.date));
  return last;
}

std::vector<MovedBars> moved_bars(const Plan& plan) {
  std::vector<MovedBars> moved;
  if (!plan.record.last) return moved;
  for (const MissedBars& missed : plan.record.last->missed) {
    const std::optional<Date> to = learned_by(plan, missed.piece, missed.bars);
    if (!to) continue;
    MovedBars* before = moved.empty() ? nullptr : &moved.back();
    if (before && before->piece == missed.piece && before->from == missed.set_for &&
        before->to == *to && before->bars.last + 1 == missed.bars.first)
      before->bars.last = missed.bars.last;
    else
      moved.push_back({missed.piece, missed.bars, missed.set_for, *to});
  }
  return moved;
}

double mean_pace(const Plan& plan) {
  double bars = 0;
  double sum = 0;
  for (const PlannedPiece& piece : plan.pieces)
    for (const Chunk& chunk : piece.chunks) {
      bars += chunk.bars.size();
      sum += chunk.bars.size() * plan.method.pace[piece.piece.hardest_level(chunk.bars) - 1];
    }
  return bars > 0 ? sum / bars : 1;
}

std::vector<LevelPace> level_paces(const Plan& plan) {
  Method first = plan.method;
  first.pace.fill(1);
  if (first.pace == plan.method.pace) return {};
  std::array<LevelPace, 5> levels{};
  std::array<int, 5> bars{};
  for (const PlannedPiece& planned : plan.pieces) {
    const TimeModel as_planned(planned.piece, first);
    const TimeModel paced(planned.piece, plan.method);
    const int parts = static_cast<int>(planned.piece.parts().size());
    for (const Chunk& chunk : planned.chunks) {
      const int hardest = planned.piece.hardest_level(chunk.bars);
      LevelPace& level = levels[hardest - 1];
      level.first += as_planned.learn(chunk.bars, hardest);
      level.now += paced.learn(chunk.bars, hardest);
      bars[hardest - 1] += chunk.bars.size() * parts;
    }
  }
  std::vector<LevelPace> paces;
  for (std::size_t at = 0; at < levels.size(); ++at)
    if (bars[at] > 0)
      paces.push_back(
          {static_cast<int>(at) + 1, levels[at].first / bars[at], levels[at].now / bars[at]});
  return paces;
}

}  // namespace cahier
