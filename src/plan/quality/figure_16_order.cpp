// Figure 16: new bars go forward within a phrase, and in a programme the piece changes seldom.
//
// Choices: where a section names no phrases it is one. An order that the player asked for stands
// instead of going forward. A later chunk that comes first is in order where its task has a reason
// besides being new; what the past learned first is not asked.
#include <algorithm>

#include "plan/phrase_map.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

const Task* learn_task(const PlacedPiece& piece, int chunk) {
  for (const PlacedTask& placed : piece.tasks)
    if (placed.task->drill == Drill::learn && std::ranges::count(placed.task->chunks, chunk) > 0)
      return placed.task;
  return nullptr;
}

bool has_reason(const Task* task) {
  return task && task->reason != Reason::none && task->reason != Reason::new_material;
}

void measure_forward(FigureBuilder& figure, const PlacedPiece& piece) {
  const PhraseMap phrases(*piece.planned);
  const auto& chunks = piece.planned->chunks;
  std::vector<BarRange> early;
  for (std::size_t chunk = 0; chunk < chunks.size(); ++chunk) {
    if (piece.learned[chunk]->past) continue;
    for (std::size_t before = 0; before < chunk; ++before)
      if (phrases.phrase_at(chunks[before].bars.first) ==
              phrases.phrase_at(chunks[chunk].bars.first) &&
          piece.learned[chunk]->order < piece.learned[before]->order &&
          !has_reason(learn_task(piece, static_cast<int>(chunk)))) {
        early.push_back(chunks[chunk].bars);
        break;
      }
  }
  const int all = static_cast<int>(chunks.size());
  if (!figure.all_of(all - static_cast<int>(early.size()), all))
    figure.lacks({.lack = Lack::later_first, .piece = piece.index, .bars = put_together(early)});
}

void measure_changes(FigureBuilder& figure, const Plan& plan) {
  int most = 0;
  std::vector<Date> dates;
  for (const Day& day : plan.days) {
    int changes = 0;
    for (std::size_t at = 1; at < day.tasks.size(); ++at)
      changes += day.tasks[at].piece != day.tasks[at - 1].piece ? 1 : 0;
    if (changes > numbers::kMostPieceChanges) dates.push_back(day.date);
    most = std::max(most, changes);
  }
  if (!figure.at_most(most, numbers::kMostPieceChanges))
    figure.lacks({.lack = Lack::pieces_mixed,
                  .dates = dates,
                  .found = static_cast<double>(most),
                  .wanted = static_cast<double>(numbers::kMostPieceChanges)});
}

}  // namespace

Figure order(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::order);
  const Plan& plan = *placed.plan;
  bool any = false;
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    any = true;
    if (plan.order == Order::forward) measure_forward(figure, piece);
  }
  if (any && placed.pieces.size() > 1) measure_changes(figure, plan);
  return figure.take();
}

}  // namespace cahier::figures
