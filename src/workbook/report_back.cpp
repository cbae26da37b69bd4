#include <algorithm>
#include <optional>

#include "paper/text_fitting.h"
#include "plan/plan_words.h"
#include "text/phrasing.h"
#include "workbook/parts_flow.h"
#include "workbook/parts_table.h"
#include "workbook/parts_ticks.h"
#include "workbook/parts_week.h"
#include "workbook/parts_writing_lines.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kRow = style::kWritingRow;
constexpr double kColumnGap = 8;
constexpr double kLeastTwoColumns = 150;  // narrower pages have one column
constexpr double kWeekHead = 13;
constexpr int kCommentLines = 3;

class ReportSheet {
 public:
  explicit ReportSheet(Book& book)
      : book_(book), weeks_(weeks_of(book.plan())), flow_([this] { return open_column(); }) {}

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
      const TextBlock how(book_.typefaces(), book_.words().say("report.how"), style::kBody,
                          page.width);
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
    if (!flow_.fits(kWeekHead + 2 * kRow)) flow_.next_page();
    draw_week_head(week, flow_.take(kWeekHead));
    for (const Day& day : week.days)
      for (const Task& task : day.tasks) {
        if (!flow_.fits(kRow)) {
          flow_.next_page();
          draw_week_head(week, flow_.take(kWeekHead));
        }
        const Box row = flow_.take(kRow);
        const bool first = &task == &day.tasks.front();
        const bool last = &task == &day.tasks.back();
        draw_task(row, task, first ? &day : nullptr);
        book_.canvas().line({row.x, row.bottom()}, {row.right(), row.bottom()},
                            last ? style::kRule : style::kHairline);
      }
    if (book_.print().teacher) draw_comments(week);
    flow_.skip(6);
  }

  // Widths in a column: day, code, work, circle, slips, minutes.
  std::vector<Box> cells(const Box& row) const {
    return row.columns_by_share({15, 13, 27, 7, 20, 10}, 1);
  }

  void draw_week_head(const PlanWeek& week, const Box& box) {
    const Words& words = book_.words();
    draw_line(book_.canvas(), box.top(6.5),
              words.say("report.week",
                        {{"week", words.say("panels.week_mark", {{"number", week.number}})},
                         {"dates", date_span(words, week.first(), week.last())}}),
              style::kStrong, Align::left, style::kLeast);
    const Box heads = box.without_top(6.5).without_bottom(1.5);
    const std::vector<Box> columns = cells(heads);
    const TextStyle style = style::kSmall;
    draw_line(book_.canvas(), columns[1].around(columns[2]), words.say("report.task"), style,
              Align::left, style::kLeast);
    draw_line(book_.canvas(), columns[4], words.say("report.slips"), style, Align::left,
              style::kLeast);
    draw_line(book_.canvas(), columns[5], words.say("report.minutes"), style, Align::right,
              style::kLeast);
    book_.canvas().line({box.x, box.bottom()}, {box.right(), box.bottom()}, style::kRule);
  }

  void draw_task(const Box& row, const Task& task, const Day* day) {
    const Words& words = book_.words();
    Canvas& canvas = book_.canvas();
    const std::vector<Box> columns = cells(row);
    if (day != nullptr)
      draw_line(canvas, columns[0],
                words.say("report.day", {{"weekday", weekday_short(words, day->date)},
                                         {"day", day_of_month(day->date)}}),
                style::kNoteStrong, Align::left, style::kLeast);
    draw_line(canvas, columns[1], task.id, style::kNote, Align::left, style::kLeast);
    draw_cell(canvas, columns[2], say_task(words, task), style::kNote);
    draw_tick(canvas, columns[3]);
    // Two small uprights mark the fields to write in.
    for (const Box& field : {columns[4], columns[5]})
      canvas.line({field.x - 0.5, row.y + 2}, {field.x - 0.5, row.bottom() - 0.3},
                  style::kHairline);
  }

  void draw_comments(const PlanWeek& week) {
    const double height = 6 + writing_lines_height(kCommentLines);
    const Box box = flow_.take(height);
    draw_line(book_.canvas(), box.top(6),
              book_.words().say("report.comments", {{"number", week.number}}), style::kSmall,
              Align::left, style::kLeast);
    draw_writing_lines(book_.canvas(), box.without_top(4), kCommentLines);
  }

  Book& book_;
  std::vector<PlanWeek> weeks_;
  std::optional<Box> right_column_;
  bool explained_ = false;
  Flow flow_;
};

}  // namespace

void draw_report_back(Book& book) {
  book.open_sheet("report back", book.words().say("report.title"));
  ReportSheet(book).draw();
}

}  // namespace cahier
