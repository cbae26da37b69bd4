#include "workbook/sheets/form/learning_rows.h"

#include <algorithm>

#include "plan/chunk_labels.h"
#include "text/phrasing.h"
#include "workbook/sheets/form/learned_parts.h"

namespace cahier {
namespace {

Dot dot_of(Drill drill) {
  if (drill == Drill::learn) return Dot::learned;
  return retrieves(drill) ? Dot::recalled : Dot::joined;
}

}  // namespace

std::vector<LearningRow> learning_rows(const Book& book, int piece, int span) {
  const std::vector<Day>& all = book.plan().days;
  const std::size_t columns = (all.size() + span - 1) / span;
  const std::vector<Chunk>& chunks = book.plan().pieces[piece].chunks;
  const std::vector<bool> learned = chunks_learned(book.plan(), piece);
  const ChunkLabels labels(book.plan().pieces[piece]);
  std::vector<LearningRow> rows;
  for (std::size_t at = 0; at < chunks.size(); ++at)
    rows.push_back({labels.by_bars(chunks[at]) ? "" : chunks[at].id,
                    bar_range(chunks[at].bars.first, chunks[at].bars.last),
                    std::vector<Dot>(columns, Dot::none),
                    at > 0 && chunks[at].section != chunks[at - 1].section, learned[at]});
  rows.push_back(
      {book.words().say("form_map.runs"), "", std::vector<Dot>(columns, Dot::none), true, false});
  for (std::size_t day = 0; day < all.size(); ++day)
    for (const Task& task : all[day].tasks) {
      if (task.piece != piece) continue;
      const auto add = [&](LearningRow& row) {
        Dot& dot = row.dots[day / span];
        dot = std::max(dot, dot_of(task.drill));
      };
      if (task.drill == Drill::run_through) {
        add(rows.back());
        continue;
      }
      if (task.drill == Drill::silent_run) continue;  // nothing is played
      for (const int chunk : task.chunks) add(rows[chunk]);
    }
  return rows;
}

}  // namespace cahier
