#include "plan/search/quickest_tasks.h"

#include <limits>

namespace cahier {
namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();

double least_after(const TinyPiece& piece, const std::vector<double>& least, Mask across,
                   int next) {
  return next < piece.passages() && holds(across, next) ? kNone : least[next];
}

}  // namespace

Played quickest_tasks(const TinyPiece& piece, Mask learned, Mask wanted, Mask open,
                      const std::vector<std::vector<double>>& minutes) {
  const int passages = piece.passages();
  Mask needed = 0;
  Mask across = 0;  // passages that must not begin a task
  for (int chunk = 0; chunk < piece.chunks(); ++chunk)
    if (holds(wanted, chunk)) needed |= only(piece.place_of[chunk]);
  for (int join = 0; join < static_cast<int>(piece.joins.size()); ++join) {
    if (!holds(open, join)) continue;
    needed |= only(piece.joins[join].left);
    across |= only(piece.joins[join].left + 1);
  }
  // By passage: the least from it on, and where its task ends; -1 where none begins.
  std::vector<double> least(passages + 1, kNone);
  std::vector<int> ends(passages, -1);
  least[passages] = 0;
  for (int first = passages - 1; first >= 0; --first) {
    if (!holds(needed, first) && !holds(across, first)) least[first] = least[first + 1];
    if (holds(across, first)) continue;
    for (int last = first; last < passages && holds(learned, piece.chunk_at[last]); ++last) {
      const double all = minutes[first][last] + least_after(piece, least, across, last + 1);
      if (all >= least[first]) continue;
      least[first] = all;
      ends[first] = last;
    }
  }
  Played played;
  played.minutes = least[0];
  if (least[0] == kNone) return played;
  for (int at = 0; at < passages;) {
    if (ends[at] < 0) {
      ++at;
      continue;
    }
    played.begins |= only(at);
    for (const int last = ends[at]; at <= last; ++at) played.passages |= only(at);
  }
  return played;
}

Mask joined_by(const TinyPiece& piece, const Played& tasks) {
  Mask joined = 0;
  for (int join = 0; join < static_cast<int>(piece.joins.size()); ++join) {
    const int left = piece.joins[join].left;
    if (holds(tasks.passages, left) && holds(tasks.passages, left + 1) &&
        !holds(tasks.begins, left + 1))
      joined |= only(join);
  }
  return joined;
}

std::vector<BarRange> bars_of(const Played& tasks, const TinyPiece& piece,
                              const Analysis& analysis) {
  std::vector<BarRange> all;
  for (int at = 0; at < piece.passages(); ++at) {
    if (!holds(tasks.begins, at)) continue;
    int last = at;
    while (last + 1 < piece.passages() && holds(tasks.passages, last + 1) &&
           !holds(tasks.begins, last + 1))
      ++last;
    all.push_back(piece.bars(analysis, at, last));
  }
  return all;
}

}  // namespace cahier
