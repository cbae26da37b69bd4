// Figure 6: seams are played soon after both sides are learned. It holds always.
//
// A seam is where two neighbouring chunks meet, also across sections and into and out of returns;
// one inside a return is that of the bars it repeats, and asked for there alone. It is played by
// whatever the rules let join: a join, a recall, a slow or a counted pass, after both are learned.
#include <algorithm>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/mend.h"
#include "plan/quality/missing.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

struct Seam {
  int bar = 0;  // before it
  LearnedChunk learned;
  std::optional<PlacedTask> played;
};

std::vector<Seam> seams_of(const PlacedPiece& piece) {
  const Piece& music = piece.planned->piece;
  const int count = music.bars + 1;
  std::vector<int> seam_at(count, -1);
  std::vector<int> return_at(count, -1);
  const auto& sections = piece.planned->sections;
  for (int section = 0; section < static_cast<int>(sections.size()); ++section)
    for (int bar = sections[section].bars.first; bar <= sections[section].bars.last; ++bar)
      if (sections[section].same_as) return_at[bar] = section;
  std::vector<Seam> seams;
  for (int bar = music.first_bar(); bar < music.bars; ++bar) {
    const bool goes_on = piece.chunk_at[bar] == piece.chunk_at[bar + 1] &&
                         piece.learned_bar[bar] + 1 == piece.learned_bar[bar + 1];
    const bool inside_return = return_at[bar] >= 0 && return_at[bar] == return_at[bar + 1];
    const auto learned = piece.learned_in({bar, bar + 1});
    if (goes_on || inside_return || !learned) continue;
    seam_at[bar] = static_cast<int>(seams.size());
    seams.push_back({bar, *learned, {}});
  }
  for (const PlacedTask& placed : piece.tasks) {
    if (!facts_of(placed.task->drill).plays_across) continue;
    for (int bar = placed.task->bars.first; bar < placed.task->bars.last; ++bar)
      if (const int at = seam_at[bar];
          at >= 0 && !seams[at].played && placed.order > seams[at].learned.order)
        seams[at].played = placed;
  }
  return seams;
}

// The day its days are counted from: where they are over when the plan begins, that day.
Date due_from(const Seam& seam, const Plan& plan) {
  const bool overdue = seam.learned.date + days{numbers::kSeamDays} < plan.from;
  return overdue ? plan.from : seam.learned.date;
}

bool is_played_within(const Seam& seam, const Plan& plan, int most) {
  if (!seam.played) return false;
  return seam.played->past || seam.played->date - due_from(seam, plan) <= days{most};
}

}  // namespace

std::vector<Missing> missing_seams(const PlacedPiece& piece) {
  std::vector<Missing> missing;
  for (const Seam& seam : seams_of(piece)) {
    if (is_played_within(seam, *piece.plan, numbers::kSeamDays)) continue;
    const Date due = due_from(seam, *piece.plan);
    missing.push_back({{seam.bar, seam.bar + 1}, {due, due + days{numbers::kSeamDays}}});
  }
  return missing;
}

Figure seams(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::seams);
  for (const PlacedPiece& piece : placed.pieces) {
    const std::vector<Seam> all = seams_of(piece);
    if (all.empty()) continue;
    const std::vector<Missing> missing = missing_seams(piece);
    const int count = static_cast<int>(all.size());
    figure.all_of(count - static_cast<int>(missing.size()), count);
    for (const Missing& late : missing)
      figure.lacks(with_mend({.lack = Lack::seam_late,
                              .piece = piece.index,
                              .bars = {late.bars},
                              .wanted = static_cast<double>(numbers::kSeamDays)},
                             *placed.plan, late.when, piece.time.join(late.bars, 2)));
    const auto soon = std::ranges::count_if(all, [&](const Seam& seam) {
      return is_played_within(seam, *placed.plan, numbers::kSeamSoonDays);
    });
    if (!figure.at_least(static_cast<double>(soon) / count, 0.5))
      figure.lacks({.lack = Lack::seams_slow,
                    .piece = piece.index,
                    .found = static_cast<double>(100 * soon / count),
                    .wanted = 50});
  }
  return figure.take();
}

}  // namespace cahier::figures
