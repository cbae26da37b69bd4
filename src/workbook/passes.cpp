#include <algorithm>
#include <map>
#include <utility>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_dates.h"
#include "workbook/parts_flow.h"
#include "workbook/parts_table.h"
#include "workbook/parts_task.h"
#include "workbook/parts_tempo.h"
#include "workbook/parts_ticks.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kStretchHead = 9;
constexpr double kRow = style::kWritingRow + 0.5;
constexpr int kSpareRows = 3;
constexpr int kLongestCount = 16;  // beats said one by one; a longer bar is counted by its groups
constexpr std::size_t kMostMeters = 6;  // beyond that the score has to tell

struct PlannedPass {
  Date date;
  const Task* task = nullptr;
};
// By piece and bars, in that order; within them by date.
using Passes = std::map<std::pair<int, BarRange>, std::vector<PlannedPass>>;

Passes passes_of(const Plan& plan) {
  Passes passes;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::slow_pass || task.drill == Drill::counted_pass)
        passes[{task.piece, task.bars}].push_back({day.date, &task});
  return passes;
}

// "1 2 3", and "1 2, 1 2 3" for a bar in groups.
std::string beats_said(const Meter& meter) {
  std::string said;
  for (const int group : meter.groups) {
    if (!said.empty()) said += ", ";
    for (int beat = 1; beat <= std::min(group, kLongestCount); ++beat)
      said += (beat > 1 ? " " : "") + std::to_string(beat);
    if (group > kLongestCount) said += " …";
  }
  return "“" + said + "”";
}

// The sections that a stretch touches.
std::string sections_in(const Words& words, const PlannedPiece& piece, BarRange bars) {
  std::vector<std::string> names;
  for (const PlannedSection& section : piece.sections)
    if (section.bars.overlaps(bars)) names.push_back(section.name);
  return list_text(words, names);
}

class PassSheet {
 public:
  explicit PassSheet(Book& book)
      : book_(book),
        width_(book.upright().width),
        table_(book.typefaces(),
               {{book.words().say("passes.kind"), 19},
                {book.words().say("passes.tempo"), 23},
                {book.words().say("passes.date"), 24},
                {book.words().say("passes.done"), 12},
                {book.words().say("passes.fumbled"), width_ - 78}},
               width_, kRow),
        flow_([this] { return open_page(); }) {}

  void draw(const Passes& passes) {
    how_to();
    int piece = -1;
    for (const auto& [where, planned] : passes) {
      if (where.first != piece && book_.plan().pieces.size() > 1) piece_title(where.first);
      piece = where.first;
      stretch(book_.plan().pieces[piece], where.second, planned);
    }
    spare_rows();
  }

 private:
  // Every page but the first begins with the head of the table.
  Box open_page() {
    const Box page = book_.open_page();
    if (!table_begun_) return page;
    return table_.draw_head(book_.canvas(), page);
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
    flow_.skip(3);
    if (!flow_.fits(table_.head_height() + kStretchHead + 2 * kRow)) flow_.next_page();
    table_.draw_head(book_.canvas(), flow_.take(table_.head_height()));
    table_begun_ = true;
  }

  void piece_title(int piece) {
    if (!flow_.fits(9 + kStretchHead + kRow)) flow_.next_page();
    draw_line(book_.canvas(), flow_.take(9).without_top(2.5),
              book_.plan().pieces[piece].piece.title, style::kStrong, Align::left, style::kLeast);
  }

  void stretch_head(const PlannedPiece& piece, BarRange bars, bool continued) {
    const Words& words = book_.words();
    const Box head = flow_.take(kStretchHead).without_top(1.5);
    const double length =
        draw_line(book_.canvas(), head.left(head.width * 0.4), bar_range(bars.first, bars.last),
                  style::kStandBars, Align::left, style::kLeastStand);
    std::string sections = sections_in(words, piece, bars);
    if (continued) sections = words.say("passes.continued", {{"sections", sections}});
    draw_line(book_.canvas(), head.without_left(length + 5), sections, style::kBody, Align::left,
              style::kLeast);
    book_.canvas().line({head.x, head.bottom()}, {head.right(), head.bottom()}, style::kHairline);
  }

  void stretch(const PlannedPiece& piece, BarRange bars, const std::vector<PlannedPass>& planned) {
    if (!flow_.fits(kStretchHead + kRow)) flow_.next_page();
    stretch_head(piece, bars, false);
    for (const PlannedPass& pass : planned) {
      if (!flow_.fits(kRow)) {
        flow_.next_page();
        stretch_head(piece, bars, true);
      }
      row(pass);
    }
    flow_.skip(3);
  }

  void row(const PlannedPass& pass) {
    const Words& words = book_.words();
    Canvas& canvas = book_.canvas();
    const std::vector<Box> cells = table_.draw_row(canvas, flow_.take(kRow));
    book_.note_task(*pass.task);
    const bool slow = pass.task->drill == Drill::slow_pass;
    draw_cell(canvas, cells[0], words.say(slow ? "passes.slow" : "passes.counted"), style::kStrong);
    if (pass.task->tempo)
      draw_tempo(canvas, cells[1].without_left(1), tempo_of(*pass.task), style::kBody);
    draw_cell(canvas, cells[2], short_date(words, book_.plan(), pass.date), style::kBody);
    draw_tick(canvas, cells[3]);
  }

  // Where the last page has room: they are worth no page of their own.
  void spare_rows() {
    if (!flow_.fits(kStretchHead + kSpareRows * kRow)) return;
    const Box head = flow_.take(kStretchHead).without_top(1.5);
    draw_line(book_.canvas(), head, book_.words().say("passes.spare"), style::kStrong, Align::left,
              style::kLeast);
    book_.canvas().line({head.x, head.bottom()}, {head.right(), head.bottom()}, style::kHairline);
    for (int spare = 0; spare < kSpareRows; ++spare)
      draw_tick(book_.canvas(), table_.draw_row(book_.canvas(), flow_.take(kRow))[3]);
  }

  Book& book_;
  double width_;
  Table table_;
  bool table_begun_ = false;
  Flow flow_;
};

}  // namespace

void draw_passes(Book& book) {
  const Passes passes = passes_of(book.plan());
  if (passes.empty()) return;
  book.open_sheet("passes", book.words().say("passes.title"));
  PassSheet(book).draw(passes);
}

}  // namespace cahier
