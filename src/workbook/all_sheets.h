// Every kind of sheet: the name that packets know it by, and who draws it.
#pragma once

#include <span>
#include <string_view>

#include "workbook/book.h"

namespace cahier {

struct Sheet {
  SheetKind kind;
  std::string_view name;  // in packet files: "day panels"
  // Draws all pages of the sheet; no page when the plan has nothing for it.
  void (*draw)(Book& book);
};

// In the order of the enumeration.
std::span<const Sheet> all_sheets();
const Sheet& sheet_of(SheetKind kind);

void draw_cover(Book& book);
void draw_how_to_use(Book& book);
void draw_readiness_check(Book& book);
void draw_form_map(Book& book);
void draw_weeks(Book& book);
void draw_day_panels(Book& book);
void draw_cue_starts(Book& book);
void draw_passes(Book& book);
void draw_run_tally(Book& book);
void draw_spoken_parts(Book& book);
void draw_write_outs(Book& book);
void draw_look_alikes(Book& book);
void draw_the_day(Book& book);
void draw_rejoin_card(Book& book);
void draw_progress_chart(Book& book);
void draw_child_start(Book& book);
void draw_child_weeks(Book& book);
void draw_child_starts(Book& book);
void draw_child_runs(Book& book);
void draw_child_staves(Book& book);
void draw_left_out(Book& book);  // what does not fit, with --anyway

}  // namespace cahier
