#include <algorithm>

#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/week_words.h"
#include "workbook/sheets/days/wall_week.h"

namespace cahier {
namespace {

constexpr std::size_t kWeeksOnePage = 26;  // longer plans have several weeks on a page
constexpr std::size_t kWeeksTwoPage = 60;
constexpr double kSmallPaper = 250;  // millimetres high, takes two weeks at most
constexpr double kBetweenWeeks = 3 * kGrid;

std::size_t weeks_on_page(const Book& book, std::size_t weeks) {
  if (weeks <= kWeeksOnePage) return book.plan().upkeep ? 2 : 1;
  return weeks <= kWeeksTwoPage || book.print().paper.height < kSmallPaper ? 2 : 3;
}

void mark_week(Book& book, const PlanWeek& week) {
  book.mark(book.words().say("panels.week_mark", {{"number", week.number}}));
}

void draw_by_itself(Book& book, const PlanWeek& week) {
  draw_wall_week(book, week);
  mark_week(book, week);
}

// The weeks from `first` to `last` below one another.
void draw_together(Book& book, const std::vector<PlanWeek>& weeks, std::size_t first,
                   std::size_t last, std::size_t on_page) {
  const Box page =
      book.open_wide_page(date_span(book.words(), weeks[first].first(), weeks[last].last()));
  mark_week(book, weeks[first]);
  const std::vector<Box> rows = page.rows(static_cast<int>(on_page), kBetweenWeeks);
  for (std::size_t at = first; at <= last; ++at) draw_wall_row(book, rows[at - first], weeks[at]);
}

}  // namespace

void draw_weeks(Book& book) {
  book.open_sheet(SheetKind::weeks, book.words().say("weeks.title"));
  const std::vector<PlanWeek> weeks = printed_weeks(book.plan(), book.print().most_weeks);
  const std::size_t on_page = weeks_on_page(book, weeks.size());
  const std::vector<Box> rows = book.wide_content().rows(static_cast<int>(on_page), kBetweenWeeks);
  for (std::size_t first = 0; first < weeks.size();) {
    std::size_t end = first;
    while (on_page > 1 && end < weeks.size() && end - first < on_page &&
           wall_row_fits(book, rows[end - first], weeks[end]))
      ++end;
    if (end > first)
      draw_together(book, weeks, first, end - 1, on_page);
    else
      draw_by_itself(book, weeks[end++]);
    first = end;
  }
}

}  // namespace cahier
