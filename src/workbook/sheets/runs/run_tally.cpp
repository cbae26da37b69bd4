#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "plan/standing.h"
#include "practice/clean_run_odds.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/short_dates.h"
#include "workbook/parts/table.h"
#include "workbook/parts/ticks.h"
#include "workbook/sheets/runs/clean_runs.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kRow = style::kWritingRow;
constexpr double kDot = 2.4;  // what was ticked before
constexpr std::size_t kSpareRows = 4;
constexpr double kBelow = 4 * kGrid;  // the table

struct RunRow {
  std::string date;       // planned, or when it was made; empty for a spare row
  bool recorded = false;  // asks for a recording
  bool listener = false;  // and somebody who listens
  const Done* made = nullptr;
};

std::vector<RunRow> runs_made_before(const Book& book, const std::vector<const Done*>& runs) {
  std::vector<RunRow> rows;
  for (const Done* run : runs)
    rows.push_back({short_date(book.words(), book.plan(), run->date), run->recorded.value_or(false),
                    run->listener.value_or(false), run});
  return rows;
}

// The runs that the plan has, or else that the method asks for besides those that were made.
std::vector<RunRow> runs_asked(const Book& book, int piece, std::size_t made) {
  std::vector<RunRow> rows;
  for (const Day& day : book.plan().days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::run_through)
        for (int time = 0; time < (task.steps.empty() ? 1 : task.steps.front().times); ++time)
          rows.push_back({day_month_short(book.words(), day.date), task.reason != Reason::whole,
                          task.reason == Reason::listener, nullptr});
  const auto required = static_cast<std::size_t>(book.plan().runs_required());
  rows.resize(std::max(rows.size(), required - std::min(required, made)));
  return rows;
}

// Rows to spare: fewer where that leaves `below` millimetres free on the page.
std::size_t spare_rows(double room, std::size_t asked, double below) {
  const double left = room - below - kRow * static_cast<double>(asked);
  if (left < kRow) return kSpareRows;
  return std::min(kSpareRows, static_cast<std::size_t>(left / kRow + 1e-6));
}

std::vector<Column> columns(const Book& book, const std::vector<RunRow>& rows) {
  const Words& words = book.words();
  const auto width = [&](const RunRow& row) {
    return book.typefaces().width(row.date, style::kBody.face, style::kBody.size_pt);
  };
  const auto widest = std::max_element(
      rows.begin(), rows.end(),
      [&](const RunRow& one, const RunRow& other) { return width(one) < width(other); });
  return {{words.say("run_tally.number"), 8, Align::right},
          {words.say("run_tally.date"), 27, Align::left,
           widest == rows.end() ? std::string() : widest->date},
          {words.say("run_tally.place"), 29},
          {words.say("run_tally.clean"), 12},
          {words.say("run_tally.slips"), 34},
          {words.say("run_tally.rejoined"), 23},
          {words.say("places.no_sign"), 14},
          {words.say("run_tally.recorded"), 17},
          {words.say("run_tally.listener"), 17}};
}

void draw_made(Book& book, const std::vector<Box>& cells, const Done& run) {
  Canvas& canvas = book.canvas();
  const auto dot = [&](const Box& cell) {
    canvas.circle(cell.centre(), kDot, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
  };
  const auto bars = [](const std::vector<int>& list) {
    return fmt::format("{}", fmt::join(list, ", "));
  };
  if (!run.slips)
    draw_cell(canvas, cells[4], book.words().say("run_tally.not_told"), style::kSmall);
  else if (run.slips->empty())
    dot(cells[3]);
  else {
    draw_line(canvas, cells[3], book.words().say("run_tally.not_clean"), style::kBody,
              Align::centre, style::kLeast);
    draw_cell(canvas, cells[4], bars(*run.slips), style::kBody);
  }
  draw_cell(canvas, cells[5], bars(run.rejoined), style::kBody);
  if (run.recorded.value_or(false)) dot(cells[7]);
  if (run.listener.value_or(false)) dot(cells[8]);
}

void draw_row(Book& book, const Table& table, const Box& row, std::size_t number,
              const RunRow& run) {
  Canvas& canvas = book.canvas();
  const std::vector<Box> cells = table.draw_row(canvas, row);
  draw_line(canvas, cells[0], std::to_string(number), style::kStrong, Align::right, style::kLeast);
  draw_cell(canvas, cells[1], run.date, style::kBody);
  if (run.made != nullptr) return draw_made(book, cells, *run.made);
  draw_tick(canvas, cells[3]);
  draw_tick(canvas, cells[6]);
  if (run.recorded) draw_tick(canvas, cells[7]);
  if (run.listener) draw_tick(canvas, cells[8]);
}

// Rows before the first one to come that asks for a recording.
int unrecorded(const std::vector<RunRow>& rows) {
  return static_cast<int>(
      std::find_if(rows.begin(), rows.end(),
                   [](const RunRow& row) { return row.made == nullptr && row.recorded; }) -
      rows.begin());
}

// The first `unrecorded` runs need no recording; some are `made` already.
std::vector<std::string> lead(const Words& words, int unrecorded, int made, int to_come) {
  if (to_come == 0) return {words.say("run_tally.lead_none")};
  return {words.count(made > 0 ? "run_tally.lead_more" : "run_tally.lead", to_come),
          words.say("run_tally.witness", {{"recorded", std::max(unrecorded, made) + 1}})};
}

// The player's own runs, what they tell, and what they and the remaining ones would; empty when the
// log does not say how any went.
std::vector<std::string> own_record(const Words& words, const RunScore& score, int to_come) {
  if (score.told == 0) return {};
  std::vector<std::string> texts = {
      score.clean > 0 ? words.count("run_tally.record", score.told, {{"clean", score.clean}})
                      : words.count("run_tally.record_none", score.told)};
  std::string means;
  const int slipped = score.told - score.clean;
  const int of_ten = clean_of_ten(score.told, slipped);
  if (of_ten > 0)
    means = words.say("run_tally.record_means",
                      {{"clean", of_ten}, {"percent", percent_at_least(score.told, slipped)}});
  else if (score.clean > 0)
    means = words.say("run_tally.record_few");
  const int runs = score.told + to_come;
  if (to_come > 0 && clean_of_ten(runs, slipped) > 0)
    means += (means.empty() ? "" : " ") + words.count("run_tally.record_next", to_come,
                                                      {{"clean", runs - slipped},
                                                       {"runs", runs},
                                                       {"of_ten", clean_of_ten(runs, slipped)}});
  if (score.untold > 0)
    means += (means.empty() ? "" : " ") + words.count("run_tally.record_untold", score.untold);
  if (!means.empty()) texts.push_back(std::move(means));
  return texts;
}

// Returns what is left of the last page.
Box draw_tally(Book& book, int piece) {
  const Words& words = book.words();
  const std::string right =
      book.plan().pieces.size() > 1 ? book.title_in_head(book.plan().pieces[piece]) : std::string();
  Box page = book.open_page(right);
  book.note_piece(piece);
  if (!right.empty()) book.mark(right);
  const std::vector<const Done*> made = runs_made(book.plan(), piece);
  std::vector<RunRow> rows = runs_made_before(book, made);
  const bool kept = book.plan().upkeep;
  const std::vector<RunRow> to_come = runs_asked(book, piece, kept ? 0 : made.size());
  rows.insert(rows.end(), to_come.begin(), to_come.end());
  const auto add = [&](const std::string& text, const TextStyle& type) {
    const TextBlock block(book.typefaces(), text, type, page.width);
    block.draw(book.canvas(), page);
    page = page.without_top(on_grid(block.height()));
  };
  for (const std::string& text : lead(words, unrecorded(rows), static_cast<int>(made.size()),
                                      static_cast<int>(to_come.size())))
    add(text, style::kBody);
  add(words.say("run_tally.forward"), style::kStrong);
  add(words.say("places.no_sign_means"), style::kBody);
  const std::vector<std::string> record =
      own_record(words, score_of(made), book.plan().upkeep ? 0 : static_cast<int>(to_come.size()));
  if (!record.empty()) page = page.without_top(kGrid);
  for (const std::string& text : record)
    add(text, &text == &record.front() ? style::kStrong : style::kBody);
  page = page.without_top(2 * kGrid);
  const Table table(book.typefaces(), columns(book, rows), page.width, kRow);
  Box rest = table.draw_head(book.canvas(), page);
  const bool is_last = piece + 1 == static_cast<int>(book.plan().pieces.size());
  const double below = is_last ? kBelow + clean_runs_height(book, page.width) : 0;
  rows.resize(rows.size() + spare_rows(rest.height, rows.size(), below), {{}, true, true, nullptr});
  for (std::size_t at = 0; at < rows.size(); ++at) {
    if (rest.height < kRow) rest = table.draw_head(book.canvas(), book.open_page(right));
    draw_row(book, table, rest, at + 1, rows[at]);
    rest = rest.without_top(kRow);
  }
  return rest.without_top(std::min(rest.height, kBelow));
}

}  // namespace

void draw_run_tally(Book& book) {
  book.open_sheet(SheetKind::run_throughs, book.words().say("run_tally.title"));
  Box rest;
  for (int piece = 0; piece < static_cast<int>(book.plan().pieces.size()); ++piece)
    rest = draw_tally(book, piece);
  draw_clean_runs(book, rest);
}

}  // namespace cahier
