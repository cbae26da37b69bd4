#include "workbook/all_sheets.h"
#include "workbook/parts/notes_page.h"
#include "workbook/sheets/days/panel_pages.h"
#include "workbook/sheets/days/wall_week.h"

namespace cahier {
namespace {

constexpr std::size_t kMostWeeks = 26;  // longer plans have several wall weeks on a page

}  // namespace

// A week whose days fit one page faces them, its wall page at the left; a page for notes
// comes before it where that takes one. Days of two pages face each other or their wall page. While
// a learned piece is kept a week has little: several share a page.
void draw_weeks_and_days(Book& book) {
  const std::vector<PlanWeek> weeks = shown_weeks(book.plan());
  if (weeks.size() > kMostWeeks || book.plan().upkeep) {
    draw_weeks(book);
    draw_day_panels(book);
    return;
  }
  const Words& words = book.words();
  book.open_sheet(SheetKind::weeks_and_days, words.say("weeks.title"));
  PanelPages panels(book, weeks, false);
  for (std::size_t at = 0; at < weeks.size(); ++at) {
    if (panels.pages_of(at) == 1 && book.prints_both_sides() && book.next_is_front())
      draw_notes_page(book);
    book.rename_sheet(words.say("weeks.title"));
    draw_wall_week(book, weeks[at]);
    book.mark(words.say("panels.week_mark", {{"number", weeks[at].number}}));
    book.rename_sheet(words.say("panels.title"));
    panels.draw(at);
  }
}

}  // namespace cahier
