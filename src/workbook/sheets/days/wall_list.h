// A column of tasks on the wall: as many as there is room for, and how many more there are.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "workbook/book.h"
#include "workbook/sheets/days/wall_tasks.h"

namespace cahier {

// How tasks are set. Millimetres.
struct WallSizes {
  TextStyle bars;
  double line = 0;  // of bars
  TextStyle name;
  double name_line = 0;
  double gap = 0;          // between groups
  bool may_break = false;  // a range too wide for the column goes on below
  Together together = Together::neighbours;

  static WallSizes great();
  static WallSizes large();
  static WallSizes plain();  // the least that is read from the wall
  static WallSizes dense();  // the same, closer, and more of it put together
  static WallSizes tight();  // closer still
};

class WallList {
 public:
  WallList(const Book& book, const Day& day, double width, const WallSizes& sizes);

  // Millimetres that all of it needs; nothing where a text is too wide for its column.
  std::optional<double> height() const;
  // Draws from the top of `box` downwards. What does not fit is named below in small type, or
  // when that is too much, counted in a last line.
  void draw(Canvas& canvas, const Box& box) const;

 private:
  struct Line {
    std::vector<WallEntry> entries;
    bool continued = false;  // begins with the second half of an entry
  };
  struct Set {
    std::vector<Line> lines;
    std::string name;
    std::string title;     // of the piece, below the name; in a programme
    std::string in_words;  // the drill and its bars
    bool framed = false;
  };

  double width_of(const WallEntry& entry) const;
  std::vector<Line> lines_of(const std::vector<WallEntry>& entries, double width);
  double below_lines(const Set& set) const;
  double height_of(const Set& set) const;
  std::size_t fitting(const Set& set, double room) const;
  std::string in_words(const WallGroup& group, const std::string& title) const;
  TextBlock rest_in_words(std::size_t first) const;
  std::size_t named_below(double height) const;
  std::size_t drawn_whole(double height) const;
  void draw_entry(Canvas& canvas, const Box& box, const WallEntry& entry) const;
  void draw_set(Canvas& canvas, const Box& box, const Set& set, std::size_t lines) const;

  const Book& book_;
  double width_;
  WallSizes sizes_;
  std::vector<Set> sets_;
  bool too_wide_ = false;
};

}  // namespace cahier
