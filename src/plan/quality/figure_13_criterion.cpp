// Figure 13: three correct recalls on different days within the first ten days of a chunk, where
// minutes allow (Rawson, Dunlosky 2011, J. Exp. Psych. General 140:283).
//
// Choices: every drill that tests memory recalls the chunks that it plays from end to end; a recall
// in which the log tells of a slip was not correct. Minutes allow a recall where a day within the
// ten has them free; chunks take them in the order in which they are learned. What follows, the
// growing gaps, is measured by figure 19.
#include <algorithm>
#include <map>
#include <set>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

// Minutes that are left on each day; those that would recall a chunk once more are taken.
class FreeMinutes {
 public:
  explicit FreeMinutes(const Plan& plan) {
    for (const Day& day : plan.days) free_[day.date] = day.allowance - day.minutes();
  }

  // Takes them on up to `wanted` days of the window that are not among `recalled`; on how many.
  int take(DateSpan window, const std::set<Date>& recalled, int wanted, double minutes) {
    int taken = 0;
    for (auto day = free_.lower_bound(window.first);
         day != free_.end() && day->first <= window.last && taken < wanted; ++day) {
      if (day->second < minutes - 1e-9 || recalled.contains(day->first)) continue;
      day->second -= minutes;
      ++taken;
    }
    return taken;
  }

 private:
  std::map<Date, double> free_;
};

bool slipped_on(const PlacedPiece& piece, int chunk, Date date) {
  const auto is_of_chunk = [&](int bar) {
    return bar >= 0 && bar < static_cast<int>(piece.chunk_at.size()) &&
           piece.chunk_at[bar] == chunk;
  };
  return std::ranges::any_of(piece.plan->record.done, [&](const Done& done) {
    return done.piece == piece.index && done.date == date &&
           (std::ranges::any_of(done.missed, is_of_chunk) ||
            (done.slips && std::ranges::any_of(*done.slips, is_of_chunk)));
  });
}

// By chunk, the days on which it is recalled correctly.
std::vector<std::set<Date>> recall_days_of(const PlacedPiece& piece) {
  std::vector<std::set<Date>> found(piece.learned.size());
  for (const PlacedTask& placed : piece.tasks) {
    if (!retrieves(placed.task->drill)) continue;
    for (const int chunk : placed.task->chunks)
      if (!placed.past || !slipped_on(piece, chunk, placed.date)) found[chunk].insert(placed.date);
  }
  return found;
}

std::vector<int> by_learning(const PlacedPiece& piece) {
  std::vector<int> chunks;
  for (int chunk = 0; chunk < static_cast<int>(piece.learned.size()); ++chunk)
    if (piece.learned[chunk]) chunks.push_back(chunk);
  std::ranges::stable_sort(chunks, {}, [&](int chunk) { return piece.learned[chunk]->order; });
  return chunks;
}

}  // namespace

Figure criterion(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::criterion);
  FreeMinutes free(*placed.plan);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    const std::vector<std::set<Date>> recalls = recall_days_of(piece);
    int all = 0;
    std::vector<BarRange> few;
    for (const int chunk : by_learning(piece)) {
      const Chunk& of = piece.planned->chunks[chunk];
      const Date learned = piece.learned[chunk]->date;
      const DateSpan window{learned + days{1}, learned + days{piece.method().criterion_days}};
      if (window.last < placed.plan->from) continue;
      ++all;
      const auto held = static_cast<int>(
          std::ranges::count_if(recalls[chunk], [&](Date date) { return window.contains(date); }));
      const double minutes = piece.time.recall(of.bars, of.level);
      if (held < piece.method().criterion &&
          free.take(window, recalls[chunk], piece.method().criterion - held, minutes) > 0)
        few.push_back(of.bars);
    }
    if (figure.all_of(all - static_cast<int>(few.size()), all)) continue;
    figure.lacks({.lack = Lack::few_recalls, .piece = piece.index, .bars = put_together(few)});
  }
  return figure.take();
}

}  // namespace cahier::figures
