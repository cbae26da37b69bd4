// The lines of a piece file, each a matter of its own.
#pragma once

#include <string>
#include <vector>

#include "import/proposed_levels.h"
#include "import/proposed_sections.h"
#include "score/passages/look_alikes.h"
#include "score/score.h"

namespace cahier {

// Each returns whole lines of YAML, or nothing where the score has nothing of the kind.

// Title, composer, instrument and parts.
std::string name_lines(const Score& score);
// Bars, pickup, meter, key, tempo, and their changes.
std::string music_lines(const Score& score);
// The level of a piece without sections, where it is not the usual one.
std::string piece_level_line(const ProposedLevels& levels);
// With their phrases, where these are clear, and their levels, where these are not the usual one.
std::string section_lines(const Score& score, const std::vector<ProposedSection>& sections,
                          const ProposedLevels& levels);
// Hard bars, and beside them for which of several hands.
std::string hard_lines(const Score& score, const ProposedLevels& levels);
// Repeats and their endings, and marks for D.C., D.S., Fine and Coda, which a piece file cannot
// play.
std::string repeat_lines(const Score& score);
// The most dangerous ones that are not the end of a return named in `sections`.
std::string look_alike_lines(const Score& score, const std::vector<ScoreLookAlikes>& look_alikes,
                             const std::vector<ProposedSection>& sections);

}  // namespace cahier
