// Chunks down, days across: when each is learned and when it is recalled.
#pragma once

#include "workbook/book.h"

namespace cahier {

// Draws below `used` millimetres of the current page's content `page` if the whole fits there,
// else on pages of its own; goes on over as many as it takes.
void draw_learning_calendar(Book& book, int piece, Box page, double used);

}  // namespace cahier
