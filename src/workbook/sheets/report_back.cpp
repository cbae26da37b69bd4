#include <algorithm>
#include <optional>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/totals.h"
#include "workbook/parts/week_words.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kColumnGap = 8;
constexpr double kLeastTwoColumns = 150;  // narrower pages have one column
constexpr double kWeekHead = 8 * kGrid;
constexpr double kDay = 15;  // columns, millimetres
constexpr double kCode = 11;
constexpr double kStep = 5.5;  // from circle to circle
constexpr double kLeastSlips = 20;
constexpr double kMinutes = 13;
constexpr double kLineOfCircles = style::kRow;
constexpr int kCommentLines = 3;
constexpr double kComments = style::kRow + writing_lines_height(kCommentLines);
constexpr double kLeadRoom = 24;  // that the first page needs for its sentences
constexpr TextStyle kNumber = style::kFine;

// "0105" and "2" of "0105-2".
std::string_view day_of_code(std::string_view id) { return id.substr(0, id.find('-')); }
std::string_view number_in_code(std::string_view id) { return id.substr(id.find('-') + 1); }

class ReportSheet {
 public:
  explicit ReportSheet(Book& book)
      : book_(book),
        weeks_(weeks_of(book.plan())),
        width_(book.content().width),
        flow_([this] { return open_column(); }) {
    if (width_ >= kLeastTwoColumns) width_ = (width_ - kColumnGap) / 2;
  }

  void draw() {
    for (const PlanWeek& week : weeks_) draw_week(week);
  }

 private:
  // The left column of a new page, or the right one of the page that is open.
  Box open_column() {
    if (right_column_) {
      const Box column = *right_column_;
      right_column_.reset();
      return column;
    }
    Box page = book_.open_page();
    if (!explained_) {
      explained_ = true;
      std::string text = book_.words().say("report.how");
      if (asks_for(book_.plan(), Drill::slow_pass))
        text += " " + book_.words().say("report.how_mended");
      const TextBlock how(book_.typefaces(), text, style::kBody, page.width);
      how.draw(book_.canvas(), page);
      page = page.without_top(how.height() + 4);
    }
    if (page.width < kLeastTwoColumns) return page;
    const std::vector<Box> columns = page.columns(2, kColumnGap);
    right_column_ = columns[1];
    return columns[0];
  }

  void draw_week(const PlanWeek& week) {
    const bool idle = std::all_of(week.days.begin(), week.days.end(),
                                  [](const Day& day) { return day.tasks.empty(); });
    if (idle) return;
    // A week that a column can hold is not divided.
    double height = kWeekHead + (book_.print().teacher ? kComments : 0);
    for (const Day& day : week.days)
      if (!day.tasks.empty()) height += row_height(day);
    const bool whole = height <= book_.content().height - kLeadRoom;
    if (!flow_.fits(whole ? height : kWeekHead + 2 * style::kWritingRow)) flow_.next_page();
    draw_week_head(week, flow_.take(kWeekHead));
    for (const Day& day : week.days) {
      if (day.tasks.empty()) continue;
      const double row = row_height(day);
      if (!flow_.fits(row)) {
        flow_.next_page();
        draw_week_head(week, flow_.take(kWeekHead));
      }
      draw_day(flow_.take(row), day);
    }
    if (book_.print().teacher) draw_comments(week);
    flow_.skip(6);
  }

  // As many circles beside one another as leave room for the slips, five at most.
  int circles_in_line() const {
    const double free = width_ - kDay - kCode - kMinutes - kLeastSlips;
    return std::clamp(static_cast<int>(free / kStep), 1, 5);
  }
  double row_height(const Day& day) const {
    const int lines =
        (static_cast<int>(day.tasks.size()) + circles_in_line() - 1) / circles_in_line();
    return style::kWritingRow + kLineOfCircles * (lines - 1);
  }
  // Day, code, circles, minutes, slips: the order in which a log tells them.
  std::vector<Box> cells(const Box& row) const {
    const double circles = kStep * circles_in_line() + 2;
    return row.columns_by_share(
        {kDay, kCode, circles, kMinutes, row.width - kDay - kCode - circles - kMinutes});
  }

  void draw_week_head(const PlanWeek& week, const Box& box) {
    const Words& words = book_.words();
    draw_line(book_.canvas(), box.top(style::kRow),
              words.say("report.week",
                        {{"week", words.say("panels.week_mark", {{"number", week.number}})},
                         {"dates", date_span(words, week.first(), week.last())}}),
              style::kStrong, Align::left, style::kLeast);
    const std::vector<Box> columns = cells(box.without_top(style::kRow).without_bottom(kGrid));
    draw_line(book_.canvas(), columns[1].around(columns[2]).without_right(2),
              words.say("report.task"), style::kSmall, Align::left, style::kLeast);
    draw_line(book_.canvas(), columns[3].without_left(0.5), words.say("report.minutes"),
              style::kSmall, Align::left, style::kLeast);
    draw_line(book_.canvas(), columns[4].without_left(0.5), words.say("report.slips"),
              style::kSmall, Align::left, style::kLeast);
    book_.canvas().line({box.x, box.bottom()}, {box.right(), box.bottom()}, style::kRule);
  }

  void draw_day(const Box& row, const Day& day) {
    const Words& words = book_.words();
    Canvas& canvas = book_.canvas();
    const std::vector<Box> columns = cells(row);
    draw_line(canvas, columns[0].top(style::kWritingRow),
              words.say("report.day", {{"weekday", weekday_short(words, day.date)},
                                       {"day", day_of_month(day.date)}}),
              style::kNoteStrong, Align::left, style::kLeast);
    draw_line(canvas, columns[1].top(style::kWritingRow), day_of_code(day.tasks.front().id),
              style::kNote, Align::left, style::kLeast);
    for (std::size_t at = 0; at < day.tasks.size(); ++at) {
      const int line = static_cast<int>(at) / circles_in_line();
      const int place = static_cast<int>(at) % circles_in_line();
      const Box circle = columns[2]
                             .top(style::kWritingRow)
                             .left(kStep)
                             .moved(kStep * place, kLineOfCircles * line);
      draw_tick(canvas, circle);
      draw_line(canvas, circle.inset(1, 0), number_in_code(day.tasks[at].id), kNumber,
                Align::centre, 7);
    }
    // Two small uprights mark the fields to write in.
    for (const Box& field : {columns[3], columns[4]})
      canvas.line({field.x - 0.5, row.y + 2}, {field.x - 0.5, row.bottom() - 0.3},
                  style::kHairline);
    canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()}, style::kHairline);
  }

  void draw_comments(const PlanWeek& week) {
    const Box box = flow_.take(kComments);
    draw_line(book_.canvas(), box.top(style::kRow),
              book_.words().say("report.comments", {{"number", week.number}}), style::kSmall,
              Align::left, style::kLeast);
    draw_writing_lines(book_.canvas(), box.without_top(4), kCommentLines);
  }

  Book& book_;
  std::vector<PlanWeek> weeks_;
  std::optional<Box> right_column_;
  bool explained_ = false;
  double width_;  // of a column, millimetres
  Flow flow_;
};

}  // namespace

void draw_report_back(Book& book) {
  book.open_sheet(SheetKind::report_back, book.words().say("report.title"));
  ReportSheet(book).draw();
}

}  // namespace cahier
