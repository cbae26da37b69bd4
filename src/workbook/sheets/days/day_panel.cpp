#include "workbook/sheets/days/day_panel.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "paper/text_fitting.h"
#include "plan/first_uses.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kDateWidth = 26;          // of the date's column, with its gap
constexpr double kLeastBeside = 150;       // narrower pages have the date above the tasks
constexpr double kBetweenTasks = kGrid;    // between tasks
constexpr double kAbovePiece = 2 * kGrid;  // another piece of the day
constexpr double kNoteIndent = 4;          // behind the bar beside a note
constexpr double kWeekdayLine = 7.5;
constexpr double kDateLine = 4.5;
constexpr double kDateNoteLine = 4.5;
constexpr double kDateAbove = 9;     // where weekday and date stand above the tasks
constexpr int kTimesToldToStop = 4;  // at length, on days with something new
constexpr int kFirstTimes = 2;       // how often a drill is explained
constexpr int kJumpDays = 14;        // before the date: sessions of starts end with a jump

// What the line below a piece's tasks asks for. The slips of run-throughs stand on the tally, and
// how cue starts went on their own sheet.
std::string_view what_to_report(const Day& day, int piece) {
  const bool elsewhere = std::all_of(day.tasks.begin(), day.tasks.end(), [&](const Task& task) {
    const Slips slips = facts_of(task.drill).slips;
    return task.piece != piece || slips == Slips::with_the_run || slips == Slips::on_start_sheet;
  });
  return elsewhere ? "panels.noted" : "panels.slipped";
}

// The tasks of each sitting, those of a piece together, the piece that comes first before the
// others; otherwise in the order of the day.
std::vector<const Task*> by_piece(const Day& day) {
  std::vector<const Task*> tasks;
  for (const Task& task : day.tasks) tasks.push_back(&task);
  const auto turn = [&](const Task* task) {
    return std::ranges::find_if(day.tasks,
                                [&](const Task& one) {
                                  return one.block == task->block && one.piece == task->piece;
                                }) -
           day.tasks.begin();
  };
  std::stable_sort(tasks.begin(), tasks.end(), [&](const Task* one, const Task* other) {
    return std::pair(one->block, turn(one)) < std::pair(other->block, turn(other));
  });
  return tasks;
}

// Where there is more about a task than its panel holds; none for what the panel says whole.
std::optional<SheetKind> sheet_for(const Task& task) {
  switch (task.drill) {
    case Drill::cue_starts:
      return task.fork ? SheetKind::look_alikes : SheetKind::cue_starts;
    case Drill::run_through:
      return SheetKind::run_throughs;
    case Drill::write_out:
      return SheetKind::write_outs;
    case Drill::spoken_part:
      return SheetKind::spoken_parts;
    case Drill::slow_pass:
    case Drill::counted_pass:
      return SheetKind::passes;
    case Drill::learn:
    case Drill::join:
    case Drill::recall:
    case Drill::silent_run:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

DayPanels::DayPanels(Book& book, double width)
    : book_(book),
      width_(width),
      date_width_(width < kLeastBeside ? 0 : kDateWidth),
      columns_(task_columns(book, width - date_width_)),
      first_uses_(first_uses(book.plan())) {
  for (const PlannedPiece& piece : book.plan().pieces) labels_.emplace_back(piece);
}

Box DayPanels::task_area(const Box& box) const { return box.without_left(date_width_); }

int DayPanels::page_for(const Task& task) const {
  const std::optional<SheetKind> sheet = sheet_for(task);
  if (!sheet) return 0;
  const int own = book_.page_of_task(task);
  return own > 0 ? own : book_.page_of_piece(task.piece, *sheet);
}

std::string DayPanels::label_beside_bars(const Task& task) const {
  const Chunk& chunk = book_.plan().pieces[task.piece].chunks[task.chunks.front()];
  const ChunkLabels& labels = labels_[task.piece];
  return labels.by_bars(chunk) ? std::string() : labels.of(chunk);
}

// Near the date a session of starts ends with what a slip asks for on the day; said a few times.
bool DayPanels::practises_jump(const Task& task, Date date) {
  return task.drill == Drill::cue_starts && task.throws > 0 &&
         book_.plan().by - date <= days{kJumpDays} && book_.page_of(SheetKind::rejoin_card) > 0 &&
         told_to_jump_++ < kFirstTimes;
}

TaskRemarks DayPanels::remarks(const Task& task, Date date) {
  const Words& words = book_.words();
  const PlannedPiece& piece = book_.plan().pieces[task.piece];
  TaskRemarks remarks;
  remarks.leads_to = page_for(task);
  if (remarks.leads_to > 0)
    remarks.beside = words.say("panels.on_page", {{"page", remarks.leads_to}});
  else if (task.drill == Drill::learn && !task.chunks.empty())
    remarks.beside = label_beside_bars(task);
  const auto add_below = [&](const std::string& text) {
    remarks.below += (remarks.below.empty() ? "" : "\n") + text;
  };
  // Beside the drill's name or, where there is no room, just below it.
  if (first_uses_.contains(&task)) {
    if (remarks.beside.empty())
      remarks.beside = words.say("panels.if_missed");
    else
      add_below(words.say("panels.if_missed"));
  }
  if (met_[task.drill]++ < kFirstTimes) add_below(drill_meaning(words, task));
  if (task.drill == Drill::slow_pass) add_below(words.say("task.once_more"));
  if (task.fork) add_below(fork_stop(words, task));
  if (!task.cues.empty() && throws_below_tempo(piece, task))
    add_below(words.say("task.thrown_as_slow"));
  else if (!task.cues.empty() && task.throws > 0 && told_of_throws_++ < kFirstTimes)
    add_below(words.say("task.thrown_as_listed"));
  if (practises_jump(task, date))
    add_below(words.say("task.jump", {{"page", book_.page_of(SheetKind::rejoin_card)}}));
  if (task.reason == Reason::listener) add_below(words.say("task.listener"));
  if (task.reason == Reason::recorded) add_below(words.say("task.record"));
  if (task.drill == Drill::learn) remarks.to_write = words.say("places.what_it_is");
  if (task.drill == Drill::learn)
    for (const std::string& mark : marks_in(words, piece, task.bars)) add_below(mark);
  if (const std::string mark = mark_in_force(piece, task); !mark.empty()) add_below(mark);
  return remarks;
}

Strip DayPanels::line_of_text(double height, std::string text, TextStyle style) {
  return {height, [this, text, style](const Box& box) {
            draw_line(book_.canvas(), task_area(box), text, style, Align::left, style::kLeast);
          }};
}

// Below what was written about another piece with room above it.
Strip DayPanels::piece_title(const PlannedPiece& piece, bool below_another) {
  const double width = width_ - date_width_;
  const std::string title = book_.title_in(width, piece, style::kStrong);
  return {below_another ? 6 + kAbovePiece : 6, [this, title](const Box& box) {
            draw_line(book_.canvas(), task_area(box).bottom(6), title, style::kStrong, Align::left,
                      style::kLeast);
          }};
}

Strip DayPanels::break_line() {
  const std::string text = book_.words().say(
      "panels.break_now", {{"minutes", minutes_text(book_.plan().method.break_minutes)}});
  return {6 + kBetweenTasks, [this, text](const Box& box) {
            const Box line = task_area(box).top(6);
            const double y = line.centre().y;
            const double text_at = line.x + 10;
            const double length = draw_line(book_.canvas(), line.without_left(10).without_right(10),
                                            text, style::kSmall, Align::left, style::kLeast);
            book_.canvas().line({line.x, y}, {text_at - 2, y}, style::kHairline);
            book_.canvas().line({text_at + length + 2, y}, {line.right(), y}, style::kHairline);
          }};
}

Strip DayPanels::stop_strip() {
  const TextBlock block(book_.typefaces(), book_.words().say("panels.stop_new"), style::kStrong,
                        width_ - date_width_);
  return {block.height() + kGrid,
          [this, block](const Box& box) { block.draw(book_.canvas(), task_area(box)); }};
}

Strip DayPanels::note_strip(const std::string& text) {
  const TextBlock block(book_.typefaces(), text, style::kBody, width_ - date_width_ - kNoteIndent);
  return {block.height() + 2, [this, block](const Box& box) {
            const Box area = task_area(box).without_top(0.5).without_bottom(1.5);
            book_.canvas().rectangle(area.left(0.9), {{}, Fill{style::kDark, false}});
            block.draw(book_.canvas(), area.without_left(kNoteIndent));
          }};
}

Strip DayPanels::report_line(const std::string& before, std::string_view label) {
  return {
      style::kWritingRow + 1.5, [this, before, label](const Box& box) {
        Canvas& canvas = book_.canvas();
        const Words& words = book_.words();
        const Box row = task_area(box).bottom(5);
        const double line_y = row.bottom() - 1.2;
        const double took_width = columns_.wide() ? 46 : 38;
        const double stop = draw_line(canvas, row.left(row.width * 0.3), before, style::kStrong,
                                      Align::left, style::kLeast);
        const Box slipped = row.without_right(took_width + 4).without_left(stop > 0 ? stop + 5 : 0);
        const Box took = row.right(took_width);
        const TextStyle style = style::kSmall;
        const double slipped_label = draw_line(canvas, slipped.left(slipped.width * 0.75),
                                               words.say(label), style, Align::left, style::kLeast);
        canvas.line({slipped.x + slipped_label + 2, line_y}, {slipped.right(), line_y},
                    style::kWritingLine);
        const double took_label = draw_line(canvas, took.left(15), words.say("panels.took"), style,
                                            Align::left, style::kLeast);
        const double unit = draw_line(canvas, took.right(12), words.say("panels.took_minutes"),
                                      style, Align::right, style::kLeast);
        canvas.line({took.x + took_label + 2, line_y}, {took.right() - unit - 2, line_y},
                    style::kWritingLine);
      }};
}

std::vector<Strip> DayPanels::slim_strips(const Day& day) {
  const Words& words = book_.words();
  const bool rest = day.allowance <= 0;
  std::string text = words.say(!rest        ? "panels.free"
                               : day.lesson ? "panels.off_lesson"
                                            : "panels.off");
  const std::string note = say_note(words, day.note);
  if (!note.empty()) text = note;
  if (!rest && day.lesson) text.append(" ").append(words.say("panels.lesson_too"));
  return {line_of_text(7, text, rest ? style::kBody : style::kBody)};
}

std::vector<Strip> DayPanels::strips(const Day& day) {
  if (is_slim(day)) return slim_strips(day);
  std::vector<Strip> strips;
  const Words& words = book_.words();
  const bool several = book_.plan().pieces.size() > 1;
  bool learned = false;
  const std::vector<const Task*> tasks = by_piece(day);
  const auto ends_piece = [&](std::size_t at) {
    return std::none_of(tasks.begin() + static_cast<std::ptrdiff_t>(at) + 1, tasks.end(),
                        [&](const Task* later) { return later->piece == tasks[at]->piece; });
  };
  for (std::size_t at = 0; at < tasks.size(); ++at) {
    const Task& task = *tasks[at];
    if (at > 0 && task.block != tasks[at - 1]->block) strips.push_back(break_line());
    if (several && (at == 0 || task.piece != tasks[at - 1]->piece))
      strips.push_back(piece_title(book_.plan().pieces[task.piece], at > 0));
    for (Strip& strip : task_strips(book_, columns_, task, remarks(task, day.date))) {
      const double inset = date_width_;
      strips.push_back({strip.height, [inset, draw = std::move(strip.draw)](const Box& box) {
                          draw(box.without_left(inset));
                        }});
    }
    strips.back().height += kBetweenTasks;
    learned = learned || task.drill == Drill::learn;
    if (several && at + 1 < tasks.size() && ends_piece(at))
      strips.push_back(report_line("", what_to_report(day, task.piece)));
  }
  if (const std::string note = say_note(words, day.note); !note.empty())
    strips.push_back(note_strip(note));
  const bool at_length = learned && told_to_stop_++ < kTimesToldToStop;
  if (at_length) strips.push_back(stop_strip());
  strips.push_back(report_line(at_length ? "" : words.say("panels.stop"),
                               what_to_report(day, tasks.back()->piece)));
  return strips;
}

double DayPanels::date_height(const Day& day) const {
  if (!date_beside()) return kDateAbove;
  return kWeekdayLine + kDateLine + kDateNoteLine + (day.lesson ? kDateNoteLine : 0);
}

void DayPanels::draw_date(const Box& box, const Day& day, bool continued) {
  Canvas& canvas = book_.canvas();
  const Words& words = book_.words();
  const std::string minutes =
      continued ? words.say("panels.continued")
                : words.say("panels.minutes_of", {{"minutes", minutes_text(day.minutes())},
                                                  {"allowance", minutes_text(day.allowance)}});
  const std::string lesson = day.lesson ? words.say("panels.lesson") : "";
  if (date_beside()) {
    Box rest = box.left(date_width_ - 2);
    draw_line(canvas, rest.top(kWeekdayLine), weekday_short(words, day.date), style::kTitle,
              Align::left, 11);
    rest = rest.without_top(kWeekdayLine);
    draw_line(canvas, rest.top(kDateLine), day_month(words, day.date), style::kBody, Align::left,
              style::kLeast);
    rest = rest.without_top(kDateLine);
    draw_line(canvas, rest.top(kDateNoteLine), minutes, style::kSmall, Align::left, style::kLeast);
    draw_line(canvas, rest.without_top(kDateNoteLine).top(kDateNoteLine), lesson,
              style::kNoteStrong, Align::left, style::kLeast);
    return;
  }
  const Box row = box.top(kWeekdayLine);
  const double weekday = draw_line(canvas, row.left(row.width * 0.3),
                                   weekday_short(words, day.date), style::kTitle, Align::left, 11);
  const Box after = row.without_left(weekday + 3);
  const double date = draw_line(canvas, after.left(after.width * 0.45), day_month(words, day.date),
                                style::kBody, Align::left, style::kLeast);
  const double taken = draw_line(canvas, after.right(after.width * 0.35), minutes, style::kSmall,
                                 Align::right, style::kLeast);
  draw_line(canvas, after.without_left(date + 3).without_right(taken + 3), lesson,
            style::kNoteStrong, Align::left, style::kLeast);
}

}  // namespace cahier
