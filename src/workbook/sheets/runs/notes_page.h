// A page of lines to write on.
#pragma once

#include "workbook/book.h"

namespace cahier {

// REQUIRES: a sheet is open; it goes on under the name of the notes.
void draw_notes_page(Book& book);

}  // namespace cahier
