#include "workbook/all_sheets.h"
#include "workbook/sheets/days/panel_pages.h"

namespace cahier {

void draw_day_panels(Book& book) {
  book.open_sheet(SheetKind::day_panels, book.words().say("panels.title"));
  const std::vector<PlanWeek> weeks = printed_weeks(book.plan(), book.print().most_weeks);
  PanelPages(book, weeks).draw();
}

}  // namespace cahier
