// What is printed about a fork: on its lines where there is room to write beside it, else below.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/memory_traps.h"
#include "workbook/book.h"
#include "workbook/parts/flow.h"
#include "workbook/style.h"

namespace cahier {

class ForkNotes {
 public:
  // `line` is the length of a way's lines, in millimetres. REQUIRES: book and fork outlive this.
  ForkNotes(const Book& book, int piece, const Fork& fork, const TrapAnswers& answers, double line);

  // On a way's first line: "From bar 45 on: R: E5 G", the notes only with room to write.
  std::string label(const WayOn& way) const;
  // On its second line: "Bar 45, beat 2: right hand: F♯ instead of F."; may be empty.
  std::string difference(const WayOn& way) const;

  // The rest, and what else of the book meets the fork, with links to it.
  double height_below() const;
  void draw_below(Canvas& canvas, Flow& flow) const;

 private:
  struct Note {
    TextBlock text;
    int page = 0;  // that it names, if any
  };

  std::string with_notes(const WayOn& way, const std::string& notes) const;
  std::string told_of(const WayOn& way) const;
  bool has_room(const std::string& label) const;
  void add(const std::string& text, const TextStyle& type, int page);
  void add_list(std::string_view key, const std::vector<std::string>& list, int page);
  void add_tasks(std::string_view key, const std::vector<DatedTask>& tasks);

  const Book& book_;
  const Piece& piece_;
  const Fork& fork_;
  double line_;
  std::vector<Note> below_;
};

// To write on, beside what is printed on a line.
inline constexpr double kLeastForkLine = 20;

}  // namespace cahier
