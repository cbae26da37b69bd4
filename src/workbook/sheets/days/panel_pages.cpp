#include "workbook/sheets/days/panel_pages.h"

#include <algorithm>
#include <cmath>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/writing_lines.h"

namespace cahier {
namespace {

constexpr double kPadding = 2 * kGrid;  // above the first and below the last strip of a panel
constexpr double kTightPadding = kGrid;
constexpr double kSaved = 2 * (kPadding - kTightPadding);  // by a panel of a tight page
constexpr double kSlimHeight = 6 * kGrid;
constexpr double kWeekTitle = 5 * kGrid;  // the goal of the week stands below
constexpr double kBelowHead = 2 * kGrid;
constexpr double kSignOff = 8 * kGrid;
constexpr double kTheDay = 18 * kGrid;
constexpr double kTheDayLine = 7 * kGrid;  // where it has a sheet of its own
constexpr double kMostAir = 4 * kGrid;     // that a panel takes of what its page has left
constexpr int kLeastNotes = 3;             // lines; fewer are not worth a heading
constexpr int kMostNotes = 8;

}  // namespace

PanelPages::PanelPages(Book& book, const std::vector<PlanWeek>& weeks)
    : book_(book), weeks_(weeks), panels_(book, book.content().width), content_(book.content()) {
  measure();
  for (std::size_t week = 0; week < weeks_.size(); ++week) set_week(week);
  if (!weeks_.empty() && weeks_.back().number == static_cast<int>(weeks_.back().weeks))
    set_the_day();
}

double PanelPages::full_height(const Day& day, double strips) const {
  const double date = panels_.date_height(day);
  const double content = panels_.date_beside() ? std::max(strips, date) : strips + date;
  return on_grid(2 * kPadding + content);
}

void PanelPages::measure() {
  for (const PlanWeek& week : weeks_) {
    Week& measured = measured_.emplace_back();
    const TextBlock goal(book_.typefaces(), week_goal(book_.words(), book_.plan(), week),
                         style::kBody, content_.width);
    measured.goal = goal.lines();
    measured.head = kWeekTitle + goal.height() + kBelowHead;
    for (const Day& day : week.days) {
      if (book_.plan().upkeep && DayPanels::is_slim(day)) continue;
      std::vector<Panel>& panels = measured.panels;
      const bool goes_on = day.allowance <= 0 && DayPanels::is_slim(day) && !panels.empty() &&
                           panels.back().slim() && panels.back().days.back()->allowance <= 0 &&
                           !day.lesson && !panels.back().days.back()->lesson;
      if (goes_on) {
        panels.back().days.push_back(&day);
        continue;
      }
      Panel panel{{&day}, panels_.strips(day), kSlimHeight};
      if (!panel.slim()) panel.height = full_height(day, height_of(panel.strips));
      panels.push_back(std::move(panel));
    }
  }
}

bool PanelPages::is_full(const Item& item) const {
  return item.kind == Item::Kind::panel && !measured_[item.week].panels[item.panel].slim();
}

// Whether the page has room for so many millimetres more, of so many panels with work. What is
// higher than a page has one to itself, and sticks out below.
bool PanelPages::takes(const Page& page, double height, int panels) const {
  if (page.items.empty()) return true;
  return page.height + height - (page.panels + panels) * kSaved <= content_.height + 1e-6;
}

void PanelPages::set(const Item& item) {
  const int panels = is_full(item) ? 1 : 0;
  if (pages_.empty() || !takes(pages_.back(), item.height, panels)) pages_.emplace_back();
  Page& page = pages_.back();
  page.items.push_back(item);
  page.height += item.height;
  page.panels += panels;
  page.tight = page.height > content_.height + 1e-6;
}

void PanelPages::set_week(std::size_t week) {
  const Week& measured = measured_[week];
  // A week begins below another where its head and its first day with work have room.
  double beginning = measured.head;
  int panels = 0;
  for (std::size_t at = 0; at < measured.panels.size() && panels == 0; ++at) {
    beginning += measured.panels[at].height;
    panels += measured.panels[at].slim() ? 0 : 1;
  }
  if (pages_.empty() || !takes(pages_.back(), beginning, panels)) pages_.emplace_back();
  set({Item::Kind::head, week, 0, 0, 0, measured.head});
  for (std::size_t at = 0; at < measured.panels.size(); ++at) {
    const Panel& panel = measured.panels[at];
    // A week's head has some of its first day below it.
    const bool below_head = pages_.back().panels == 0 && !panel.slim() &&
                            pages_.back().items.back().kind == Item::Kind::head;
    if (panel.height > content_.height || (below_head && !takes(pages_.back(), panel.height, 1)))
      set_divided(week, at);
    else
      set({Item::Kind::panel, week, at, 0, panel.strips.size(), panel.height});
  }
  if (book_.print().teacher) set({Item::Kind::sign_off, week, 0, 0, 0, kSignOff});
}

// Not on a page of its own: the last panel goes with it.
void PanelPages::set_the_day() {
  const Item the_day{Item::Kind::the_day,
                     weeks_.size() - 1,
                     0,
                     0,
                     0,
                     book_.page_of(SheetKind::the_day) > 0 ? kTheDayLine : kTheDay};
  if (!pages_.empty() && !takes(pages_.back(), the_day.height, 0)) {
    std::vector<Item>& items = pages_.back().items;
    const Item last = items.back();
    const bool stays = !is_full(last) || last.first_strip > 0 || items.size() < 2 ||
                       items[items.size() - 2].kind == Item::Kind::head;
    if (!stays) {
      Page& page = pages_.back();
      page.items.pop_back();
      page.height -= last.height;
      --page.panels;
      page.tight = page.height > content_.height + 1e-6;
      pages_.emplace_back();
      set(last);
    }
  }
  set(the_day);
}

// A day that no page holds: as many strips as a page takes, the date again on each.
void PanelPages::set_divided(std::size_t week, std::size_t at) {
  const Panel& panel = measured_[week].panels[at];
  for (std::size_t first = 0; first < panel.strips.size();) {
    const double left = pages_.back().items.size() <= 1 && first == 0
                            ? content_.height - pages_.back().height
                            : content_.height;
    double strips = panel.strips[first].height;
    std::size_t next = first + 1;
    while (next < panel.strips.size() &&
           full_height(*panel.days.front(), strips + panel.strips[next].height) <= left)
      strips += panel.strips[next++].height;
    set({Item::Kind::panel, week, at, first, next - first,
         full_height(*panel.days.front(), strips)});
    first = next;
  }
}

void PanelPages::draw() {
  for (const Page& page : pages_) draw_page(page);
}

void PanelPages::draw_page(const Page& page) {
  const Words& words = book_.words();
  const Item& top = page.items.front();
  const bool begins = top.kind == Item::Kind::head;
  Box rest = book_.open_page(
      begins ? std::string()
             : words.say("panels.week_continued", {{"week", week_title(words, weeks_[top.week])}}));
  // What the page has left goes to its panels, then to lines for notes.
  const double saved = page.tight ? kSaved : 0;
  const double left = rest.height - page.height + page.panels * saved;
  double air = page.panels == 0 ? 0 : std::floor(left / page.panels / kGrid) * kGrid;
  air = std::clamp(air, 0.0, kMostAir);
  for (const Item& item : page.items) {
    const Week& week = measured_[item.week];
    const bool full = is_full(item);
    const double height = item.height + (full ? air - saved : 0);
    const Box box = rest.top(height);
    rest = rest.without_top(height);
    if (item.kind == Item::Kind::head)
      draw_head(box, item.week);
    else if (item.kind == Item::Kind::sign_off)
      draw_sign_off(box);
    else if (item.kind == Item::Kind::the_day)
      draw_the_day(box);
    else if (full)
      draw_full(box.inset(0, air / 2), week.panels[item.panel], item, kPadding - saved / 2),
          rule(box.bottom(), box);
    else
      draw_slim(box, week.panels[item.panel]);
  }
  draw_notes(rest);
}

void PanelPages::draw_head(const Box& box, std::size_t at) {
  const Words& words = book_.words();
  Canvas& canvas = book_.canvas();
  book_.mark(words.say("panels.week_mark", {{"number", weeks_[at].number}}));
  const Box head = box.top(kWeekTitle);
  const double title = draw_line(canvas, head.left(head.width * 0.4), week_title(words, weeks_[at]),
                                 style::kHeading, Align::left, 9);
  draw_line(canvas, head.without_left(title + 5), week_dates(words, weeks_[at]), style::kSmall,
            Align::right, style::kLeast);
  Box goal = box.without_top(kWeekTitle);
  for (const std::string& line : measured_[at].goal) {
    const double height = line_pitch(style::kBody.size_pt);
    draw_line(canvas, goal.top(height), line, style::kBody, Align::left, style::kLeast);
    goal = goal.without_top(height);
  }
  rule(box.bottom() - 0.5, box);
}

void PanelPages::rule(double y, const Box& box) {
  book_.canvas().line({box.x, y}, {box.right(), y}, style::kHairline);
}

std::string PanelPages::slim_date(const Panel& panel) const {
  const Words& words = book_.words();
  const Date first = panel.days.front()->date;
  const Date last = panel.days.back()->date;
  if (first == last) return day_month_short(words, first);
  return words.say("panels.to_day", {{"first", day_month_short(words, first)},
                                     {"weekday", weekday_short(words, last)},
                                     {"last", day_month_short(words, last)}});
}

void PanelPages::draw_slim(const Box& box, const Panel& panel) {
  for (const Day* day : panel.days) book_.note_day(day->date);
  Canvas& canvas = book_.canvas();
  const Box row = box.top(kSlimHeight - 1).without_top(1);
  const double weekday =
      draw_line(canvas, row.left(16), weekday_short(book_.words(), panel.days.front()->date),
                style::kHeading, Align::left, 8);
  const Box date_box = row.without_left(weekday + 2).left(row.width * 0.4);
  const double date =
      draw_line(canvas, date_box, slim_date(panel), style::kBody, Align::left, style::kLeast);
  const double after = date_box.x + date + 5 - row.x;
  const double text_at = panel.days.size() > 1 || !panels_.date_beside() ? after : 0;
  if (panel.days.size() > 1)
    draw_line(canvas, row.without_left(text_at), book_.words().say("panels.days_off"), style::kBody,
              Align::left, style::kLeast);
  else
    panel.strips.front().draw(row.without_left(text_at));
  rule(box.bottom(), box);
}

void PanelPages::draw_full(const Box& box, const Panel& panel, const Item& item, double padding) {
  const Day& day = *panel.days.front();
  const bool continued = item.first_strip > 0;
  if (!continued) book_.note_day(day.date);
  Box rest = box.inset(0, padding);
  const double date = panels_.date_height(day);
  panels_.draw_date(rest.top(date), day, continued);
  if (!panels_.date_beside()) rest = rest.without_top(date);
  for (std::size_t at = item.first_strip; at < item.first_strip + item.strips; ++at) {
    const Strip& strip = panel.strips[at];
    strip.draw(rest.top(strip.height));
    rest = rest.without_top(strip.height);
  }
}

void PanelPages::draw_sign_off(const Box& box) {
  const Words& words = book_.words();
  draw_write_ins(book_.canvas(), box.bottom(style::kWritingRow),
                 {{words.say("panels.next_time"), 2}, {words.say("panels.signed"), 1}},
                 style::kSmall);
}

void PanelPages::draw_the_day(const Box& box) {
  const Words& words = book_.words();
  Canvas& canvas = book_.canvas();
  Box rest = box.inset(0, kPadding);
  const Box row = rest.top(5 * kGrid);
  const double weekday =
      draw_line(canvas, row.left(row.width * 0.2), weekday_short(words, book_.plan().by),
                style::kTitle, Align::left, 11);
  const double date =
      draw_line(canvas, row.without_left(weekday + 3).left(row.width * 0.25),
                day_month(words, book_.plan().by), style::kBody, Align::left, style::kLeast);
  const Box title = row.without_left(weekday + date + 8);
  const double said = draw_line(canvas, title, words.say("panels.the_day"), style::kHeading,
                                Align::left, style::kLeast);
  if (const int page = book_.page_of(SheetKind::the_day); page > 0) {
    draw_line(canvas, title.without_left(said + 3), words.say("panels.on_page", {{"page", page}}),
              style::kBody, Align::left, style::kLeast);
    canvas.link(row, page);
    return;
  }
  const int card = book_.page_of(SheetKind::rejoin_card);
  const Box says = rest.without_top(5 * kGrid).top(3 * kGrid);
  draw_line(canvas, says,
            card > 0 ? words.say("panels.the_day_card", {{"page", card}})
                     : words.say("panels.the_day_forward"),
            style::kBody, Align::left, style::kLeast);
  if (card > 0) canvas.link(says, card);
  draw_write_ins(canvas, rest.without_top(8 * kGrid).top(style::kWritingRow),
                 {{words.say("weeks.the_time"), 1}, {words.say("weeks.the_place"), 2}},
                 style::kSmall);
  rule(box.bottom(), box);
}

void PanelPages::draw_notes(const Box& box) {
  const double head = 4 * kGrid;
  const int lines =
      std::min(kMostNotes, static_cast<int>((box.height - head) / style::kWritingRow));
  if (lines < kLeastNotes) return;
  const Box notes = box.without_top(kGrid);
  draw_line(book_.canvas(), notes.top(3 * kGrid), book_.words().say("panels.notes"), style::kSmall,
            Align::left, style::kLeast);
  draw_writing_lines(book_.canvas(), notes.without_top(kGrid), lines);
}

}  // namespace cahier
