#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_cue.h"
#include "workbook/parts_fork.h"
#include "workbook/parts_table.h"
#include "workbook/parts_writing_lines.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr int kLines = 2;  // to write on, for each passage
constexpr double kPassageHead = 7;
constexpr double kPassage = kPassageHead + writing_lines_height(kLines) + 3;
constexpr double kDrillRow = 8;
constexpr int kSpareDrills = 2;
constexpr double kAfterGroup = 8;
constexpr std::size_t kMostColumns = 6;  // passages in the drills' table

class LookAlikesSheet {
 public:
  LookAlikesSheet(Book& book, int piece)
      : book_(book), words_(book.words()), number_(piece), piece_(book.plan().pieces[piece]) {
    if (book.plan().pieces.size() > 1) right_ = piece_.piece.title;
  }

  void draw() {
    rest_ = book_.open_page(right_);
    if (!right_.empty()) book_.mark(right_);
    for (const std::string& text : words_.list("look_alikes.how")) paragraph(text);
    rest_ = rest_.without_top(4);
    for (const LookAlikes& group : piece_.piece.look_alikes) draw_group(group);
  }

 private:
  void paragraph(const std::string& text) {
    const TextBlock block(book_.typefaces(), text, style::kBody, rest_.width);
    block.draw(book_.canvas(), rest_);
    rest_ = rest_.without_top(block.height() + 1.2);
  }

  void need(double height) {
    if (rest_.height < height) rest_ = book_.open_page(right_);
  }

  void draw_group(const LookAlikes& group) {
    const int passages = static_cast<int>(group.passages.size());
    const Drills drills = drills_of(group);
    const double table = 8 + kDrillRow * static_cast<double>(drills.dates.size() + kSpareDrills);
    const double whole = kPassage * passages + table;
    need(passages <= 3 ? whole : 2 * kPassage);
    for (std::size_t at = 0; at < group.passages.size();) {
      need(kPassage);
      const int here =
          std::min(static_cast<int>(rest_.height / kPassage), passages - static_cast<int>(at));
      const double picture = rest_.width * 0.13;
      draw_fork(book_.canvas(), rest_.left(picture).top(kPassage * here), here, kPassage,
                words_.say("look_alikes.alike"));
      for (int row = 0; row < here; ++row, ++at) {
        draw_passage(rest_.top(kPassage).without_left(picture + 2), group, at);
        rest_ = rest_.without_top(kPassage);
      }
    }
    draw_drills(group, drills);
    rest_ = rest_.without_top(std::min(rest_.height, kAfterGroup));
  }

  void draw_passage(const Box& box, const LookAlikes& group, std::size_t at) {
    Canvas& canvas = book_.canvas();
    const BarRange bars = group.passages[at];
    const Box head = box.top(kPassageHead);
    const double large = draw_line(canvas, head, bar_range(bars.first, bars.last),
                                   style::kStandBars, Align::left, style::kLeastStand);
    draw_line(canvas, head.without_left(large + 4), where_it_parts(bars, group.forks[at]),
              style::kBody, Align::left, style::kLeast);
    draw_labelled_line(canvas, box.without_top(kPassageHead).top(style::kWritingRow),
                       words_.say("look_alikes.goes_on", {{"bar", group.forks[at]}}), style::kBody);
    draw_writing_lines(canvas, box.without_top(kPassageHead + style::kWritingRow), kLines - 1);
  }

  std::string where_it_parts(BarRange bars, int fork) const {
    for (const PlannedSection& section : piece_.sections)
      if (section.bars.contains(bars.first))
        return words_.say("look_alikes.parts_in", {{"bar", fork}, {"section", section.name}});
    return words_.say("look_alikes.parts", {{"bar", fork}});
  }

  struct Drills {
    std::vector<Date> dates;
    std::vector<int> cues;  // where each passage begins; empty when there is no drill
  };

  // The group's fork drills in the plan.
  Drills drills_of(const LookAlikes& group) const {
    Drills drills;
    for (const Day& day : book_.plan().days)
      for (const Task& task : day.tasks)
        if (task.piece == number_ && task.fork && task.cues.size() == group.passages.size() &&
            task.reason_number == group.forks.front()) {
          drills.dates.push_back(day.date);
          drills.cues = task.cues;
        }
    return drills;
  }

  void draw_drills(const LookAlikes& group, const Drills& drills) {
    const std::vector<Date>& dates = drills.dates;
    std::vector<Column> columns = {{words_.say("look_alikes.date"), 1.6}};
    const std::size_t passages = std::min(group.passages.size(), kMostColumns);
    for (std::size_t at = 0; at < passages; ++at) {
      const CueStart* cue = drills.cues.empty()
                                ? cue_before_fork(piece_, group.passages[at], group.forks[at])
                                : &piece_.cues[drills.cues[at] - 1];
      const int bar = cue ? cue->bar : group.passages[at].first;
      columns.push_back(
          {words_.say("look_alikes.from_past", {{"bar", bar}, {"fork", group.forks[at]}}), 1});
    }
    columns.push_back({words_.say("look_alikes.note"), 2.4});
    const Table table(book_.typefaces(), std::move(columns), rest_.width, kDrillRow);
    need(table.head_height() + kDrillRow * static_cast<double>(dates.size() + kSpareDrills));
    rest_ = table.draw_head(book_.canvas(), rest_);
    for (std::size_t row = 0; row < dates.size() + kSpareDrills; ++row) {
      if (rest_.height < kDrillRow)
        rest_ = table.draw_head(book_.canvas(), book_.open_page(right_));
      const std::vector<Box> cells = table.draw_row(book_.canvas(), rest_);
      if (row < dates.size())
        draw_cell(book_.canvas(), cells[0], weekday_day_month(words_, dates[row]), style::kBody);
      for (std::size_t at = 1; at <= passages; ++at)
        book_.canvas().circle(cells[at].centre(), style::kTick, {style::kRule, {}},
                              CircleUse::tick);
      rest_ = rest_.without_top(kDrillRow);
    }
  }

  Book& book_;
  const Words& words_;
  int number_;
  const PlannedPiece& piece_;
  std::string right_;
  Box rest_;
};

}  // namespace

void draw_look_alikes(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return piece.piece.look_alikes.empty(); }))
    return;
  book.open_sheet("look-alikes", book.words().say("look_alikes.title"));
  for (int piece = 0; piece < static_cast<int>(pieces.size()); ++piece)
    if (!pieces[piece].piece.look_alikes.empty()) LookAlikesSheet(book, piece).draw();
}

}  // namespace cahier
