#include "workbook/print.h"

#include <numbers>

namespace cahier {
namespace {

// Between the fold and the text; there are no holes.
constexpr Margins kFolded{14, 10, 10, 10};

}  // namespace

int Print::sheets_of_paper(int pages) const {
  const bool one_side = margins.edge != PunchedEdge::inner;
  const int on_a_sheet = booklet ? 4 : one_side ? 1 : 2;
  return (pages + on_a_sheet - 1) / on_a_sheet;
}

Print usual_print(PageSize paper, PunchedEdge edge) {
  Print print;
  print.paper = paper;
  print.margins.edge = edge;
  return print;
}

namespace {

Print magnified(PageSize paper, PunchedEdge edge, double magnification) {
  Print print = usual_print(paper, edge);
  print.magnification = magnification;
  print.paper = {print.laid_out(paper.width), print.laid_out(paper.height)};
  print.margins = print.margins.scaled(1 / print.magnification);
  return print;
}

}  // namespace

Print clear_print(PageSize paper, PunchedEdge edge) {
  return magnified(paper, edge, std::numbers::sqrt2);
}

Print large_print(PageSize paper, PunchedEdge edge) {
  constexpr double kLargePrint = 1.8;
  return magnified(paper, edge, kLargePrint);
}

Print booklet_print(PageSize paper) {
  Print print;
  print.paper = {paper.height / 2, paper.width};
  print.margins = kFolded;
  print.booklet = true;
  return print;
}

}  // namespace cahier
