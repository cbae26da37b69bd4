// A column of tasks on the wall: as many as there is room for; the rest goes on on another sheet.
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

// A line of a set: where a list goes on.
struct WallPlace {
  std::size_t set = 0;
  std::size_t line = 0;
  bool operator==(const WallPlace&) const = default;
};

class WallList {
 public:
  WallList(const Book& book, const Day& day, double width, const WallSizes& sizes);

  // Millimetres that all of it needs; nothing where a text is too wide for its column.
  std::optional<double> height() const;
  // Draws from the top of `box` downwards. What does not fit is named below in small type; where
  // that is too much, the result is where the next sheet goes on.
  std::optional<WallPlace> draw(Canvas& canvas, const Box& box) const;
  // The same from a place on.
  std::optional<WallPlace> draw_more(Canvas& canvas, const Box& box, WallPlace from) const;

 private:
  std::optional<WallPlace> draw(Canvas& canvas, const Box& box, WallPlace from, bool goes_on) const;
  struct Line {
    std::vector<WallEntry> entries;
    bool continued = false;  // begins with the second half of an entry
  };
  struct Set {
    std::vector<Line> lines;
    std::vector<std::string> name;   // in lines
    std::vector<std::string> title;  // of the piece, in lines below the name; in a programme
    std::string in_words;            // the drill and its bars
    bool framed = false;
  };

  double width_of(const WallEntry& entry) const;
  std::vector<Line> lines_of(const std::vector<WallEntry>& entries, double width);
  double below_lines(const Set& set) const;
  double height_of(const Set& set) const;
  std::size_t fitting(const Set& set, std::size_t first, double room) const;
  std::string in_words(const WallGroup& group, const std::string& title) const;
  TextBlock rest_in_words(std::size_t first) const;
  std::size_t named_below(double height) const;
  std::size_t drawn_whole(std::size_t first, double height) const;
  void draw_entry(Canvas& canvas, const Box& box, const WallEntry& entry) const;
  void draw_set(Canvas& canvas, const Box& box, const Set& set) const;

  const Book& book_;
  double width_;
  WallSizes sizes_;
  std::vector<Set> sets_;
  bool too_wide_ = false;
};

}  // namespace cahier
