#include "workbook/print.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("pages printed on both sides are punched at the left and at the right in turn") {
  // ISO 838: holes 12 mm from the edge; 20 mm keep clear.
  const Print print = usual_print(kA4, PunchedEdge::inner);
  CHECK(print.margins.inside(kA4, 1).x == 20);
  CHECK(kA4.width - print.margins.inside(kA4, 2).right() == 20);
}

TEST_CASE("pages printed on one side are punched at one edge") {
  for (const int page : {1, 2, 3}) {
    CHECK(usual_print(kA4, PunchedEdge::left).margins.inside(kA4, page).x == 20);
    const Box right = usual_print(kA4, PunchedEdge::right).margins.inside(kA4, page);
    CHECK(kA4.width - right.right() == 20);
    // A page turned sideways lies with its top at the left of an upright one.
    const PageSize wide = kA4.landscape();
    CHECK(usual_print(kA4, PunchedEdge::left).margins.inside(wide, page).y == 20);
    const Box wide_right = usual_print(kA4, PunchedEdge::right).margins.inside(wide, page);
    CHECK(wide.height - wide_right.bottom() == 20);
  }
}

TEST_CASE("large print fills the same paper with the same clear edge") {
  for (const PageSize paper : {kA4, kLetter}) {
    const Print print = large_print(paper, PunchedEdge::inner);
    CHECK(print.paper.width * print.magnification == Approx(paper.width));
    CHECK(print.paper.height * print.magnification == Approx(paper.height));
    CHECK(print.margins.punched * print.magnification == Approx(20));
    CHECK(print.laid_out(100) * print.magnification == Approx(100));
  }
  // ISO 216: two A5 pages are one A4 page, and both have sides of 1 to √2 (whole millimetres).
  const Print print = clear_print(kA4, PunchedEdge::inner);
  CHECK(print.paper.width == Approx(kA5.width).margin(0.6));
  CHECK(print.paper.height == Approx(kA5.height).margin(0.6));
  CHECK(style::kBody.size_pt * print.magnification >= 14);
  CHECK(style::kBody.size_pt * large_print(kA4, PunchedEdge::inner).magnification >= 18);
}

TEST_CASE("a booklet's pages are half a sheet") {
  const Print print = booklet_print(kA4);
  CHECK(print.paper == PageSize{148.5, 210});
  CHECK(booklet_print(kLetter).paper == PageSize{139.7, 215.9});
}

TEST_CASE("sheets of paper are counted by how they are printed") {
  CHECK(usual_print(kA4, PunchedEdge::inner).sheets_of_paper(41) == 21);
  CHECK(usual_print(kA4, PunchedEdge::right).sheets_of_paper(41) == 41);
  CHECK(booklet_print(kA4).sheets_of_paper(41) == 11);
  CHECK(booklet_print(kA4).sheets_of_paper(4) == 1);
}
