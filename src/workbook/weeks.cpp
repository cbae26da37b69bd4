#include <algorithm>
#include <map>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_task.h"
#include "workbook/parts_week.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kWallLine = 8.5;  // of a line read from the wall
constexpr double kSmallLine = 5;
constexpr double kTickRow = 9;
constexpr double kWallSize = 18.75;        // points, the least for the wall
constexpr std::size_t kWeeksOnePage = 26;  // longer plans have several weeks on a page
constexpr std::size_t kWeeksTwoPage = 60;

// What a day has, counted by drill, and the bars that are new.
struct DayTally {
  std::vector<std::string> fresh;
  std::vector<std::pair<int, std::string>> counts;  // how many, of what
};

// A range of new bars, in two lines where one is too narrow for the wall's type.
std::vector<std::string> wall_lines(const Typefaces& faces, const BarRange& bars, double width) {
  const std::string text = bar_range(bars.first, bars.last);
  if (faces.width(text, style::kWallBars.face, kWallSize) + 0.5 <= width) return {text};
  return {std::to_string(bars.first) + "–", std::to_string(bars.last)};
}

std::string drill_noun(const Words& words, Drill drill, int number) {
  switch (drill) {
    case Drill::learn:
      return words.count("weeks.chunks", number);
    case Drill::join:
      return words.count("weeks.joins", number);
    case Drill::recall:
      return words.count("weeks.recalls", number);
    case Drill::cue_starts:
      return words.count("weeks.cue_starts", number);
    case Drill::slow_pass:
      return words.count("weeks.slow", number);
    case Drill::counted_pass:
      return words.count("weeks.counted", number);
    case Drill::run_through:
      return words.count("weeks.runs", number);
    case Drill::spoken_part:
      return words.count("weeks.spoken", number);
    case Drill::write_out:
      return words.count("weeks.write_outs", number);
  }
  return {};
}

int count_of(const Task& task) {
  if (task.drill == Drill::cue_starts) return static_cast<int>(task.cues.size()) + task.throws;
  return task.drill == Drill::run_through ? times_of(task) : 1;
}

class WeekSheet {
 public:
  explicit WeekSheet(Book& book) : book_(book), weeks_(weeks_of(book.plan())) {}

  void draw() {
    const int on_page = weeks_on_page();
    for (std::size_t first = 0; first < weeks_.size(); first += on_page) {
      const std::size_t last = std::min(first + on_page, weeks_.size()) - 1;
      const Box page = book_.open_wide_page(head_of(weeks_[first], weeks_[last]));
      book_.mark(book_.words().say("panels.week_mark", {{"number", weeks_[first].number}}));
      const std::vector<Box> rows = page.rows(on_page, 4);
      for (std::size_t week = first; week <= last; ++week)
        draw_week(rows[week - first], weeks_[week], on_page);
    }
  }

 private:
  int weeks_on_page() const {
    if (weeks_.size() <= kWeeksOnePage) return 1;
    const bool small = book_.print().paper.height < 250;
    return weeks_.size() <= kWeeksTwoPage || small ? 2 : 3;
  }

  std::string head_of(const PlanWeek& first, const PlanWeek& last) const {
    const Words& words = book_.words();
    if (first.number == last.number)
      return words.say("weeks.head", {{"week", week_title(words, first, weeks_.size())},
                                      {"dates", week_dates(words, first)}});
    return date_span(words, first.first(), last.last());
  }

  void draw_week(const Box& box, const PlanWeek& week, int on_page) {
    const Words& words = book_.words();
    const double goal_height = on_page == 1 ? 10 : 6;
    std::string goal = week_goal(words, book_.plan(), week);
    if (on_page > 1)
      goal = words.say("weeks.row_goal", {{"week", week_title(words, week, weeks_.size())},
                                          {"iso", iso_week_text(week.first())},
                                          {"goal", goal}});
    // The goal is read from the wall where it fits in that size.
    TextStyle style = style::kHeading;
    if (on_page == 1 &&
        book_.typefaces().width(goal, style::kWallText.face, kWallSize) + 0.5 <= box.width)
      style = style::kWallText;
    else if (on_page > 1)
      style = style::kStrong;
    draw_line(book_.canvas(), box.top(goal_height - 1), goal, style, Align::left,
              style.role == TextRole::wall ? kWallSize : 8);
    const std::vector<Box> columns = box.without_top(goal_height).columns(7);
    const Date monday = week.first() - days{weekday_index(week.first())};
    for (int weekday = 0; weekday < 7; ++weekday) {
      const Date date = monday + days{weekday};
      const auto day = std::find_if(week.days.begin(), week.days.end(),
                                    [=](const Day& one) { return one.date == date; });
      book_.canvas().rectangle(columns[weekday], {style::kHairline, {}});
      draw_day(columns[weekday], date, day == week.days.end() ? nullptr : &*day);
    }
  }

  // Returns what is left below the date.
  Box draw_date(const Box& inside, Date date, bool dated) {
    const Words& words = book_.words();
    Canvas& canvas = book_.canvas();
    const std::string weekday = weekday_short(words, date);
    const std::string number = std::to_string(day_of_month(date));
    const Box line = inside.top(kWallLine);
    const TextStyle style = dated ? style::kWallBars.at(kWallSize) : style::kBody;
    const double width = book_.typefaces().width(weekday, style.face, style.size_pt) +
                         book_.typefaces().width(number, style.face, style.size_pt) + 3;
    if (!dated) {
      draw_line(canvas, line, weekday, style, Align::left, 8);
      return inside.without_top(kWallLine);
    }
    draw_line(canvas, line, weekday, style, Align::left, kWallSize);
    if (width <= inside.width) {
      draw_line(canvas, line, number, style, Align::right, kWallSize);
      return inside.without_top(kWallLine);
    }
    draw_line(canvas, line.moved(0, kWallLine), number, style, Align::left, kWallSize);
    return inside.without_top(2 * kWallLine);
  }

  void draw_day(const Box& box, Date date, const Day* day) {
    Box rest = draw_date(box.inset(1.8, 1.5), date, day != nullptr);
    if (day == nullptr) return;
    Canvas& canvas = book_.canvas();
    draw_line(canvas, rest.top(kSmallLine), day_line(*day), style::kBody.at(9.5), Align::left, 7.5);
    rest = rest.without_top(kSmallLine + 1);
    if (day->tasks.empty()) return;
    const Box tick = rest.bottom(kTickRow).without_top(1);
    canvas.rectangle(tick.right(7).bottom(7), {style::kRule, {}});
    draw_tally(rest.without_bottom(std::min(kTickRow, rest.height)), tick.without_right(9),
               tally_of(*day, rest.width));
  }

  std::string day_line(const Day& day) const {
    const Words& words = book_.words();
    std::string text = day.allowance <= 0              ? words.say("weeks.rest")
                       : day.tasks.empty()             ? words.say("weeks.free")
                       : day.note == DayNote::catch_up ? words.say("weeks.catch_up")
                                                       : minutes_phrase(words, day.minutes());
    if (day.lesson) text = words.say("weeks.with_lesson", {{"day", text}});
    return text;
  }

  DayTally tally_of(const Day& day, double width) const {
    DayTally tally;
    std::vector<BarRange> fresh;
    std::map<Drill, int> counts;
    int piece = -1;
    for (const Task& task : day.tasks) {
      if (task.drill != Drill::learn) {
        counts[task.drill] += count_of(task);
        continue;
      }
      if (!fresh.empty() && task.piece == piece && fresh.back().last + 1 == task.bars.first)
        fresh.back().last = task.bars.last;
      else
        fresh.push_back(task.bars);
      piece = task.piece;
    }
    for (const BarRange& bars : fresh)
      for (std::string& line : wall_lines(book_.typefaces(), bars, width))
        tally.fresh.push_back(std::move(line));
    for (const auto& [drill, number] : counts)
      tally.counts.emplace_back(number, drill_noun(book_.words(), drill, number));
    return tally;
  }

  // New bars, then the counts, each as large as the column allows: a line each, else a paragraph.
  void draw_tally(Box rest, const Box& last_line, const DayTally& tally) {
    Canvas& canvas = book_.canvas();
    const Words& words = book_.words();
    if (!tally.fresh.empty()) {
      const std::size_t fitting =
          static_cast<std::size_t>(std::max(0.0, (rest.height - kSmallLine) / kWallLine));
      draw_line(canvas, rest.top(kSmallLine), words.say("weeks.new"), style::kStrong, Align::left,
                7.5);
      rest = rest.without_top(kSmallLine);
      for (std::size_t at = 0; at < std::min(fitting, tally.fresh.size()); ++at) {
        draw_line(canvas, rest.top(kWallLine), tally.fresh[at], style::kWallBars, Align::left,
                  kWallSize);
        rest = rest.without_top(kWallLine);
      }
      rest = rest.without_top(std::min(1.5, rest.height));
    }
    const double needed = kWallLine * static_cast<double>(tally.counts.size());
    if (needed <= rest.height) {
      for (const auto& [number, noun] : tally.counts) {
        const double width = draw_line(canvas, rest.top(kWallLine), std::to_string(number),
                                       style::kWallBars.at(kWallSize), Align::left, kWallSize);
        draw_line(canvas, rest.top(kWallLine).without_left(std::max(width, 4.0) + 2), noun,
                  style::kBody.at(11), Align::left, 7.5);
        rest = rest.without_top(kWallLine);
      }
      return;
    }
    draw_counts_in_words(rest.height >= 2 * kSmallLine ? rest : last_line, tally);
  }

  void draw_counts_in_words(const Box& box, const DayTally& tally) {
    std::vector<std::string> texts;
    for (const auto& [number, noun] : tally.counts)
      texts.push_back(book_.words().say("weeks.some", {{"number", number}, {"what", noun}}));
    const std::string text = list_text(book_.words(), texts);
    for (double size = 11; size >= 7.5; size -= 0.5) {
      const TextBlock block(book_.typefaces(), text, style::kBody.at(size), box.width, 1.25);
      if (block.height() > box.height) continue;
      block.draw(book_.canvas(), box);
      return;
    }
    draw_line(book_.canvas(), box.top(kSmallLine), text, style::kBody, Align::left, 7.5);
  }

  Book& book_;
  std::vector<PlanWeek> weeks_;
};

}  // namespace

void draw_weeks(Book& book) {
  book.open_sheet("weeks", book.words().say("weeks.title"));
  WeekSheet(book).draw();
}

}  // namespace cahier
