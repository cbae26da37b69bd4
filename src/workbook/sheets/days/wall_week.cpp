#include "workbook/sheets/days/wall_week.h"

#include <algorithm>
#include <array>
#include <functional>
#include <optional>
#include <utility>

#include "paper/recording_canvas.h"
#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/days/wall_day.h"

namespace cahier {
namespace {

constexpr double kGoal = 6 * kGrid;
constexpr double kDates = style::kRow;
constexpr double kAfterGoal = 2 * kGrid;
constexpr double kRowGoal = style::kRow;
constexpr double kInset = kGrid;  // from the edge of a column to what is in it
constexpr double kLeastColumn =
    24;  // millimetres; narrower ones share the week with a second sheet
constexpr int kFewColumns = 4;
constexpr double kLow = 100;    // columns less high are set flat where that holds more
constexpr double kNarrow = 30;  // a column that is less wide has smaller insets
constexpr int kMostLines = 3;   // to write on, at the foot of a day
constexpr int kFewLines = 2;
constexpr int kHeavyDays = 2;  // days of a week that may be set closer than the others
constexpr Stroke kDateFrame{1.2, style::kDark, 0, 0, false};

class WallWeek {
 public:
  WallWeek(Book& book, const PlanWeek& week) : book_(book), words_(book.words()), week_(week) {}

  // On as many sheets as its days need: narrow columns are not read from the wall.
  void draw_alone() {
    const int on_sheet = book_.wide_content().width / 7 < kLeastColumn ? kFewColumns : 7;
    for (int first = 0; first < 7; first += on_sheet) {
      Box box = book_.open_wide_page();
      draw_goal(box);
      box = box.without_top(kGoal + kDates + kAfterGoal);
      const std::vector<Box> columns = box.columns(on_sheet);
      draw_columns({columns.begin(), columns.begin() + std::min(on_sheet, 7 - first)}, first, true);
      draw_what_is_left(first, on_sheet);
    }
  }

  // Whether every day is whole in a row.
  bool fits_row(const Box& box) {
    RecordingCanvas trial(book_.typefaces());
    trial.begin_page(book_.print().paper.landscape());
    const std::vector<Box> columns = box.without_top(kRowGoal).columns(7);
    if (columns.front().width < kLeastColumn) return false;
    const WallLook look = look_for(columns.front(), false);
    return every_day([&](const Day& day) {
      return !WallDay(book_, day).draw(trial, inside(columns[weekday_index(day.date)]), look);
    });
  }

  void draw_row(const Box& box) {
    const std::string goal =
        words_.say("weeks.row_goal", {{"week", week_title(words_, week_)},
                                      {"iso", iso_week_text(week_.first())},
                                      {"goal", week_goal(words_, book_.plan(), week_)}});
    draw_line(book_.canvas(), box.top(kRowGoal - 1), goal, style::kStrong, Align::left,
              style::kLeast);
    draw_columns(box.without_top(kRowGoal).columns(7), 0, false);
  }

 private:
  Box inside(const Box& column) const {
    return column.inset(column.width < kNarrow ? 0.75 : kInset, kInset);
  }

  // As large as one line allows; a goal of many words on two.
  void draw_goal(const Box& box) {
    Canvas& canvas = book_.canvas();
    const std::string goal = week_goal(words_, book_.plan(), week_);
    const Box line = box.top(kGoal);
    draw_line(canvas, box.without_top(kGoal).top(kDates),
              words_.say("weeks.dates", {{"week", week_title(words_, week_)},
                                         {"dates", week_dates(words_, week_)}}),
              style::kLead, Align::left, style::kLeast);
    for (const TextStyle& text_style : {style::kWallBars, style::kSubtitle, style::kHeading}) {
      const double least =
          text_style.role == TextRole::wall ? style::kLeastWall : text_style.size_pt;
      if (fit_line(book_.typefaces(), goal, text_style, line.width, least).cut) continue;
      draw_line(canvas, line, goal, text_style, Align::left, least);
      return;
    }
    const TextBlock block(book_.typefaces(), goal, style::kStrong, line.width);
    if (block.height() <= kGoal)
      block.draw(canvas, line);
    else
      draw_line(canvas, line, goal, style::kStrong, Align::left, style::kLeast);
  }

  bool every_day(const std::function<bool(const Day&)>& holds) const {
    return std::all_of(week_.days.begin(), week_.days.end(), holds);
  }

  int days_without_room(const Box& box, const WallLook& look) const {
    return static_cast<int>(std::count_if(
        week_.days.begin(), week_.days.end(),
        [&](const Day& day) { return !WallDay(book_, day).fits(box.width, box.height, look); }));
  }

  // Whether every day has room, with as many lines to write on as that allows.
  bool suits(const Box& box, WallLook& look, const WallSizes& sizes, int least_lines) const {
    look.sizes = sizes;
    for (look.lines = kMostLines; look.lines >= least_lines; --look.lines)
      if (days_without_room(box, look) == 0) return true;
    look.lines = least_lines;
    return false;
  }

  // The largest look in which every day of the week has room.
  WallLook look_for(const Box& column, bool alone) const {
    const Box box = inside(column);
    const auto dates_fit = [&](const TextStyle& text_style) {
      return every_day(
          [&](const Day& day) { return wall_date_fits(book_, day.date, box.width, text_style); });
    };
    WallLook look;
    if (alone && dates_fit(style::kWallLarge))
      look.date = style::kWallLarge;
    else if (!dates_fit(look.date))
      look.date = look.date.at(style::kLeastWall);
    look.date_below = !dates_fit(look.date);
    for (const Day& day : week_.days)
      look.words = std::max(look.words, static_cast<int>(WallDay(book_, day).words().size()));
    look.flat = !alone;
    if (!alone) {
      look.sizes = WallSizes::dense();
      return look;
    }
    if (suits(box, look, WallSizes::great(), kFewLines)) return look;
    if (suits(box, look, WallSizes::large(), kFewLines)) return look;
    // A heavy day does not make the others small.
    if (days_without_room(box, look) <= kHeavyDays) return look;
    if (column.width >= kNarrow && column.height >= kLow) {
      suits(box, look, WallSizes::plain(), kFewLines);
      return look;
    }
    if (suits(box, look, WallSizes::plain(), 0)) return look;
    look.flat = true;
    suits(box, look, WallSizes::plain(), 0);
    return look;
  }

  // The weekdays from `first` on, Monday 0, one in each column.
  void draw_columns(const std::vector<Box>& columns, int first, bool alone) {
    const int count = static_cast<int>(columns.size());
    const WallLook look = look_for(columns.front(), alone);
    const Date monday = week_.first() - days{weekday_index(week_.first())};
    std::vector<const Day*> in_plan(7, nullptr);
    for (const Day& day : week_.days) in_plan[weekday_index(day.date)] = &day;
    for (int at = 0; at < count; ++at)
      if (!in_plan[first + at] && monday + days{first + at} != book_.plan().by)
        book_.canvas().rectangle(columns[at], {{}, Fill{style::kPale, true}});
    draw_grid(columns);
    for (int at = 0; at < count; ++at) {
      const Date date = monday + days{first + at};
      if (in_plan[first + at])
        draw_day(columns[at], *in_plan[first + at], look);
      else if (date == book_.plan().by)
        draw_the_day(columns[at], date, look);
      else
        draw_outside(columns[at], date, look);
    }
  }

  void draw_grid(const std::vector<Box>& columns) {
    Canvas& canvas = book_.canvas();
    const Box all = columns.front().around(columns.back());
    canvas.rectangle(all.inset(style::kRule.width / 2), {style::kRule, {}});
    for (std::size_t at = 1; at < columns.size(); ++at)
      canvas.line({columns[at].x, all.y}, {columns[at].x, all.bottom()}, style::kHairline);
  }

  void draw_day(const Box& column, const Day& day, const WallLook& look) {
    left_[weekday_index(day.date)] = WallDay(book_, day).draw(book_.canvas(), inside(column), look);
    if (const int page = book_.page_of_day(day.date); page > 0) book_.canvas().link(column, page);
  }

  // What the sheet before has left of each day, with its date; the other columns are empty.
  void draw_what_is_left(int first, int on_sheet) {
    const auto begin = left_.begin() + first;
    const auto end = left_.begin() + std::min(first + on_sheet, 7);
    while (std::any_of(begin, end, [](const auto& place) { return place.has_value(); })) {
      const Box box = book_.open_wide_page(
          words_.say("panels.week_continued", {{"week", week_title(words_, week_)}}));
      const std::vector<Box> all = box.columns(on_sheet);
      const std::vector<Box> columns(all.begin(), all.begin() + (end - begin));
      const WallLook look = look_for(columns.front(), true);
      draw_grid(columns);
      for (const Day& day : week_.days) {
        const int at = weekday_index(day.date);
        if (at < first || at >= first + on_sheet || !left_[at]) continue;
        left_[at] = WallDay(book_, day)
                        .draw_more(book_.canvas(), inside(columns[at - first]), look, *left_[at]);
      }
    }
  }

  void draw_outside(const Box& column, Date date, WallLook look) {
    // A book that keeps what is learned has nothing to do with the days before it.
    if (book_.plan().upkeep && date < book_.plan().from) return;
    look.date.face = style::kWallText.face;
    draw_wall_date(book_.canvas(), words_, inside(column), date, look);
  }

  // The date itself, framed, with what is played, and lines for where and when.
  void draw_the_day(const Box& column, Date date, const WallLook& look) {
    Canvas& canvas = book_.canvas();
    canvas.rectangle(column.inset(kDateFrame.width / 2), {kDateFrame, {}});
    const double side = std::max(kDateFrame.width + 0.5, (column.width - inside(column).width) / 2);
    const Box box = column.inset(side, kInset).without_bottom(1);
    const Box rest = draw_wall_date(canvas, words_, box, date, look);
    const std::string name = words_.say("weeks.the_date");
    const auto styles = {std::pair{style::kWallBars, style::kHeading},
                         std::pair{style::kSubtitle, style::kStrong},
                         std::pair{style::kHeading, style::kBody}};
    for (const auto& [of_name, of_title] : styles) {
      const TextBlock named(book_.typefaces(), name, of_name, rest.width);
      const TextBlock title(book_.typefaces(), book_.title(), of_title, rest.width);
      const double used = named.height() + kInset + title.height();
      if (!words_fit(name, of_name, rest.width) || used > rest.height) continue;
      named.draw(canvas, rest);
      title.draw(canvas, rest.without_top(named.height() + kInset));
      const Box below = rest.without_top(used);
      if (!look.flat && below.height >= 4 * style::kWritingRow) draw_place_and_time(below);
      return;
    }
    draw_line(canvas, rest.top(std::min(rest.height, style::kRow)), name, style::kStrong,
              Align::left, style::kLeast);
    if (rest.height >= 2 * style::kRow)
      draw_line(canvas, rest.without_top(style::kRow).top(style::kRow), book_.title(), style::kBody,
                Align::left, style::kLeast);
  }

  void draw_place_and_time(const Box& box) {
    const Box lines = box.bottom(2 * style::kWritingRow);
    draw_labelled_line(book_.canvas(), lines.top(style::kWritingRow), words_.say("weeks.the_time"),
                       style::kNote);
    draw_labelled_line(book_.canvas(), lines.bottom(style::kWritingRow),
                       words_.say("weeks.the_place"), style::kNote);
  }

  // Whether no word is longer than a line.
  bool words_fit(const std::string& text, const TextStyle& text_style, double width) const {
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = std::min(text.find(' ', at), text.size());
      if (book_.typefaces().width(text.substr(at, end - at), text_style.face, text_style.size_pt) +
              0.3 >
          width)
        return false;
      at = end + 1;
    }
    return true;
  }

  Book& book_;
  const Words& words_;
  const PlanWeek& week_;
  std::array<std::optional<WallPlace>, 7> left_{};  // by weekday: what goes on on the next sheet
};

}  // namespace

void draw_wall_week(Book& book, const PlanWeek& week) { WallWeek(book, week).draw_alone(); }

bool wall_row_fits(Book& book, const Box& box, const PlanWeek& week) {
  return WallWeek(book, week).fits_row(box);
}

void draw_wall_row(Book& book, const Box& box, const PlanWeek& week) {
  WallWeek(book, week).draw_row(box);
}

}  // namespace cahier
