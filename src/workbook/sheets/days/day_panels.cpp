#include "workbook/all_sheets.h"
#include "workbook/sheets/days/panel_pages.h"

namespace cahier {

void draw_day_panels(Book& book) {
  book.open_sheet(SheetKind::day_panels, book.words().say("panels.title"));
  const std::vector<PlanWeek> weeks = shown_weeks(book.plan());
  PanelPages pages(book, weeks, true);
  for (std::size_t week = 0; week < weeks.size(); ++week) pages.draw(week);
}

}  // namespace cahier
