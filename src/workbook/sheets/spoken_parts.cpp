#include <algorithm>
#include <set>

#include "paper/text_fitting.h"
#include "plan/spoken_steps.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/prose.h"
#include "workbook/parts/spread.h"
#include "workbook/parts/task_words.h"
#include "workbook/parts/tempo_mark.h"
#include "workbook/parts/totals.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLeastHead = 30;  // wide, for a date
constexpr double kBars = 7.5;
constexpr double kDate = 6;
constexpr double kTempo = 7.5;
constexpr double kLaterTempo = 3 * kGrid;  // of a tempo below the first one
constexpr std::size_t kMostTempi = 2;      // below the first; more are said in words
constexpr double kHead = kBars + kDate + kTempo;
constexpr double kStepHead = style::kRow;  // who plays, who is spoken
constexpr double kBeforeBlocks = 4.5;
constexpr double kAfterBlock = 4.5;
constexpr double kMostGap = 6;        // more of it between blocks
constexpr int kMostLines = 2;         // to write on, for each step
constexpr double kLinesBeside = 150;  // narrower pages have them below what is played
constexpr double kPartName = 28;      // beside its names
constexpr double kLabelShare = 0.5;   // of what is played and spoken, beside its line

using Steps = std::vector<Step>;

class SpokenParts {
 public:
  SpokenParts(Book& book, const PlannedPiece& piece)
      : book_(book), words_(book.words()), spread_([this] { return open(); }, kMostGap) {
    if (book.plan().pieces.size() > 1) right_ = book.title_in_head(piece);
  }

  // As many lines to write on as leave `blocks` on one page, at least one.
  void choose_lines(const std::vector<Steps>& blocks) {
    for (lines_ = kMostLines; lines_ > 1; --lines_) {
      double height = 0;
      for (const Steps& steps : blocks) height += block_height(steps);
      if (height <= first_page_height()) return;
    }
  }

  void planned(Date date, const Task& task) {
    spread_.add(
        {{block_height(task.steps, head_height(task)), [this, date, &task](const Box& block) {
            book_.note_task(task);
            draw_head(head_of(block), date, task);
            draw_steps(steps_of(block), task.steps);
          }}});
  }

  // Blocks whose bars the player fills in: a page of them.
  void open_blocks(const Steps& steps) {
    is_unplanned_ = true;
    const Strip block{block_height(steps), [this, steps](const Box& box) {
                        draw_open_head(head_of(box));
                        draw_steps(steps_of(box), steps);
                      }};
    do spread_.add({block});
    while (spread_.fits(block.height));
  }

  void finish() { spread_.finish(); }

 private:
  static Box head_of(const Box& block) {
    return block.left(on_grid(std::max(kLeastHead, block.width * 0.22)));
  }
  static Box steps_of(const Box& block) { return block.without_left(head_of(block).width + 4.5); }
  // Only what is said without being played has to be looked up afterwards.
  static bool is_written(const Step& step) {
    return !step.spoken.empty() && !says_what_is_played(step);
  }
  // Where a line has room beside who plays and who is spoken, it begins there.
  double step_height(const Step& step) const {
    if (!is_written(step)) return 0;
    return (beside() ? 0 : kStepHead) + writing_lines_height(lines_);
  }
  bool beside() const { return book_.content().width >= kLinesBeside; }
  static double head_height(const Task& task) {
    const std::size_t later = later_tempi(task).size();
    return kHead + kLaterTempo * static_cast<double>(later > kMostTempi ? 1 : later);
  }
  double block_height(const Steps& steps, double head = kHead) const {
    double height = 0;
    for (const Step& step : steps) height += step_height(step);
    return on_grid(std::max(head, height) + kAfterBlock);
  }
  Box open() {
    const Box page = book_.open_page(right_);
    if (is_open_) return page;
    if (!right_.empty()) book_.mark(right_);
    is_open_ = true;
    std::vector<std::string> texts = words_.list("spoken_parts.how");
    if (is_unplanned_) texts.push_back(words_.say("spoken_parts.unplanned"));
    return draw_paragraphs(book_.canvas(), page, texts).without_top(kBeforeBlocks);
  }

  // As open() will find it.
  double first_page_height() const {
    double height = book_.content().height - kBeforeBlocks;
    for (const std::string& text : words_.list("spoken_parts.how"))
      height -= on_grid(
          TextBlock(book_.typefaces(), text, style::kBody, book_.upright().width).height() + kGrid);
    return height;
  }

  void draw_head(Box box, Date date, const Task& task) {
    Canvas& canvas = book_.canvas();
    // On the baseline of the first step's label.
    const double larger = capital_height(style::kStandBars) - capital_height(style::kStandText);
    draw_line(canvas, box.top(kStepHead).moved(0, -larger / 2),
              bar_range(task.bars.first, task.bars.last), style::kStandBars, Align::left,
              style::kLeastStand);
    box = box.without_top(kBars);
    draw_line(canvas, box.top(kDate),
              words_.say("spoken_parts.on", {{"weekday", weekday_short(words_, date)},
                                             {"date", day_month(words_, date)}}),
              style::kBody, Align::left, style::kLeast);
    box = box.without_top(kDate);
    draw_tempo(canvas, box.top(kTempo).bottom(style::kRow), tempo_of(task), style::kStandText);
    box = box.without_top(kTempo);
    const std::vector<TempoFrom> later = later_tempi(task);
    if (later.size() > kMostTempi) {
      draw_line(canvas, box.top(kLaterTempo), words_.say("task.tempo_in_proportion"), style::kSmall,
                Align::left, style::kLeast);
      return;
    }
    for (const TempoFrom& from : later) {
      const Box line = box.top(kLaterTempo);
      const double width =
          draw_line(canvas, line, words_.say("task.tempo_from", {{"bar", from.bar}}), style::kSmall,
                    Align::left, style::kLeast);
      draw_tempo(canvas, line.without_left(width + 1), tempo_at(task, from.bar), style::kSmall);
      box = box.without_top(kLaterTempo);
    }
  }

  double capital_height(const TextStyle& style) const {
    return book_.typefaces().metrics(style.face, style.size_pt).cap_height;
  }

  void draw_open_head(Box box) {
    for (const char* label :
         {"spoken_parts.bars_blank", "spoken_parts.date_blank", "spoken_parts.tempo_blank"}) {
      draw_labelled_line(book_.canvas(), box.top(style::kWritingRow), words_.say(label),
                         style::kBody);
      box = box.without_top(style::kWritingRow);
    }
  }

  void draw_steps(Box box, const Steps& steps) {
    for (const Step& step : steps) {
      if (!is_written(step)) continue;
      if (beside()) {
        const Box row = box.top(style::kWritingRow);
        draw_label(row.left(box.width * kLabelShare).bottom(style::kWritingRow - kGrid), step);
        draw_writing_lines(book_.canvas(), row.without_left(box.width * kLabelShare + 2), 1);
        draw_writing_lines(book_.canvas(), box.without_top(style::kWritingRow), lines_ - 1);
      } else {
        draw_label(box.top(kStepHead), step);
        draw_writing_lines(book_.canvas(), box.without_top(kStepHead), lines_);
      }
      box = box.without_top(step_height(step));
    }
  }

  // To be read from the music desk where it fits.
  void draw_label(const Box& box, const Step& step) {
    const std::string label = words_.say(
        "spoken_parts.step",
        {{"played", list_text(words_, step.parts)}, {"spoken", list_text(words_, step.spoken)}});
    const bool fits =
        !fit_line(book_.typefaces(), label, style::kStandText, box.width, style::kLeastStand).cut;
    draw_line(book_.canvas(), box, label, fits ? style::kStandText : style::kBody, Align::left,
              fits ? style::kLeastStand : style::kLeast);
  }

  Book& book_;
  const Words& words_;
  std::string right_;
  bool is_open_ = false;
  bool is_unplanned_ = false;  // all blocks are
  int lines_ = kMostLines;
  Spread spread_;
};

// The names of the notes, chunk by chunk, on a page of their own: the first try is from memory.
void draw_answers(Book& book, const PlannedPiece& piece, const std::vector<BarRange>& chunks) {
  const Words& words = book.words();
  book.rename_sheet(words.say("spoken_parts.answers"));
  Prose prose(book, book.plan().pieces.size() > 1 ? book.title_in_head(piece) : std::string());
  prose.paragraph(words.say("spoken_parts.answers_how"));
  const std::vector<std::string>& parts = piece.piece.parts();
  for (const BarRange& bars : chunks) {
    prose.heading(
        words.say("spoken_parts.answers_bars", {{"bars", bar_range(bars.first, bars.last)}}));
    for (std::size_t part = 0; part < parts.size(); ++part) {
      std::string said;
      for (int bar = bars.first; bar <= bars.last; ++bar) {
        const std::string names = piece.piece.said_at(bar, part);
        if (names.empty()) continue;
        said += (said.empty() ? "" : " · ") +
                words.say("spoken_parts.answers_bar", {{"bar", bar}, {"names", names}});
      }
      if (!said.empty()) prose.term(parts[part], said, kPartName);
    }
  }
}

std::vector<const Task*> spoken_tasks(const Day& day, int piece) {
  std::vector<const Task*> tasks;
  for (const Task& task : day.tasks)
    if (task.piece == piece && task.drill == Drill::spoken_part) tasks.push_back(&task);
  return tasks;
}

// The chunks with spoken work, each once.
std::vector<BarRange> spoken_chunks(const Plan& plan, int piece) {
  std::set<BarRange> chunks;
  for (const Day& day : plan.days)
    for (const Task* task : spoken_tasks(day, piece)) chunks.insert(task->bars);
  return {chunks.begin(), chunks.end()};
}

}  // namespace

void draw_spoken_parts(Book& book) {
  const Plan& plan = book.plan();
  std::vector<int> pieces;  // with tasks, else all with parts to speak
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    if (asks_for(plan, piece, Drill::spoken_part)) pieces.push_back(piece);
  const bool planned = !pieces.empty();
  if (!planned && plan.temper != Temper::no && !plan.upkeep)
    for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
      if (plan.pieces[piece].piece.parts().size() > 1) pieces.push_back(piece);
  if (pieces.empty()) return;
  book.open_sheet(SheetKind::spoken_parts, book.words().say("spoken_parts.title"));
  for (const int number : pieces) {
    SpokenParts sheet(book, plan.pieces[number]);
    std::vector<Steps> all;
    for (const Day& day : plan.days)
      for (const Task* task : spoken_tasks(day, number)) all.push_back(task->steps);
    if (!planned) sheet.open_blocks(spoken_steps(plan.pieces[number].piece.parts(), plan.method));
    if (planned) sheet.choose_lines(all);
    for (const Day& day : plan.days)
      for (const Task* task : spoken_tasks(day, number)) sheet.planned(day.date, *task);
    sheet.finish();
  }
  // Where the player chooses the bars, all of them would be much paper.
  for (const int number : pieces)
    if (planned && !plan.pieces[number].piece.said.empty())
      draw_answers(book, plan.pieces[number], spoken_chunks(plan, number));
}

}  // namespace cahier
