// The workbook being drawn: pages with their running heads, and on which pages things are.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "paper/canvas.h"
#include "plan/plan.h"
#include "text/words.h"
#include "workbook/print.h"
#include "workbook/sheet_kind.h"

namespace cahier {

// What a page printed so holds between its head and foot, on an odd page.
Box page_content(const Print& print);

// The pages of sheets, pieces, days and tasks; found by drawing the book on a recording canvas.
struct Contents {
  std::map<SheetKind, int> sheets;                  // first page of each sheet that has any
  std::map<std::pair<SheetKind, int>, int> pieces;  // first page of each piece within a sheet
  std::map<Date, int> days;                         // page of each day's panel
  std::map<std::string, int, std::less<>> tasks;    // page of a task's own block, by its id
  int pages = 0;
  bool operator==(const Contents&) const = default;
};

class Book {
 public:
  // REQUIRES: everything passed in outlives the book. `known` is empty on the first drawing.
  Book(Canvas& canvas, const Plan& plan, const Words& words, const Print& print,
       const Contents& known);

  Canvas& canvas() { return canvas_; }
  const Typefaces& typefaces() const { return canvas_.typefaces(); }
  SheetKind sheet() const { return sheet_; }  // the one that was opened last
  const Plan& plan() const { return plan_; }
  const Words& words() const { return words_; }
  const Print& print() const { return print_; }
  // What every upright page holds between its margins, head and foot included.
  Box upright() const { return print_.margins.inside(print_.paper, 1); }
  // The same between head and foot: what open_page returns on an odd page.
  Box content() const { return page_content(print_); }
  // What the next page turned sideways holds between head and foot.
  Box wide_content() const;
  // The piece's title, or the titles of a programme.
  const std::string& title() const { return title_; }
  // What a piece is called where room is short.
  const std::string& short_title(const PlannedPiece& piece) const;
  // Its whole title where that fits in a line of so many millimetres, else the short one.
  const std::string& title_in(double width, const PlannedPiece& piece,
                              const TextStyle& text_style) const;
  // The same beside other words at the right of a running head.
  const std::string& title_in_head(const PlannedPiece& piece) const;

  // Starts a sheet: its pages follow. `title` is what stands in the PDF outline and at the head of
  // its pages.
  void open_sheet(SheetKind sheet, std::string_view title);

  // The sheet continues with another title at the head of its pages.
  void rename_sheet(std::string_view title) { sheet_title_ = title; }

  // A second-level entry of the PDF outline for the current page ("Week 3").
  void mark(std::string_view title);

  // Begins an upright page of the current sheet, draws its running head (title of the sheet at
  // the left, `right` in small type at the right, a rule below) and foot (student, piece, edition,
  // date, page number), and returns the box between them. REQUIRES: a sheet is open.
  Box open_page(std::string_view right = {});
  // The same on a page turned sideways, the head along its long side.
  Box open_wide_page(std::string_view right = {});
  // A page without head or foot, for the cover.
  Box open_bare_page();

  int page() const { return canvas_.page_count(); }
  bool prints_both_sides() const { return print_.margins.edge == PunchedEdge::inner; }
  // Whether the next page is the front of a leaf: an odd one, at the right of an open book.
  bool next_is_front() const { return page() % 2 == 0; }
  // The first page of a sheet, the first one of a piece within a sheet, the page of a day's panel,
  // all pages: 0 when not known (yet), and for a sheet that the packet leaves out.
  int page_of(SheetKind sheet) const;
  int page_of_piece(int piece, SheetKind sheet) const;
  int page_of_day(Date date) const;
  // Where a task has its own block to write in; 0 where it has none.
  int page_of_task(const Task& task) const;
  int pages() const { return known_.pages; }

  // Notes that the current sheet has reached a piece (index) on the current page.
  // REQUIRES: a sheet is open.
  void note_piece(int piece) { contents_.pieces.emplace(std::pair(sheet_, piece), page()); }
  // Notes that the panel of `date` stands on the current page.
  void note_day(Date date) { contents_.days[date] = page(); }
  // Notes that the block of a task, to write in, stands on the current page.
  void note_task(const Task& task) { contents_.tasks[task.id] = page(); }
  // What was found while drawing.
  Contents contents() const;

 private:
  void begin(PageSize size);
  Box draw_head_and_foot(Box inside, std::string_view right);
  std::string foot_text(double width) const;
  // What stands at the right of a head, on a page for the wall with the student's name before it
  // where a line of so many millimetres holds both.
  std::string right_of_head(std::string_view right, double width) const;
  TextStyle right_style(std::string_view beside, double width) const;
  bool on_wall() const;

  Canvas& canvas_;
  const Plan& plan_;
  const Words& words_;
  const Print& print_;
  const Contents& known_;
  Contents contents_;
  std::string title_;
  std::vector<std::string> short_titles_;
  SheetKind sheet_ = SheetKind::cover;
  std::string sheet_title_;
  bool sheet_begins_ = false;  // its first page is still to come
};

}  // namespace cahier
