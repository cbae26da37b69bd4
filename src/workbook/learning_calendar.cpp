#include "workbook/learning_calendar.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_dates.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kRow = 4.5;
constexpr double kWideLabel = 28;   // for bars of four figures
constexpr double kUsualLabel = 22;  // the column of chunks
constexpr double kLeastColumn = 1.7;
constexpr double kMostColumn = 5;
constexpr Fill kDayOff{0.85, true};
constexpr double kHead = 23;  // heading, sentence, legend, dates

// The strongest thing that happens to a chunk in a column wins.
enum class Dot { none, joined, recalled, learned };

Dot dot_of(Drill drill) {
  if (drill == Drill::learn) return Dot::learned;
  return retrieves(drill) ? Dot::recalled : Dot::joined;
}

void draw_dot(Canvas& canvas, Point centre, Dot dot) {
  switch (dot) {
    case Dot::none:
      return;
    case Dot::joined:
      canvas.circle(centre, 1.0, {Stroke{0.2, style::kDark, 0, 0, false}, {}}, CircleUse::ornament);
      return;
    case Dot::recalled:
      canvas.circle(centre, 1.1, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
      return;
    case Dot::learned:
      canvas.rectangle({centre.x - 0.8, centre.y - 1.2, 1.6, 2.4}, {{}, Fill{style::kDark, false}});
      return;
  }
}

class Calendar {
 public:
  Calendar(Book& book, int piece, Box page, double used)
      : book_(book), piece_(book.plan().pieces[piece]), index_(piece), page_(page) {
    if (piece_.piece.bars >= 1000) label_ = kWideLabel;
    const double room = page.width - label_;
    const double number_of_days = static_cast<double>(book.plan().days.size());
    for (span_ = 1; number_of_days / span_ * kLeastColumn > room;)
      span_ = span_ == 1 ? 7 : span_ * 2;
    columns_ = (static_cast<int>(book.plan().days.size()) + span_ - 1) / span_;
    column_width_ = std::min(kMostColumn, room / std::max(columns_, 1));
    collect();
    body_ = page.without_top(used);
    if (body_.height < kHead + kRow * static_cast<double>(rows_.size())) open_page();
  }

  void draw() {
    std::size_t first = 0;
    bool continued = false;
    while (first < rows_.size()) {
      if (continued) open_page();
      const auto fitting = static_cast<std::size_t>((body_.height - kHead) / kRow);
      const std::size_t last = std::min(rows_.size(), first + std::max<std::size_t>(fitting, 1));
      draw_part(first, last, continued);
      first = last;
      continued = true;
    }
  }

 private:
  struct Row {
    std::string label;
    std::string bars;
    std::vector<Dot> dots;
    bool begins_section = false;
  };

  void open_page() {
    page_ = book_.open_page(piece_.piece.title).inset(0.3, 0);
    body_ = page_;
  }

  void collect() {
    for (std::size_t at = 0; at < piece_.chunks.size(); ++at) {
      const Chunk& chunk = piece_.chunks[at];
      rows_.push_back({chunk.id, bar_range(chunk.bars.first, chunk.bars.last),
                       std::vector<Dot>(columns_, Dot::none),
                       at > 0 && chunk.section != piece_.chunks[at - 1].section});
    }
    rows_.push_back(
        {book_.words().say("form_map.runs"), "", std::vector<Dot>(columns_, Dot::none), true});
    const std::vector<Day>& all = book_.plan().days;
    for (std::size_t day = 0; day < all.size(); ++day)
      for (const Task& task : all[day].tasks) {
        if (task.piece != index_) continue;
        const std::size_t column = day / span_;
        const Dot dot = dot_of(task.drill);
        if (task.drill == Drill::run_through) {
          rows_.back().dots[column] = dot;
          continue;
        }
        for (const int chunk : task.chunks)
          rows_[chunk].dots[column] = std::max(rows_[chunk].dots[column], dot);
      }
  }

  void draw_part(std::size_t first, std::size_t last, bool continued) {
    Canvas& canvas = book_.canvas();
    const Words& words = book_.words();
    draw_line(canvas, body_.top(6),
              words.say(continued ? "form_map.days_continued" : "form_map.days_heading"),
              style::kHeading, Align::left, style::kLeast);
    draw_line(canvas, body_.without_top(6).top(5),
              span_ == 1 ? words.say("form_map.days_lead")
                         : words.say("form_map.days_lead_spans", {{"number", span_}}),
              style::kBody, Align::left, style::kLeast);
    draw_legend(body_.without_top(11).top(5.5));
    const Box grid{body_.x + label_, body_.y + kHead, column_width_ * columns_,
                   kRow * static_cast<double>(last - first)};
    draw_days(grid);
    for (std::size_t at = first; at < last; ++at)
      draw_row(rows_[at], grid.without_top(kRow * static_cast<double>(at - first)).top(kRow),
               at > first && rows_[at].begins_section);
    canvas.line({body_.x, grid.y}, {grid.right(), grid.y}, style::kRule);
    canvas.line({body_.x, grid.bottom()}, {grid.right(), grid.bottom()}, style::kRule);
  }

  void draw_legend(Box row) {
    const Words& words = book_.words();
    const std::array<std::pair<Dot, std::string>, 3> entries = {
        {{Dot::learned, words.say("form_map.mark_learned")},
         {Dot::recalled, words.say("form_map.mark_recalled")},
         {Dot::joined, words.say("form_map.mark_joined")}}};
    const bool has_days_off =
        span_ == 1 && std::any_of(book_.plan().days.begin(), book_.plan().days.end(),
                                  [](const Day& day) { return day.allowance <= 0; });
    const std::vector<Box> cells = row.columns_by_share({1.1, 2.4, 2.2, 1}, 2);
    if (has_days_off) {
      book_.canvas().rectangle(cells[3].left(2).inset(0, 0.8), {{}, kDayOff});
      draw_line(book_.canvas(), cells[3].without_left(3.5), words.say("form_map.mark_off"),
                style::kSmall, Align::left, style::kLeast);
    }
    for (std::size_t at = 0; at < entries.size(); ++at) {
      draw_dot(book_.canvas(), {cells[at].x + 1, cells[at].centre().y}, entries[at].first);
      draw_line(book_.canvas(), cells[at].without_left(3.5), entries[at].second, style::kSmall,
                Align::left, style::kLeast);
    }
  }

  // Days off as pale stripes, Mondays (or the first of a month, or of a year) as lines with dates.
  void draw_days(const Box& grid) {
    Canvas& canvas = book_.canvas();
    const std::vector<Day>& all = book_.plan().days;
    double free_from = grid.x;
    for (int column = 0; column < columns_; ++column) {
      const Day& day = all[column * span_];
      const double x = grid.x + column * column_width_;
      if (span_ == 1 && day.allowance <= 0)
        canvas.rectangle({x, grid.y, column_width_, grid.height}, {{}, kDayOff});
      const bool begins = column == 0 || (span_ == 1 && weekday_index(day.date) == 0) ||
                          (span_ > 1 && column % 4 == 0);
      if (!begins) continue;
      const std::string date = short_date(book_.words(), book_.plan(), day.date);
      const double width =
          book_.typefaces().width(date, style::kSmall.face, style::kSmall.size_pt) + 0.6;
      canvas.line({x, grid.y - 1}, {x, grid.bottom()}, {0.12, 0.6, 0, 0, true});
      if (x < free_from || x + width > page_.right()) continue;
      draw_line(canvas, {x, grid.y - 5.6, width, 4.6}, date, style::kSmall, Align::left,
                style::kLeast);
      free_from = x + width + 1.5;
    }
  }

  void draw_row(const Row& row, const Box& box, bool ruled) {
    Canvas& canvas = book_.canvas();
    const Box label{body_.x, box.y, label_ - 1.5, box.height};
    const TextStyle small = style::kNote;
    if (row.bars.empty()) {
      draw_line(canvas, label, row.label, small, Align::left, style::kLeast);
    } else {
      draw_line(canvas, label.left(9), row.label, small, Align::left, style::kLeast);
      draw_line(canvas, label.without_left(9.5), row.bars, style::kSmall, Align::right,
                style::kLeast);
    }
    canvas.line({ruled ? body_.x : box.x, box.y}, {box.right(), box.y},
                ruled ? style::kHairline : Stroke{0.1, style::kPale, 0, 0, true});
    for (int column = 0; column < columns_; ++column)
      draw_dot(canvas, {box.x + (column + 0.5) * column_width_, box.centre().y}, row.dots[column]);
  }

  Book& book_;
  const PlannedPiece& piece_;
  int index_;
  Box page_;
  Box body_;
  int span_ = 1;  // days in a column
  int columns_ = 0;
  double label_ = kUsualLabel;
  double column_width_ = 0;
  std::vector<Row> rows_;
};

}  // namespace

void draw_learning_calendar(Book& book, int piece, Box page, double used) {
  Calendar(book, piece, page, used).draw();
}

}  // namespace cahier
