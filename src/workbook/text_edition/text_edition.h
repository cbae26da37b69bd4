// The workbook in words alone, for screen readers, braille printers and letters.
#pragma once

#include <string>
#include <string_view>

#include "plan/plan.h"
#include "text/words.h"
#include "workbook/print.h"

namespace cahier {

// Begins every text edition, so that a later one may replace it.
inline constexpr std::string_view kTextEditionMark = "cahier workbook: ";

// UTF-8 in paragraphs of a line each, with an empty line before each heading and day; ends in a
// newline. The title, whom it is for where that is known, and the
// dates; how to use it, with the cautions; every day of the plan with
// all that its panel says, or the first `most_weeks` weeks of days alone (0 for all); the cue
// starts of each piece with their throws, and where to go on after a slip.
std::string text_edition(const Plan& plan, const Words& words, int most_weeks = 0,
                         const PrintedNames& names = {});

}  // namespace cahier
