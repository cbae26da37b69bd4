#include <algorithm>
#include <utility>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/short_dates.h"
#include "workbook/parts/table.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/counted_beats.h"
#include "workbook/sheets/planned_passes.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kKindHead = 4 * kGrid;     // "slow", "counted" above their columns
constexpr double kStretchHead = 5 * kGrid;  // where there is no room at the left
constexpr double kLabel = 35;               // bars and sections at the left of a stretch
constexpr double kWidePage = 150;
constexpr double kBetweenKinds = 5;
constexpr double kSlowShare = 0.58;  // slow passes have more columns
constexpr std::size_t kDone = 2;     // the column of a pass's circle
constexpr double kBetweenStretches = 2 * kGrid;
constexpr double kRow = style::kWritingRow;
constexpr double kTempoShare = 22;    // of a kind's columns
constexpr double kTempiShare = 34;    // where a pass has several
constexpr double kNarrowTempo = 20;   // of its column, millimetres
constexpr std::size_t kMostRows = 6;  // of a stretch that stay together
constexpr int kSpareRows = 6;
constexpr std::size_t kMostMeters = 6;  // beyond that the score has to tell

double tempo_share(const PassesByStretch& stretches) {
  for (const auto& [where, planned] : stretches)
    for (const std::vector<PlannedPass>* passes : {&planned.slow, &planned.counted})
      for (const PlannedPass& pass : *passes)
        if (!pass.task->tempi.empty()) return kTempiShare;
  return kTempoShare;
}

// Slow passes at the left, counted ones at the right, one under the other in the order of dates. On
// a narrow page the counted ones follow the slow ones.
class PassSheet {
 public:
  PassSheet(Book& book, const PassesByStretch& stretches)
      : book_(book),
        width_(book.upright().width),
        label_width_(width_ >= kWidePage ? kLabel : 0),
        beside_(label_width_ > 0),
        slow_width_(beside_ ? (width_ - label_width_ - kBetweenKinds) * kSlowShare : width_),
        counted_width_(beside_ ? width_ - label_width_ - kBetweenKinds - slow_width_ : width_),
        slow_table_(book.typefaces(), columns(book.words(), stretches, true), slow_width_, kRow),
        counted_table_(book.typefaces(), columns(book.words(), stretches, false), counted_width_,
                       kRow),
        flow_([this] { return open_page(); }) {}

  void draw(const PassesByStretch& stretches) {
    how_to();
    if (beside_) return draw_kinds({true, false}, stretches);
    for (const bool slow : {true, false})
      if (std::ranges::any_of(stretches, [&](const auto& stretch) {
            return !passes_of(stretch.second, slow).empty();
          }))
        draw_kinds({slow}, stretches);
  }

 private:
  static const std::vector<PlannedPass>& passes_of(const PassesOfStretch& planned, bool slow) {
    return slow ? planned.slow : planned.counted;
  }

  std::size_t rows_of(const PassesOfStretch& planned) const {
    std::size_t rows = 0;
    for (const bool slow : kinds_) rows = std::max(rows, passes_of(planned, slow).size());
    return rows;
  }

  // Slow ones are `true`.
  void draw_kinds(std::vector<bool> kinds, const PassesByStretch& stretches) {
    kinds_ = std::move(kinds);
    table_begun_ = false;
    if (!flow_.fits(heads_height() + kStretchHead + 2 * kRow)) flow_.next_page();
    draw_heads(flow_.take(heads_height()));
    table_begun_ = true;
    int piece = -1;
    for (const auto& [where, planned] : stretches) {
      const std::size_t rows = rows_of(planned);
      if (rows == 0) continue;
      if (where.first != piece && book_.plan().pieces.size() > 1) piece_title(where.first);
      piece = where.first;
      for (std::size_t first = 0; first < rows; first += kMostRows)
        draw_stretch(book_.plan().pieces[piece], where.second, planned, first);
    }
    spare_rows();
  }

  static std::vector<Column> columns(const Words& words, const PassesByStretch& stretches,
                                     bool slow) {
    std::vector<Column> columns = {{words.say("passes.tempo"), tempo_share(stretches)},
                                   {words.say("passes.date"), 16},
                                   {words.say("passes.done"), 9}};
    if (slow) {
      columns.push_back({words.say("places.fumbled_at"), 18});
      columns.push_back({words.say("places.mended"), 16});
      columns.push_back({words.say("passes.again"), 9});
    } else {
      columns.push_back({words.say("passes.look_up"), 22});
    }
    return columns;
  }
  const Table& table(bool slow) const { return slow ? slow_table_ : counted_table_; }

  double heads_height() const {
    return kKindHead + on_grid(std::max(slow_table_.head_height(), counted_table_.head_height()));
  }

  // Every page but the first begins with the heads of the two kinds.
  Box open_page() {
    const Box page = book_.open_page();
    if (!table_begun_) return page;
    draw_heads(page);
    return page.without_top(heads_height());
  }

  Box kind_box(const Box& box, bool slow) const {
    const double left = slow || !beside_ ? 0 : slow_width_ + kBetweenKinds;
    return {box.x + label_width_ + left, box.y, slow ? slow_width_ : counted_width_, box.height};
  }

  void draw_heads(const Box& box) {
    for (const bool slow : kinds_) {
      const Box kind = kind_box(box, slow);
      draw_line(book_.canvas(), kind.top(kKindHead),
                book_.words().say(slow ? "passes.slow" : "passes.counted"), style::kStrong,
                Align::left, style::kLeast);
      const double above = heads_height() - table(slow).head_height();
      table(slow).draw_head(book_.canvas(), kind.without_top(above));
    }
  }

  void paragraph(const std::string& text) {
    const TextBlock block(book_.typefaces(), text, style::kBody, width_);
    block.draw(book_.canvas(), flow_.take(block.height()));
    flow_.skip(2.5);
  }

  void how_to() {
    const Words& words = book_.words();
    paragraph(words.say("passes.how"));
    for (const PlannedPiece& piece : book_.plan().pieces) {
      std::string text = words.say(
          "passes.count_aloud",
          {{"meter", piece.piece.meter.text()}, {"beats", beats_said(piece.piece.meter)}});
      std::size_t meters = 1;
      for (const Change& change : piece.piece.changes)
        if (change.meter && ++meters <= kMostMeters)
          text += " " + words.say("passes.count_from", {{"bar", change.bar},
                                                        {"meter", change.meter->text()},
                                                        {"beats", beats_said(*change.meter)}});
      if (meters > kMostMeters) text += " " + words.say("passes.count_on");
      if (book_.plan().pieces.size() > 1)
        text = words.say("passes.of_piece", {{"piece", piece.piece.title}, {"text", text}});
      paragraph(text);
    }
    if (has_slow_tempi(book_.plan())) paragraph(words.say("passes.below_the_metronome"));
  }

  void piece_title(int piece) {
    constexpr double kTitle = 5 * kGrid;
    if (!flow_.fits(kTitle + kStretchHead + 2 * kRow)) flow_.next_page();
    draw_line(book_.canvas(), flow_.take(kTitle).without_top(kGrid),
              book_.plan().pieces[piece].piece.title, style::kStrong, Align::left, style::kLeast);
  }

  // The rows of a stretch from `first` on that stay together.
  void draw_stretch(const PlannedPiece& piece, BarRange bars, const PassesOfStretch& planned,
                    std::size_t first) {
    const std::size_t rows = std::min(rows_of(planned) - first, kMostRows);
    const double above = label_width_ > 0 ? 0 : kStretchHead;
    const Box box = flow_.take(above + kRow * static_cast<double>(rows));
    std::string sections = sections_in(book_.words(), piece, bars);
    if (first == 0 && sections == bar_range(bars.first, bars.last)) sections.clear();
    if (first > 0) sections = book_.words().say("passes.continued", {{"sections", sections}});
    draw_label(box, bar_range(bars.first, bars.last), sections);
    for (const bool slow : kinds_) {
      const std::vector<PlannedPass>& passes = passes_of(planned, slow);
      Box row = kind_box(box, slow).without_top(above).top(kRow);
      for (std::size_t at = first; at < first + rows; ++at, row = row.moved(0, kRow)) {
        const std::vector<Box> cells = table(slow).draw_row(book_.canvas(), row);
        if (at < passes.size()) draw_pass(cells, passes[at]);
      }
    }
    flow_.skip(kBetweenStretches);
  }

  void draw_label(const Box& box, const std::string& bars, const std::string& sections) {
    Canvas& canvas = book_.canvas();
    if (label_width_ > 0) {
      // Beside the first row, and the sections below; in a single row both above one another.
      const Box label = box.left(label_width_ - 2);
      const double height = sections.empty() ? kRow : std::min(kRow, label.height - 4);
      draw_line(canvas, label.top(height), bars, style::kStandBars, Align::left,
                style::kLeastStand);
      draw_line(canvas, label.without_top(height > 6 ? height - kGrid : height).top(4), sections,
                style::kSmall, Align::left, style::kLeast);
      return;
    }
    const Box head = box.top(kStretchHead);
    const double length = draw_line(canvas, head.left(head.width * 0.4), bars, style::kStandBars,
                                    Align::left, style::kLeastStand);
    draw_line(canvas, head.without_left(length + 4), sections, style::kSmall, Align::left,
              style::kLeast);
    canvas.line({head.x, head.bottom()}, {head.right(), head.bottom()}, style::kHairline);
  }

  void draw_pass(const std::vector<Box>& cells, const PlannedPass& pass) {
    Canvas& canvas = book_.canvas();
    book_.note_task(*pass.task);
    draw_tempi(cells[0], *pass.task);
    draw_cell(canvas, cells[1], short_date(book_.words(), book_.plan(), pass.date), style::kBody);
    draw_ticks(cells);
  }

  // One for the pass; of a slow one another at the end, for once more. The cells after the first
  // are to write in.
  void draw_ticks(const std::vector<Box>& cells) {
    draw_tick(book_.canvas(), cells[kDone]);
    if (cells.size() > kDone + 2) draw_tick(book_.canvas(), cells.back());
  }

  // Several tempi stand one below the other; from three on the first is enough to tell the others.
  void draw_tempi(const Box& cell, const Task& task) {
    if (!task.tempo) return;
    Canvas& canvas = book_.canvas();
    const std::vector<TempoFrom> later = later_tempi(task);
    if (later.empty()) {
      const Tempo tempo = tempo_of(task);
      const bool fits = tempo_width(canvas.typefaces(), tempo, style::kBody) <= cell.width;
      draw_tempo(canvas, cell, tempo, fits ? style::kBody : style::kBody.at(style::kLeast));
      return;
    }
    const bool narrow = cell.width < kNarrowTempo;
    const TextStyle small = narrow ? style::kSmall.at(style::kLeast) : style::kSmall;
    const Box first = cell.top(cell.height / 2);
    const Box second = cell.bottom(cell.height / 2);
    draw_tempo(canvas, first, tempo_of(task), small);
    if (later.size() > 1) {
      draw_line(canvas, second, book_.words().say("task.tempo_in_proportion"), small, Align::left,
                style::kLeast);
      return;
    }
    const Tempo tempo = tempo_at(task, later.front().bar);
    const std::string from = book_.words().say("task.tempo_from", {{"bar", later.front().bar}});
    const double label = canvas.typefaces().width(from, small.face, small.size_pt) + 1.5;
    // In a narrow column the bar is left to the player.
    const bool fits = label + tempo_width(canvas.typefaces(), tempo, small) <= second.width;
    if (fits) draw_line(canvas, second, from, small, Align::left, style::kLeast);
    draw_tempo(canvas, second.without_left(fits ? label : 0), tempo, small);
  }

  // Only where the last page has room: they do not need a page of their own.
  void spare_rows() {
    if (!flow_.fits(kKindHead + kRow)) return;
    draw_line(book_.canvas(), flow_.take(kKindHead), book_.words().say("passes.spare"),
              style::kStrong, Align::left, style::kLeast);
    for (int spare = 0; spare < kSpareRows && flow_.fits(kRow); ++spare) {
      const Box box = flow_.take(kRow);
      draw_writing_lines(book_.canvas(), box.left(std::max(0.0, label_width_ - 4)), 1);
      for (const bool slow : kinds_)
        draw_ticks(table(slow).draw_row(book_.canvas(), kind_box(box, slow)));
    }
  }

  Book& book_;
  double width_;
  double label_width_;  // 0 where a stretch has its bars above
  bool beside_;         // the kinds stand side by side
  double slow_width_;
  double counted_width_;
  Table slow_table_;
  Table counted_table_;
  std::vector<bool> kinds_;  // drawn now, side by side
  bool table_begun_ = false;
  Flow flow_;
};

}  // namespace

void draw_passes(Book& book) {
  const PassesByStretch stretches = passes_by_stretch(book.plan());
  if (stretches.empty()) return;
  book.open_sheet(SheetKind::passes, book.words().say("passes.title"));
  PassSheet(book, stretches).draw(stretches);
}

}  // namespace cahier
