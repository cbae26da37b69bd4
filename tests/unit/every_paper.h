// Every page that a sheet has to work on.
#pragma once

#include <array>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"

namespace cahier::sample {

// Clear print is laid out on a page 1/√2 the size, large print on one 1/1.8 the size, and
// magnified: A4, Letter, and the least of both.
inline constexpr Margins kClearPrint{14.1, 8.5, 8.5, 8.5};
inline const std::array<Print, 8> kEveryPaper = {{{kA4, 8, false, style::kMargins},
                                                  {kLetter, 8, false, style::kMargins},
                                                  {kA5, 8, false, style::kMargins},
                                                  {{148.5, 210}, 8, false, kClearPrint},
                                                  {{152.7, 197.6}, 8, false, kClearPrint},
                                                  {{148, 197}, 8, false, kClearPrint},
                                                  large_print(kA4, PunchedEdge::inner),
                                                  large_print(kLetter, PunchedEdge::inner)}};

// Draws the sheet on every paper, in English and in longer words, and demands a faultless layout.
inline void require_faultless_everywhere(void (*draw)(Book&), const Plan& plan) {
  for (const Print& print : kEveryPaper)
    for (const Words* words : {&english_words(), &wordy()}) {
      INFO("on paper of " << print.paper.width << " x " << print.paper.height << " mm");
      const DrawnSheet sheet(draw, plan, print, *words);
      CHECK(faults(sheet.canvas(), print.margins) == std::vector<std::string>{});
    }
}

}  // namespace cahier::sample
