// Chunks down, days across: when each is learned and when it is recalled.
#pragma once

#include "workbook/book.h"
#include "workbook/parts/flow.h"

namespace cahier {

// On the current page if the whole fits there, else from the top of the next, over as many pages
// as it takes.
void draw_learning_calendar(Book& book, int piece, Flow& flow);

}  // namespace cahier
