#include "workbook/sheets/starts/throw_table.h"

#include <string>

#include "paper/text_fitting.h"
#include "workbook/parts/dice_faces.h"

namespace cahier {
namespace {

constexpr double kCellHeight = 8 * kGrid;
constexpr double kDie = 7.5;
constexpr double kCoin = 5.4;
constexpr double kD20 = 10;
constexpr double kHeadGap = 1.5;      // from a head to the grid
constexpr double kTitle = 3 * kGrid;  // "first throw", beside or above the heads
constexpr int kListColumns = 4;

int power(int base, int exponent) {
  int result = 1;
  while (exponent-- > 0) result *= base;
  return result;
}

}  // namespace

ThrowTable::ThrowTable(Book& book, const PlannedPiece& piece, const DiceTable& table, double width)
    : book_(book), piece_(piece), table_(table) {
  if (is_list()) {
    columns_ = kListColumns;
    rows_ = (table.faces + kListColumns - 1) / kListColumns;
  } else {
    rows_ = power(table.faces, throws_for_row());
    columns_ = power(table.faces, throws_for_column());
    const double head = is_coins() ? kCoin : kDie;
    if (throws_for_row() > 0) left_ = kTitle + kHeadGap + throws_for_row() * head + kHeadGap;
    stacked_ = throws_for_column() * head > (width - left_) / columns_ - 1;
    top_ = (stacked_ ? throws_for_column() : 1) * head + kHeadGap;
    if (throws_for_row() > 0) top_ += kTitle;
    top_ = on_grid(top_);
  }
  grid_ = {0, 0, width - left_, rows_ * kCellHeight};
}

double ThrowTable::height() const { return top_ + grid_.height; }

void ThrowTable::draw(const Box& box) const {
  ThrowTable placed = *this;
  placed.grid_.x = box.x + left_;
  placed.grid_.y = box.y + top_;
  if (!is_list()) {
    if (throws_for_row() > 0) placed.draw_row_heads();
    placed.draw_column_heads();
  }
  placed.draw_rules();
  for (const DiceTable::Row& row : table_.rows)
    for (const std::vector<int>& outcome : row.outcomes)
      placed.draw_start(placed.cell_of(outcome), row.cue);
  for (const std::vector<int>& outcome : table_.again) placed.draw_again(placed.cell_of(outcome));
}

ThrowTable::Cell ThrowTable::cell_of(const std::vector<int>& outcome) const {
  int row = 0;
  int column = 0;
  if (is_list()) return {(outcome.front() - 1) % rows_, (outcome.front() - 1) / rows_};
  for (int at = 0; at < table_.count; ++at) {
    int& index = at < throws_for_row() ? row : column;
    index = index * table_.faces + outcome[at] - 1;
  }
  return {row, column};
}

std::vector<int> ThrowTable::faces_of(int at, int throws) const {
  std::vector<int> faces(throws);
  for (int die = throws; die-- > 0; at /= table_.faces) faces[die] = at % table_.faces + 1;
  return faces;
}

std::string ThrowTable::heading(int first, int throws) const {
  const Words& words = book_.words();
  if (!is_coins()) return words.say(first == 1 ? "cue_starts.first_die" : "cue_starts.second_die");
  if (throws == 1) return words.say("cue_starts.coin", {{"number", first}});
  return words.say("cue_starts.coins", {{"first", first}, {"last", first + throws - 1}});
}

void ThrowTable::draw_row_heads() const {
  TextStyle upwards = style::kSmall;
  upwards.turn = Turn::upwards;
  draw_line(book_.canvas(), {grid_.x - left_, grid_.y, kTitle, grid_.height},
            heading(1, throws_for_row()), upwards, Align::centre, style::kLeast);
  for (int row = 0; row < rows_; ++row) {
    const Box cell = cell_box({row, 0});
    const double width = left_ - kTitle - 2 * kHeadGap;
    draw_heads({cell.x - kHeadGap - width, cell.y, width, cell.height},
               faces_of(row, throws_for_row()), false);
  }
}

void ThrowTable::draw_column_heads() const {
  const double title = throws_for_row() > 0 ? kTitle : 0;
  if (title > 0)
    draw_line(book_.canvas(), {grid_.x, grid_.y - top_, grid_.width, title},
              heading(throws_for_row() + 1, throws_for_column()), style::kSmall, Align::centre,
              style::kLeast);
  for (int column = 0; column < columns_; ++column) {
    const Box cell = cell_box({0, column});
    const double height = (stacked_ ? throws_for_column() : 1) * (is_coins() ? kCoin : kDie);
    draw_heads({cell.x, cell.y - kHeadGap - height, cell.width, height},
               faces_of(column, throws_for_column()), stacked_);
  }
}

void ThrowTable::draw_heads(const Box& box, const std::vector<int>& faces, bool stacked) const {
  const double side = is_coins() ? kCoin : kDie;
  const double count = static_cast<double>(faces.size());
  const double length = side * count;
  const Point middle = box.centre();
  Box head{middle.x - (stacked ? side : length) / 2, middle.y - (stacked ? length : side) / 2, side,
           side};
  for (const int face : faces) {
    if (is_coins())
      draw_coin(book_.canvas(), head,
                book_.words().say(face == 1 ? "cue_starts.heads" : "cue_starts.tails"));
    else
      draw_die(book_.canvas(), head, face);
    head = stacked ? head.moved(0, side) : head.moved(side, 0);
  }
}

void ThrowTable::draw_rules() const {
  for (int row = 1; row < rows_; ++row) {
    const double y = cell_box({row, 0}).y;
    book_.canvas().line({grid_.x, y}, {grid_.right(), y}, style::kHairline);
  }
  for (int column = 1; column < columns_; ++column) {
    const double x = cell_box({0, column}).x;
    book_.canvas().line({x, grid_.y}, {x, grid_.bottom()}, style::kHairline);
  }
  book_.canvas().rectangle(grid_.inset(style::kRule.width / 2), {style::kRule, {}});
}

Box ThrowTable::cell_box(const Cell& cell) const {
  return grid_.rows(rows_)[cell.row].columns(columns_)[cell.column];
}

void ThrowTable::draw_start(const Cell& cell, int cue) const {
  Box box = cell_box(cell).inset(0.6, 0.6);
  if (is_list()) {
    draw_d20(book_.canvas(), box.left(kD20).moved(0.6, 0), cell.column * rows_ + cell.row + 1);
    box = box.without_left(kD20 + 1);
  }
  draw_line(book_.canvas(), box.top(6.6), std::to_string(piece_.cues[cue - 1].bar),
            style::kStandBars, Align::centre, style::kLeastStand);
  draw_line(book_.canvas(), box.bottom(4.2),
            book_.words().say("cue_starts.start", {{"number", cue}}), style::kSmall, Align::centre,
            style::kLeast);
}

void ThrowTable::draw_again(const Cell& cell) const {
  Box box = cell_box(cell).inset(0.6, 0.6);
  if (is_list()) {
    draw_d20(book_.canvas(), box.left(kD20).moved(0.6, 0), cell.column * rows_ + cell.row + 1);
    box = box.without_left(kD20 + 1);
  }
  draw_line(book_.canvas(), box, book_.words().say("cue_starts.again"), style::kSmall,
            Align::centre, style::kLeast);
}

}  // namespace cahier
