// What to write down after the performance; on a page that would be empty otherwise.
#pragma once

#include "workbook/book.h"

namespace cahier {

// REQUIRES: a sheet is open; it goes on under this page's name.
void draw_afterwards(Book& book);

}  // namespace cahier
