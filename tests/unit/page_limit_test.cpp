// A workbook of more pages than are printed is refused while it is drawn.
#include "catch.h"
#include "drawn_sheet.h"
#include "sample_plan.h"
#include "text/limits.h"
#include "workbook/too_many_pages.h"

using namespace cahier;

namespace {

int pages_wanted = 0;

void draw_empty_pages(Book& book) {
  book.open_sheet(SheetKind::cover, "Empty");
  for (int page = 0; page < pages_wanted; ++page) book.open_bare_page();
}

int pages_drawn(int wanted) {
  pages_wanted = wanted;
  const Plan plan =
      sample::plan("title: P\nbars: 8\nmeter: 4/4\ntempo: 60\n", "2027-01-04", "2027-02-15");
  return sample::DrawnSheet(draw_empty_pages, plan).pages();
}

}  // namespace

TEST_CASE(
    "a book of as many pages as are printed is drawn, one more is refused by the limit's number") {
  CHECK(pages_drawn(kMostPages) == kMostPages);
  CHECK_THROWS_AS(pages_drawn(kMostPages + 1), TooManyPages);
  CHECK_THROWS_WITH(pages_drawn(kMostPages + 1), Catch::Contains(std::to_string(kMostPages)));
}
