// Where things stand in the rows of the day panels, and what of a tempo is said there in words.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"
#include "workbook/parts/task_words.h"

namespace cahier {

inline constexpr int kCirclesInLine = 5;
inline constexpr double kColumnGap = 3;
inline constexpr double kTaskMinutes = 14;    // the column of minutes
inline constexpr std::size_t kMostTempi = 2;  // named below the first; more are said in words

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

// "as on the day" for a run-through; else empty.
std::string tempo_in_words(const Book& book, const Task& task);

// The tempi to stand below a task's first one; `tempi` says where those of its cue starts stand.
std::vector<TempoFrom> tempi_below(const Book& book, const Task& task, StartTempi tempi);

// "49:", before a tempo below the first.
std::string later_label(const Book& book, const TempoFrom& from);

double text_width(const Book& book, const std::string& text, const TextStyle& style);

}  // namespace cahier
