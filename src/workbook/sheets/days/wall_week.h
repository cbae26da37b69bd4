// A week to pin up: seven columns, readable from a metre.
#pragma once

#include "workbook/book.h"
#include "workbook/parts/week_words.h"

namespace cahier {

// Opens a wide page and draws a week on it, and what that does not hold on further ones. A touch on
// a day leads to its panel. REQUIRES: a sheet is open.
void draw_wall_week(Book& book, const PlanWeek& week);

// Whether a row of a page holds all of the week.
bool wall_row_fits(Book& book, const Box& box, const PlanWeek& week);
// The same week as one of several on a page that is open, in `box`. REQUIRES: it fits.
void draw_wall_row(Book& book, const Box& box, const PlanWeek& week);

}  // namespace cahier
