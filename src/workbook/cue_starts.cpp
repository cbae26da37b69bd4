#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_cue.h"
#include "workbook/parts_dice.h"
#include "workbook/parts_table.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kRow = 9;  // of the list
constexpr double kDateColumn = 7.6;
constexpr int kMostPages = 2;      // of lists for further dates
constexpr double kGridRow = 12.5;  // of the dice table
constexpr double kDie = 7.5;
constexpr double kAssigned = 4.4;  // the box of a start that the plan asks for

// A day on which cue starts are played.
struct Session {
  Date date;
  std::set<int> cues;  // assigned
};

class CueSheet {
 public:
  CueSheet(Book& book, int piece, const DiceTable& table)
      : book_(book), words_(book.words()), piece_(book.plan().pieces[piece]), table_(table) {
    for (const DiceTable::Row& row : table.rows) cues_.push_back(&piece_.cues[row.cue - 1]);
    find_sessions(piece);
    const int first = table.rows.front().cue == 1 ? piece_.piece.first_bar() : cues_.front()->bar;
    const bool is_last = cues_.back()->number == static_cast<int>(piece_.cues.size());
    const int last = is_last ? piece_.piece.bars : piece_.cues[cues_.back()->number].bar - 1;
    right_ = words_.say("cue_starts.bars", {{"bars", bar_range(first, last)}});
    if (book.plan().pieces.size() > 1)
      right_ = words_.say("cue_starts.bars_of", {{"bars", right_}, {"piece", piece_.piece.title}});
  }

  void draw() {
    rest_ = book_.open_page(right_);
    if (book_.plan().pieces.size() > 1 || piece_.dice.size() > 1) book_.mark(right_);
    const int first = dates_beside(kFixedColumns + rest_.width * kSectionShare);
    const int further = dates_beside(kNumber + kBar);
    // Where the days are too many for the paper, the player writes the dates.
    if (static_cast<int>(sessions_.size()) > first + most_lists() * further) sessions_.clear();
    draw_how();
    if (is_choice())
      draw_grid();
    else
      rest_ = rest_.without_top(4);
    draw_odds();
    draw_list(0, first, true);
    std::size_t at = static_cast<std::size_t>(first);
    while (at < sessions_.size() ||
           (sessions_.empty() && (at == static_cast<std::size_t>(first) || fits_list()))) {
      draw_list(at, further, false);
      at += static_cast<std::size_t>(further);
    }
  }

 private:
  static constexpr double kNumber = 9;
  static constexpr double kBar = 18;
  static constexpr double kEnd = 15;
  static constexpr double kMet = 12;
  static constexpr double kFixedColumns = kNumber + kBar + kEnd + kMet;
  static constexpr double kSectionShare = 0.19;

  int dates_beside(double width) const {
    return std::max(1, static_cast<int>((rest_.width - width) / kDateColumn));
  }

  bool is_choice() const { return cues_.size() > 1; }

  // Of a list for further dates, its head and the space below it included.
  double list_height() const { return 17 + kRow * static_cast<double>(cues_.size()); }
  bool fits_list() const { return rest_.height >= list_height(); }
  int most_lists() const {
    return std::max(3, kMostPages * static_cast<int>(rest_.height / list_height()));
  }

  void find_sessions(int piece) {
    for (const Day& day : book_.plan().days) {
      Session session{day.date, {}};
      bool here = false;
      for (const Task& task : day.tasks) {
        if (task.drill != Drill::cue_starts || task.piece != piece) continue;
        here |= task.throws > 0 && piece_.dice.size() == 1;
        for (const int cue : task.cues)
          if (cues_.front()->number <= cue && cue <= cues_.back()->number) session.cues.insert(cue);
      }
      if (here || !session.cues.empty()) sessions_.push_back(std::move(session));
    }
  }

  void need(double height) {
    if (rest_.height < height) rest_ = book_.open_page(right_);
  }

  void draw_how() {
    std::vector<std::string> how = words_.list("cue_starts.how");
    if (is_choice()) how.insert(how.begin(), words_.say("cue_starts.throw"));
    how.push_back(
        words_.say(sessions_.empty() ? "cue_starts.mark_undated" : "cue_starts.mark_dated"));
    for (std::size_t at = 0; at < how.size(); ++at) draw_point(at + 1, how[at]);
  }

  void draw_point(std::size_t number, const std::string& text) {
    constexpr double kIndent = 6;
    const TextBlock block(book_.typefaces(), text, style::kBody, rest_.width - kIndent);
    draw_line(book_.canvas(), rest_.top(block.line_height()).left(kIndent - 1),
              std::to_string(number), style::kStrong, Align::left, style::kLeast);
    block.draw(book_.canvas(), rest_.without_left(kIndent));
    rest_ = rest_.without_top(block.height() + 0.9);
  }

  void draw_grid() {
    const double width = std::min(rest_.width, 184.0);
    const double turned = 6;
    const double heads = kDie + 4;
    need(6 * kGridRow + kDie + 12);
    rest_ = rest_.without_top(2);
    const Box second{rest_.x + turned + heads, rest_.y, width - turned - heads, 5.5};
    draw_line(book_.canvas(), second, words_.say("cue_starts.second_die"), style::kSmall,
              Align::centre, style::kLeast);
    const Box grid{second.x, second.bottom() + kDie + 2, second.width - 0.2, 6 * kGridRow};
    TextStyle upwards = style::kSmall;
    upwards.turn = Turn::upwards;
    draw_line(book_.canvas(), {rest_.x, grid.y, 5.5, grid.height},
              words_.say("cue_starts.first_die"), upwards, Align::centre, style::kLeast);
    const std::vector<Box> rows = grid.rows(6);
    const std::vector<Box> columns = grid.columns(6);
    for (int face = 1; face <= 6; ++face) {
      const Box& column = columns[face - 1];
      draw_die(book_.canvas(), {column.x, grid.y - kDie - 1, column.width, kDie}, face);
      const Box& row = rows[face - 1];
      draw_die(book_.canvas(), {grid.x - kDie - 1.5, row.y + (row.height - kDie) / 2, kDie, kDie},
               face);
    }
    for (const Box& row : rows)
      for (const Box& cell : row.columns(6)) book_.canvas().rectangle(cell, {style::kRule, {}});
    for (std::size_t at = 0; at < cues_.size(); ++at)
      for (const std::vector<int>& outcome : table_.rows[at].outcomes)
        draw_cue(rows[outcome[0] - 1].columns(6)[outcome[1] - 1], *cues_[at]);
    for (const std::vector<int>& outcome : table_.again) {
      const Box cell = rows[outcome[0] - 1].columns(6)[outcome[1] - 1];
      draw_line(book_.canvas(), cell.inset(1, 1), words_.say("cue_starts.again"), style::kSmall,
                Align::centre, style::kLeast);
    }
    rest_ = rest_.without_top(grid.bottom() + 2.5 - rest_.y);
  }

  void draw_cue(const Box& cell, const CueStart& cue) {
    const Box inner = cell.inset(0.8, 0.6);
    draw_line(book_.canvas(), inner.top(6.6), std::to_string(cue.number), style::kStandBars,
              Align::centre, style::kLeastStand);
    draw_line(book_.canvas(), inner.bottom(4.4), words_.say("cue_starts.bar", {{"bar", cue.bar}}),
              style::kNote, Align::centre, style::kLeast);
  }

  void draw_odds() {
    std::string text;
    const int starts = static_cast<int>(cues_.size());
    if (!table_.again.empty())
      text = words_.say("cue_starts.again_means",
                        {{"throws", fmt::format("{:.2f}", expected_throws(table_))}});
    if (starts >= 4) {
      // The chance that a given one of n equal starts has not come in n throws: (1 - 1/n)^n.
      const double unmet = std::pow(1 - 1.0 / starts, starts);
      if (!text.empty()) text += ' ';
      text += words_.say("cue_starts.unmet",
                         {{"number", starts}, {"percent", std::lround(unmet * 100)}});
    }
    if (text.empty()) return;
    const TextBlock block(book_.typefaces(), text, style::kBody, rest_.width);
    need(block.height());
    block.draw(book_.canvas(), rest_);
    rest_ = rest_.without_top(std::min(rest_.height, block.height() + 4));
  }

  // The first list says all about a start; a further one, for more dates, only which it is.
  Table list_table(std::size_t first_date, int dates, bool full) const {
    std::vector<Column> columns = {{words_.say("cue_starts.number"), kNumber},
                                   {words_.say("cue_starts.from_bar"), kBar}};
    if (full) {
      const double section = rest_.width - kFixedColumns - dates * kDateColumn;
      columns.push_back({words_.say("cue_starts.section"), section});
      columns.push_back({words_.say("cue_starts.to_end"), kEnd});
      columns.push_back({words_.say("cue_starts.met"), kMet});
    }
    for (int date = 0; date < dates; ++date) {
      const std::size_t at = first_date + static_cast<std::size_t>(date);
      columns.push_back(
          {at < sessions_.size() ? day_month_short(words_, sessions_[at].date) : "", kDateColumn});
    }
    double width = 0;
    for (const Column& column : columns) width += column.share;
    return Table(book_.typefaces(), std::move(columns), width, kRow);
  }

  void draw_list(std::size_t first_date, int dates, bool full) {
    const Table table = list_table(first_date, dates, full);
    const double whole = table.head_height() + kRow * static_cast<double>(cues_.size());
    // A further list stays together where it is not too long.
    need(full || cues_.size() > 16 ? table.head_height() + 3 * kRow : whole);
    rest_ = table.draw_head(book_.canvas(), rest_);
    for (const CueStart* cue : cues_) {
      if (rest_.height < kRow) rest_ = table.draw_head(book_.canvas(), book_.open_page(right_));
      draw_row(table.draw_row(book_.canvas(), rest_), *cue, first_date, full);
      rest_ = rest_.without_top(kRow);
    }
    rest_ = rest_.without_top(std::min(rest_.height, 7.0));
  }

  void draw_row(const std::vector<Box>& cells, const CueStart& cue, std::size_t first_date,
                bool full) {
    Canvas& canvas = book_.canvas();
    draw_line(canvas, cells[0].without_right(1), std::to_string(cue.number), style::kStrong,
              Align::right, style::kLeast);
    draw_line(canvas, cells[1].without_right(1.5), std::to_string(cue.bar), style::kStandBars,
              Align::right, style::kLeastStand);
    if (full) {
      draw_cell(canvas, cells[2].without_left(0.5), piece_.sections[cue.section].name,
                style::kBody);
      draw_line(canvas, cells[3].without_right(1.5), std::to_string(last_bar_from(piece_, cue)),
                style::kBody, Align::right, style::kLeast);
      canvas.circle(cells[4].centre(), style::kTick, {style::kRule, {}}, CircleUse::tick);
    }
    const std::size_t before = full ? 5 : 2;
    for (std::size_t cell = before; cell < cells.size(); ++cell) {
      const std::size_t session = first_date + cell - before;
      if (session >= sessions_.size() || !sessions_[session].cues.contains(cue.number)) continue;
      const Point middle = cells[cell].centre();
      canvas.rectangle({middle.x - kAssigned / 2, middle.y - kAssigned / 2, kAssigned, kAssigned},
                       {style::kRule, {}});
    }
  }

  Book& book_;
  const Words& words_;
  const PlannedPiece& piece_;
  const DiceTable& table_;
  std::vector<const CueStart*> cues_;
  std::vector<Session> sessions_;
  std::string right_;
  Box rest_;
};

}  // namespace

void draw_cue_starts(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return piece.dice.empty(); }))
    return;
  book.open_sheet("cue starts", book.words().say("cue_starts.title"));
  for (int piece = 0; piece < static_cast<int>(pieces.size()); ++piece)
    for (const DiceTable& table : pieces[piece].dice) CueSheet(book, piece, table).draw();
}

}  // namespace cahier
