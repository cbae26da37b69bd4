// A day as it is read from the wall: a column of its own.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "workbook/book.h"
#include "workbook/sheets/days/wall_list.h"

namespace cahier {

// How the columns of a week are set, all of them alike.
struct WallLook {
  WallSizes sizes = WallSizes::plain();
  TextStyle date = style::kWallBars;
  bool date_below = false;  // the day of the month below the weekday: narrow columns
  int words = 0;            // lines kept on every day for "lesson" and "catch up"
  int lines = 0;            // to write on, at the foot
  bool flat = false;        // where there is little room: the box to tick beside the minutes
};

class WallDay {
 public:
  // REQUIRES: both outlive it.
  WallDay(const Book& book, const Day& day) : book_(book), day_(day) {}

  // Whether all tasks fit in a column of these millimetres, the foot included.
  bool fits(double width, double height, const WallLook& look) const;
  // "lesson", "catch up": what stands large below the minutes. Empty for a day without tasks.
  std::vector<std::string> words() const;
  // Draws the day. When there is too much on it, the lines to write on are left out first, then the
  // tasks are set closer, and last the result is where the next sheet goes on.
  std::optional<WallPlace> draw(Canvas& canvas, const Box& box, const WallLook& look) const;
  // Goes on from a place of the sheet before, in the same way.
  std::optional<WallPlace> draw_more(Canvas& canvas, const Box& box, const WallLook& look,
                                     WallPlace from) const;

 private:
  std::vector<std::string> all_words() const;
  // Lines to write on that no amount of work takes away.
  int least_lines() const;
  double room(const Box& box, const WallLook& look, int lines) const;
  Box draw_head(Canvas& canvas, const Box& box, const WallLook& look) const;
  Box draw_flat_head(Canvas& canvas, const Box& box, const WallLook& look) const;
  void draw_foot(Canvas& canvas, const Box& box, const WallLook& look, int lines) const;

  const Book& book_;
  const Day& day_;
};

// Whether weekday and day of the month stand on one line.
bool wall_date_fits(const Book& book, Date date, double width, const TextStyle& text_style);
// Both at the top of `box`; returns what is left below.
Box draw_wall_date(Canvas& canvas, const Words& words, const Box& box, Date date,
                   const WallLook& look);

}  // namespace cahier
