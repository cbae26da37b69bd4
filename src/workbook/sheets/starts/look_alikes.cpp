#include <algorithm>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/table.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/starts/cue_reach.h"
#include "workbook/sheets/starts/fork_drawing.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr int kLines = 2;  // to write on, for each passage
constexpr double kPassageHead = 5 * kGrid;
constexpr double kPassage = kPassageHead + writing_lines_height(kLines) + 2 * kGrid;
constexpr double kBranch = kPassageHead + 5.7;  // the middle of the words on the first line
constexpr double kPicture = 0.15;               // of the width
constexpr double kLeastPicture = 24;            // for the words at the stem
constexpr double kDrillRow = style::kWritingRow;
constexpr int kSpareDrills = 2;
constexpr int kMostSpare = 5;  // after the last passages, where the page would else stay empty
constexpr double kAfterGroup = 5 * kGrid;
constexpr double kPieceTitle = 6 * kGrid;
constexpr std::size_t kMostColumns = 6;  // passages in the drills' table

class LookAlikesSheet {
 public:
  explicit LookAlikesSheet(Book& book)
      : book_(book), words_(book.words()), flow_([this] { return book_.open_page(); }) {}

  void draw() {
    for (const std::string& text : words_.list("look_alikes.how")) {
      const TextBlock block(book_.typefaces(), text, style::kBody, book_.upright().width);
      block.draw(book_.canvas(), flow_.take(block.height() + kGrid));
    }
    flow_.skip(2 * kGrid);
    const auto& pieces = book_.plan().pieces;
    int left = 0;
    for (const PlannedPiece& piece : pieces)
      left += static_cast<int>(piece.piece.look_alikes.size());
    for (number_ = 0; number_ < static_cast<int>(pieces.size()); ++number_) {
      const auto& groups = pieces[number_].piece.look_alikes;
      for (const LookAlikes& group : groups)
        draw_group(group, &group == &groups.front() && pieces.size() > 1, --left == 0);
    }
  }

 private:
  struct Drills {
    std::vector<Date> dates;
    std::vector<const Task*> tasks;  // by date
    std::vector<int> cues;           // where each passage begins; empty when there is no drill
  };

  const PlannedPiece& piece() const { return book_.plan().pieces[number_]; }

  void draw_group(const LookAlikes& group, bool with_title, bool is_last) {
    const int passages = static_cast<int>(group.passages.size());
    const Drills drills = drills_of(group);
    const Table table = table_of(group, drills);
    const auto table_height = [&](int spare) {
      return table.head_height() + kDrillRow * (static_cast<double>(drills.dates.size()) + spare);
    };
    const double before_table = kPassage * passages + (with_title ? kPieceTitle : 0);
    int spare = kSpareDrills;
    if (!flow_.fits(before_table + table_height(spare))) {
      spare = flow_.fits(before_table + table_height(1)) ? 1 : spare;
      const bool is_short = passages <= 3;
      if (spare > 1 && (is_short || !flow_.fits(2 * kPassage))) flow_.next_page();
    }
    if (with_title) draw_title();
    for (int at = 0; at < passages;) at += draw_passages(group, at);
    while (is_last && spare < kMostSpare && flow_.fits(table_height(spare + 1))) ++spare;
    draw_drills(table, group, drills, spare);
    flow_.skip(kAfterGroup);
  }

  void draw_title() {
    const std::string& title = piece().piece.title;
    const Box box = flow_.take(kPieceTitle);
    book_.mark(title);
    draw_line(book_.canvas(), box.without_bottom(kGrid), title, style::kSubtitle, Align::left,
              style::kLeast);
  }

  // As many passages from `first` on as the page holds, joined by their fork.
  int draw_passages(const LookAlikes& group, int first) {
    if (!flow_.fits(kPassage)) flow_.next_page();
    const int left = static_cast<int>(group.passages.size()) - first;
    const int fit = flow_.at_top() ? left : static_cast<int>(flow_.left() / kPassage + 1e-6);
    const int here = std::clamp(fit, 1, std::min(left, most_on_a_page()));
    const Box box = flow_.take(kPassage * here);
    book_.note_piece(number_);
    const double picture = std::max(kLeastPicture, box.width * kPicture);
    const int alike = bars_alike(group);
    draw_fork(book_.canvas(), box.left(picture), here, kBranch, kPassage,
              alike > 0 ? words_.count("look_alikes.bars_alike", alike) : "",
              words_.say("look_alikes.alike"));
    Box passage = box.without_left(picture + 2).top(kPassage);
    for (int at = first; at < first + here; ++at) {
      draw_passage(passage, group, static_cast<std::size_t>(at));
      passage = passage.moved(0, kPassage);
    }
    return here;
  }

  int most_on_a_page() const {
    return std::max(1, static_cast<int>(book_.content().height / kPassage));
  }

  // Before the fork; 0 where that differs from passage to passage.
  static int bars_alike(const LookAlikes& group) {
    const int alike = group.forks.front() - group.passages.front().first;
    for (std::size_t at = 0; at < group.passages.size(); ++at)
      if (group.forks[at] - group.passages[at].first != alike) return 0;
    return alike;
  }

  void draw_passage(const Box& box, const LookAlikes& group, std::size_t at) {
    Canvas& canvas = book_.canvas();
    const BarRange bars = group.passages[at];
    const Box head = box.top(kPassageHead);
    const double large = draw_line(canvas, head, bar_range(bars.first, bars.last),
                                   style::kStandBars, Align::left, style::kLeastStand);
    draw_line(canvas, head.without_left(large + 4), where(bars), style::kLead, Align::left,
              style::kLeast);
    const Box lines = box.without_top(kPassageHead);
    draw_labelled_line(canvas, lines.top(style::kWritingRow),
                       words_.say("look_alikes.goes_on", {{"bar", group.forks[at]}}),
                       style::kStrong);
    draw_writing_lines(canvas, lines.without_top(style::kWritingRow), kLines - 1);
  }

  const PlannedSection* section_at(int bar) const {
    for (const PlannedSection& section : piece().sections)
      if (section.bars.contains(bar)) return &section;
    return nullptr;
  }

  // Empty where a section is only called by its bars.
  static std::string name_of(const PlannedSection& section) {
    const bool by_bars = section.name == bar_range(section.bars.first, section.bars.last);
    return by_bars ? "" : section.name;
  }

  // The section, and the one that follows where the passage leads into it.
  std::string where(BarRange bars) const {
    const PlannedSection* here = section_at(bars.first);
    const PlannedSection* next = section_at(bars.last + 1);
    const std::string name = here ? name_of(*here) : std::string();
    const std::string then = next && next != here ? name_of(*next) : std::string();
    if (name.empty() || then.empty()) return name;
    return words_.say("look_alikes.then", {{"section", name}, {"next", then}});
  }

  // The group's fork drills in the plan.
  Drills drills_of(const LookAlikes& group) const {
    Drills drills;
    for (const Day& day : book_.plan().days)
      for (const Task& task : day.tasks)
        if (task.piece == number_ && task.fork && task.cues.size() == group.passages.size() &&
            task.reason_number == group.forks.front()) {
          drills.dates.push_back(day.date);
          drills.tasks.push_back(&task);
          drills.cues = task.cues;
        }
    return drills;
  }

  static std::size_t columns_for(const LookAlikes& group) {
    return std::min(group.passages.size(), kMostColumns);
  }

  Table table_of(const LookAlikes& group, const Drills& drills) const {
    std::vector<Column> columns = {{words_.say("look_alikes.date"), 1.6}};
    for (std::size_t at = 0; at < columns_for(group); ++at) {
      const CueStart* cue = drills.cues.empty()
                                ? cue_before_fork(piece(), group.passages[at], group.forks[at])
                                : &piece().cues[drills.cues[at] - 1];
      const int bar = cue ? cue->bar : group.passages[at].first;
      columns.push_back(
          {words_.say("look_alikes.from_past", {{"bar", bar}, {"fork", group.forks[at]}}), 1});
    }
    columns.push_back({words_.say("look_alikes.note"), 2.4});
    return Table(book_.typefaces(), std::move(columns), book_.upright().width, kDrillRow);
  }

  void draw_drills(const Table& table, const LookAlikes& group, const Drills& drills, int spare) {
    Canvas& canvas = book_.canvas();
    const std::size_t rows = drills.dates.size() + static_cast<std::size_t>(spare);
    for (std::size_t row = 0; row < rows; ++row) {
      if (row == 0 || !flow_.fits(kDrillRow)) {
        if (!flow_.fits(table.head_height() + kDrillRow)) flow_.next_page();
        table.draw_head(canvas, flow_.take(table.head_height()));
      }
      const std::vector<Box> cells = table.draw_row(canvas, flow_.take(kDrillRow));
      if (row < drills.dates.size()) {
        book_.note_task(*drills.tasks[row]);
        draw_cell(canvas, cells[0], date_in(cells[0].width, drills.dates[row]), style::kBody);
      }
      for (std::size_t at = 1; at <= columns_for(group); ++at) draw_tick(canvas, cells[at]);
    }
  }

  // Short where the long one would take two lines.
  std::string date_in(double width, Date date) const {
    const std::string full = weekday_day_month(words_, date);
    const TextStyle body = style::kBody;
    if (!fit_line(book_.typefaces(), full, body, width, body.size_pt).cut) return full;
    return words_.say("dates.weekday_day_month", {{"weekday", weekday_short(words_, date)},
                                                  {"day", day_of_month(date)},
                                                  {"month", month_short(words_, date)}});
  }

  Book& book_;
  const Words& words_;
  int number_ = 0;  // of the piece
  Flow flow_;
};

}  // namespace

void draw_look_alikes(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return piece.piece.look_alikes.empty(); }))
    return;
  book.open_sheet(SheetKind::look_alikes, book.words().say("look_alikes.title"));
  LookAlikesSheet(book).draw();
}

}  // namespace cahier
