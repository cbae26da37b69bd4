#include "workbook/sheets/days/task_columns.h"

#include <algorithm>

#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/ticks.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kTempoGap = 2;     // more of it in front of the tempo
constexpr double kLeastWide = 140;  // narrower, tempo and minutes go below the drill's words
constexpr double kMostBars = 34;
constexpr double kMostLabels = 22;
constexpr double kMostLabelsNarrow = 15;
constexpr double kBeforeCode = 1.5;     // at least, after the minutes
constexpr double kMostTempoWords = 15;  // in place of a tempo; longer ones take two lines

double later_width(const Book& book, const Task& task, const TempoFrom& from) {
  return text_width(book, later_label(book, from), style::kSmall) + 1 +
         tempo_width(book.typefaces(), {from.per_minute, task.beat}, style::kSmall) + 0.5;
}

// What a task's tempi, or the words in their place, need.
double tempo_column(const Book& book, const Task& task, StartTempi tempi) {
  const Typefaces& faces = book.typefaces();
  const PlannedPiece& piece = book.plan().pieces[task.piece];
  double width =
      std::min(kMostTempoWords, text_width(book, tempo_in_words(book, task), style::kSmall));
  if (!shows_tempo(piece, task)) return width;
  width = std::max(width, tempo_width(faces, tempo_of(task), style::kStandText) + 0.5);
  if (covers(task.drill, Covers::starts))
    for (const TempoFrom& from : task.tempi)
      width =
          std::max(width, tempo_width(faces, tempo_at(task, from.bar), style::kStandText) + 0.5);
  const std::vector<TempoFrom> later = tempi_below(book, task, tempi);
  if (later.size() > kMostTempi) return width;
  for (const TempoFrom& from : later) width = std::max(width, later_width(book, task, from));
  return width;
}

}  // namespace

TaskColumns task_columns(const Book& book, double width) {
  TaskColumns columns;
  columns.width = width;
  double code = 0;
  const bool narrow = width < kLeastWide;
  const double most_labels = narrow ? kMostLabelsNarrow : kMostLabels;
  for (const Day& day : book.plan().days)
    for (const Task& task : day.tasks) {
      const PlannedPiece& piece = book.plan().pieces[task.piece];
      for (const std::string& bars : task_bars(book.words(), piece, task))
        columns.bars = std::max(columns.bars, text_width(book, bars, style::kStandBars));
      columns.labels = std::max(
          columns.labels, TickRows::label_width(book.typefaces(),
                                                tick_rows(book.words(), piece, task), most_labels));
      columns.tempo = std::max(
          columns.tempo, tempo_column(book, task, narrow ? StartTempi::below : StartTempi::beside));
      code = std::max(code, kBeforeCode + text_width(book, task.id, style::kSmall));
    }
  columns.bars = std::min(columns.bars, kMostBars);
  columns.circles = TickRows::width(columns.labels, kCirclesInLine);
  const double right =
      narrow ? 0 : code + kTaskMinutes + columns.tempo + 2 * kColumnGap + kTempoGap;
  columns.words = width - columns.bars - columns.circles - right - 2 * kColumnGap;
  if (narrow) {
    columns.stacked = columns.tempo + kColumnGap + kTaskMinutes > columns.words;
    columns.tempo = 0;
  } else {
    columns.minutes = kTaskMinutes;
    columns.code = code;
  }
  return columns;
}

std::string tempo_in_words(const Book& book, const Task& task) {
  return task.drill == Drill::run_through ? book.words().say("task.tempo_as_on_the_day")
                                          : std::string();
}

std::vector<TempoFrom> tempi_below(const Book& book, const Task& task, StartTempi tempi) {
  const PlannedPiece& piece = book.plan().pieces[task.piece];
  if (!shows_tempo(piece, task)) return {};
  if (!task.cues.empty() || !throws_below_tempo(piece, task)) return later_tempi(task, tempi);
  return thrown_tempi(piece, book.plan().method, task);
}

std::string later_label(const Book& book, const TempoFrom& from) {
  return book.words().say("task.tempo_from", {{"bar", from.bar}});
}

double text_width(const Book& book, const std::string& text, const TextStyle& style) {
  return book.typefaces().width(text, style.face, style.size_pt) + 0.5;
}

}  // namespace cahier
