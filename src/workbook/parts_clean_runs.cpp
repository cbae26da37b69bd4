#include "workbook/parts_clean_runs.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "paper/text_fitting.h"
#include "plan/odds.h"
#include "workbook/parts_table.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr std::array<int, 7> kRuns = {3, 5, 8, 10, 20, 29, 59};
constexpr double kTableRow = 5.4;
constexpr double kFigures = 55;  // height of table and curve
constexpr int kCurveRuns = 60;
constexpr double kAfterParagraph = 1.4;

// Whole per cent, rounded down: the sentence says "at least".
int percent_at_least(int runs, int slips) {
  return static_cast<int>(std::floor(clean_run_bound(runs, slips) * 100));
}

int percent_near(double chance) { return static_cast<int>(std::lround(chance * 100)); }

void draw_bounds(Book& book, const Box& box) {
  const Words& words = book.words();
  const Table table(book.typefaces(),
                    {{words.say("run_tally.runs"), 1},
                     {words.say("run_tally.all_clean"), 1.3},
                     {words.say("run_tally.one_slip"), 1.3}},
                    box.width, kTableRow);
  Box rest = table.draw_head(book.canvas(), box);
  for (const int runs : kRuns) {
    const std::vector<Box> cells = table.draw_row(book.canvas(), rest);
    draw_line(book.canvas(), cells[0], std::to_string(runs), style::kStrong, Align::left,
              style::kLeast);
    for (int slips = 0; slips <= 1; ++slips)
      draw_line(book.canvas(), cells[slips + 1],
                words.say("run_tally.percent", {{"percent", percent_at_least(runs, slips)}}),
                style::kBody, Align::left, style::kLeast);
    rest = rest.without_top(kTableRow);
  }
}

class Curve {
 public:
  Curve(Book& book, const Box& box)
      : book_(book),
        box_(box),
        plot_(box.without_left(12).without_right(3).without_top(9.5).without_bottom(10)) {}

  void draw() {
    Canvas& canvas = book_.canvas();
    const Words& words = book_.words();
    draw_cell(canvas, box_.top(7), words.say("run_tally.curve"), style::kSmall);
    for (const int percent : {0, 50, 100}) {
      const double y = at(0, percent / 100.0).y;
      canvas.line({plot_.x, y}, {plot_.right(), y}, percent == 0 ? style::kRule : style::kHairline);
      draw_line(canvas, {box_.x, y - 2.2, 10.5, 4.4},
                words.say("run_tally.percent", {{"percent", percent}}), style::kSmall, Align::right,
                style::kLeast);
    }
    for (const int runs : {1, 10, 20, 30, 40, 50, 60}) {
      const double x = at(runs, 0).x;
      canvas.line({x, plot_.bottom()}, {x, plot_.bottom() + 1}, style::kRule);
      draw_line(canvas, {x - 3, plot_.bottom() + 1.2, 6, 3.8}, std::to_string(runs), style::kSmall,
                Align::centre, style::kLeast);
    }
    draw_line(canvas, {plot_.x, plot_.bottom() + 5, plot_.width, 4},
              words.say("run_tally.curve_runs"), style::kSmall, Align::right, style::kLeast);
    draw_bound(0, kSolid);
    draw_bound(1, kDashed);
    const Box legend = plot_.right(plot_.width * 0.62).bottom(plot_.height * 0.48);
    draw_legend(legend.top(5), kSolid, words.say("run_tally.all_clean"));
    draw_legend(legend.without_top(6).top(5), kDashed, words.say("run_tally.one_slip"));
    draw_asked(legend);
  }

 private:
  static constexpr Stroke kSolid{0.5, style::kDark, 0, 0, false};
  static constexpr Stroke kDashed{0.5, style::kDark, 1.2, 0.9, false};

  Point at(double runs, double chance) const {
    return {plot_.x + plot_.width * (runs - 1) / (kCurveRuns - 1),
            plot_.bottom() - plot_.height * chance};
  }

  // Dashes are measured along the whole curve: its pieces are shorter than a dash.
  void draw_bound(int slips, const Stroke& stroke) {
    constexpr int kPieces = 8;  // to a run
    const Stroke solid{stroke.width, stroke.grey, 0, 0, false};
    const double period = stroke.dash + stroke.gap;
    double length = 0;
    for (int piece = (1 + slips) * kPieces; piece < kCurveRuns * kPieces; ++piece) {
      const Point from = bound_at(slips, piece / static_cast<double>(kPieces));
      const Point to = bound_at(slips, (piece + 1) / static_cast<double>(kPieces));
      if (period <= 0 || std::fmod(length, period) < stroke.dash)
        book_.canvas().line(from, to, solid);
      length += std::hypot(to.x - from.x, to.y - from.y);
    }
  }

  // Between whole numbers of runs on the straight line that joins them.
  Point bound_at(int slips, double runs) const {
    const int below = static_cast<int>(runs);
    const double low = clean_run_bound(below, slips);
    return at(runs, low + (runs - below) * (clean_run_bound(below + 1, slips) - low));
  }

  void draw_legend(const Box& row, const Stroke& stroke, const std::string& text) {
    const double y = row.centre().y;
    book_.canvas().line({row.x, y}, {row.x + 6, y}, stroke);
    draw_line(book_.canvas(), row.without_left(8), text, style::kSmall, Align::left, style::kLeast);
  }

  // A dot where all the runs that the book asks for are clean.
  void draw_asked(const Box& legend) {
    const int asked = book_.plan().runs_required();
    if (asked < 1 || asked > kCurveRuns) return;
    book_.canvas().circle(at(asked, clean_run_bound(asked, 0)), 2, {{}, Fill{style::kDark, false}},
                          CircleUse::ornament);
    const Box row = legend.without_top(12).top(5);
    book_.canvas().circle({row.x + 3, row.centre().y}, 2, {{}, Fill{style::kDark, false}},
                          CircleUse::ornament);
    draw_line(book_.canvas(), row.without_left(8),
              book_.words().say("run_tally.asked", {{"number", asked}}), style::kSmall, Align::left,
              style::kLeast);
  }

  Book& book_;
  Box box_;
  Box plot_;
};

std::vector<std::string> sentences(const Book& book) {
  const Words& words = book.words();
  const int asked = std::max(1, book.plan().runs_required());
  // A run of five within twenty tries, for a player who gets through cleanly in three or four of
  // five.
  return {
      words.say("run_tally.tells", {{"number", asked}, {"percent", percent_at_least(asked, 0)}}),
      words.say("run_tally.tells_slip",
                {{"number", asked}, {"percent", percent_at_least(asked, 1)}}),
      words.say("run_tally.holds_only"),
      words.say("run_tally.streak", {{"shaky", percent_near(streak_chance(5, 20, 0.6))},
                                     {"good", percent_near(streak_chance(5, 20, 0.8))}}),
      words.say("run_tally.tells_not")};
}

}  // namespace

void draw_clean_runs(Book& book, Box rest) {
  std::vector<TextBlock> blocks = {
      {book.typefaces(), book.words().say("run_tally.tells_heading"), style::kHeading, rest.width}};
  for (const std::string& sentence : sentences(book))
    blocks.emplace_back(book.typefaces(), sentence, style::kBody, rest.width);
  double height = kFigures + 4;
  for (const TextBlock& block : blocks) height += block.height() + kAfterParagraph;
  if (rest.height < height) rest = book.open_page();
  for (const TextBlock& block : blocks) {
    block.draw(book.canvas(), rest);
    rest = rest.without_top(block.height() + kAfterParagraph);
  }
  const Box figures = rest.without_top(3).top(kFigures);
  const double table = figures.width * 0.4;
  draw_bounds(book, figures.left(table));
  Curve(book, figures.without_left(table + 6)).draw();
}

}  // namespace cahier
