// A week to a page for a child: what to do each day, shapes to colour, a line for a grown-up.
#include <algorithm>

#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/week_words.h"
#include "workbook/sheets/child/child_day.h"
#include "workbook/sheets/child/child_pages.h"

namespace cahier {
namespace {

constexpr double kNameGap = 3;       // millimetres from a day's name to what it asks
constexpr double kMostName = 0.235;  // of the page's width, for a weekday in full
constexpr double kMostSpread = 15;   // white below a day
constexpr double kAfterShape = 2 * kGrid;

class ChildWeek {
 public:
  ChildWeek(Book& book, const PlanWeek& week)
      : book_(book),
        words_(book.words()),
        week_(week),
        pages_(book, words_.say("child.week_more", {{"number", week.number}})) {
    for (const Day& day : week.days) lines_.push_back(child_lines(book, day));
    for (const double size : child_sizes(book.print())) {
      set_in(size);
      if (needed() <= pages_.rest().height) break;
    }
  }

  void draw() {
    book_.mark(words_.say("panels.week_mark", {{"number", week_.number}}));
    const double spread = spread_below();
    pages_.text(week_title(words_, week_), child_great(book_.print()));
    pages_.text(date_span(words_, week_.first(), week_.last()), plain_);
    pages_.text(goal(), strong_);
    pages_.skip(kGrid);
    for (std::size_t at = 0; at < lines_.size(); ++at) draw_day(at, spread);
    rule(pages_.take(kGrid));
    if (is_last()) {
      pages_.text(the_day(), strong_);
      rule(pages_.take(kGrid));
    }
    pages_.keep(foot_height());
    pages_.text(hint(), child_text(book_.print()));
    pages_.write_in(words_.say("child.signed"));
  }

 private:
  void set_in(double size) {
    plain_ = child_text(book_.print()).at(size);
    strong_ = child_strong(book_.print()).at(size);
    const double width = pages_.rest().width;
    is_long_ = name_width(true) <= kMostName * width;
    name_width_ = name_width(is_long_) + kNameGap;
    shape_ = shape_beside(plain_);
    line_width_ = width - name_width_ - shape_ - kAfterShape;
  }

  std::string name_of(const Day& day, bool in_full) const {
    return in_full ? weekday_long(words_, day.date) : weekday_short(words_, day.date);
  }

  double name_width(bool in_full) const {
    double widest = 0;
    for (const Day& day : week_.days)
      widest = std::max(
          widest, book_.typefaces().width(name_of(day, in_full), strong_.face, strong_.size_pt));
    return widest + 0.3;
  }

  bool is_last() const { return static_cast<std::size_t>(week_.number) == week_.weeks; }

  std::string the_day() const {
    return words_.say("child.the_day", {{"date", weekday_day_month(words_, book_.plan().by)}});
  }

  // What is to be learned, or how often all of it is played.
  std::string goal() const {
    int runs = 0;
    for (const Day& day : week_.days)
      for (const Task& task : day.tasks) {
        if (task.drill == Drill::learn) return week_goal(words_, book_.plan(), week_);
        if (task.drill == Drill::run_through) runs += times_of(task);
      }
    if (runs > 0) return words_.count("child.goal_run", runs);
    return week_goal(words_, book_.plan(), week_);
  }

  // The hints take turns, a week each.
  std::string hint() const {
    const std::vector<std::string> hints = words_.list("child.hints");
    return hints[static_cast<std::size_t>(week_.number - 1) % hints.size()];
  }

  TextBlock block(std::string_view text, const TextStyle& style, double width) const {
    return {book_.typefaces(), text, style, width};
  }

  double height_of(const ChildLine& line) const {
    return std::max(line.shape ? shape_ : 0, block(line.text, plain_, line_width_).height());
  }

  // The grown-up's hint and line.
  double foot_height() const {
    return block(hint(), child_text(book_.print()), pages_.rest().width).height() +
           pages_.write_in_height(words_.say("child.signed"));
  }

  // Of the whole week, without white below its days.
  double needed() const {
    const double width = pages_.rest().width;
    double height = block(week_title(words_, week_), child_great(book_.print()), width).height() +
                    block(date_span(words_, week_.first(), week_.last()), plain_, width).height() +
                    block(goal(), strong_, width).height() + foot_height() + 2 * kGrid;
    if (is_last()) height += block(the_day(), strong_, width).height() + kGrid;
    for (const auto& lines : lines_) {
      height += kGrid;
      for (const ChildLine& line : lines) height += height_of(line);
    }
    return height;
  }

  // What the page has left, shared out below its days. REQUIRES: nothing is drawn yet.
  double spread_below() const {
    const double left = pages_.rest().height - needed();
    return std::clamp(left / static_cast<double>(lines_.size()), 0.0, kMostSpread);
  }

  void rule(const Box& box) {
    book_.canvas().line({box.x, box.y + kGrid / 2}, {box.right(), box.y + kGrid / 2},
                        style::kHairline);
  }

  void draw_day(std::size_t at, double spread) {
    const Day& day = week_.days[at];
    rule(pages_.take(kGrid));
    book_.note_day(day.date);
    const double pitch = line_pitch(plain_.size_pt);
    for (std::size_t line_at = 0; line_at < lines_[at].size(); ++line_at) {
      const ChildLine& line = lines_[at][line_at];
      const Box row = pages_.take(height_of(line));
      if (line_at == 0)
        draw_line(book_.canvas(), row.left(name_width_).top(pitch), name_of(day, is_long_), strong_,
                  Align::left, strong_.size_pt);
      const Box rest = row.without_left(name_width_);
      if (line.shape) draw_shape(book_.canvas(), rest.left(shape_).top(shape_), *line.shape);
      block(line.text, plain_, line_width_)
          .draw(book_.canvas(), rest.without_left(shape_ + kAfterShape));
    }
    pages_.skip(spread);
  }

  Book& book_;
  const Words& words_;
  const PlanWeek& week_;
  ChildPages pages_;
  TextStyle plain_;
  TextStyle strong_;
  std::vector<std::vector<ChildLine>> lines_;  // of each day
  double shape_ = 0;
  bool is_long_ = false;   // weekdays in full
  double name_width_ = 0;  // with the gap behind it
  double line_width_ = 0;
};

}  // namespace

void draw_child_weeks(Book& book) {
  book.open_sheet(SheetKind::child_weeks, book.words().say("child.weeks_title"));
  for (const PlanWeek& week : printed_weeks(book.plan(), book.print().most_weeks))
    ChildWeek(book, week).draw();
}

}  // namespace cahier
