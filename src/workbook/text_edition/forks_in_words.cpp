#include "workbook/text_edition/forks_in_words.h"

#include <fmt/format.h>

#include "plan/memory_traps.h"
#include "report/fork_words.h"
#include "report/plan_words.h"

namespace cahier {

std::vector<std::string> beginning_in_words(const Words& words, const Piece& piece, int bar) {
  std::vector<std::string> lines;
  for (const std::string& hand : piece.beginning_aloud_at(bar))
    lines.push_back(words.say("in_words.begins", {{"bar", bar}, {"notes", hand}}));
  return lines;
}

std::vector<std::string> forks_in_words(const Words& words, const PlannedPiece& piece) {
  std::vector<std::string> lines;
  int rank = 0;
  for (const MemoryTrap& trap : memory_traps(piece)) {
    const Fork& fork = piece.forks[trap.fork];
    std::string places;
    for (const std::string& one : place_words(words, piece.piece, fork, trap.bars_alike))
      places += (places.empty() ? "" : kDot.data()) + one;
    lines.push_back(fmt::format("{}. {}.", ++rank, places));
    for (std::string& told : parting_words(words, piece.piece, fork))
      lines.push_back(std::move(told));
    for (const WayOn& way : fork.ways)
      for (std::string& begins : beginning_in_words(words, piece.piece, way.to))
        lines.push_back(std::move(begins));
  }
  return lines;
}

}  // namespace cahier
