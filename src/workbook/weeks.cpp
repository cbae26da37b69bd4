#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_wall_day.h"
#include "workbook/parts_week.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr std::size_t kWeeksOnePage = 26;  // longer plans have several weeks on a page
constexpr std::size_t kWeeksTwoPage = 60;
constexpr double kSmallPaper = 250;  // millimetres high, takes two weeks at most
constexpr double kGoal = 11;         // the line above a week that has its page to itself
constexpr double kRowGoal = 6;
constexpr double kBetweenWeeks = 4;

class WeekSheet {
 public:
  explicit WeekSheet(Book& book)
      : book_(book), weeks_(weeks_of(book.plan())), on_page_(weeks_on_page()) {}

  void draw() {
    const std::size_t step = static_cast<std::size_t>(on_page_);
    for (std::size_t first = 0; first < weeks_.size(); first += step) {
      const std::size_t last = std::min(first + step, weeks_.size()) - 1;
      const Box page = book_.open_wide_page(head_of(weeks_[first], weeks_[last]));
      book_.mark(book_.words().say("panels.week_mark", {{"number", weeks_[first].number}}));
      const std::vector<Box> rows = page.rows(on_page_, kBetweenWeeks);
      if (first == 0) sizes_ = sizes_for(columns_of(rows.front()).front());
      for (std::size_t week = first; week <= last; ++week)
        draw_week(rows[week - first], weeks_[week]);
    }
  }

 private:
  int weeks_on_page() const {
    if (weeks_.size() <= kWeeksOnePage) return 1;
    return weeks_.size() <= kWeeksTwoPage || book_.print().paper.height < kSmallPaper ? 2 : 3;
  }

  std::vector<Box> columns_of(const Box& week) const {
    return week.without_top(on_page_ == 1 ? kGoal : kRowGoal).columns(7);
  }
  static Box inside(const Box& column) { return column.inset(1.8, 1.5); }

  // The largest type in which every day of the plan has room; the least where none does.
  WallSizes sizes_for(const Box& column) const {
    const Box box = inside(column);
    for (const double scale : {1.7, 1.5, 1.3, 1.15}) {
      const WallSizes sizes{scale};
      const auto& days = book_.plan().days;
      if (std::all_of(days.begin(), days.end(), [&](const Day& day) {
            return WallDay(book_, day).fits(box.width, box.height, sizes);
          }))
        return sizes;
    }
    return {};
  }

  std::string head_of(const PlanWeek& first, const PlanWeek& last) const {
    const Words& words = book_.words();
    if (first.number == last.number)
      return words.say("weeks.head", {{"week", week_title(words, first, weeks_.size())},
                                      {"dates", week_dates(words, first)}});
    return date_span(words, first.first(), last.last());
  }

  // Read from the wall where it fits in that size.
  void draw_goal(const Box& box, const PlanWeek& week) {
    const Words& words = book_.words();
    const std::string goal = week_goal(words, book_.plan(), week);
    if (on_page_ > 1) {
      const std::string row_goal =
          words.say("weeks.row_goal", {{"week", week_title(words, week, weeks_.size())},
                                       {"iso", iso_week_text(week.first())},
                                       {"goal", goal}});
      draw_line(book_.canvas(), box.top(kRowGoal - 1), row_goal, style::kStrong, Align::left,
                style::kLeast);
      return;
    }
    const TextStyle wall = style::kWallText;
    const bool fits = book_.typefaces().width(goal, wall.face, wall.size_pt) + 1 <= box.width;
    if (fits) {
      draw_line(book_.canvas(), box.top(kGoal - 2), goal, wall, Align::left, wall.size_pt);
      return;
    }
    for (double size = 14; size >= 8; size -= 0.5) {
      const TextBlock block(book_.typefaces(), goal, style::kStrong.at(size), box.width);
      if (block.height() > kGoal - 1) continue;
      block.draw(book_.canvas(), box.moved(0, -1));
      return;
    }
    draw_line(book_.canvas(), box.top(kGoal - 2), goal, style::kStrong, Align::left, style::kLeast);
  }

  void draw_grid(const std::vector<Box>& columns) {
    Canvas& canvas = book_.canvas();
    const Box all = columns.front().around(columns.back());
    canvas.rectangle(all.inset(style::kRule.width / 2), {style::kRule, {}});
    for (std::size_t at = 1; at < columns.size(); ++at)
      canvas.line({columns[at].x, all.y}, {columns[at].x, all.bottom()}, style::kHairline);
  }

  void draw_week(const Box& box, const PlanWeek& week) {
    draw_goal(box, week);
    const std::vector<Box> columns = columns_of(box);
    draw_grid(columns);
    const Date monday = week.first() - days{weekday_index(week.first())};
    for (int weekday = 0; weekday < 7; ++weekday) {
      const Box& column = columns[weekday];
      const Date date = monday + days{weekday};
      const auto day = std::find_if(week.days.begin(), week.days.end(),
                                    [=](const Day& one) { return one.date == date; });
      if (day != week.days.end())
        WallDay(book_, *day).draw(book_.canvas(), inside(column), sizes_);
      else
        draw_line(book_.canvas(), inside(column).top(sizes_.line()), outside(date),
                  date == book_.plan().by ? style::kHeading : style::kSmall, Align::left,
                  style::kLeast);
    }
  }

  // A day before or after the plan; the date itself by its name.
  std::string outside(Date date) const {
    const Words& words = book_.words();
    if (date == book_.plan().by) return words.say("weeks.the_date");
    return words.say("weeks.other_day",
                     {{"weekday", weekday_short(words, date)}, {"day", day_of_month(date)}});
  }

  Book& book_;
  std::vector<PlanWeek> weeks_;
  int on_page_ = 1;
  WallSizes sizes_;
};

}  // namespace

void draw_weeks(Book& book) {
  book.open_sheet("weeks", book.words().say("weeks.title"));
  WeekSheet(book).draw();
}

}  // namespace cahier
