#include "workbook/sheets/runs/clean_runs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "paper/text_fitting.h"
#include "practice/clean_run_odds.h"
#include "workbook/parts/table.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr std::array<int, 7> kRuns = {3, 5, 8, 10, 20, 29, 59};
constexpr std::array<int, 2> kMarked = {5, 10};  // points on the curve
constexpr int kCurveRuns = 30;
constexpr double kCurveHeight = 36 * kGrid;
constexpr double kCurveShare = 0.38;  // of the width, beside the sentences
constexpr double kBeside = 150;       // millimetres of width for that
constexpr double kBesideCurve = 6;
constexpr double kDash = 4;  // from the left of a point to its text

int percent_near(double chance) { return static_cast<int>(std::lround(chance * 100)); }

Table bounds_table(const Book& book, double width) {
  const Words& words = book.words();
  std::vector<Column> columns = {{words.say("run_tally.runs"), 36}};
  for (const int runs : kRuns) columns.push_back({std::to_string(runs), 14});
  // A narrow label has two lines.
  const double row = width >= kBeside ? style::kRow : style::kWritingRow;
  return Table(book.typefaces(), std::move(columns), width, row);
}

double bounds_height(const Table& table) { return table.head_height() + 2 * table.row_height(); }

void draw_bounds(Book& book, const Table& table, const Box& box) {
  const Words& words = book.words();
  Box rest = table.draw_head(book.canvas(), box);
  for (int slips = 0; slips <= 1; ++slips) {
    const std::vector<Box> cells = table.draw_row(book.canvas(), rest);
    draw_cell(book.canvas(), cells[0],
              words.say(slips == 0 ? "run_tally.all_clean" : "run_tally.one_slip"), style::kNote);
    for (std::size_t at = 0; at < kRuns.size(); ++at)
      draw_line(book.canvas(), cells[at + 1],
                words.say("run_tally.percent", {{"percent", percent_at_least(kRuns[at], slips)}}),
                style::kNote, Align::left, style::kLeast);
    rest = rest.without_top(table.row_height());
  }
}

// The chance that so many clean runs prove, run by run.
class Curve {
 public:
  Curve(Book& book, const Box& box)
      : book_(book),
        box_(box),
        plot_(box.without_left(12).without_right(2).without_top(9).without_bottom(10)) {}

  void draw() {
    Canvas& canvas = book_.canvas();
    const Words& words = book_.words();
    draw_cell(canvas, box_.top(8.4), words.say("run_tally.curve"), style::kSmall);
    for (const int percent : {0, 50, 100}) {
      const double y = at(1, percent / 100.0).y;
      canvas.line({plot_.x - 1, y}, {percent == 0 ? plot_.right() : plot_.x, y}, style::kRule);
      draw_line(canvas, {box_.x, y - 2.2, 10, 4.4},
                words.say("run_tally.percent", {{"percent", percent}}), style::kSmall, Align::right,
                style::kLeast);
    }
    canvas.line({plot_.x, plot_.y}, {plot_.x, plot_.bottom()}, style::kRule);
    for (const int runs : {1, 5, 10, 20, 30}) {
      const double x = at(runs, 0).x;
      canvas.line({x, plot_.bottom()}, {x, plot_.bottom() + 1}, style::kRule);
      draw_line(canvas, {x - 3, plot_.bottom() + 1.2, 6, 3.8}, std::to_string(runs), style::kSmall,
                Align::centre, style::kLeast);
    }
    draw_line(canvas, {plot_.x, plot_.bottom() + 5, plot_.width, 4},
              words.say("run_tally.curve_runs"), style::kSmall, Align::right, style::kLeast);
    for (int runs = 1; runs < kCurveRuns; ++runs)
      canvas.line(at(runs, clean_run_bound(runs, 0)), at(runs + 1, clean_run_bound(runs + 1, 0)),
                  kCurve);
    for (const int runs : kMarked) mark(runs);
  }

 private:
  static constexpr Stroke kCurve{0.5, style::kDark, 0, 0, false};

  Point at(int runs, double chance) const {
    return {plot_.x + plot_.width * (runs - 1) / (kCurveRuns - 1),
            plot_.bottom() - plot_.height * chance};
  }

  // A dot, and below it at the right, where the curve has left room, what it says.
  void mark(int runs) {
    const Point point = at(runs, clean_run_bound(runs, 0));
    book_.canvas().circle(point, 2, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
    const std::string text = book_.words().say(
        "run_tally.point", {{"number", runs}, {"percent", percent_at_least(runs, 0)}});
    draw_line(book_.canvas(), {point.x + 2, point.y + 1, plot_.right() - point.x - 2, 4.5}, text,
              style::kNote, Align::left, style::kLeast);
  }

  Book& book_;
  Box box_;
  Box plot_;
};

// A label and the points below it, each after a dash.
class Points {
 public:
  Points(const Book& book, const std::string& label, const std::vector<std::string>& points,
         double width)
      : label_(book.typefaces(), label, style::kStrong, width) {
    for (const std::string& point : points)
      points_.emplace_back(book.typefaces(), point, style::kBody, width - kDash);
  }

  double height() const {
    double height = on_grid(label_.height());
    for (const TextBlock& point : points_) height += on_grid(point.height());
    return height;
  }

  void draw(Canvas& canvas, Box box) const {
    label_.draw(canvas, box);
    box = box.without_top(on_grid(label_.height()));
    for (const TextBlock& point : points_) {
      draw_line(canvas, box.top(point.line_height()).left(kDash), "–", style::kBody, Align::left,
                style::kLeast);
      point.draw(canvas, box.without_left(kDash));
      box = box.without_top(on_grid(point.height()));
    }
  }

 private:
  TextBlock label_;
  std::vector<TextBlock> points_;
};

std::vector<std::string> told(const Book& book) {
  const Words& words = book.words();
  const int asked = std::max(1, book.plan().runs_required());
  return {
      words.say("run_tally.tells", {{"number", asked}, {"percent", percent_at_least(asked, 0)}}),
      words.say("run_tally.tells_slip",
                {{"number", asked}, {"percent", percent_at_least(asked, 1)}})};
}

std::vector<std::string> not_told(const Book& book) {
  const Words& words = book.words();
  // A run of five within twenty tries, for a player who gets through cleanly in three or four of
  // five.
  return {words.say("run_tally.holds_only"),
          words.say("run_tally.streak", {{"shaky", percent_near(streak_chance(5, 20, 0.6))},
                                         {"good", percent_near(streak_chance(5, 20, 0.8))}}),
          words.say("run_tally.tells_not")};
}

// All of it, laid out for a width.
class Explanation {
 public:
  Explanation(Book& book, double width)
      : book_(book),
        beside_(width >= kBeside),
        curve_width_(beside_ ? width * kCurveShare : width),
        text_width_(beside_ ? width - curve_width_ - kBesideCurve : width),
        tells_(book, book.words().say("run_tally.tells_label"), told(book), text_width_),
        tells_not_(book, book.words().say("run_tally.tells_not_label"), not_told(book),
                   text_width_),
        table_(bounds_table(book, width)) {}

  double height() const { return kHeading + figures_height() + kBetween + bounds_height(table_); }

  void draw(Box box) const {
    draw_line(book_.canvas(), box.top(kHeading).without_bottom(kGrid),
              book_.words().say("run_tally.tells_heading"), style::kHeading, Align::left,
              style::kLeast);
    box = box.without_top(kHeading);
    tells_.draw(book_.canvas(), box.left(text_width_));
    tells_not_.draw(book_.canvas(), box.left(text_width_).without_top(tells_.height() + kBetween));
    double curve_at = beside_ ? 0 : points_height() + kBetween;
    double bounds_at = figures_height() + kBetween;
    // On small pages the sentences have one, the figures another.
    if (!beside_ && height() - kHeading > box.height + kTolerance) {
      box = book_.open_page();
      curve_at = 0;
      bounds_at = on_grid(kCurveHeight + kBetween);
    }
    Curve(book_, box.right(curve_width_).without_top(curve_at).top(kCurveHeight)).draw();
    draw_bounds(book_, table_, box.without_top(bounds_at));
  }

 private:
  static constexpr double kHeading = 5 * kGrid;
  static constexpr double kBetween = 2 * kGrid;
  static constexpr double kTolerance = 1e-6;

  double points_height() const { return tells_.height() + kBetween + tells_not_.height(); }
  double figures_height() const {
    return on_grid(beside_ ? std::max(points_height(), kCurveHeight)
                           : points_height() + kBetween + kCurveHeight);
  }

  Book& book_;
  bool beside_;
  double curve_width_;
  double text_width_;
  Points tells_;
  Points tells_not_;
  Table table_;
};

}  // namespace

int percent_at_least(int runs, int slips) {
  return static_cast<int>(std::floor(clean_run_bound(runs, slips) * 100));
}

double clean_runs_height(Book& book, double width) { return Explanation(book, width).height(); }

void draw_clean_runs(Book& book, Box rest) {
  const Explanation explanation(book, rest.width);
  if (rest.height < explanation.height()) rest = book.open_page();
  explanation.draw(rest);
}

}  // namespace cahier
