#include <algorithm>
#include <cmath>
#include <functional>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/prose.h"
#include "workbook/parts/spread.h"
#include "workbook/parts/totals.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/write_outs/write_out_staves.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kHead = style::kWritingRow;
constexpr double kGap = 4.5;        // between the fields of a row
constexpr double kNumberLine = 10;  // to write a number on
constexpr double kMostGap = 2.5;    // between systems beyond what they need; staff heights
constexpr double kBarsLine = 22;
constexpr double kDateLine = 18;

class WriteOuts {
 public:
  WriteOuts(Book& book, const PlannedPiece& piece, bool with_how)
      : book_(book),
        words_(book.words()),
        typefaces_(book.typefaces()),
        piece_(piece.piece),
        with_how_(with_how),
        width_(book.upright().width),
        measures_(fitting_measures(typefaces_, piece_, book.print())),
        below_(below_system(measures_)),
        check_width_(field("write_outs.checked", kNumberLine) + kGap +
                     field("write_outs.wrong", kNumberLine)),
        spread_([this] { return open(); }, measures_.height * kMostGap) {
    if (book.plan().pieces.size() > 1) right_ = book.title_in_head(piece);
    is_beside_ = open_width() + kGap + check_width_ <= width_;
  }

  void planned(Date date, const Task& task) {
    had_task_ = true;
    const std::string day = words_.say("write_outs.on", {{"weekday", weekday_short(words_, date)},
                                                         {"date", day_month(words_, date)}});
    spread_.add(block(task.bars, day, &task));
  }

  // Bars that no task asks for. False, and nothing is drawn, when `pages` are full without them.
  bool offered(BarRange bars, int pages) {
    const std::vector<Strip> strips = block(bars, "", nullptr);
    if (spread_.pages() >= pages && !spread_.fits(height_of(strips))) return false;
    spread_.add(strips);
    return true;
  }

  // Staves whose bars the player fills in, until `pages` are full. Single staves stand three to a
  // heading, as long as there is room for so many.
  void spare(int pages) {
    StaffSystem system = blank_system(typefaces_, piece_, measures_, width_);
    system.meter.reset();
    const bool single = piece_.instrument.staves.size() == 1;
    StaffMeasures measures = measures_;
    if (single) measures.number_room = on_grid(number_room_for(typefaces_, system, measures_));
    const Draw draw = [this, system, measures](const Box& box, double lowered) {
      draw_system(book_.canvas(), box.without_top(lowered), system, measures);
    };
    const Draw draw_headed = [this, draw](const Box& box, double lowered) {
      draw_open_head(box.top(kHead));
      draw(box.without_top(kHead), lowered);
    };
    const double height = cahier::system_height(system, measures);
    const std::vector<Strip> one = {last_strip(kHead + height, draw_headed)};
    std::vector<Strip> block = one;
    if (single)
      block = {strip(kHead + height, draw_headed), strip(height, draw), last_strip(height, draw)};
    while (spread_.fits(height_of(block)) || spread_.fits(height_of(one)) ||
           spread_.pages() < pages)
      spread_.add(spread_.fits(height_of(one)) && !spread_.fits(height_of(block)) ? one : block);
  }

  void finish() { spread_.finish(); }

 private:
  // Draws a heading, if any, and music; with `lowered` millimetres to spare above the music.
  using Draw = std::function<void(const Box& box, double lowered)>;

  double field(const char* key, double line) const {
    return labelled_line_width(typefaces_, words_.say(key), style::kBody, line);
  }
  double open_width() const {
    return field("write_outs.bars_blank", kBarsLine) + kGap +
           field("write_outs.date_blank", kDateLine);
  }

  std::vector<Strip> block(BarRange bars, const std::string& day, const Task* task) {
    const std::vector<StaffSystem> systems =
        systems_for(typefaces_, piece_, bars, measures_, width_);
    std::vector<Strip> strips;
    for (std::size_t at = 0; at < systems.size(); ++at) {
      const bool first = at == 0;
      const StaffSystem system = systems[at];
      const Draw draw = [this, bars, day, task, first, system](const Box& box, double lowered) {
        if (first && task) book_.note_task(*task);
        if (first) draw_head(box.top(kHead), bars, day);
        const double top = (first ? kHead : 0) + lowered;
        draw_system(book_.canvas(), box.without_top(top), system, measures_);
      };
      const double height = (first ? kHead : 0) + system_height(piece_, measures_);
      strips.push_back(at + 1 == systems.size() ? last_strip(height, draw) : strip(height, draw));
    }
    return strips;
  }

  // Heading and music, `height` millimetres high, and the room below them. Of what the page has
  // left a little goes above the music, for notes above the staff.
  Strip strip(double height, const Draw& draw) const {
    const double whole = on_grid(height + below_);
    return {whole, [whole, draw](const Box& box) { draw(box, lowered(box.height - whole)); }};
  }

  // The last music of a block, with the line for the check below it where it does not stand
  // above: its label leaves the upper half of its row to notes below the staff.
  Strip last_strip(double height, const Draw& draw) {
    if (is_beside_) return strip(height, draw);
    const double gap = std::max(0.0, below_ - style::kWritingRow / 2);
    const double whole = on_grid(height + gap + style::kWritingRow);
    return {whole, [this, whole, draw](const Box& box) {
              const double down = lowered(box.height - whole);
              draw(box, down);
              draw_check(box.top(whole + down).bottom(style::kWritingRow));
            }};
  }

  static double lowered(double to_spare) {
    return std::min(2.0, std::floor(to_spare / kGrid / 3 + 1e-6)) * kGrid;
  }

  Box open() {
    Box page = book_.open_page(right_);
    if (is_open_) return page;
    if (!right_.empty()) book_.mark(right_);
    is_open_ = true;
    const double whole = page.height;
    page = draw_paragraphs(book_.canvas(), page, how());
    const double least = last_strip(kHead + system_height(piece_, measures_), {}).height;
    return page.height < least && whole >= least ? book_.open_page(right_) : page;
  }

  std::vector<std::string> how() const {
    std::vector<std::string> texts;
    if (with_how_ && !had_task_) texts.push_back(words_.say("write_outs.unplanned"));
    if (with_how_)
      for (const std::string& text : words_.list("write_outs.how")) texts.push_back(text);
    if (measures_.height < book_.print().staff_height)
      texts.push_back(
          words_.say("write_outs.smaller",
                     {{"asked", number_text(book_.print().printed(book_.print().staff_height))},
                      {"given", number_text(book_.print().printed(measures_.height))}}));
    return texts;
  }

  void draw_head(const Box& row, BarRange bars, const std::string& day) {
    const Box left = row.left(is_beside_ ? row.width - check_width_ - kGap : row.width);
    const double large = draw_line(
        book_.canvas(), on_label_baseline(typefaces_, left.left(left.width / 2), style::kStandBars),
        words_.say("write_outs.bars", {{"bars", bar_range(bars.first, bars.last)}}),
        style::kStandBars, Align::left, style::kLeastStand);
    const Box rest = left.without_left(large + kGap);
    if (day.empty())
      draw_labelled_line(book_.canvas(),
                         rest.left(std::min(rest.width, field("write_outs.date_blank", kDateLine))),
                         words_.say("write_outs.date_blank"), style::kBody);
    else
      draw_line(book_.canvas(), on_label_baseline(typefaces_, rest, style::kBody), day,
                style::kBody, Align::left, style::kLeast);
    if (is_beside_) draw_check(row);
  }

  void draw_open_head(const Box& row) {
    draw_write_ins(
        book_.canvas(), row.left(std::min(row.width, open_width())),
        {{words_.say("write_outs.bars_blank"), field("write_outs.bars_blank", kBarsLine)},
         {words_.say("write_outs.date_blank"), field("write_outs.date_blank", kDateLine)}},
        style::kBody);
    if (is_beside_) draw_check(row);
  }

  // At the right end of the row.
  void draw_check(const Box& row) {
    const Box all = row.right(std::min(row.width, check_width_));
    const double squeezed = all.width / check_width_;
    const double wrong = field("write_outs.wrong", kNumberLine) * squeezed;
    draw_labelled_line(book_.canvas(), all.without_right(wrong + kGap),
                       words_.say("write_outs.checked"), style::kBody, kNumberLine * squeezed);
    draw_labelled_line(book_.canvas(), all.right(wrong), words_.say("write_outs.wrong"),
                       style::kBody, kNumberLine * squeezed);
  }

  Book& book_;
  const Words& words_;
  const Typefaces& typefaces_;
  const Piece& piece_;
  bool with_how_;
  double width_;
  StaffMeasures measures_;
  double below_;
  double check_width_;
  bool is_beside_ = false;  // the check stands at the right of a block's head
  std::string right_;
  bool is_open_ = false;
  bool had_task_ = false;
  Spread spread_;
};

std::vector<Chunk> hardest_first(std::vector<Chunk> chunks) {
  std::stable_sort(chunks.begin(), chunks.end(),
                   [](const Chunk& one, const Chunk& other) { return one.level > other.level; });
  return chunks;
}

}  // namespace

void draw_write_outs(Book& book) {
  const Plan& plan = book.plan();
  std::vector<int> pieces;  // with tasks, else all
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    if (asks_for(plan, piece, Drill::write_out)) pieces.push_back(piece);
  const bool planned = !pieces.empty();
  // A book that keeps a piece has blank staves only where nothing else was asked for.
  if (!planned && plan.upkeep && book.page() > 0) return;
  book.open_sheet(SheetKind::write_outs, book.words().say("write_outs.title"));
  if (!planned)
    for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
      pieces.push_back(piece);
  const int pages = plan.pieces.size() > 1 ? 1 : 2;
  for (const int piece : pieces) {
    WriteOuts sheet(book, plan.pieces[piece], piece == pieces.front());
    for (const Day& day : plan.days)
      for (const Task& task : day.tasks)
        if (task.piece == piece && task.drill == Drill::write_out) sheet.planned(day.date, task);
    if (!planned)
      for (const Chunk& chunk : hardest_first(plan.pieces[piece].chunks))
        if (!sheet.offered(chunk.bars, pages)) break;
    sheet.spare(planned ? 1 : pages);
    sheet.finish();
  }
}

}  // namespace cahier
