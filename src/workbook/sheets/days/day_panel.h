// A day on paper: its date, its tasks, and room to write down what happened.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/chunk_labels.h"
#include "workbook/book.h"
#include "workbook/parts/strip.h"
#include "workbook/sheets/days/task_row.h"

namespace cahier {

class DayPanels {
 public:
  // Panels for pages whose content is `width` millimetres wide. REQUIRES: `book` outlives them.
  DayPanels(Book& book, double width);

  // What the tasks of the day ask for, slice by slice. Explains a drill the first times it is
  // asked for, so ask for the days in order. The strips are as wide as the page and leave the
  // date's column free. REQUIRES: the panels and the day outlive the strips.
  std::vector<Strip> strips(const Day& day);
  // Whether the day is only a line: nothing to play.
  static bool is_slim(const Day& day) { return day.tasks.empty(); }

  // The height of the date above the strips, or beside them from the first one down.
  double date_height(const Day& day) const;
  bool date_beside() const { return date_width_ > 0; }
  void draw_date(const Box& box, const Day& day, bool continued);

 private:
  TaskRemarks remarks(const Task& task, Date date);
  bool practises_jump(const Task& task, Date date);
  // Empty for a chunk that is called by its bars, which stand in front of it.
  std::string label_beside_bars(const Task& task) const;
  int page_for(const Task& task) const;
  Strip line_of_text(double height, std::string text, TextStyle style);
  Strip piece_title(const PlannedPiece& piece, bool below_another);
  Strip break_line();
  Strip stop_strip();
  Strip note_strip(const std::string& text);
  // To write what happened on, named by the word under `label`; `before` stands in front of it.
  Strip report_line(const std::string& before, std::string_view label);
  Box task_area(const Box& box) const;
  std::vector<Strip> slim_strips(const Day& day);

  Book& book_;
  double width_;
  double date_width_ = 0;
  TaskColumns columns_;
  std::set<const Task*> first_uses_;  // of what may have been missed
  std::vector<ChunkLabels> labels_;   // by piece
  int told_to_stop_ = 0;
  int told_to_jump_ = 0;
  int told_of_throws_ = 0;    // that the list has their tempo
  std::map<Drill, int> met_;  // how often each drill has been asked for
};

}  // namespace cahier
