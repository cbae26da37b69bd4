#include "workbook/sheets/days/task_row.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLine = style::kRow;  // height of a line of bars, of a drill's name
constexpr double kSmallLine = 3 * kGrid;
constexpr double kCodeLine = 2 * kGrid;  // where the code stands below the bars
constexpr std::size_t kMostBeside = 2;   // lines below the drill's name: more go below the task
constexpr double kRounding = 1e-6;
constexpr int kMostTickLines = 8;  // before the circles go on in a further strip

// Everything about a task that is measured before it is drawn.
struct LaidOutTask {
  Book& book;
  const TaskColumns& columns;
  const Task& task;
  bool tempo_shown = false;
  std::vector<std::string> bars;
  std::vector<std::string> title;
  double title_width = 0;
  std::string beside;
  bool beside_inline = false;  // else on a line of its own below the title
  int leads_to = 0;
  TextBlock below;
  TextBlock across;  // in place of `below`, under everything else, as wide as the panel
  TickRows ticks;
  std::vector<TempoFrom> later;  // tempi below the first one
  TextBlock proportion;          // said in their place where they are too many
  TextBlock in_words;            // said in place of any
  std::string to_write;          // before a line to write on

  // Under the drill's name, left of the circles.
  bool writes_beside() const {
    return words_height() + style::kWritingRow <= ticks.height(0, first_ticks()) + kRounding;
  }

  bool has_tempo() const { return tempo_shown || in_words.height() > 0; }
  double below_at() const {
    const double beside_line = beside.empty() || beside_inline ? 0 : kSmallLine;
    return kLine * static_cast<double>(title.size()) + beside_line;
  }
  // Of the tempi below the first one, or of words below their first line.
  double later_height() const {
    if (in_words.height() > 0) return std::max(0.0, in_words.height() - kSmallLine);
    if (proportion.height() > 0) return on_grid(proportion.height());
    return kSmallLine * static_cast<double>(later.size());
  }
  // Of tempo and minutes below the words.
  double narrow_height() const {
    if (columns.wide()) return 0;
    return kLine + later_height() + (columns.stacked && has_tempo() ? kLine : 0);
  }
  // Of the first tempo, or of one beside each cue start.
  double tempi_height() const {
    return kLine * static_cast<double>(
                       columns.wide() && has_tempo() && !task.cues.empty() ? task.cues.size() : 1);
  }
  double words_height() const { return below_at() + below.height() + narrow_height(); }
  double bars_height() const { return kLine * static_cast<double>(bars.size()); }
  int first_ticks() const { return std::min(kMostTickLines, ticks.line_count()); }
  double above_across() const {
    const double code =
        columns.wide() ? tempi_height() + later_height() : bars_height() + kCodeLine;
    return on_grid(std::max({words_height(), ticks.height(0, first_ticks()), bars_height(), code}));
  }
  double first_height() const { return above_across() + across.height(); }
  double ticks_at() const { return columns.bars + columns.words + 2 * kColumnGap; }
};

void draw_bars(const LaidOutTask& laid, const Box& box) {
  Box rest = box.left(laid.columns.bars);
  for (const std::string& bars : laid.bars) {
    draw_line(laid.book.canvas(), rest.top(kLine), bars, style::kStandBars, Align::left,
              style::kLeastStand);
    rest = rest.without_top(kLine);
  }
}

void draw_beside(const LaidOutTask& laid, const Box& box) {
  Canvas& canvas = laid.book.canvas();
  draw_line(canvas, box, laid.beside, style::kSmall, Align::left, style::kLeast);
  if (laid.leads_to > 0) canvas.link(box, laid.leads_to);
}

// Returns what is left below the words.
Box draw_words(const LaidOutTask& laid, const Box& box) {
  Canvas& canvas = laid.book.canvas();
  const Box words = box.without_left(laid.columns.bars + kColumnGap);
  Box rest = words.left(laid.title_width);
  for (const std::string& line : laid.title) {
    const Box row = rest.top(kLine);
    const double width =
        draw_line(canvas, row, line, style::kStandText, Align::left, style::kLeastStand);
    if (laid.beside_inline && &line == &laid.title.back())
      draw_beside(laid, row.without_left(width + 2));
    rest = rest.without_top(kLine);
  }
  if (!laid.beside.empty() && !laid.beside_inline) draw_beside(laid, rest.top(kSmallLine));
  const Box below = words.without_top(laid.below_at());
  laid.below.draw(canvas, below);
  return below.without_top(laid.below.height()).left(laid.columns.words);
}

void draw_code(const LaidOutTask& laid, const Box& box) {
  const bool wide = laid.columns.wide();
  const Box place =
      wide ? box.top(kLine).right(laid.columns.code)
           : box.without_top(laid.bars_height()).top(kCodeLine).left(laid.columns.bars);
  draw_line(laid.book.canvas(), place, laid.task.id, style::kSmall,
            wide ? Align::right : Align::left, style::kLeast);
}

void draw_tempi(const LaidOutTask& laid, const Box& box) {
  Canvas& canvas = laid.book.canvas();
  if (laid.in_words.height() > 0) {
    laid.in_words.draw(canvas, box.without_top((kLine - laid.in_words.line_height()) / 2));
    return;
  }
  const PlannedPiece& piece = laid.book.plan().pieces[laid.task.piece];
  // Each cue start has a line of its own, and its own tempo, where there is room beside it.
  Tempo before = tempo_of(laid.task);
  const bool beside = laid.columns.wide() && !laid.task.cues.empty();
  if (!beside) draw_tempo(canvas, box.top(kLine), before, style::kStandText);
  for (std::size_t at = 0; beside && at < laid.task.cues.size(); ++at) {
    const int bar = piece.cues[laid.task.cues[at] - 1].bar;
    const Tempo tempo = tempo_at(laid.task, bar);
    if (at == 0 || tempo != before)
      draw_tempo(canvas, box.top(kLine).moved(0, kLine * static_cast<double>(at)), tempo,
                 style::kStandText);
    before = tempo;
  }
  Box rest = box.without_top(laid.tempi_height());
  if (laid.proportion.height() > 0) {
    laid.proportion.draw(canvas, rest);
    return;
  }
  for (const TempoFrom& from : laid.later) {
    const Box line = rest.top(kSmallLine);
    const double width = draw_line(canvas, line, later_label(laid.book, from), style::kSmall,
                                   Align::left, style::kLeast);
    draw_tempo(canvas, line.without_left(width + 1), {from.per_minute, laid.task.beat},
               style::kSmall);
    rest = rest.without_top(kSmallLine);
  }
}

void draw_tempo_and_minutes(const LaidOutTask& laid, const Box& box, const Box& below_words) {
  const TaskColumns& columns = laid.columns;
  Box tempo;
  Box minutes;
  if (columns.wide()) {
    minutes = box.without_right(columns.code).right(columns.minutes);
    tempo = box.without_right(columns.code + columns.minutes + kColumnGap).right(columns.tempo);
  } else if (columns.stacked) {
    tempo = below_words;
    minutes = below_words.without_top(laid.has_tempo() ? kLine + laid.later_height() : 0);
  } else {
    tempo = below_words.without_right(kTaskMinutes + kColumnGap);
    minutes = below_words.right(kTaskMinutes);
  }
  draw_line(laid.book.canvas(), minutes.top(kLine),
            minutes_phrase(laid.book.words(), laid.task.minutes), style::kBody,
            columns.stacked ? Align::left : Align::right, style::kLeast);
  if (laid.has_tempo()) draw_tempi(laid, tempo);
}

double tempo_words_width(const TaskColumns& columns) {
  if (columns.wide()) return columns.tempo;
  return columns.stacked ? columns.words : columns.words - kTaskMinutes - kColumnGap;
}

LaidOutTask lay_out(Book& book, const TaskColumns& columns, const Task& task,
                    const TaskRemarks& remarks) {
  const Typefaces& faces = book.typefaces();
  const PlannedPiece& piece = book.plan().pieces[task.piece];
  const std::vector<TickRow> rows = tick_rows(book.words(), piece, task);
  const TickRows ticks(faces, rows, columns.labels, kCirclesInLine, kLine);
  const std::vector<std::string> bars = task_bars(book.words(), piece, task);
  // Without a label in front of the first circles, the words may go on to them; below a single
  // line of circles they go on to the tempo, or to the edge of a narrow page.
  const bool label_is_free = !rows.empty() && rows.front().label.empty();
  const double free_label = TickRows::width(columns.labels, 0);
  const double title_width = columns.words + (label_is_free ? free_label : 0);
  const bool below_is_free = ticks.height() <= kLine;
  const double below_width =
      below_is_free ? columns.words + kColumnGap + columns.circles : columns.words;
  std::vector<std::string> title =
      wrap(faces, drill_title(book.words(), task), style::kStandText, title_width);
  const StartTempi tempi = columns.wide() ? StartTempi::beside : StartTempi::below;
  const bool tempo_shown = shows_tempo(piece, task);
  std::vector<TempoFrom> later = tempi_below(book, task, tempi);
  const bool many = later.size() > kMostTempi;
  const double taken = text_width(book, title.back(), style::kStandText) + 2 +
                       text_width(book, remarks.beside, style::kSmall);
  // What leads nowhere and has no room there is the first paragraph below.
  const bool is_beside = !remarks.beside.empty() && taken <= title_width;
  const bool moves = !remarks.beside.empty() && !is_beside && remarks.leads_to == 0;
  std::string below = moves ? remarks.beside : remarks.below;
  if (moves && !remarks.below.empty()) below += "\n" + remarks.below;
  TextBlock beside_circles(faces, below, style::kSmall, below_width);
  const bool is_across = beside_circles.lines().size() > kMostBeside;
  const TextBlock none(faces, "", style::kSmall, below_width);
  return {book,
          columns,
          task,
          tempo_shown,
          bars,
          std::move(title),
          title_width,
          moves ? "" : remarks.beside,
          is_beside,
          remarks.leads_to,
          is_across ? none : beside_circles,
          is_across
              ? TextBlock(faces, below, style::kSmall, columns.width - columns.bars - kColumnGap)
              : none,
          ticks,
          std::move(later),
          TextBlock(faces, many ? book.words().say("task.tempo_in_proportion") : "", style::kSmall,
                    tempo_words_width(columns)),
          TextBlock(faces, tempo_in_words(book, task), style::kSmall, tempo_words_width(columns)),
          remarks.to_write};
}

}  // namespace

std::vector<Strip> task_strips(Book& book, const TaskColumns& columns, const Task& task,
                               const TaskRemarks& remarks) {
  const LaidOutTask laid = lay_out(book, columns, task, remarks);
  std::vector<Strip> strips;
  strips.push_back(
      {laid.first_height(), [laid](const Box& box) {
         draw_bars(laid, box);
         const Box below = draw_words(laid, box);
         laid.ticks.draw(laid.book.canvas(), box.without_left(laid.ticks_at()), 0,
                         laid.first_ticks());
         draw_tempo_and_minutes(laid, box, below);
         draw_code(laid, box);
         if (!laid.to_write.empty() && laid.writes_beside())
           draw_labelled_line(laid.book.canvas(),
                              box.top(laid.ticks.height(0, laid.first_ticks()))
                                  .left(laid.columns.bars + kColumnGap + laid.columns.words),
                              laid.to_write, style::kSmall);
         laid.across.draw(
             laid.book.canvas(),
             box.without_top(laid.above_across()).without_left(laid.columns.bars + kColumnGap));
       }});
  for (int first = laid.first_ticks(); first < laid.ticks.line_count(); first += kMostTickLines) {
    const int count = std::min(kMostTickLines, laid.ticks.line_count() - first);
    strips.push_back({laid.ticks.height(first, count), [laid, first, count](const Box& box) {
                        laid.ticks.draw(laid.book.canvas(), box.without_left(laid.ticks_at()),
                                        first, count);
                      }});
  }
  if (!laid.to_write.empty() && !laid.writes_beside())
    strips.push_back({style::kWritingRow, [laid](const Box& box) {
                        draw_labelled_line(laid.book.canvas(), box, laid.to_write, style::kSmall);
                      }});
  return strips;
}

}  // namespace cahier
