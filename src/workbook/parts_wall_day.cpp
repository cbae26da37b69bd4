#include "workbook/parts_wall_day.h"

#include <algorithm>
#include <map>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_task.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLeastWall = 18.75;  // points
constexpr double kWallLine = 8.5;     // millimetres, at that size
constexpr double kSmallLine = 5;
constexpr double kBetween = 1.5;
constexpr double kTickBox = 7;
constexpr double kTickRow = kTickBox + 1;

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

double wall_width(const Typefaces& faces, const std::string& text, const WallSizes& sizes) {
  return faces.width(text, style::kWallBars.face, sizes.type()) + 0.5;
}

}  // namespace

double WallSizes::type() const { return kLeastWall * scale; }
double WallSizes::line() const { return kWallLine * scale; }
double WallSizes::noun() const { return std::min(11 * scale, 14.0); }
double WallSizes::detail() const { return scale > 1.1 ? kSmallLine : 0; }

WallDay::WallDay(const Book& book, const Day& day) : book_(book), day_(day) {
  std::map<Drill, int> numbers;
  std::map<Drill, std::vector<std::string>> bars;
  for (const Task& task : day.tasks) {
    if (task.drill != Drill::learn) {
      numbers[task.drill] += count_of(task);
      if (task.drill == Drill::run_through ||
          (task.drill == Drill::cue_starts && task.cues.empty()))
        continue;
      for (std::string& text : task_bars(book.words(), book.plan().pieces[task.piece], task))
        bars[task.drill].push_back(std::move(text));
      continue;
    }
    ++fresh_chunks_;
    if (!fresh_.empty() && task.piece == fresh_.back().piece &&
        fresh_.back().bars.last + 1 == task.bars.first)
      fresh_.back().bars.last = task.bars.last;
    else
      fresh_.push_back({task.piece, task.bars});
  }
  std::stable_sort(fresh_.begin(), fresh_.end(),
                   [](const Fresh& a, const Fresh& b) { return a.piece < b.piece; });
  for (const auto& [drill, number] : numbers)
    counts_.push_back({number, drill_noun(book.words(), drill, number),
                       several_pieces() ? "" : list_text(book.words(), bars[drill])});
}

std::string WallDay::fresh_label(std::size_t at) const {
  if (at > 0 && fresh_[at - 1].piece == fresh_[at].piece) return {};
  const Words& words = book_.words();
  if (!several_pieces()) return words.say("weeks.new");
  return words.say("weeks.new_of", {{"piece", book_.plan().pieces[fresh_[at].piece].piece.title}});
}

// A range that is too wide for the least type is broken behind its dash.
std::vector<std::string> WallDay::fresh_lines(const BarRange& bars, double width) const {
  const std::string text = bar_range(bars.first, bars.last);
  if (wall_width(book_.typefaces(), text, WallSizes{}) <= width) return {text};
  return {std::to_string(bars.first) + "–", std::to_string(bars.last)};
}

double WallDay::fresh_height(double width, const WallSizes& sizes) const {
  double height = 0;
  for (std::size_t at = 0; at < fresh_.size(); ++at)
    height += (fresh_label(at).empty() ? 0 : kSmallLine) +
              sizes.line() * static_cast<double>(fresh_lines(fresh_[at].bars, width).size());
  return fresh_.empty() ? 0 : height + kBetween;
}

double WallDay::body_height(double width, const WallSizes& sizes) const {
  double height = fresh_height(width, sizes);
  for (const Count& count : counts_)
    height += sizes.line() + (count.bars.empty() ? 0 : sizes.detail());
  return height;
}

bool WallDay::date_in_one_line(double width, const WallSizes& sizes) const {
  const Words& words = book_.words();
  return wall_width(book_.typefaces(), weekday_short(words, day_.date), sizes) +
             wall_width(book_.typefaces(), std::to_string(day_of_month(day_.date)), sizes) + 2 <=
         width;
}

bool WallDay::fits(double width, double height, const WallSizes& sizes) const {
  if (sizes.scale > 1 && !date_in_one_line(width, sizes)) return false;
  const double date = date_in_one_line(width, sizes) ? sizes.line() : 2 * sizes.line();
  return date + kSmallLine + 1 + body_height(width, sizes) + kTickRow <= height;
}

std::string WallDay::heading(const Day& day) const {
  const Words& words = book_.words();
  const std::string text = day.allowance <= 0              ? words.say("weeks.rest")
                           : day.tasks.empty()             ? words.say("weeks.free")
                           : day.note == DayNote::catch_up ? words.say("weeks.catch_up")
                                                           : minutes_phrase(words, day.minutes());
  return day.lesson ? words.say("weeks.with_lesson", {{"day", text}}) : text;
}

Box WallDay::draw_date(Canvas& canvas, const Box& box, const WallSizes& sizes) const {
  const TextStyle style = style::kWallBars.at(sizes.type());
  const std::string number = std::to_string(day_of_month(day_.date));
  const Box line = box.top(sizes.line());
  const bool one_line = date_in_one_line(box.width, sizes);
  draw_line(canvas, line, weekday_short(book_.words(), day_.date), style, Align::left, kLeastWall);
  draw_line(canvas, one_line ? line : line.moved(0, sizes.line()), number, style,
            one_line ? Align::right : Align::left, kLeastWall);
  return box.without_top(sizes.line() * (one_line ? 1 : 2));
}

void WallDay::draw(Canvas& canvas, const Box& box, const WallSizes& sizes) const {
  Box rest = draw_date(canvas, box, sizes);
  draw_line(canvas, rest.top(kSmallLine), heading(day_), style::kBody, Align::left, style::kLeast);
  rest = rest.without_top(kSmallLine + 1);
  if (day_.tasks.empty()) return;
  const Box tick = box.bottom(kTickBox).right(kTickBox);
  canvas.rectangle(tick, {style::kRule, {}});
  const Box above = rest.without_bottom(kTickRow);
  if (body_height(box.width, sizes) <= above.height) return draw_lines(canvas, above, sizes);
  // A single range keeps the wall's type even then, with "new" beside it.
  const std::vector<std::string> fresh =
      fresh_.size() == 1 ? fresh_lines(fresh_.front().bars, box.width) : std::vector<std::string>{};
  if (fresh.size() == 1 && sizes.line() + kSmallLine <= above.height) {
    const Box line = above.top(sizes.line());
    const double width = draw_line(canvas, line, fresh.front(), style::kWallBars.at(sizes.type()),
                                   Align::left, kLeastWall);
    draw_line(canvas, line.without_left(width + 2), fresh_label(0), style::kStrong, Align::left,
              style::kLeast);
    return draw_paragraph(canvas, above.without_top(sizes.line()), false);
  }
  draw_paragraph(canvas, above.height >= 3 * kSmallLine ? above : rest.without_right(kTickRow),
                 true);
}

Box WallDay::draw_fresh(Canvas& canvas, Box rest, const WallSizes& sizes) const {
  if (fresh_.empty()) return rest;
  for (std::size_t at = 0; at < fresh_.size(); ++at) {
    if (const std::string label = fresh_label(at); !label.empty()) {
      draw_line(canvas, rest.top(kSmallLine), label, style::kStrong, Align::left, style::kLeast);
      rest = rest.without_top(kSmallLine);
    }
    for (const std::string& line : fresh_lines(fresh_[at].bars, rest.width)) {
      draw_line(canvas, rest.top(sizes.line()), line, style::kWallBars.at(sizes.type()),
                Align::left, kLeastWall);
      rest = rest.without_top(sizes.line());
    }
  }
  return rest.without_top(kBetween);
}

void WallDay::draw_lines(Canvas& canvas, Box rest, const WallSizes& sizes) const {
  rest = draw_fresh(canvas, rest, sizes);
  const TextStyle wall = style::kWallBars.at(sizes.type());
  for (const Count& count : counts_) {
    const Box line = rest.top(sizes.line());
    const double width =
        draw_line(canvas, line, std::to_string(count.number), wall, Align::left, kLeastWall);
    draw_line(canvas, line.without_left(width + 2), count.noun, style::kBody.at(sizes.noun()),
              Align::left, style::kLeast);
    rest = rest.without_top(sizes.line());
    if (count.bars.empty() || sizes.detail() <= 0) continue;
    draw_line(canvas, rest.top(sizes.detail() - 0.5), count.bars, style::kBody, Align::left,
              style::kLeast);
    rest = rest.without_top(sizes.detail());
  }
}

void WallDay::draw_paragraph(Canvas& canvas, const Box& box, bool with_fresh) const {
  const Words& words = book_.words();
  std::vector<std::string> texts;
  if (with_fresh && fresh_chunks_ > 0) {
    std::vector<std::string> ranges;
    for (const Fresh& fresh : fresh_)
      ranges.push_back(bar_range(fresh.bars.first, fresh.bars.last));
    texts.push_back(words.say("weeks.new_bars", {{"bars", list_text(words, ranges)}}));
  }
  for (const Count& count : counts_)
    texts.push_back(words.say("weeks.some", {{"number", count.number}, {"what", count.noun}}));
  const auto drawn = [&](const std::string& text) {
    for (double size = 11; size >= 7.5; size -= 0.5) {
      const TextBlock block(book_.typefaces(), text, style::kBody.at(size), box.width);
      if (block.height() > box.height) continue;
      block.draw(canvas, box);
      return true;
    }
    return false;
  };
  if (drawn(list_text(words, texts))) return;
  // Then only how much is new.
  if (with_fresh && fresh_chunks_ > 0)
    texts.front() = words.say(
        "weeks.some",
        {{"number", fresh_chunks_}, {"what", drill_noun(words, Drill::learn, fresh_chunks_)}});
  if (!drawn(list_text(words, texts)))
    draw_line(canvas, box.top(std::min(kSmallLine, box.height)), list_text(words, texts),
              style::kBody, Align::left, style::kLeast);
}

}  // namespace cahier
