#include "plan/quality/placed_tasks.h"

#include <algorithm>

namespace cahier {
namespace {

void index_bars(PlacedPiece& piece) {
  const Piece& music = piece.planned->piece;
  const auto size = static_cast<std::size_t>(music.bars) + 1;
  std::vector<int> holder(size, -1);
  const auto& chunks = piece.planned->chunks;
  for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk)
    for (int bar = chunks[chunk].bars.first; bar <= chunks[chunk].bars.last; ++bar)
      holder[bar] = chunk;
  piece.learned_bar.assign(size, 0);
  piece.chunk_at.assign(size, -1);
  for (int bar = music.first_bar(); bar <= music.bars; ++bar) {
    piece.learned_bar[bar] = music.learned_bar(bar);
    piece.chunk_at[bar] = holder[piece.learned_bar[bar]];
  }
}

void find_learned(PlacedPiece& piece) {
  piece.learned.resize(piece.planned->chunks.size());
  for (const PlacedTask& placed : piece.tasks)
    if (placed.task->drill == Drill::learn)
      for (const int chunk : placed.task->chunks)
        if (!piece.learned[chunk])
          piece.learned[chunk] = LearnedChunk{placed.date, placed.order, placed.past};
  if (piece.learned.empty()) return;
  Date last = piece.plan->upkeep ? piece.plan->from : Date::min();
  for (const auto& learned : piece.learned) {
    if (!learned) return;
    last = std::max(last, learned->date);
  }
  piece.last_new = last;
}

}  // namespace

bool PlacedPiece::leaves(int days_wanted) const {
  return last_new && plan->by - *last_new >= days{days_wanted};
}

std::optional<LearnedChunk> PlacedPiece::learned_in(BarRange bars) const {
  std::optional<LearnedChunk> last;
  for (int bar = bars.first; bar <= bars.last; ++bar) {
    if (chunk_at[bar] < 0 || !learned[chunk_at[bar]]) return std::nullopt;
    const LearnedChunk& here = *learned[chunk_at[bar]];
    if (!last || here.order > last->order) last = here;
  }
  return last;
}

std::vector<RunDay> PlacedPiece::runs() const {
  std::vector<RunDay> found;
  for (const PlacedTask& placed : tasks) {
    if (placed.task->drill != Drill::run_through || !last_new || placed.date < *last_new) continue;
    const int times = placed.task->steps.empty() ? 1 : placed.task->steps[0].times;
    if (!found.empty() && found.back().date == placed.date)
      found.back().times += times;
    else
      found.push_back({placed.date, times, placed.past});
  }
  return found;
}

std::optional<Date> PlacedPlan::last_new() const {
  std::optional<Date> last;
  for (const PlacedPiece& piece : pieces) {
    if (!piece.last_new) return std::nullopt;
    last = std::max(last, piece.last_new);
  }
  return last;
}

PlacedPlan place_tasks(const Plan& plan) {
  PlacedPlan placed;
  placed.plan = &plan;
  for (const PlannedPiece& planned : plan.pieces) {
    PlacedPiece piece{&plan, &planned, static_cast<int>(placed.pieces.size()),
                      TimeModel(planned.piece, plan.method)};
    index_bars(piece);
    placed.pieces.push_back(std::move(piece));
  }
  int order = 0;
  const auto add = [&](const Day& day, bool past) {
    for (const Task& task : day.tasks)
      placed.pieces[task.piece].tasks.push_back({&task, day.date, order++, past});
  };
  for (const Day& day : plan.past) add(day, true);
  for (const Day& day : plan.days) add(day, false);
  for (PlacedPiece& piece : placed.pieces) find_learned(piece);
  return placed;
}

bool plays_whole(Drill drill) { return drill == Drill::recall || is_pass(drill); }

int counted_bars(BarRange bars) { return bars.size() - (bars.first == 0 ? 1 : 0); }

std::vector<BarRange> as_ranges(const std::vector<int>& bars) {
  std::vector<BarRange> ranges;
  for (const int bar : bars) {
    if (!ranges.empty() && ranges.back().last + 1 == bar)
      ranges.back().last = bar;
    else
      ranges.push_back({bar, bar});
  }
  return ranges;
}

std::vector<BarRange> put_together(std::vector<BarRange> bars) {
  std::ranges::sort(bars);
  std::vector<BarRange> ranges;
  for (const BarRange& range : bars) {
    if (!ranges.empty() && range.first <= ranges.back().last + 1)
      ranges.back().last = std::max(ranges.back().last, range.last);
    else
      ranges.push_back(range);
  }
  return ranges;
}

}  // namespace cahier
