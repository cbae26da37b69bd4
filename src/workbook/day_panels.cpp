#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_day_panel.h"
#include "workbook/parts_flow.h"
#include "workbook/parts_week.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kPanelPadding = 2.5;  // above the first and below the last strip
constexpr double kSlimHeight = 9;
constexpr double kWeekTitle = 7.5;  // the goal of the week stands below
constexpr double kSignOff = 12;
// A week that does not fit whole begins on a new page unless this share of the page is left.
constexpr double kWorthBeginning = 0.33;

// Days that share a panel: one, or several days off in a row.
struct Panel {
  std::vector<const Day*> days;
  std::vector<Strip> strips;
  double height = 0;

  bool slim() const { return DayPanels::is_slim(*days.front()); }
};

class DayPanelSheet {
 public:
  explicit DayPanelSheet(Book& book)
      : book_(book),
        weeks_(weeks_of(book.plan())),
        panels_(book, book.upright().width),
        flow_([this] { return open_page(); }) {}

  void draw() {
    for (const PlanWeek& week : weeks_) draw_week(week);
  }

 private:
  Box open_page() {
    const Words& words = book_.words();
    const std::string title = week_title(words, *week_, weeks_.size());
    return book_.open_page(week_begins_ ? ""
                                        : words.say("panels.week_continued", {{"week", title}}));
  }

  std::vector<Panel> panels_of(const PlanWeek& week) {
    std::vector<Panel> panels;
    for (const Day& day : week.days) {
      const bool goes_on = day.allowance <= 0 && DayPanels::is_slim(day) && !panels.empty() &&
                           panels.back().slim() && panels.back().days.back()->allowance <= 0 &&
                           !day.lesson && !panels.back().days.back()->lesson;
      if (goes_on) {
        panels.back().days.push_back(&day);
        continue;
      }
      Panel panel;
      panel.days = {&day};
      panel.strips = panels_.strips(day);
      panel.height = panel.slim() ? kSlimHeight : full_height(panel.strips);
      panels.push_back(std::move(panel));
    }
    return panels;
  }

  double full_height(const std::vector<Strip>& strips) const {
    const double content = height_of(strips);
    const double date = panels_.date_height();
    return 2 * kPanelPadding + (panels_.date_beside() ? std::max(content, date) : content + date);
  }

  void draw_week(const PlanWeek& week) {
    week_ = &week;
    week_begins_ = true;
    const std::vector<Panel> panels = panels_of(week);
    const TextBlock goal(book_.typefaces(), week_goal(book_.words(), book_.plan(), week),
                         style::kBody, book_.upright().width);
    const double head = kWeekTitle + goal.height() + 2.5;
    double height = head + (book_.print().teacher ? kSignOff : 0);
    for (const Panel& panel : panels) height += panel.height;
    const double page_height = book_.upright().height;
    if (!flow_.fits(height) && flow_.left() < kWorthBeginning * page_height) flow_.next_page();
    const double first_panel = head + panels.front().height;
    if (!flow_.fits(first_panel)) flow_.next_page();
    draw_week_head(flow_.take(head), goal);
    week_begins_ = false;
    for (const Panel& panel : panels) {
      if (!flow_.fits(panel.height)) flow_.next_page();
      if (panel.slim())
        draw_slim(panel);
      else
        draw_full(panel);
    }
    if (book_.print().teacher) draw_sign_off(flow_.take(kSignOff));
    flow_.skip(3);
  }

  void draw_week_head(const Box& box, const TextBlock& goal) {
    const Words& words = book_.words();
    book_.mark(words.say("panels.week_mark", {{"number", week_->number}}));
    const Box head = box.top(7);
    const double title = draw_line(book_.canvas(), head.left(head.width * 0.4),
                                   week_title(words, *week_, weeks_.size()), style::kHeading,
                                   Align::left, style::kLeast);
    draw_line(book_.canvas(), head.without_left(title + 5), week_dates(words, *week_),
              style::kSmall, Align::right, style::kLeast);
    goal.draw(book_.canvas(), box.without_top(kWeekTitle));
    rule(box.bottom() - 0.5, box);
  }

  void rule(double y, const Box& box) {
    book_.canvas().line({box.x, y}, {box.right(), y}, style::kHairline);
  }

  std::string slim_date(const Panel& panel) const {
    const Words& words = book_.words();
    const Date first = panel.days.front()->date;
    const Date last = panel.days.back()->date;
    if (first == last) return day_month_short(words, first);
    return words.say("panels.to_day", {{"first", day_month_short(words, first)},
                                       {"weekday", weekday_short(words, last)},
                                       {"last", day_month_short(words, last)}});
  }

  void draw_slim(const Panel& panel) {
    const Box box = flow_.take(panel.height);
    for (const Day* day : panel.days) book_.note_day(day->date);
    Canvas& canvas = book_.canvas();
    const Box row = box.top(kSlimHeight - 1).without_top(1);
    const double weekday =
        draw_line(canvas, row.left(16), weekday_short(book_.words(), panel.days.front()->date),
                  style::kHeading, Align::left, style::kLeast);
    const Box date_box = row.without_left(weekday + 2).left(row.width * 0.4);
    const double date =
        draw_line(canvas, date_box, slim_date(panel), style::kBody, Align::left, style::kLeast);
    const double after = date_box.x + date + 5 - row.x;
    const double text_at = panel.days.size() > 1 || !panels_.date_beside() ? after : 0;
    if (panel.days.size() > 1)
      draw_line(canvas, row.without_left(text_at), book_.words().say("panels.days_off"),
                style::kBody, Align::left, style::kLeast);
    else
      panel.strips.front().draw(row.without_left(text_at));
    rule(box.bottom(), box);
  }

  void draw_full(const Panel& panel) {
    const Day& day = *panel.days.front();
    Box top = flow_.take(kPanelPadding);
    book_.note_day(day.date);
    int date_on_page = 0;
    double below_date = 0;
    for (const Strip& strip : panel.strips) {
      const double date_room = panels_.date_beside() ? 0 : panels_.date_height();
      const bool moves = !flow_.fits(strip.height + (date_on_page == 0 ? date_room : 0));
      if (moves) flow_.next_page();
      Box box;
      if (date_on_page == 0 || moves) {
        if (panels_.date_beside()) {
          box = flow_.take(strip.height);
          panels_.draw_date(box, day, date_on_page != 0);
          below_date = box.y + panels_.date_height();
        } else {
          panels_.draw_date(flow_.take(date_room), day, date_on_page != 0);
          box = flow_.take(strip.height);
        }
        date_on_page = book_.page();
      } else {
        box = flow_.take(strip.height);
      }
      strip.draw(box);
      top = box;
    }
    if (below_date > top.bottom()) flow_.skip(below_date - top.bottom());
    const double padding = std::min(kPanelPadding, flow_.left());
    flow_.skip(padding);
    rule(std::max(below_date, top.bottom()) + padding, top);
  }

  void draw_sign_off(const Box& box) {
    Canvas& canvas = book_.canvas();
    const Words& words = book_.words();
    const Box row = box.top(9.5).bottom(5);
    const std::vector<std::string> labels = {words.say("panels.next_time"),
                                             words.say("panels.signed")};
    const std::vector<Box> columns = row.columns_by_share({2, 1}, 4);
    for (std::size_t at = 0; at < labels.size(); ++at) {
      const Box& field = columns[at];
      const double label = draw_line(canvas, field.left(field.width * 0.6), labels[at],
                                     style::kSmall, Align::left, style::kLeast);
      const double y = field.bottom() - 1.2;
      canvas.line({field.x + label + 2, y}, {field.right(), y}, style::kWritingLine);
    }
  }

  Book& book_;
  std::vector<PlanWeek> weeks_;
  DayPanels panels_;
  const PlanWeek* week_ = nullptr;
  bool week_begins_ = true;
  Flow flow_;
};

}  // namespace

void draw_day_panels(Book& book) {
  book.open_sheet("day panels", book.words().say("panels.title"));
  DayPanelSheet(book).draw();
}

}  // namespace cahier
