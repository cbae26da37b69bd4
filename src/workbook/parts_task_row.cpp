#include "workbook/parts_task_row.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "workbook/parts_task.h"
#include "workbook/parts_tempo.h"
#include "workbook/parts_ticks.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr int kCirclesInLine = 5;
constexpr double kGap = 3;          // between columns
constexpr double kTempoGap = 2;     // more of it in front of the tempo
constexpr double kLine = 7;         // height of a line of bars
constexpr double kTitleLine = 5.6;  // of further lines of the drill's name
constexpr double kCodeLine = 3.4;
constexpr double kLeastWide = 140;  // narrower, tempo and minutes go below the drill's words
constexpr double kMostBars = 34;
constexpr double kMostLabels = 22;
constexpr double kMostLabelsNarrow = 15;
constexpr double kMinutes = 14;
constexpr int kMostTickLines = 8;  // before the circles go on in a further strip

const PlannedPiece& piece_of(const Book& book, const Task& task) {
  return book.plan().pieces[task.piece];
}

double text_width(const Book& book, const std::string& text, const TextStyle& style) {
  return book.typefaces().width(text, style.face, style.size_pt) + 0.5;
}

// Everything about a task that is measured before it is drawn.
struct LaidOutTask {
  Book& book;
  const TaskColumns& columns;
  const Task& task;
  std::vector<std::string> bars;
  std::vector<std::string> title;
  TextBlock says;
  TickRows ticks;
  double line = kLine;  // pitch of bars and circles
  int leads_to = 0;

  // Of tempo, minutes and code below the words.
  double below_height() const {
    if (columns.wide()) return 0;
    return kLine + (columns.stacked && task.tempo ? kLine : 0);
  }
  double words_height() const {
    const double titles = kLine + kTitleLine * static_cast<double>(title.size() - 1);
    return titles + says.height() + below_height();
  }
  int first_ticks() const { return std::min(kMostTickLines, ticks.line_count()); }
  double first_height() const {
    const double bars_height = line * static_cast<double>(bars.size());
    const double code = columns.wide() ? kLine + kCodeLine : bars_height + kCodeLine;
    return std::max({words_height(), ticks.height(0, first_ticks()), bars_height, code});
  }
  double ticks_at() const { return columns.bars + columns.words + 2 * kGap; }
};

void draw_bars(const LaidOutTask& laid, const Box& box) {
  Box rest = box.left(laid.columns.bars);
  for (const std::string& bars : laid.bars) {
    draw_line(laid.book.canvas(), rest.top(laid.line), bars, style::kStandBars, Align::left,
              style::kLeastStand);
    rest = rest.without_top(laid.line);
  }
}

// Returns what is left below the words.
Box draw_words(const LaidOutTask& laid, const Box& box) {
  Canvas& canvas = laid.book.canvas();
  Box rest = box.without_left(laid.columns.bars + kGap).left(laid.columns.words);
  double height = kLine;
  for (const std::string& line : laid.title) {
    draw_line(canvas, rest.top(height), line, style::kStandText, Align::left, style::kLeastStand);
    rest = rest.without_top(height);
    height = kTitleLine;
  }
  laid.says.draw(canvas, rest);
  if (laid.leads_to > 0 && laid.says.height() > 0)
    canvas.link(rest.top(laid.says.height()), laid.leads_to);
  return rest.without_top(laid.says.height());
}

void draw_minutes(const LaidOutTask& laid, const Box& box, Align align) {
  draw_line(laid.book.canvas(), box.top(kLine),
            minutes_phrase(laid.book.words(), laid.task.minutes), style::kBody, align,
            style::kLeast);
}

// Below the minutes, on a narrow page below the bars.
void draw_code(const LaidOutTask& laid, const Box& box) {
  const bool wide = laid.columns.wide();
  const double lines = kLine + (wide ? 0 : laid.line * static_cast<double>(laid.bars.size() - 1));
  const Box column = wide ? box.right(laid.columns.minutes) : box.left(laid.columns.bars);
  draw_line(laid.book.canvas(), column.without_top(lines).top(kCodeLine), laid.task.id,
            style::kFine, wide ? Align::right : Align::left, style::kLeast);
}

void draw_tempo_and_minutes(const LaidOutTask& laid, const Box& box, const Box& below_words) {
  const TaskColumns& columns = laid.columns;
  Box tempo;
  Box minutes;
  if (columns.wide()) {
    minutes = box.right(columns.minutes);
    tempo = box.without_right(columns.minutes + kGap).right(columns.tempo);
  } else if (columns.stacked) {
    tempo = below_words;
    minutes = below_words.without_top(laid.task.tempo ? kLine : 0);
  } else {
    tempo = below_words.without_right(kMinutes + kGap);
    minutes = below_words.right(kMinutes);
  }
  draw_minutes(laid, minutes, columns.stacked ? Align::left : Align::right);
  if (laid.task.tempo)
    draw_tempo(laid.book.canvas(), tempo.top(kLine), tempo_of(laid.task), style::kStandText);
}

TickRows ticks_for(const Book& book, const TaskColumns& columns, const Task& task) {
  const double pitch = task.drill == Drill::cue_starts ? kLine : style::kTickStep;
  return TickRows(book.typefaces(), tick_rows(book.words(), piece_of(book, task), task),
                  columns.labels, kCirclesInLine, pitch);
}

}  // namespace

TaskColumns task_columns(const Book& book, double width) {
  TaskColumns columns;
  const bool narrow = width < kLeastWide;
  const double most_labels = narrow ? kMostLabelsNarrow : kMostLabels;
  for (const Day& day : book.plan().days)
    for (const Task& task : day.tasks) {
      const PlannedPiece& piece = piece_of(book, task);
      for (const std::string& bars : task_bars(book.words(), piece, task))
        columns.bars = std::max(columns.bars, text_width(book, bars, style::kStandBars));
      columns.labels = std::max(
          columns.labels, TickRows::label_width(book.typefaces(),
                                                tick_rows(book.words(), piece, task), most_labels));
      if (task.tempo)
        columns.tempo = std::max(
            columns.tempo, tempo_width(book.typefaces(), tempo_of(task), style::kStandText) + 0.5);
    }
  columns.bars = std::min(columns.bars, kMostBars);
  columns.circles = TickRows::width(columns.labels, kCirclesInLine);
  const double right = narrow ? 0 : kMinutes + columns.tempo + 2 * kGap + kTempoGap;
  columns.words = width - columns.bars - columns.circles - right - 2 * kGap;
  if (narrow) {
    columns.stacked = columns.tempo + kGap + kMinutes > columns.words;
    columns.tempo = 0;
  } else {
    columns.minutes = kMinutes;
  }
  return columns;
}

std::vector<Strip> task_strips(Book& book, const TaskColumns& columns, const Task& task,
                               const std::string& says, int leads_to) {
  const PlannedPiece& piece = piece_of(book, task);
  const Typefaces& faces = book.typefaces();
  LaidOutTask laid{book,
                   columns,
                   task,
                   task_bars(book.words(), piece, task),
                   wrap(faces, drill_title(book.words(), task), style::kStandText, columns.words),
                   TextBlock(faces, says, style::kSmall, columns.words),
                   ticks_for(book, columns, task),
                   task.drill == Drill::cue_starts ? kLine : style::kTickStep,
                   leads_to};
  laid.line = kLine;
  std::vector<Strip> strips;
  strips.push_back({laid.first_height(), [laid](const Box& box) {
                      draw_bars(laid, box);
                      const Box below = draw_words(laid, box);
                      // The first circle stands in the middle of the line of bars.
                      const double middle = std::max(0.0, kLine - laid.ticks.height(0, 1)) / 2;
                      laid.ticks.draw(laid.book.canvas(),
                                      box.without_left(laid.ticks_at()).moved(0, middle), 0,
                                      laid.first_ticks());
                      draw_tempo_and_minutes(laid, box, below);
                      draw_code(laid, box);
                    }});
  for (int first = laid.first_ticks(); first < laid.ticks.line_count(); first += kMostTickLines) {
    const int count = std::min(kMostTickLines, laid.ticks.line_count() - first);
    strips.push_back({laid.ticks.height(first, count), [laid, first, count](const Box& box) {
                        laid.ticks.draw(laid.book.canvas(), box.without_left(laid.ticks_at()),
                                        first, count);
                      }});
  }
  return strips;
}

}  // namespace cahier
