#include "workbook/sheets/form/learned_parts.h"

#include <algorithm>

#include "plan/standing.h"

namespace cahier {

std::vector<bool> chunks_learned(const Plan& plan, int piece) {
  std::vector<bool> learned;
  for (const std::optional<Date>& date : learned_before(plan, piece))
    learned.push_back(date.has_value());
  return learned;
}

bool went_right(const Plan& plan, int piece, const std::vector<bool>& learned, Drill drill,
                const FormPart& part) {
  if (drill == Drill::learn) return learned[part.chunk];
  return std::any_of(plan.record.done.begin(), plan.record.done.end(), [&](const Done& done) {
    return done.piece == piece && done.drill == drill && done.bars.contains(part.bars) &&
           done.slips.has_value() &&
           std::none_of(done.slips->begin(), done.slips->end(),
                        [&](int bar) { return part.bars.contains(bar); });
  });
}

int shown_level(const PlannedPiece& piece, const std::vector<FormPart>& parts, int bar) {
  const int level = piece.piece.level_at(bar);
  for (const FormPart& part : parts_in(parts, {bar, bar}))
    if (piece.chunks[part.chunk].raised) return std::max(level, piece.chunks[part.chunk].level);
  return level;
}

}  // namespace cahier
