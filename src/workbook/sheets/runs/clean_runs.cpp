#include "workbook/sheets/runs/clean_runs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "paper/text_fitting.h"
#include "practice/clean_run_odds.h"
#include "text/phrasing.h"
#include "workbook/parts/table.h"
#include "workbook/style.h"

namespace cahier {
namespace {

// So many clean ones in a row, and what to do next.
struct CleanRow {
  int runs;
  std::string_view next;
};
constexpr std::array<CleanRow, 3> kRows = {
    {{5, "run_tally.next_five"}, {10, "run_tally.next_ten"}, {20, "run_tally.next_twenty"}}};
// In a row, within so many tries, of a player who is clean in so many of ten.
constexpr int kStreak = 5;
constexpr int kTries = 20;
constexpr int kShakyOfTen = 6;
constexpr double kDash = 4;  // from the left of a point to its text

// All of it, laid out for a width.
class Explanation {
 public:
  Explanation(Book& book, double width)
      : book_(book),
        width_(width),
        table_(book.typefaces(), columns(book.words()), width, 0),
        teacher_(book.typefaces(), teacher_line(book.words()), style::kNote, width) {
    const Words& words = book.words();
    for (const auto& [runs, next] : kRows)
      add_row(
          words.say(runs == kRows.back().runs ? "run_tally.in_a_row_more" : "run_tally.in_a_row",
                    {{"number", runs}}),
          clean_of_ten(runs, 0), next);
    add_row(words.say("run_tally.after_a_slip"), 0, "run_tally.next_slip");
    for (const std::string& point :
         {words.say("run_tally.holds_only"),
          words.say(
              "run_tally.streak",
              {{"streak", kStreak},
               {"tries", kTries},
               {"clean", kShakyOfTen},
               {"chance", std::lround(100 * streak_chance(kStreak, kTries, kShakyOfTen / 10.0))}}),
          words.say("run_tally.tells_not")})
      points_.emplace_back(book.typefaces(), point, style::kBody, width - kDash);
  }

  double height() const {
    double height = kHeading + on_grid(table_.head_height());
    for (const Row& row : rows_) height += row.height();
    height += kBetween;
    for (const TextBlock& point : points_) height += on_grid(point.height());
    return height + kBetween + on_grid(teacher_.height());
  }

  void draw(Box box) const {
    Canvas& canvas = book_.canvas();
    const auto need = [&](double height) {
      if (box.height + kTolerance < height) box = book_.open_page();
    };
    need(kHeading + on_grid(table_.head_height()) + rows_.front().height());
    draw_line(canvas, box.top(kHeading).without_bottom(kGrid),
              book_.words().say("run_tally.tells_heading"), style::kHeading, Align::left,
              style::kLeast);
    box = box.without_top(kHeading);
    table_.draw_head(canvas, box);
    box = box.without_top(on_grid(table_.head_height()));
    for (const Row& row : rows_) {
      need(row.height());
      const std::vector<Box> cells = row_cells(box, row.height());
      row.runs.draw(canvas, cells[0]);
      row.promise.draw(canvas, cells[1]);
      row.next.draw(canvas, cells[2]);
      box = box.without_top(row.height());
      canvas.line({box.x, box.y}, {box.x + width_, box.y}, style::kHairline);
    }
    box = box.without_top(std::min(kBetween, box.height));
    for (const TextBlock& point : points_) {
      need(point.height());
      draw_line(canvas, box.top(point.line_height()).left(kDash), "–", style::kBody, Align::left,
                style::kLeast);
      point.draw(canvas, box.without_left(kDash));
      box = box.without_top(std::min(on_grid(point.height()), box.height));
    }
    need(kBetween + teacher_.height());
    teacher_.draw(canvas, box.without_top(kBetween));
  }

 private:
  static constexpr double kHeading = 5 * kGrid;
  static constexpr double kBetween = 2 * kGrid;
  static constexpr double kTolerance = 1e-6;

  struct Row {
    TextBlock runs;
    TextBlock promise;
    TextBlock next;
    double height() const {
      return on_grid(std::max({runs.height(), promise.height(), next.height()}) + kGrid);
    }
  };

  static std::vector<Column> columns(const Words& words) {
    return {{words.say("run_tally.runs"), 30},
            {words.say("run_tally.promise"), 44},
            {words.say("run_tally.what_next"), 100}};
  }

  // The cells of a row of its own height; Table's are all of one.
  std::vector<Box> row_cells(const Box& box, double height) const {
    std::vector<Box> cells = table_.cells(box);
    for (Box& cell : cells) cell = Box{cell.x, box.y + kGrid / 2, cell.width, height};
    return cells;
  }

  void add_row(const std::string& runs, int of_ten, std::string_view next) {
    const Words& words = book_.words();
    const std::vector<Box> cells = table_.cells({0, 0, width_, 0});
    const std::string promise =
        of_ten > 0 ? words.say("run_tally.of_ten", {{"clean", of_ten}})
                   : words.say("run_tally.of_ten_slip",
                               {{"five", clean_of_ten(5, 1)}, {"ten", clean_of_ten(10, 1)}});
    const Typefaces& faces = book_.typefaces();
    rows_.push_back({TextBlock(faces, runs, style::kStrong, cells[0].width),
                     TextBlock(faces, promise, style::kBody, cells[1].width),
                     TextBlock(faces, words.say(next), style::kBody, cells[2].width)});
  }

  static std::string teacher_line(const Words& words) {
    const auto list = [&](int slips) {
      std::vector<std::string> points;
      for (const auto& [runs, next] : kRows)
        points.push_back(
            words.say("run_tally.point", {{"clean", runs - slips},
                                          {"number", runs},
                                          {"percent", percent_at_least(runs, slips)}}));
      return list_text(words, points);
    };
    return words.say("run_tally.teacher", {{"clean", list(0)}, {"slip", list(1)}});
  }

  Book& book_;
  double width_;
  Table table_;
  std::vector<Row> rows_;
  std::vector<TextBlock> points_;
  TextBlock teacher_;
};

}  // namespace

int percent_at_least(int runs, int slips) {
  return static_cast<int>(std::floor(clean_run_bound(runs, slips) * 100));
}

int clean_of_ten(int runs, int slips) {
  return static_cast<int>(std::floor(clean_run_bound(runs, slips) * 10));
}

double clean_runs_height(Book& book, double width) { return Explanation(book, width).height(); }

void draw_clean_runs(Book& book, Box rest) {
  const Explanation explanation(book, rest.width);
  if (rest.height < explanation.height()) rest = book.open_page();
  explanation.draw(rest);
}

}  // namespace cahier
