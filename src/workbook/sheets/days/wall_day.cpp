#include "workbook/sheets/days/wall_day.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/writing_lines.h"

namespace cahier {
namespace {

constexpr double kMinutes = style::kRow;
constexpr double kWord = 6 * kGrid;
constexpr double kAfterHead = 2 * kGrid;
constexpr double kTickBox = 6 * kGrid;  // large enough for a thick pencil
constexpr double kFoot = kTickBox + kGrid;
constexpr double kFlatLine = 3 * kGrid;
constexpr double kLineLetters = 1;  // what letters may reach above and below their line
constexpr Stroke kTickStroke{0.5, style::kDark, 0, 0, false};

double date_line(const WallLook& look) { return on_grid(millimetres(look.date.size_pt) * 1.15); }

double date_gap(const TextStyle& text_style) { return millimetres(text_style.size_pt) * 0.25; }

// Minutes, and a line for each word.
int flat_lines(const WallLook& look) { return 1 + std::max(1, look.words); }

double head_height(const WallLook& look) {
  const double date = date_line(look) * (look.date_below ? 2 : 1);
  if (look.flat) return date + flat_lines(look) * kFlatLine + kGrid;
  return date + kMinutes + kWord * look.words + kAfterHead;
}

double foot_height(const WallLook& look, int lines) {
  return (look.flat ? 0 : kFoot) + writing_lines_height(lines);
}

void draw_tick_box(Canvas& canvas, const Box& box) {
  canvas.rectangle(box.inset(kTickStroke.width / 2), {kTickStroke, {}});
}

// On a line of its own, as large as the wall asks for where it fits; returns what is left.
Box draw_word(Canvas& canvas, const Box& box, std::string_view word) {
  const Box line = box.top(kWord);
  const Fitted large =
      fit_line(canvas.typefaces(), word, style::kWallText, line.width, style::kLeastWall);
  draw_line(canvas, line, word, large.cut ? style::kSubtitle : style::kWallText, Align::left,
            large.cut ? style::kLeast : style::kLeastWall);
  return box.without_top(kWord);
}

}  // namespace

bool wall_date_fits(const Book& book, Date date, double width, const TextStyle& text_style) {
  const auto width_of = [&](const std::string& text) {
    return book.typefaces().width(text, text_style.face, text_style.size_pt);
  };
  return width_of(weekday_short(book.words(), date)) + date_gap(text_style) +
             width_of(std::to_string(day_of_month(date))) + 0.5 <=
         width;
}

Box draw_wall_date(Canvas& canvas, const Words& words, const Box& box, Date date,
                   const WallLook& look) {
  const double height = date_line(look);
  const Box line = box.top(height).inset(0, -kLineLetters);
  const double weekday = draw_line(canvas, line, weekday_short(words, date), look.date, Align::left,
                                   style::kLeastWall);
  draw_line(
      canvas,
      look.date_below ? line.moved(0, height) : line.without_left(weekday + date_gap(look.date)),
      std::to_string(day_of_month(date)), look.date, Align::left, style::kLeastWall);
  return box.without_top(height * (look.date_below ? 2 : 1));
}

bool WallDay::fits(double width, double height, const WallLook& look) const {
  const std::optional<double> tasks = WallList(book_, day_, width, look.sizes).height();
  return tasks &&
         head_height(look) + *tasks + foot_height(look, std::max(look.lines, least_lines())) <=
             height + 1e-6;
}

std::vector<std::string> WallDay::all_words() const {
  const Words& words = book_.words();
  std::vector<std::string> all;
  if (day_.lesson) all.push_back(words.say("weeks.lesson"));
  if (book_.plan().upkeep && day_.tasks.empty()) return all;  // so are most days
  if (day_.note == DayNote::catch_up)
    all.push_back(words.say("weeks.catch_up"));
  else if (day_.allowance <= 0)
    all.push_back(words.say("weeks.rest"));
  else if (day_.tasks.empty())
    all.push_back(words.say("weeks.free"));
  return all;
}

std::vector<std::string> WallDay::words() const {
  return day_.tasks.empty() ? std::vector<std::string>{} : all_words();
}

Box WallDay::draw_head(Canvas& canvas, const Box& box, const WallLook& look) const {
  Box rest = draw_wall_date(canvas, book_.words(), box, day_.date, look);
  if (look.flat) return draw_flat_head(canvas, rest, look);
  if (!day_.tasks.empty()) {
    draw_line(canvas, rest.top(kMinutes), minutes_phrase(book_.words(), day_.minutes()),
              style::kLead, Align::left, style::kLeast);
    rest = rest.without_top(kMinutes);
  }
  for (const std::string& word : all_words()) rest = draw_word(canvas, rest, word);
  return box.without_top(head_height(look));
}

// Minutes and words at the left, the box to tick at the right.
Box WallDay::draw_flat_head(Canvas& canvas, const Box& box, const WallLook& look) const {
  const Box head = box.top(2 * kFlatLine);
  const bool tasks = !day_.tasks.empty();
  const Box text = tasks ? head.without_right(kTickBox + 1) : head;
  if (tasks) {
    draw_line(canvas, text.top(kFlatLine), minutes_phrase(book_.words(), day_.minutes()),
              style::kBody, Align::left, style::kLeast);
    draw_tick_box(canvas, head.right(kTickBox));
  }
  Box line = tasks ? text.bottom(kFlatLine) : text.top(kFlatLine);
  for (const std::string& word : all_words()) {
    draw_line(canvas, line, word, style::kStrong, Align::left, style::kLeast);
    line = Box{box.x, line.bottom(), box.width, kFlatLine};
  }
  return box.without_top(flat_lines(look) * kFlatLine + kGrid);
}

// Room for what the day brought, and a box to tick.
void WallDay::draw_foot(Canvas& canvas, const Box& box, const WallLook& look, int lines) const {
  const Words& words = book_.words();
  const Box foot = box.bottom(foot_height(look, lines));
  if (lines > 0) {
    const bool slips = !day_.tasks.empty();
    const char* label = slips && book_.page_of_day(day_.date) > 0
                            ? "weeks.noted"  // slips are there
                        : slips       ? "weeks.slipped"
                        : day_.lesson ? "weeks.for_lesson"
                                      : "weeks.caught_up";
    const Box row = foot.top(style::kWritingRow);
    draw_labelled_line(canvas, row, words.say(label), style::kNote);
    const bool lesson_too = slips && day_.lesson && lines > 1;
    if (lesson_too)
      draw_labelled_line(canvas, row.moved(0, style::kWritingRow), words.say("weeks.for_lesson"),
                         style::kNote);
    const int labelled = lesson_too ? 2 : 1;
    draw_writing_lines(canvas, foot.without_top(writing_lines_height(labelled)), lines - labelled);
  }
  if (look.flat || day_.allowance <= 0) return;
  const Box row = box.bottom(kTickBox);
  draw_tick_box(canvas, row.right(kTickBox));
  draw_line(canvas, row.without_right(kTickBox + 2), words.say("weeks.done"), style::kBody,
            Align::right, style::kLeast);
}

double WallDay::room(const Box& box, const WallLook& look, int lines) const {
  return box.height - head_height(look) - foot_height(look, lines);
}

// A lesson asks for what was hard: its day keeps the line for slips.
int WallDay::least_lines() const { return day_.lesson ? 1 : 0; }

std::optional<WallPlace> WallDay::draw(Canvas& canvas, const Box& box, const WallLook& look) const {
  const Box below = draw_head(canvas, box, look);
  if (day_.tasks.empty()) {
    if (day_.lesson || day_.note == DayNote::catch_up) draw_foot(canvas, box, look, look.lines);
    return std::nullopt;
  }
  const int most_lines = std::max(look.lines, least_lines());
  for (const WallSizes& sizes :
       {look.sizes, WallSizes::plain(), WallSizes::dense(), WallSizes::tight()}) {
    const WallList list(book_, day_, box.width, sizes);
    const std::optional<double> height = list.height();
    for (int lines = most_lines; lines >= least_lines(); --lines) {
      const bool last = sizes.line == WallSizes::tight().line && lines == least_lines();
      if (!last && (!height || *height > room(box, look, lines) + 1e-6)) continue;
      draw_foot(canvas, box, look, lines);
      return list.draw(canvas, below.top(room(box, look, lines)));
    }
  }
  return std::nullopt;
}

std::optional<WallPlace> WallDay::draw_more(Canvas& canvas, const Box& box, const WallLook& look,
                                            WallPlace from) const {
  const Box below = draw_wall_date(canvas, book_.words(), box, day_.date, look);
  return WallList(book_, day_, box.width, WallSizes::tight())
      .draw_more(canvas, below.without_top(kAfterHead), from);
}

}  // namespace cahier
