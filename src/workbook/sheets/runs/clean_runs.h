// What a number of clean run-throughs tells, and what it does not.
#pragma once

#include "workbook/book.h"

namespace cahier {

// What a player may count on after so many clean ones and what to do next, what to bear in mind,
// and the figures in a line; from the top of `rest`, on a new page when they do not fit.
void draw_clean_runs(Book& book, Box rest);

// Millimetres that they take in a width.
double clean_runs_height(Book& book, double width);

// The bound of odds.h in whole per cent, rounded down: sentences say "at least".
int percent_at_least(int runs, int slips);
// The same in whole tenths, as players count: so many clean ones in ten.
int clean_of_ten(int runs, int slips);

}  // namespace cahier
