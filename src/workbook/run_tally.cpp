#include <algorithm>

#include "plan/run_days.h"
#include "text/phrasing.h"
#include "workbook/parts_clean_runs.h"
#include "workbook/parts_table.h"
#include "workbook/parts_ticks.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kRow = style::kWritingRow;
constexpr std::size_t kSpareRows = 4;
constexpr double kBelow = 4 * kGrid;  // the table

struct RunRow {
  std::string planned;    // its date; empty for a spare row
  bool recorded = false;  // asks for a recording
  bool listener = false;  // and somebody who listens
};

// The runs that the plan has, or else that the method asks for.
std::vector<RunRow> runs_asked(const Book& book, int piece) {
  std::vector<RunRow> rows;
  for (const Day& day : book.plan().days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::run_through)
        for (int time = 0; time < (task.steps.empty() ? 1 : task.steps.front().times); ++time)
          rows.push_back({day_month_short(book.words(), day.date), false, false});
  rows.resize(std::max(rows.size(), static_cast<std::size_t>(book.plan().runs_required())));
  return rows;
}

// The first half of the runs needs no witness; then a recording; in the last quarter a listener.
void add_witnesses(std::vector<RunRow>& rows, std::size_t asked) {
  for (std::size_t at = 0; at < rows.size(); ++at) {
    rows[at].recorded = asks_recording(at, asked);
    rows[at].listener = asks_listener(at, asked);
  }
}

// Rows to spare: fewer where that leaves `below` millimetres free on the page.
std::size_t spare_rows(double room, std::size_t asked, double below) {
  const double left = room - below - kRow * static_cast<double>(asked);
  if (left < kRow) return kSpareRows;
  return std::min(kSpareRows, static_cast<std::size_t>(left / kRow + 1e-6));
}

std::vector<Column> columns(const Words& words) {
  return {{words.say("run_tally.number"), 8, Align::right},
          {words.say("run_tally.date"), 27},
          {words.say("run_tally.place"), 34},
          {words.say("run_tally.clean"), 12},
          {words.say("run_tally.slips"), 37},
          {words.say("run_tally.rejoined"), 25},
          {words.say("run_tally.recorded"), 17},
          {words.say("run_tally.listener"), 17}};
}

void draw_row(Book& book, const Table& table, const Box& row, std::size_t number,
              const RunRow& run) {
  Canvas& canvas = book.canvas();
  const std::vector<Box> cells = table.draw_row(canvas, row);
  draw_line(canvas, cells[0], std::to_string(number), style::kStrong, Align::right, style::kLeast);
  draw_cell(canvas, cells[1], run.planned, style::kBody);
  draw_tick(canvas, cells[3]);
  if (run.recorded) draw_tick(canvas, cells[6]);
  if (run.listener) draw_tick(canvas, cells[7]);
}

// Returns what is left of the last page.
Box draw_tally(Book& book, int piece) {
  const Words& words = book.words();
  const std::string right =
      book.plan().pieces.size() > 1 ? book.plan().pieces[piece].piece.title : std::string();
  Box page = book.open_page(right);
  if (!right.empty()) book.mark(right);
  std::vector<RunRow> rows = runs_asked(book, piece);
  const int asked = static_cast<int>(rows.size());
  const std::vector<std::string> lead = {
      words.count("run_tally.lead", asked),
      words.say("run_tally.witness", {{"recorded", (asked + 1) / 2 + 1}}),
      words.say("run_tally.forward")};
  for (const std::string& text : lead) {
    const TextBlock block(book.typefaces(), text,
                          &text == &lead.back() ? style::kStrong : style::kBody, page.width);
    block.draw(book.canvas(), page);
    page = page.without_top(on_grid(block.height()));
  }
  page = page.without_top(2 * kGrid);
  const Table table(book.typefaces(), columns(words), page.width, kRow);
  Box rest = table.draw_head(book.canvas(), page);
  const bool is_last = piece + 1 == static_cast<int>(book.plan().pieces.size());
  const double below = is_last ? kBelow + clean_runs_height(book, page.width) : 0;
  rows.resize(rows.size() + spare_rows(rest.height, rows.size(), below));
  add_witnesses(rows, static_cast<std::size_t>(asked));
  for (std::size_t at = 0; at < rows.size(); ++at) {
    if (rest.height < kRow) rest = table.draw_head(book.canvas(), book.open_page(right));
    draw_row(book, table, rest, at + 1, rows[at]);
    rest = rest.without_top(kRow);
  }
  return rest.without_top(std::min(rest.height, kBelow));
}

}  // namespace

void draw_run_tally(Book& book) {
  book.open_sheet("run-throughs", book.words().say("run_tally.title"));
  Box rest;
  for (int piece = 0; piece < static_cast<int>(book.plan().pieces.size()); ++piece)
    rest = draw_tally(book, piece);
  draw_clean_runs(book, rest);
}

}  // namespace cahier
