#include "workbook/all_sheets.h"

#include <array>

namespace cahier {

std::span<const Sheet> all_sheets() {
  static constexpr std::array<Sheet, 17> kSheets = {{
      {"cover", draw_cover},
      {"left out", draw_left_out},
      {"how to use", draw_how_to_use},
      {"readiness check", draw_readiness_check},
      {"form map", draw_form_map},
      {"weeks and days", draw_weeks_and_days},
      {"weeks", draw_weeks},
      {"day panels", draw_day_panels},
      {"cue starts", draw_cue_starts},
      {"passes", draw_passes},
      {"run-throughs", draw_run_tally},
      {"spoken parts", draw_spoken_parts},
      {"write-outs", draw_write_outs},
      {"look-alikes", draw_look_alikes},
      {"rejoin card", draw_rejoin_card},
      {"progress chart", draw_progress_chart},
      {"report back", draw_report_back},
  }};
  return kSheets;
}

}  // namespace cahier
