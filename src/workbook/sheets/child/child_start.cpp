// The first page of a child's packet: whose it is, how it goes, and what is known by heart.
#include <algorithm>

#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/teachers_note.h"
#include "workbook/sheets/child/child_pages.h"

namespace cahier {
namespace {

constexpr double kLeastStair = 22;  // millimetres wide: "bars" of three digits in it
constexpr double kMostStair = 40;
constexpr double kStairRow = 22;
constexpr double kStairRise = 9;  // from the first step of a row to the last
constexpr Stroke kStairLine{0.5, style::kDark, 0, 0, false};
constexpr Shape kPointShapes[] = {Shape::star, Shape::circle, Shape::triangle, Shape::square,
                                  Shape::diamond};

// A box for each few bars, growing to the right.
void draw_stairs(Book& book, ChildPages& pages, const PlannedPiece& piece) {
  const TextStyle style = child_text(book.print());
  double widest = kLeastStair;
  for (const Chunk& chunk : piece.chunks)
    widest = std::max(
        widest, 2 * kGrid + book.typefaces().width(bar_range(chunk.bars.first, chunk.bars.last),
                                                   style.face, style.size_pt));
  const std::size_t a_row =
      std::max<std::size_t>(1, static_cast<std::size_t>(pages.rest().width / widest));
  const double shared = pages.rest().width / static_cast<double>(piece.chunks.size());
  widest = std::max(widest, std::min(kMostStair, shared));
  for (std::size_t first = 0; first < piece.chunks.size(); first += a_row) {
    const Box row = pages.take(kStairRow);
    const std::size_t count = std::min(a_row, piece.chunks.size() - first);
    const double rise = count > 1 ? kStairRise / static_cast<double>(count - 1) : 0;
    for (std::size_t at = 0; at < count; ++at) {
      const BarRange bars = piece.chunks[first + at].bars;
      const double height = kStairRow - 2 * kGrid - kStairRise + rise * static_cast<double>(at);
      const Box step =
          row.without_bottom(kGrid).bottom(height).without_left(widest * static_cast<double>(at));
      book.canvas().rectangle(step.left(widest).inset(kStairLine.width / 2), {kStairLine, {}});
      draw_line(book.canvas(), step.left(widest).bottom(line_pitch(style.size_pt) + kGrid),
                bar_range(bars.first, bars.last), style, Align::centre, style.size_pt);
    }
  }
}

}  // namespace

void draw_child_start(Book& book) {
  const Plan& plan = book.plan();
  const Words& words = book.words();
  const TextStyle strong = child_strong(book.print());
  book.open_sheet(SheetKind::child_start, words.say("child.start_title"));
  ChildPages pages(book);
  pages.text(book.title(), child_great(book.print()));
  pages.text(words.say("child.plays_on", {{"date", weekday_day_month(words, plan.by)}}), strong);
  const PrintedNames& names = book.print().names;
  if (names.student.empty())
    pages.write_in(words.say("child.name"));
  else
    pages.text(words.say("child.named", {{"student", names.student}}), strong);
  if (!names.note.empty()) pages.text(teachers_note(words, names), child_text(book.print()));
  pages.skip(2 * kGrid);
  int at = 0;
  for (const std::string& text : words.list("child.how"))
    pages.point(text, kPointShapes[at++ % std::size(kPointShapes)]);
  pages.skip(2 * kGrid);
  pages.text(words.say("child.grown_up"), strong);
  for (const std::string& text : words.list("child.grown_up_how"))
    pages.text(text, child_text(book.print()));
  pages.skip(3 * kGrid);
  pages.keep(kStairRow + line_pitch(strong.size_pt));
  pages.text(words.say("child.by_heart"), strong);
  for (const PlannedPiece& piece : plan.pieces) {
    if (plan.pieces.size() > 1) pages.text(book.short_title(piece), strong);
    draw_stairs(book, pages, piece);
  }
}

}  // namespace cahier
