// Running text on a sheet: headings, paragraphs, terms, points to tick; goes on to further pages.
#pragma once

#include <string_view>
#include <vector>

#include "workbook/book.h"

namespace cahier {

class Prose {
 public:
  // Opens the first page; every page has `right` at the right of its head.
  Prose(Book& book, std::string_view right = {});

  // What is left of the page, from where the next text stands.
  Box rest() const;
  // Begins a new page when less than `height` millimetres are left.
  void need(double height);

  void heading(std::string_view text);
  void paragraph(std::string_view text);
  // A label in bold, and what is said about it beside it. `label_width` in millimetres.
  void term(std::string_view label, std::string_view text, double label_width);
  // A circle to tick, and what it stands for. The indented notes below it are set smaller.
  void tick(std::string_view text, const std::vector<std::string>& notes = {});
  // A label and a line to write on.
  void writing_line(std::string_view label);
  // Paragraphs in a frame, the first of them bold. Stays on one page.
  void framed(const std::vector<std::string>& paragraphs);

 private:
  void open();

  Book& book_;
  std::string right_;
  Box page_;
  double y_ = 0;
};

// Paragraphs from the top of `box` downwards, on the grid. Returns what is left below them.
Box draw_paragraphs(Canvas& canvas, Box box, const std::vector<std::string>& paragraphs);

}  // namespace cahier
