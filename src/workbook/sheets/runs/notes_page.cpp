#include "workbook/sheets/runs/notes_page.h"

#include "workbook/parts/writing_lines.h"

namespace cahier {

void draw_notes_page(Book& book) {
  book.rename_sheet(book.words().say("panels.notes"));
  const Box page = book.open_page();
  draw_writing_lines(book.canvas(), page, static_cast<int>(page.height / style::kWritingRow));
}

}  // namespace cahier
