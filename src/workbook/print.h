// How a workbook is printed: the page that its sheets are laid out for, and how these pages are put
// on paper.
#pragma once

#include <string>

#include "paper/page_size.h"
#include "workbook/style.h"

namespace cahier {

// Printed where they are known; where one is empty there is a line to write it on.
struct PrintedNames {
  std::string student;
  std::string teacher;
  std::string note;  // the teacher's, for this student
};

struct Print {
  PageSize paper = kA4;     // a page as it is laid out
  double staff_height = 8;  // millimetres, for writing by hand, as it is laid out
  bool teacher = false;     // with the teacher's lines and sign-off
  Margins margins = style::kMargins;
  double magnification = 1;  // of a page laid out, to the page printed
  bool booklet = false;      // two pages beside one another, to be folded
  PrintedNames names{};
  int most_weeks = 0;  // that have day panels and pages for the wall; 0 for all

  // Of a length on the printed page, where it is laid out.
  double laid_out(double printed_millimetres) const { return printed_millimetres / magnification; }
  double printed(double laid_out_millimetres) const { return laid_out_millimetres * magnification; }
  // The number of sheets of paper for `pages` pages.
  int sheets_of_paper(int pages) const;
};

// A page laid out is a page printed. `paper` is upright in all three.
Print usual_print(PageSize paper, PunchedEdge edge);

// Everything 1.41 times as large: body type of 14 points, none under 12. An A4 page holds what an
// A5 page held.
Print clear_print(PageSize paper, PunchedEdge edge);

// Everything 1.8 times as large: body type of 18 points, none under 14. An A4 page holds what a
// third of it held.
Print large_print(PageSize paper, PunchedEdge edge);

// Pages half as large as `paper`, without holes.
Print booklet_print(PageSize paper);

}  // namespace cahier
