#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_flow.h"
#include "workbook/parts_staves.h"
#include "workbook/parts_writing_lines.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kHead = 10;
constexpr double kCheck = style::kWritingRow + 1;
constexpr double kAfterBlock = 6;

// A block with a single system.
double least_height(const Piece& piece, const StaffMeasures& measures) {
  StaffSystem system;
  system.staves.resize(piece.instrument.staves.size());
  return kHead + system_height(system, measures) + below_system(measures) + kCheck;
}

// Of the height asked for, or smaller where a small page cannot hold a system of that height.
StaffMeasures fitting_measures(const Book& book, const Piece& piece) {
  constexpr double kHeadAndFoot = 24;
  constexpr double kLeastStaff = 4;
  const double room = book.upright().height - kHeadAndFoot;
  double height = book.print().staff_height;
  while (height > kLeastStaff && least_height(piece, writing_measures(height)) > room)
    height -= 0.25;
  return writing_measures(height);
}

class WriteOuts {
 public:
  WriteOuts(Book& book, const Piece& piece)
      : book_(book),
        words_(book.words()),
        piece_(piece),
        measures_(fitting_measures(book, piece)),
        flow_([this] { return open(); }) {
    if (book.plan().pieces.size() > 1) right_ = piece.title;
  }

  void planned(Date date, const Task& task) {
    const double width = book_width();
    const std::vector<StaffSystem> systems =
        systems_for(book_.typefaces(), piece_, task.bars, measures_, width);
    const double system = system_height(systems.front(), measures_) + below_system(measures_);
    const double whole = kHead + system * static_cast<double>(systems.size()) + kCheck;
    if (!flow_.fits(whole)) flow_.next_page();
    for (std::size_t at = 0; at < systems.size(); ++at) {
      const bool first = at == 0;
      const bool last = at + 1 == systems.size();
      const Box box = flow_.take(system + (first ? kHead : 0) + (last ? kCheck : 0));
      if (first) {
        book_.note_task(task);
        draw_head(box.top(kHead), date, task.bars);
      }
      draw_system(book_.canvas(), box.without_top(first ? kHead : 0), systems[at], measures_);
      if (last) draw_check(box.bottom(kCheck).top(style::kWritingRow));
    }
    flow_.skip(kAfterBlock);
  }

  // A page of staves whose bars the player fills in.
  void blank_page() {
    flow_.next_page();
    const StaffSystem system = blank_system(book_.typefaces(), piece_, measures_, book_width());
    const double height =
        style::kWritingRow + system_height(system, measures_) + below_system(measures_);
    StaffSystem next = system;
    next.meter.reset();
    bool first = true;
    do {
      const Box box = flow_.take(height);
      draw_write_ins(book_.canvas(), box.top(style::kWritingRow).left(std::min(130.0, box.width)),
                     {{words_.say("write_outs.bars_blank"), 1},
                      {words_.say("write_outs.to_blank"), 1},
                      {words_.say("write_outs.date_blank"), 1.4}},
                     style::kBody);
      draw_system(book_.canvas(), box.without_top(style::kWritingRow), first ? system : next,
                  measures_);
      first = false;
    } while (flow_.fits(height));
  }

 private:
  double book_width() const { return book_.upright().width; }

  Box open() {
    Box page = book_.open_page(right_);
    if (is_open_) return page;
    if (!right_.empty()) book_.mark(right_);
    is_open_ = true;
    for (const std::string& text : words_.list("write_outs.how")) {
      const TextBlock block(book_.typefaces(), text, style::kBody, page.width);
      block.draw(book_.canvas(), page);
      page = page.without_top(block.height() + 1.2);
    }
    page = page.without_top(4);
    return page.height < least_height(piece_, measures_) ? book_.open_page(right_) : page;
  }

  void draw_head(const Box& box, Date date, BarRange bars) {
    const double large =
        draw_line(book_.canvas(), box.left(box.width * 0.4),
                  words_.say("write_outs.bars", {{"bars", bar_range(bars.first, bars.last)}}),
                  style::kStandBars, Align::left, style::kLeastStand);
    draw_line(book_.canvas(), box.without_left(large + 5),
              words_.say("write_outs.planned", {{"date", weekday_day_month(words_, date)}}),
              style::kBody, Align::left, style::kLeast);
  }

  void draw_check(const Box& row) {
    draw_write_ins(book_.canvas(), row,
                   {{words_.say("write_outs.checked"), 2.6}, {words_.say("write_outs.wrong"), 1}},
                   style::kBody);
  }

  Book& book_;
  const Words& words_;
  const Piece& piece_;
  StaffMeasures measures_;
  std::string right_;
  bool is_open_ = false;
  Flow flow_;
};

}  // namespace

void draw_write_outs(Book& book) {
  const Plan& plan = book.plan();
  book.open_sheet("write-outs", book.words().say("write_outs.title"));
  bool planned = false;
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece) {
    WriteOuts sheet(book, plan.pieces[piece].piece);
    for (const Day& day : plan.days)
      for (const Task& task : day.tasks) {
        if (task.piece != piece || task.drill != Drill::write_out) continue;
        sheet.planned(day.date, task);
        planned = true;
      }
  }
  if (planned) return;
  const int pages = plan.pieces.size() > 1 ? 1 : 2;
  for (const PlannedPiece& piece : plan.pieces) {
    WriteOuts sheet(book, piece.piece);
    for (int page = 0; page < pages; ++page) sheet.blank_page();
  }
}

}  // namespace cahier
