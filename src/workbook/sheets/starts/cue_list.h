// The list of cue starts: where each begins and ends, what is in force there, and a line to write
// what it is.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "workbook/book.h"
#include "workbook/parts/table.h"

namespace cahier {

// "as 37 and 73 to bar 12": which other starts begin as this one does; empty where none does.
std::string alike_text(const Words& words, const PlannedPiece& piece, const CueStart& cue);

class CueList {
 public:
  // In two columns where `width` has room for them and the starts are many; the starts numbered in
  // `weak` are marked. REQUIRES: everything passed in but `weak` outlives it.
  CueList(Book& book, const PlannedPiece& piece, const std::vector<const CueStart*>& cues,
          std::set<int> weak, double width);

  // Of a list of the starts [begin, end), with its head.
  double height(std::size_t begin, std::size_t end) const;
  // How many starts from `begin` on that height holds; one at least.
  std::size_t starts_in(double height, std::size_t begin) const;
  // The starts [begin, end) from the top of `box`.
  void draw(const Box& box, std::size_t begin, std::size_t end) const;

 private:
  void draw_column(const Box& box, std::size_t begin, std::size_t end) const;
  void draw_row(const std::vector<Box>& cells, const CueStart& cue) const;
  void draw_line_to_write_on(const Box& box, const CueStart& cue) const;
  // The tempi into which a start leads, at the end of its line; returns their width.
  double draw_tempo_changes(const Box& line, const CueStart& cue) const;
  // Which starts begin alike, how this one begins, what is in force there, and whether it is new:
  // on its line as far as that leaves half of it to write on, the rest above it.
  struct Told {
    std::string on_line;
    std::string above;
  };
  Told told(const CueStart& cue) const;
  bool is_short(const std::string& text) const;
  double row_height(const CueStart& cue) const;
  // How many of so many starts stand below one another.
  std::size_t in_column(std::size_t starts) const { return (starts + columns_ - 1) / columns_; }

  Book& book_;
  const PlannedPiece& piece_;
  const std::vector<const CueStart*>& cues_;
  std::set<int> weak_;
  std::map<int, std::string> alike_;  // by number: the starts that begin in the same way
  std::size_t columns_;
  double width_;  // of a column
  Table table_;
};

}  // namespace cahier
