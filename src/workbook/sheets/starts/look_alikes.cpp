#include <algorithm>

#include "paper/text_fitting.h"
#include "plan/cue_reach.h"
#include "plan/memory_traps.h"
#include "report/fork_words.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/table.h"
#include "workbook/parts/ticks.h"
#include "workbook/parts/writing_lines.h"
#include "workbook/sheets/starts/fork_drawing.h"
#include "workbook/sheets/starts/fork_notes.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr int kLines = 2;  // to write on, for each passage
constexpr double kPassageHead = 5 * kGrid;
constexpr double kPassage = kPassageHead + writing_lines_height(kLines) + 2 * kGrid;
constexpr double kBranch = kPassageHead + 5.7;  // the middle of the words on the first line
constexpr double kPicture = 0.15;               // of the width
constexpr double kLeastPicture = 30;            // for the words at the stem
constexpr double kAfterPicture = 2;
constexpr double kDrillRow = style::kWritingRow;
constexpr int kSpareDrills = 2;
constexpr std::size_t kManyDrills = 5;  // planned: one more row is enough
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
    for (const PlannedPiece& piece : pieces) left += static_cast<int>(piece.forks.size());
    for (number_ = 0; number_ < static_cast<int>(pieces.size()); ++number_) {
      bool is_first = true;
      for (const MemoryTrap& trap : memory_traps(piece())) {
        draw_group(piece().forks[trap.fork], is_first && pieces.size() > 1, --left == 0);
        is_first = false;
      }
    }
  }

 private:
  const PlannedPiece& piece() const { return book_.plan().pieces[number_]; }

  void draw_group(const Fork& group, bool with_title, bool is_last) {
    const int passages = static_cast<int>(group.ways.size());
    const TrapAnswers answers = answers_to(book_.plan(), number_, group);
    const std::vector<DatedTask>& drills = answers.fork_drills;
    const Table table = table_of(group, drills);
    const auto table_height = [&](int spare) {
      return table.head_height() + kDrillRow * (static_cast<double>(drills.size()) + spare);
    };
    const ForkNotes notes(book_, number_, group, answers,
                          book_.upright().width - picture() - kAfterPicture);
    const double title = with_title ? kPieceTitle : 0;
    const double before_table = title + kPassage * passages + notes.height_below();
    // The words at the head of the sheet are not left alone on their page.
    const bool with_head = is_first_ && flow_.fits(title + kPassage * std::min(passages, 2));
    int spare = spare_rows(drills.size(), with_head && !drills.empty() ? 0 : 1,
                           [&](int rows) { return before_table + table_height(rows); });
    const bool is_short = passages <= 3;
    if (!flow_.fits(before_table + table_height(spare)) && !with_head &&
        (is_short || !flow_.fits(2 * kPassage)))
      flow_.next_page();
    is_first_ = false;
    if (with_title) draw_title();
    for (int at = 0; at < passages;) at += draw_passages(group, notes, at);
    if (!flow_.fits(notes.height_below())) flow_.next_page();
    notes.draw_below(book_.canvas(), flow_);
    while (is_last && spare < kMostSpare && flow_.fits(table_height(spare + 1))) ++spare;
    draw_drills(table, group, drills, spare);
    flow_.skip(kAfterGroup);
  }

  // For more drills: as many as leave the group on this page or, if need be, on the next.
  template <typename HeightWith>
  int spare_rows(std::size_t drills, int least, HeightWith height_with) const {
    const int usual = drills < kManyDrills ? kSpareDrills : 1;
    for (const double room : {flow_.left(), book_.content().height})
      for (int rows = usual; rows >= least; --rows)
        if (height_with(rows) <= room) return rows;
    return usual;
  }

  // At the left of the passages.
  double picture() const { return std::max(kLeastPicture, book_.upright().width * kPicture); }

  void draw_title() {
    const std::string& title = book_.title_in(book_.content().width, piece(), style::kSubtitle);
    const Box box = flow_.take(kPieceTitle);
    book_.mark(title);
    draw_line(book_.canvas(), box.without_bottom(kGrid), title, style::kSubtitle, Align::left,
              style::kLeast);
  }

  // As many passages from `first` on as the page holds, joined by their fork.
  int draw_passages(const Fork& group, const ForkNotes& notes, int first) {
    if (!flow_.fits(kPassage)) flow_.next_page();
    const int left = static_cast<int>(group.ways.size()) - first;
    const int fit = flow_.at_top() ? left : static_cast<int>(flow_.left() / kPassage + 1e-6);
    const int here = std::clamp(fit, 1, std::min(left, most_on_a_page()));
    const Box box = flow_.take(kPassage * here);
    book_.note_piece(number_);
    const auto [above, below] = stem_words(group);
    draw_fork(book_.canvas(), box.left(picture()), here, kBranch, kPassage, above, below);
    Box passage = box.without_left(picture() + kAfterPicture).top(kPassage);
    for (int at = first; at < first + here; ++at) {
      draw_passage(passage, group, notes, static_cast<std::size_t>(at));
      passage = passage.moved(0, kPassage);
    }
    return here;
  }

  int most_on_a_page() const {
    return std::max(1, static_cast<int>(book_.content().height / kPassage));
  }

  // What stands over and under the one way in.
  std::pair<std::string, std::string> stem_words(const Fork& group) const {
    if (jumps(group))
      return {words_.say("look_alikes.up_to", {{"bar", group.ways.front().at}}),
              words_.say("look_alikes.same")};
    const int alike = bars_alike(group);
    return {alike > 0 ? words_.count("look_alikes.bars_alike", alike) : "",
            words_.say("look_alikes.alike")};
  }

  // Before the fork; 0 where that differs from passage to passage.
  static int bars_alike(const Fork& group) {
    const auto alike = [](const WayOn& way) { return way.to - way.alike.first; };
    const int first = alike(group.ways.front());
    return std::ranges::all_of(group.ways, [&](const WayOn& way) { return alike(way) == first; })
               ? first
               : 0;
  }

  void draw_passage(const Box& box, const Fork& group, const ForkNotes& notes, std::size_t at) {
    Canvas& canvas = book_.canvas();
    const WayOn& way = group.ways[at];
    const Box head = box.top(kPassageHead);
    const std::string bars = jumps(group) ? way_words(words_, way.at, way.to)
                                          : bar_range(way.alike.first, way.alike.last);
    const double large =
        draw_line(canvas, head, bars, style::kStandBars, Align::left, style::kLeastStand);
    const Box beside = head.without_left(large + 4).inset(0, -0.2);  // of two lines at most
    const std::string text =
        jumps(group) ? time_words(words_, piece().piece, group, way) : where(way.alike);
    const bool on_a_line =
        !fit_line(book_.typefaces(), text, style::kLead, beside.width, style::kLeast).cut;
    draw_cell(canvas, beside, text, on_a_line ? style::kLead : style::kNote);
    const Box lines = box.without_top(kPassageHead);
    draw_labelled_line(canvas, lines.top(style::kWritingRow), notes.label(way), style::kStrong,
                       kLeastForkLine);
    const Box rest = lines.without_top(style::kWritingRow);
    if (const std::string told = notes.difference(way); !told.empty())
      draw_labelled_line(canvas, rest.top(style::kWritingRow), told, style::kStrong,
                         kLeastForkLine);
    else
      draw_writing_lines(canvas, rest, kLines - 1);
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

  static std::size_t columns_for(const Fork& group) {
    return std::min(group.ways.size(), kMostColumns);
  }

  // The bar from which a drill leads into a way on.
  int begun_from(const std::vector<DatedTask>& drills, const WayOn& way) const {
    for (const DatedTask& drill : drills)
      if (plays_way(*drill.task, way)) return piece().cues[start_of(*drill.task, way) - 1].bar;
    const CueStart* cue = cue_before_fork(piece(), way.alike, way.to);
    return cue ? cue->bar : way.alike.first;
  }

  // The number of the cue start: each way but those that go on has one.
  static int start_of(const Task& task, const WayOn& way) {
    std::size_t start = 0;
    for (const PlayedWay& played : task.ways) {
      if (played.goes_on) continue;
      if (played.at == way.at && played.to == way.to) break;
      ++start;
    }
    return task.cues[std::min(start, task.cues.size() - 1)];
  }

  Table table_of(const Fork& group, const std::vector<DatedTask>& drills) const {
    std::vector<Column> columns = {{words_.say("look_alikes.date"), 1.6}};
    for (std::size_t at = 0; at < columns_for(group); ++at) {
      const WayOn& way = group.ways[at];
      const int bar = begun_from(drills, way);
      columns.push_back(
          {jumps(group) ? words_.say("look_alikes.from_way",
                                     {{"bar", bar}, {"way", way_words(words_, way.at, way.to)}})
                        : words_.say("look_alikes.from_past", {{"bar", bar}, {"fork", way.to}}),
           1});
    }
    columns.push_back({words_.say("look_alikes.note"), 2.4});
    return Table(book_.typefaces(), std::move(columns), book_.upright().width, kDrillRow);
  }

  void draw_drills(const Table& table, const Fork& group, const std::vector<DatedTask>& drills,
                   int spare) {
    Canvas& canvas = book_.canvas();
    const std::size_t rows = drills.size() + static_cast<std::size_t>(spare);
    for (std::size_t row = 0; row < rows; ++row) {
      if (row == 0 || !flow_.fits(kDrillRow)) {
        if (!flow_.fits(table.head_height() + kDrillRow)) flow_.next_page();
        table.draw_head(canvas, flow_.take(table.head_height()));
      }
      const std::vector<Box> cells = table.draw_row(canvas, flow_.take(kDrillRow));
      if (row < drills.size()) {
        book_.note_task(*drills[row].task);
        draw_cell(canvas, cells[0], date_in(cells[0].width, drills[row].date), style::kBody);
      }
      for (std::size_t at = 1; at <= columns_for(group); ++at)
        if (row >= drills.size() || plays_way(*drills[row].task, group.ways[at - 1]))
          draw_tick(canvas, cells[at]);
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
  int number_ = 0;        // of the piece
  bool is_first_ = true;  // nothing but words stands on the sheet so far
  Flow flow_;
};

}  // namespace

void draw_look_alikes(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return piece.forks.empty(); }))
    return;
  book.open_sheet(SheetKind::look_alikes, book.words().say("look_alikes.title"));
  LookAlikesSheet(book).draw();
}

}  // namespace cahier
