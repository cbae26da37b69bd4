// The kinds of sheets.
#pragma once

namespace cahier {

// Each has its row in all_sheets.cpp: the name that packets know it by, and who draws it.
enum class SheetKind {
  cover,
  left_out,  // what does not fit, with --anyway
  how_to_use,
  readiness_check,
  form_map,
  weeks,
  day_panels,
  cue_starts,
  passes,
  run_throughs,
  spoken_parts,
  write_outs,
  look_alikes,
  the_day,  // the last evening and the day itself
  rejoin_card,
  progress_chart,
  child_start,  // of a child's packet: whose it is and how it goes
  child_weeks,
  child_starts,
  child_runs,
  child_staves
};

}  // namespace cahier
