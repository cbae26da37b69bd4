// A task as it stands on a day's panel: bars, drill, circles, tempo and minutes side by side.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"
#include "workbook/parts/strip.h"
#include "workbook/sheets/days/task_columns.h"

namespace cahier {

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
