#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "paper/text_fitting.h"
#include "plan/table_in_force.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/sheets/starts/cue_list.h"
#include "workbook/sheets/starts/score_grid.h"
#include "workbook/sheets/starts/throw_table.h"
#include "workbook/sheets/starts/weak_starts.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kAfterBlock = 3 * kGrid;
constexpr double kIndent = 6;  // of a numbered point
constexpr double kTableHeading = 4 * kGrid;
constexpr std::size_t kLeastStarts = 8;     // of a list that goes on on the next page
constexpr std::size_t kStartsOfSheet = 36;  // that small tables may share
constexpr std::size_t kFewStarts = 5;       // chance soon brings all of fewer
constexpr int kMostScorePages = 3;          // beyond that the player writes the dates

// Dice tables that share a sheet: [begin, end) of a piece's.
struct Tables {
  std::size_t begin;
  std::size_t end;
};

std::vector<Tables> tables_by_sheet(const std::vector<DiceTable>& tables) {
  std::vector<Tables> sheets;
  std::size_t starts = 0;
  for (std::size_t at = 0; at < tables.size(); ++at) {
    const std::size_t more = tables[at].rows.size();
    if (sheets.empty() || starts + more > kStartsOfSheet) {
      sheets.push_back({at, at});
      starts = 0;
    }
    sheets.back().end = at + 1;
    starts += more;
  }
  return sheets;
}

class CueSheet {
 public:
  CueSheet(Book& book, int piece, Tables tables)
      : book_(book), words_(book.words()), number_(piece), piece_(book.plan().pieces[piece]) {
    for (std::size_t at = tables.begin; at < tables.end; ++at) {
      tables_.push_back(&piece_.dice[at]);
      for (const DiceTable::Row& row : piece_.dice[at].rows)
        cues_.push_back(&piece_.cues[row.cue - 1]);
    }
    find_days();
    in_force_ = table_in_force(book.plan(), piece);
    right_ = bars_of({tables_.begin(), tables_.end()});
    if (book.plan().pieces.size() > 1)
      right_ = words_.say("cue_starts.bars_of",
                          {{"bars", right_}, {"piece", book.title_in_head(piece_)}});
  }

  void draw() {
    open_page();
    book_.note_piece(number_);
    if (book_.plan().pieces.size() > 1 || cues_.size() < piece_.cues.size()) book_.mark(right_);
    draw_how();
    if (cues_.size() > 1 && in_force_.stays == 0) draw_tables();
    draw_odds();
    draw_list();
    draw_scores();
  }

 private:
  // "bars 1–16": from the first start of the tables to the bar before the next stretch.
  std::string bars_of(const std::vector<const DiceTable*>& tables) const {
    std::set<int> thrown;
    for (const DiceTable* table : tables)
      for (const DiceTable::Row& row : table->rows) thrown.insert(row.cue);
    const std::vector<CueStart> by_bar = piece_.cues_by_bar();
    const auto is_thrown = [&](const CueStart& cue) { return thrown.contains(cue.number); };
    const auto from = std::ranges::find_if(by_bar, is_thrown);
    const auto next = std::find_if_not(from, by_bar.end(), is_thrown);
    const int first = from == by_bar.begin() ? piece_.piece.first_bar() : from->bar;
    const int last = next == by_bar.end() ? piece_.piece.bars : next->bar - 1;
    return words_.say("cue_starts.bars", {{"bars", bar_range(first, last)}});
  }

  void find_days() {
    Date before{};
    for (const Day& day : book_.plan().days) {
      ScoreDay column;
      bool here = false;
      for (const Task& task : day.tasks) {
        if (task.drill != Drill::cue_starts || task.piece != number_) continue;
        here |= task.throws > 0 && cues_.size() == piece_.cues.size();
        for (const int cue : task.cues)
          if (std::ranges::find(cues_, cue, &CueStart::number) != cues_.end())
            column.asked.insert(cue);
      }
      if (!here && column.asked.empty()) continue;
      column.label = day_month_short(words_, day.date);
      const auto month = [](Date date) { return std::chrono::year_month_day{date}.month(); };
      column.begins_month = !days_.empty() && month(day.date) != month(before);
      before = day.date;
      days_.push_back(std::move(column));
    }
  }

  void open_page() { page_ = rest_ = book_.open_page(right_); }
  bool at_top() const { return rest_.y <= page_.y; }
  void need(double height) {
    if (rest_.height < height && !at_top()) open_page();
  }
  void used(double height) { rest_ = rest_.without_top(std::min(on_grid(height), rest_.height)); }

  std::string throw_sentence() const {
    if (in_force_.stays > 0)
      return words_.say("cue_starts.table_stays", {{"number", in_force_.stays}});
    const DiceTable& table = *tables_.front();
    const char* key = "cue_starts.throw_two_dice";
    if (table.faces == 2)
      key = table.count == 1 ? "cue_starts.throw_coin" : "cue_starts.throw_coins";
    else if (table.count == 1)
      key = table.faces == 6 ? "cue_starts.throw_one_die" : "cue_starts.throw_twenty";
    const std::string text = words_.say(key);
    return tables_.size() == 1 ? text : text + " " + words_.say("cue_starts.in_turn");
  }

  // Of the first start that begins like another; empty where none does.
  std::string alike_sentence() const {
    for (const CueStart* cue : cues_)
      if (const std::string alike = alike_text(words_, piece_, *cue); !alike.empty())
        return words_.say("cue_starts.alike_means", {{"alike", alike}, {"bar", cue->bar}});
    return {};
  }

  void draw_how() {
    std::vector<std::string> how = words_.list("cue_starts.how");
    if (const std::string alike = alike_sentence(); !alike.empty()) how.push_back(alike);
    if (cues_.size() > 1) how.insert(how.begin(), throw_sentence());
    if (cues_.size() > 1 && in_force_.stays == 0 && in_force_.replaced > 0)
      how.front() +=
          " " + words_.say("cue_starts.table_replaces", {{"number", in_force_.replaced}});
    for (std::size_t at = 0; at < how.size(); ++at) {
      const TextBlock block(book_.typefaces(), how[at], style::kBody, rest_.width - kIndent);
      need(block.height());
      draw_line(book_.canvas(), rest_.top(block.line_height()).left(kIndent - 1),
                std::to_string(at + 1), style::kStrong, Align::left, style::kLeast);
      block.draw(book_.canvas(), rest_.without_left(kIndent));
      used(block.height());
    }
    used(kAfterBlock);
  }

  void draw_tables() {
    for (const DiceTable* table : tables_) {
      const ThrowTable drawn(book_, piece_, *table, rest_.width);
      const bool headed = tables_.size() > 1;
      need(drawn.height() + (headed ? kTableHeading : 0));
      if (headed) {
        draw_line(book_.canvas(), rest_.top(kTableHeading), bars_of({table}), style::kStrong,
                  Align::left, style::kLeast);
        used(kTableHeading);
      }
      drawn.draw(rest_);
      used(drawn.height() + 2 * kGrid);
    }
  }

  // How many throws ten starts take, and how many starts chance leaves out.
  void draw_odds() {
    std::string text;
    double unmet = 0;
    double throws = 0;
    for (const DiceTable* table : tables_) {
      // The chance that a start with the share s has not come in n throws is (1 - s)^n.
      const double starts = static_cast<double>(table->rows.size());
      double outcomes = 0;
      for (const DiceTable::Row& row : table->rows)
        outcomes += static_cast<double>(row.outcomes.size());
      for (const DiceTable::Row& row : table->rows)
        unmet += std::pow(1 - static_cast<double>(row.outcomes.size()) / outcomes, starts);
      throws += expected_throws(*table) / static_cast<double>(tables_.size());
    }
    if (std::lround(10 * throws) > 10 && in_force_.stays == 0)
      text = words_.say("cue_starts.again_means", {{"throws", std::lround(10 * throws)}});
    if (cues_.size() >= kFewStarts) {
      if (!text.empty()) text += ' ';
      text += words_.say("cue_starts.unmet", {{"number", static_cast<int>(cues_.size())},
                                              {"unmet", std::lround(unmet)}});
    }
    if (const std::string_view weak = weak_words(tables_); !weak.empty())
      text += (text.empty() ? "" : " ") + words_.say(weak);
    if (text.empty()) return;
    const TextBlock block(book_.typefaces(), text, style::kBody, rest_.width);
    need(block.height());
    block.draw(book_.canvas(), rest_);
    used(block.height() + kAfterBlock);
  }

  // On one page where it fits on one.
  void draw_list() {
    const CueList list(book_, piece_, cues_, weak_starts(tables_), rest_.width);
    for (std::size_t next = 0; next < cues_.size();) {
      const double whole = list.height(next, cues_.size());
      if (page_.height >= whole) need(whole);
      need(list.height(next, std::min(cues_.size(), next + kLeastStarts)));
      const std::size_t end = std::min(cues_.size(), next + list.starts_in(rest_.height, next));
      list.draw(rest_, next, end);
      used(list.height(next, end) + 2 * kAfterBlock);
      next = end;
    }
  }

  // How many starts stand below one another, so that few pages hold all: no table is cut in two
  // that a page can hold.
  std::size_t starts_in_grid(double room, const ScoreGrid& grid) const {
    const double rows = (room - grid.head_height()) / style::kRow;
    const auto most = static_cast<std::size_t>(std::max(1.0, std::floor(rows + 1e-6)));
    const std::size_t grids = (cues_.size() + most - 1) / most;
    return (cues_.size() + grids - 1) / grids;
  }

  TextBlock how_to_mark(double width) const {
    return {book_.typefaces(),
            words_.say(days_.empty() ? "cue_starts.mark_undated" : "cue_starts.mark_dated"),
            style::kBody, width};
  }
  // With the space below, whichever of the two is longer.
  double how_to_mark_height(double width) const {
    double height = 0;
    for (const char* key : {"cue_starts.mark_undated", "cue_starts.mark_dated"})
      height = std::max(
          height, TextBlock(book_.typefaces(), words_.say(key), style::kBody, width).height());
    return on_grid(height) + 2 * kGrid;
  }

  void draw_scores() {
    const double above = how_to_mark_height(rest_.width);
    const double page = page_.height - above;
    const auto columns = static_cast<std::size_t>(ScoreGrid::columns_in(rest_.width));
    ScoreGrid grid(book_, days_);
    const std::size_t in_grid = starts_in_grid(page, grid);
    const double height = grid.height(static_cast<int>(in_grid));
    const auto on_page = static_cast<std::size_t>(
        std::max(1.0, std::floor((page + kAfterBlock) / (height + kAfterBlock) + 1e-6)));
    const std::size_t parts = (cues_.size() + in_grid - 1) / in_grid;
    std::size_t blocks = std::max<std::size_t>(1, (days_.size() + columns - 1) / columns);

    if (blocks > on_page * kMostScorePages) {
      days_.clear();  // too many for the paper: the player writes the dates
      blocks = std::max<std::size_t>(1, on_page / parts);
    }
    if (blocks > on_page && parts == 1 && draw_sideways(above, grid)) return;

    const double whole = above + static_cast<double>(blocks) * (height + kAfterBlock) - kAfterBlock;
    if (rest_.height < std::min(whole, page_.height)) need(page_.height);
    how_to_mark(rest_.width).draw(book_.canvas(), rest_);
    used(above);
    for (std::size_t block = 0; block < blocks; ++block)
      for (std::size_t begin = 0; begin < cues_.size(); begin += in_grid) {
        const std::vector<const CueStart*> cues(
            cues_.begin() + static_cast<std::ptrdiff_t>(begin),
            cues_.begin() + static_cast<std::ptrdiff_t>(std::min(cues_.size(), begin + in_grid)));
        const double needed = grid.height(static_cast<int>(cues.size()));
        need(needed);
        grid.draw(rest_, cues, block * columns);
        used(needed + kAfterBlock);
      }
  }

  // All dates beside one another on a page turned sideways; false where that is not wide enough.
  bool draw_sideways(double above, const ScoreGrid& grid) {
    const Box upright = book_.upright();
    const double width = upright.height;
    const double height = upright.width - (upright.height - page_.height);
    if (static_cast<std::size_t>(ScoreGrid::columns_in(width)) < days_.size() ||
        above + grid.height(static_cast<int>(cues_.size())) > height)
      return false;
    const Box page = book_.open_wide_page(right_);
    how_to_mark(page.width).draw(book_.canvas(), page);
    grid.draw(page.without_top(above), cues_, 0);
    return true;
  }

  Book& book_;
  const Words& words_;
  int number_;  // of the piece
  const PlannedPiece& piece_;
  std::vector<const DiceTable*> tables_;
  std::vector<const CueStart*> cues_;
  std::vector<ScoreDay> days_;
  TableInForce in_force_;
  std::string right_;
  Box page_;
  Box rest_;
};

}  // namespace

void draw_cue_starts(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return piece.dice.empty(); }))
    return;
  book.open_sheet(SheetKind::cue_starts, book.words().say("cue_starts.title"));
  for (int piece = 0; piece < static_cast<int>(pieces.size()); ++piece)
    for (const Tables& tables : tables_by_sheet(pieces[piece].dice))
      CueSheet(book, piece, tables).draw();
}

}  // namespace cahier
