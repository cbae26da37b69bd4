#include <fmt/format.h>

#include "import/bar_of_element.h"
#include "import/piece_lines.h"
#include "import/yaml_quoted.h"

namespace cahier {

std::string piece_level_line(const ProposedLevels& levels) {
  return levels.piece == kUsualLevel ? std::string() : fmt::format("level: {}\n", levels.piece);
}

std::string hard_lines(const Score& score, const ProposedLevels& levels) {
  if (levels.hard.empty()) return {};
  std::string text = "hard:\n";
  for (const ProposedHardBars& one : levels.hard) {
    std::string hands;
    for (const int hand : one.hands)
      hands += (hands.empty() ? "" : ", ") + score.hands[static_cast<std::size_t>(hand)].name;
    text += fmt::format("  - {{bars: {}, level: {}}}", bars_text(score, one.first, one.last),
                        one.level);
    if (score.hands.size() > 1) text += "  # " + plain_line(hands, 100);
    text += "\n";
  }
  return text;
}

}  // namespace cahier
