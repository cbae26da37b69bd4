// A book is drawn until its page numbers are settled, and never printed with wrong ones.

#include "catch.h"
#include "drawn_sheet.h"

using namespace cahier;

namespace {

Contents with_pages(int pages) {
  Contents contents;
  contents.sheets[SheetKind::cover] = pages;
  contents.pages = pages;
  return contents;
}

}  // namespace

TEST_CASE("A book whose page numbers never settle is an error, not a book") {
  int drawings = 0;
  const auto one_more_page = [&](Canvas&, const Contents& known) {
    ++drawings;
    return with_pages(known.pages + 1);
  };
  CHECK_THROWS_AS(draw_until_settled(sample::typefaces(), one_more_page), UnsettledPages);
  CHECK(drawings == kMostDrawings);
  const auto back_and_forth = [](Canvas&, const Contents& known) {
    return with_pages(known.pages == 3 ? 4 : 3);
  };
  CHECK_THROWS_WITH(draw_until_settled(sample::typefaces(), back_and_forth),
                    Catch::Contains("page numbers") && Catch::Contains("--packet"));
}

TEST_CASE("A book whose page numbers settle late is printed with the settled ones") {
  int drawings = 0;
  const DrawnBook book =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        ++drawings;
        canvas.begin_page(kA4);
        return with_pages(std::min(known.pages + 1, kMostDrawings - 1));
      });
  CHECK(drawings == kMostDrawings);
  CHECK(book.contents == with_pages(kMostDrawings - 1));
  CHECK(book.canvas->page_count() == 1);
}
