#include "workbook/all_sheets.h"

#include <optional>

#include "text/rows.h"

namespace cahier {
namespace {

constexpr std::optional<Sheet> row_of(SheetKind kind) {
  switch (kind) {
    case SheetKind::cover:
      return Sheet{kind, "cover", draw_cover};
    case SheetKind::left_out:
      return Sheet{kind, "left out", draw_left_out};
    case SheetKind::how_to_use:
      return Sheet{kind, "how to use", draw_how_to_use};
    case SheetKind::readiness_check:
      return Sheet{kind, "readiness check", draw_readiness_check};
    case SheetKind::form_map:
      return Sheet{kind, "form map", draw_form_map};
    case SheetKind::weeks:
      return Sheet{kind, "weeks", draw_weeks};
    case SheetKind::day_panels:
      return Sheet{kind, "day panels", draw_day_panels};
    case SheetKind::cue_starts:
      return Sheet{kind, "cue starts", draw_cue_starts};
    case SheetKind::passes:
      return Sheet{kind, "passes", draw_passes};
    case SheetKind::run_throughs:
      return Sheet{kind, "run-throughs", draw_run_tally};
    case SheetKind::spoken_parts:
      return Sheet{kind, "spoken parts", draw_spoken_parts};
    case SheetKind::write_outs:
      return Sheet{kind, "write-outs", draw_write_outs};
    case SheetKind::look_alikes:
      return Sheet{kind, "look-alikes", draw_look_alikes};
    case SheetKind::the_day:
      return Sheet{kind, "the day", draw_the_day};
    case SheetKind::rejoin_card:
      return Sheet{kind, "rejoin card", draw_rejoin_card};
    case SheetKind::progress_chart:
      return Sheet{kind, "progress chart", draw_progress_chart};
    case SheetKind::child_start:
      return Sheet{kind, "child start", draw_child_start};
    case SheetKind::child_weeks:
      return Sheet{kind, "child weeks", draw_child_weeks};
    case SheetKind::child_starts:
      return Sheet{kind, "child starts", draw_child_starts};
    case SheetKind::child_runs:
      return Sheet{kind, "child runs", draw_child_runs};
    case SheetKind::child_staves:
      return Sheet{kind, "child staves", draw_child_staves};
  }
  return std::nullopt;
}

constexpr auto kSheets = rows<SheetKind, row_of>();

}  // namespace

std::span<const Sheet> all_sheets() { return kSheets; }

const Sheet& sheet_of(SheetKind kind) { return kSheets[static_cast<std::size_t>(kind)]; }

}  // namespace cahier
