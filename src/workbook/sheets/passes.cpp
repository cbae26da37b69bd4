#include <algorithm>
#include <cmath>
#include <utility>

#include "paper/text_fitting.h"
#include "practice/metronome.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/short_dates.h"
#include "workbook/parts/table.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/counted_beats.h"
#include "workbook/sheets/planned_passes.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kKindHead = 4 * kGrid;     // "slow", "counted" above their columns
constexpr double kStretchHead = 5 * kGrid;  // where there is no room at the left
constexpr double kLabel = 30;               // bars and sections at the left of a stretch
constexpr double kWidePage = 150;
constexpr double kMendedPage = 110;
constexpr double kBetweenKinds = 4;
constexpr double kBetweenStretches = 2 * kGrid;
constexpr double kTempiRow = style::kWritingRow;  // where a pass has several tempi
// Shares of a kind's columns.
constexpr double kTempoShare = 15;
constexpr double kTempiShare = 22;  // where a pass has several
constexpr double kDateShare = 15;
constexpr double kNoteShare = 17;  // where it fumbled, what was mended
constexpr double kAgainShare = 14;
constexpr double kCellInsets = 2.5;   // millimetres, at both sides of a date
constexpr double kNarrowTempo = 20;   // of its column, millimetres
constexpr double kSlowShare = 0.62;   // of the width beside the labels
constexpr std::size_t kMostRows = 8;  // of a stretch that stay together
constexpr int kSpareRows = 6;
constexpr double kLeastStretch = style::kWritingRow;  // for its bars and sections at the left
constexpr double kHeads = 27 * kGrid;                 // of the columns and of the page, its foot
constexpr double kPieceTitle = 5 * kGrid;
constexpr double kAfterParagraph = 2.5;
constexpr std::size_t kMostMeters = 6;  // beyond that the score has to tell

bool has_several_tempi(const PassesByStretch& stretches) {
  for (const auto& [where, planned] : stretches)
    for (const std::vector<PlannedPass>* passes : {&planned.slow, &planned.counted})
      for (const PlannedPass& pass : *passes)
        if (!pass.task->tempi.empty()) return true;
  return false;
}

// Slow passes at the left, counted ones beside them, one under the other in the order of dates,
// each with cells for the bars that fumbled, and after a slow pass for those that were mended and
// for how they went when played once more. The circles of the passes are on the panels of their
// days.
class PassSheet {
 public:
  PassSheet(Book& book, const PassesByStretch& stretches)
      : book_(book),
        width_(book.upright().width),
        label_width_(width_ >= kWidePage ? kLabel : 0),
        slow_width_((width_ - label_width_ - kBetweenKinds) * (has_mended() ? kSlowShare : 0.5)),
        row_(row_height(stretches)),
        slow_(book.typefaces(), columns(stretches, true), slow_width_, row_),
        counted_(book.typefaces(), columns(stretches, false),
                 width_ - label_width_ - kBetweenKinds - slow_width_, row_),
        flow_([this] { return open_page(); }) {}

  void draw(const PassesByStretch& stretches) {
    how_to();
    int piece = -1;
    for (const auto& [where, planned] : stretches) {
      if (where.first != piece && book_.plan().pieces.size() > 1) piece_title(where.first);
      piece = where.first;
      for (std::size_t first = 0; first < planned.rows(); first += kMostRows)
        draw_stretch(book_.plan().pieces[piece], where.second, planned, first);
    }
    spare_rows();
  }

 private:
  // In large print there is no room for what the panel's second circle tells.
  bool has_mended() const { return width_ >= kMendedPage; }

  std::vector<Column> columns(const PassesByStretch& stretches, bool slow) const {
    const Words& words = book_.words();
    std::vector<Column> columns = {
        {words.say("passes.tempo"), has_several_tempi(stretches) ? kTempiShare : kTempoShare,
         Align::left, "", widest_tempo(stretches)},
        {words.say("passes.date"), kDateShare},
        {words.say("places.fumbled_at"), kNoteShare}};
    if (slow && has_mended()) columns.push_back({words.say("places.mended"), kNoteShare});
    // On a narrow page the panel's second circle is enough.
    if (slow && label_width_ > 0) columns.push_back({words.say("passes.again"), kAgainShare});
    return columns;
  }

  double widest_tempo(const PassesByStretch& stretches) const {
    double widest = 0;
    for (const auto& [where, planned] : stretches)
      for (const std::vector<PlannedPass>* passes : {&planned.slow, &planned.counted})
        for (const PlannedPass& pass : *passes)
          if (pass.task->tempo)
            widest = std::max(widest, tempo_width(book_.typefaces(), tempo_of(*pass.task),
                                                  style::kSmall.at(style::kLeast)));
    return widest;
  }

  // Rows to write bars in are as high as lines to write on where all of them find room on the first
  // page so, and never lower than a row to read. Several tempi, or a date with its year, take two
  // lines of type.
  double row_height(const PassesByStretch& stretches) const {
    if (needs_two_lines(stretches)) return kTempiRow;
    double rows = 0;
    double room = book_.upright().height - kHeads;
    for (const std::string& text : explanations())
      room -= on_grid(TextBlock(book_.typefaces(), text, style::kBody, width_).height()) +
              kAfterParagraph + kGrid;
    if (book_.plan().pieces.size() > 1)
      room -= kPieceTitle * static_cast<double>(book_.plan().pieces.size());
    for (const auto& [where, planned] : stretches) {
      rows += static_cast<double>(planned.rows());
      room -= kBetweenStretches + (label_width_ > 0 ? 0 : kStretchHead);
    }
    const double high = std::floor(room / rows / kGrid * 2) * kGrid / 2;
    return std::clamp(high, style::kRow, style::kWritingRow);
  }

  bool needs_two_lines(const PassesByStretch& stretches) const {
    const double share = has_several_tempi(stretches) ? kTempiShare : kTempoShare;
    const double all = share + kDateShare + (has_mended() ? 2 : 1) * kNoteShare +
                       (label_width_ > 0 ? kAgainShare : 0);
    const double date_width = slow_width_ * kDateShare / all - kCellInsets;
    for (const auto& [where, planned] : stretches)
      for (const std::vector<PlannedPass>* passes : {&planned.slow, &planned.counted})
        for (const PlannedPass& pass : *passes) {
          const std::string date = short_date(book_.words(), book_.plan(), pass.date);
          const double width =
              book_.typefaces().width(date, style::kBody.face, style::kBody.size_pt);
          if (!pass.task->tempi.empty() || width > date_width) return true;
        }
    return false;
  }

  double head_height() const { return std::max(slow_.head_height(), counted_.head_height()); }
  double heads_height() const { return kKindHead + on_grid(head_height()); }

  // Every page but the first begins with the heads of the two kinds.
  Box open_page() {
    const Box page = book_.open_page();
    if (!table_begun_) return page;
    draw_heads(page);
    return page.without_top(heads_height());
  }

  const Table& table(bool slow) const { return slow ? slow_ : counted_; }
  Box kind_box(const Box& box, bool slow) const {
    const Box beside = box.without_left(label_width_);
    return slow ? beside.left(slow_width_) : beside.without_left(slow_width_ + kBetweenKinds);
  }

  void draw_heads(const Box& box) {
    for (const bool slow : {true, false}) {
      const Box kind = kind_box(box, slow);
      draw_line(book_.canvas(), kind.top(kKindHead),
                book_.words().say(slow ? "passes.slow" : "passes.counted"), style::kStrong,
                Align::left, style::kLeast);
      table(slow).draw_head(book_.canvas(),
                            kind.without_top(heads_height() - table(slow).head_height()));
    }
  }

  void paragraph(const std::string& text) {
    const TextBlock block(book_.typefaces(), text, style::kBody, width_);
    block.draw(book_.canvas(), flow_.take(block.height()));
    flow_.skip(kAfterParagraph);
  }

  std::vector<std::string> explanations() const {
    const Words& words = book_.words();
    std::vector<std::string> texts = {words.say("passes.how")};
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
      texts.push_back(std::move(text));
    }
    if (has_slow_tempi(book_.plan())) texts.push_back(words.say("passes.below_the_metronome"));
    return texts;
  }

  void how_to() {
    for (const std::string& text : explanations()) paragraph(text);
    if (!flow_.fits(heads_height() + kStretchHead + 2 * row_)) flow_.next_page();
    draw_heads(flow_.take(heads_height()));
    table_begun_ = true;
  }

  void piece_title(int piece) {
    if (!flow_.fits(kPieceTitle + kStretchHead + 2 * row_)) flow_.next_page();
    draw_line(book_.canvas(), flow_.take(kPieceTitle).without_top(kGrid),
              book_.title_in(width_, book_.plan().pieces[piece], style::kStrong), style::kStrong,
              Align::left, style::kLeast);
  }

  // The rows of a stretch from `first` on that stay together.
  void draw_stretch(const PlannedPiece& piece, BarRange bars, const PassesOfStretch& planned,
                    std::size_t first) {
    const std::size_t rows = std::min(planned.rows() - first, kMostRows);
    const double above = label_width_ > 0 ? 0 : kStretchHead;
    const Box box = flow_.take(above + std::max(row_ * static_cast<double>(rows), kLeastStretch));
    std::string sections = sections_in(book_.words(), piece, bars);
    if (first == 0 && sections == bar_range(bars.first, bars.last)) sections.clear();
    if (first > 0) sections = book_.words().say("passes.continued", {{"sections", sections}});
    draw_label(box, bar_range(bars.first, bars.last), sections);
    for (const bool slow : {true, false}) {
      const std::vector<PlannedPass>& passes = slow ? planned.slow : planned.counted;
      Box row = kind_box(box, slow).without_top(above).top(row_);
      for (std::size_t at = first; at < std::min(first + rows, passes.size());
           ++at, row = row.moved(0, row_))
        draw_pass(table(slow).draw_row(book_.canvas(), row), passes[at]);
    }
    flow_.skip(kBetweenStretches);
  }

  void draw_label(const Box& box, const std::string& bars, const std::string& sections) {
    Canvas& canvas = book_.canvas();
    if (label_width_ > 0) {
      // Beside the first row, and the sections below; in a single row both above one another.
      const Box label = box.left(label_width_ - 2);
      const double height = sections.empty() ? row_ : std::min(row_, label.height - 4);
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
    if (!flow_.fits(kKindHead + style::kWritingRow)) return;
    draw_line(book_.canvas(), flow_.take(kKindHead), book_.words().say("passes.spare"),
              style::kStrong, Align::left, style::kLeast);
    for (int spare = 0; spare < kSpareRows && flow_.fits(style::kWritingRow); ++spare) {
      const Box box = flow_.take(style::kWritingRow);
      draw_writing_lines(book_.canvas(), box.left(std::max(0.0, label_width_ - 4)), 1);
      for (const bool slow : {true, false})
        table(slow).draw_row(book_.canvas(), kind_box(box, slow).bottom(row_));
    }
  }

  Book& book_;
  double width_;
  double label_width_;  // 0 where a stretch has its bars above
  double slow_width_;   // of the slow passes' table
  double row_;          // of a pass
  Table slow_;
  Table counted_;
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
