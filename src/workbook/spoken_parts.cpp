#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_flow.h"
#include "workbook/parts_task.h"
#include "workbook/parts_tempo.h"
#include "workbook/parts_ticks.h"
#include "workbook/parts_writing_lines.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kStepHead = 7.5;  // who plays, who is spoken, the circles
constexpr int kLines = 2;          // to write on, for each step
constexpr double kStep = kStepHead + writing_lines_height(kLines);
constexpr double kAfterBlock = 7;
constexpr int kOpenBlocks = 8;  // for bars that turn out weak; one page of them is used

std::string parts_text(const Words& words, const std::vector<std::string>& parts) {
  return list_text(words, parts);
}

class SpokenParts {
 public:
  SpokenParts(Book& book, const PlannedPiece& piece)
      : book_(book), words_(book.words()), piece_(piece), flow_([this] { return open(); }) {
    if (book.plan().pieces.size() > 1) right_ = piece.piece.title;
  }

  void planned(Date date, const Task& task) {
    const Box block = flow_.take(kStep * static_cast<double>(task.steps.size()));
    book_.note_task(task);
    const Box left = block.left(head_width(block));
    draw_line(book_.canvas(), left.top(8), bar_range(task.bars.first, task.bars.last),
              style::kStandBars, Align::left, style::kLeastStand);
    draw_line(book_.canvas(), left.without_top(8).top(5.5),
              words_.say("spoken_parts.on", {{"weekday", weekday_short(words_, date)},
                                             {"date", day_month(words_, date)}}),
              style::kBody, Align::left, style::kLeast);
    if (task.tempo)
      draw_tempo(book_.canvas(), left.without_top(15).top(7), tempo_of(task), style::kStandText);
    draw_steps(block.without_left(left.width + 4), task.steps);
    flow_.skip(kAfterBlock);
  }

  // Blocks whose bars the player fills in: a page of them.
  void open_blocks(const std::vector<Step>& steps) {
    const double height = kStep * static_cast<double>(steps.size());
    for (int number = 0; number < kOpenBlocks; ++number) {
      if (number > 0 && !flow_.fits(height)) return;
      const Box block = flow_.take(height);
      const Box left = block.left(head_width(block));
      draw_labelled_line(book_.canvas(), left.top(style::kWritingRow),
                         words_.say("spoken_parts.bars_blank"), style::kBody);
      draw_labelled_line(book_.canvas(), left.without_top(9).top(style::kWritingRow),
                         words_.say("spoken_parts.date_blank"), style::kBody);
      draw_labelled_line(book_.canvas(), left.without_top(18).top(style::kWritingRow),
                         words_.say("spoken_parts.tempo_blank"), style::kBody);
      draw_steps(block.without_left(left.width + 4), steps);
      flow_.skip(kAfterBlock);
    }
  }

 private:
  static double head_width(const Box& block) { return block.width * 0.24; }

  Box open() {
    Box page = book_.open_page(right_);
    if (!is_open_ && !right_.empty()) book_.mark(right_);
    if (is_open_) return page;
    is_open_ = true;
    for (const std::string& text : words_.list("spoken_parts.how")) {
      const TextBlock block(book_.typefaces(), text, style::kBody, page.width);
      block.draw(book_.canvas(), page);
      page = page.without_top(block.height() + 1.2);
    }
    return page.without_top(5);
  }

  void draw_steps(Box box, const std::vector<Step>& steps) {
    Canvas& canvas = book_.canvas();
    for (const Step& step : steps) {
      const double circles = style::kTickStep * std::min(step.times, 6);
      const Box head = box.top(kStepHead);
      draw_cell_line(head.without_right(circles + 2), step);
      TickRows(book_.typefaces(), {{"", step.times}}, 0, 6)
          .draw(canvas, head.right(circles).top(style::kTickStep));
      draw_writing_lines(canvas, box.without_top(kStepHead), kLines);
      box = box.without_top(kStep);
    }
  }

  void draw_cell_line(const Box& box, const Step& step) {
    draw_line(book_.canvas(), box.top(6),
              words_.say("spoken_parts.step", {{"played", parts_text(words_, step.parts)},
                                               {"spoken", parts_text(words_, step.spoken)}}),
              style::kBody, Align::left, style::kLeast);
  }

  Book& book_;
  const Words& words_;
  const PlannedPiece& piece_;
  std::string right_;
  bool is_open_ = false;
  Flow flow_;
};

// Each part spoken once while the others are played.
std::vector<Step> each_part_spoken(const std::vector<std::string>& parts, int times) {
  std::vector<Step> steps;
  for (const std::string& spoken : parts) {
    Step step{{}, {spoken}, times};
    for (const std::string& part : parts)
      if (part != spoken) step.parts.push_back(part);
    steps.push_back(std::move(step));
  }
  return steps;
}

bool has_spoken_part(const Plan& plan, int piece) {
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::spoken_part) return true;
  return false;
}

}  // namespace

void draw_spoken_parts(Book& book) {
  const Plan& plan = book.plan();
  std::vector<int> pieces;  // with tasks, else all with parts to speak
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    if (has_spoken_part(plan, piece)) pieces.push_back(piece);
  const bool planned = !pieces.empty();
  if (!planned && plan.temper != Temper::no)
    for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
      if (plan.pieces[piece].piece.parts().size() > 1) pieces.push_back(piece);
  if (pieces.empty()) return;
  book.open_sheet("spoken parts", book.words().say("spoken_parts.title"));
  for (const int number : pieces) {
    SpokenParts sheet(book, plan.pieces[number]);
    if (!planned) {
      sheet.open_blocks(each_part_spoken(plan.pieces[number].piece.parts(),
                                         std::max(1, plan.method.spoken_times)));
      continue;
    }
    for (const Day& day : plan.days)
      for (const Task& task : day.tasks)
        if (task.piece == number && task.drill == Drill::spoken_part) sheet.planned(day.date, task);
  }
}

}  // namespace cahier
