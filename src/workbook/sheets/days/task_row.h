// A task as it stands on a day's panel: bars, drill, circles, tempo and minutes side by side.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"
#include "workbook/parts/strip.h"

namespace cahier {

// The columns of all tasks of a book, millimetres. Where the page is narrow, tempo and minutes
// stand below the drill's words and their columns are 0 wide.
struct TaskColumns {
  double width = 0;  // of all
  double bars = 0;
  double words = 0;
  double labels = 0;   // in front of the circles
  double circles = 0;  // labels and circles together
  double tempo = 0;
  double minutes = 0;
  double code = 0;
  bool stacked = false;  // below the words the minutes stand under the tempo, not beside it

  bool wide() const { return minutes > 0; }
};

// For tasks in `width` millimetres.
TaskColumns task_columns(const Book& book, double width);

// What is said about a task besides its drill, in small type.
struct TaskRemarks {
  std::string beside;    // after the drill's name, or below it; a touch on it leads to a page
  int leads_to = 0;      // that page; 0 without one
  std::string below;     // a paragraph each line
  std::string to_write;  // before a line to write on; no line without it
};

// The task in strips of which none is higher than a fraction of a page. REQUIRES: book, task and
// columns outlive the strips.
std::vector<Strip> task_strips(Book& book, const TaskColumns& columns, const Task& task,
                               const TaskRemarks& remarks);

}  // namespace cahier
