// Playing all of it: a star for each time, what five good ones mean, and where to go on.
#include <algorithm>

#include "workbook/all_sheets.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/totals.h"
#include "workbook/sheets/child/child_pages.h"

namespace cahier {
namespace {

constexpr double kStar = 14;
constexpr int kGoodOnes = 5;
constexpr double kLadderHigh = 39;  // millimetres, the last of the growing bars
constexpr double kGoOnHigh = 27;    // where to go on, with a row of bars
constexpr double kLadderWide = 15;
constexpr Stroke kLadderLine{0.6, style::kDark, 0, 0, false};

int runs_of(const Plan& plan, int piece) {
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::run_through) runs += times_of(task);
  return runs;
}

// Five bars, each higher than the one before.
void draw_ladder(Book& book, ChildPages& pages) {
  const Box box = pages.take(kLadderHigh + kGrid).without_bottom(kGrid);
  for (int at = 0; at < kGoodOnes; ++at) {
    const Box bar = box.without_left(at * (kLadderWide + kGrid))
                        .left(kLadderWide)
                        .bottom(kLadderHigh * (at + 1) / kGoodOnes);
    book.canvas().rectangle(bar.inset(kLadderLine.width / 2), {kLadderLine, {}});
  }
}

void draw_go_on(Book& book, ChildPages& pages, const PlannedPiece& piece) {
  if (piece.rejoin.empty()) return;
  const Words& words = book.words();
  const TextStyle style = child_heading(book.print());
  const double high = line_pitch(style.size_pt) + 2 * kGrid;
  std::vector<std::string> texts;
  double widest = 0;
  for (const int bar : piece.rejoin) {
    texts.push_back(words.say("child.go_on_bar", {{"bar", bar}}));
    widest = std::max(widest, book.typefaces().width(texts.back(), style.face, style.size_pt));
  }
  widest = std::min(pages.rest().width, widest + 4 * kGrid);
  const int a_row = std::max(1, static_cast<int>(pages.rest().width / widest));
  for (int first = 0; first < static_cast<int>(texts.size()); first += a_row) {
    const Box row = pages.take(high + kGrid);
    for (int at = first; at < std::min(first + a_row, static_cast<int>(texts.size())); ++at) {
      const Box box = row.without_left((at - first) * widest).left(widest - kGrid).top(high);
      book.canvas().rectangle(box.inset(kLadderLine.width / 2), {kLadderLine, {}});
      draw_line(book.canvas(), box.inset(kGrid / 2), texts[at], style, Align::centre,
                child_text(book.print()).size_pt);
    }
  }
}

}  // namespace

void draw_child_runs(Book& book) {
  if (!asks_for(book.plan(), Drill::run_through)) return;
  const Words& words = book.words();
  const auto& pieces = book.plan().pieces;
  book.open_sheet(SheetKind::child_runs, words.say("child.runs_title"));
  ChildPages pages(book);
  pages.text(words.say("child.runs_title"), child_great(book.print()));
  pages.skip(kGrid);
  for (const std::string& text : words.list("child.runs_how")) pages.point(text, Shape::circle);
  for (int at = 0; at < static_cast<int>(pieces.size()); ++at) {
    const int runs = runs_of(book.plan(), at);
    if (runs == 0) continue;
    pages.skip(kGrid);
    if (pieces.size() > 1) pages.keep(2 * kLadderHigh);
    if (pieces.size() > 1) pages.text(book.short_title(pieces[at]), child_heading(book.print()));
    pages.text(words.say("child.runs_stars"), child_strong(book.print()));
    pages.skip(kGrid);
    pages.shapes(runs, Shape::star, kStar);
    pages.text(words.say("child.runs_five"), child_strong(book.print()));
    pages.skip(kGrid);
    draw_ladder(book, pages);
    if (pieces[at].rejoin.empty()) continue;
    pages.keep(kGoOnHigh);
    pages.text(words.say("child.go_on"), child_strong(book.print()));
    pages.skip(kGrid);
    draw_go_on(book, pages, pieces[at]);
  }
}

}  // namespace cahier
