// Pages for a child: big type, short words, no running head, shapes to colour.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "paper/text_fitting.h"
#include "workbook/book.h"

namespace cahier {

// At least 14 points on the printed page, 16 where it is as wide as A4.
TextStyle child_text(const Print& print);
// From the largest to the least: of what a page may be set in as it has room. Points, as laid out.
std::vector<double> child_sizes(const Print& print);
TextStyle child_strong(const Print& print);
TextStyle child_heading(const Print& print);
TextStyle child_great(const Print& print);

enum class Shape { circle, square, diamond, triangle, star };

// An outline to colour in, as large as `box` allows, in its middle.
void draw_shape(Canvas& canvas, const Box& box, Shape shape);

// Of a shape beside a line of text, millimetres.
double shape_beside(const TextStyle& style);

class ChildPages {
 public:
  // Opens the first page of the sheet. `onward` is drawn at the top of each further one, where
  // there is a text.
  explicit ChildPages(Book& book, std::string onward = {});

  // What is left of the page.
  Box rest() const { return page_.without_top(used_); }
  // The next `height` millimetres; on a new page where they do not fit.
  Box take(double height);
  void skip(double height);
  // Begins a new page where less than `height` is left.
  void keep(double height);
  void text(std::string_view text, const TextStyle& style);
  // With a shape before it, to colour or for the eye.
  void point(std::string_view text, Shape shape);
  // A label and a line to write on.
  void write_in(std::string_view label);
  double write_in_height(std::string_view label) const;
  // `count` shapes to colour, as many to a row as there is room for.
  void shapes(int count, Shape shape, double size);

 private:
  void open();
  // A page, its foot with the name of the player drawn where it is known.
  void begin_page();
  bool has_room_beside(std::string_view label) const;

  Book& book_;
  std::string onward_;
  Box page_;
  double used_ = 0;
};

}  // namespace cahier
