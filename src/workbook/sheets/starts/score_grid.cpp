#include "workbook/sheets/starts/score_grid.h"

#include <algorithm>

#include "paper/text_fitting.h"

namespace cahier {
namespace {

constexpr double kNumber = 8;
constexpr double kBar = 14;
constexpr double kColumn = 5;  // at least
constexpr double kBox = 3.6;   // around the mark of a start that the plan asks for
constexpr double kLeastHead = 8 * kGrid;
constexpr double kMostHead = 16 * kGrid;

}  // namespace

ScoreGrid::ScoreGrid(Book& book, const std::vector<ScoreDay>& columns)
    : book_(book), days_(columns), head_height_(kLeastHead) {
  for (const ScoreDay& day : columns)
    head_height_ = std::max(
        head_height_,
        on_grid(1.5 + book.typefaces().width(day.label, style::kNote.face, style::kNote.size_pt)));
  head_height_ = std::min(head_height_, kMostHead);
}

int ScoreGrid::columns_in(double width) {
  return std::max(1, static_cast<int>((width - kNumber - kBar + 1e-9) / kColumn));
}

void ScoreGrid::draw(const Box& box, const std::vector<const CueStart*>& cues,
                     std::size_t first) const {
  Canvas& canvas = book_.canvas();
  const int count = columns_in(box.width);
  const Box all = box.top(height(static_cast<int>(cues.size())));
  const std::vector<Box> columns = all.without_left(kNumber + kBar).columns(count);
  draw_head(all.top(head_height_), columns, first);

  const auto ends_section = [&](std::size_t at) {
    return at + 1 == cues.size() || cues[at + 1]->section != cues[at]->section;
  };
  std::size_t sections = 0;
  for (std::size_t at = 0; at < cues.size(); ++at) sections += ends_section(at) ? 1 : 0;
  const bool by_section = 2 * sections <= cues.size();

  Box row = all.without_top(head_height_).top(style::kRow);
  for (std::size_t at = 0; at < cues.size(); ++at, row = row.moved(0, style::kRow)) {
    draw_row(row, *cues[at]);
    const bool ends = at + 1 == cues.size() || (by_section ? ends_section(at) : at % 4 == 3);
    canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()},
                ends ? style::kRule : style::kHairline);
    for (int column = 0; column < count; ++column) {
      const std::size_t day = first + static_cast<std::size_t>(column);
      if (day >= days_.size() || !days_[day].asked.contains(cues[at]->number)) continue;
      const Point middle{columns[column].centre().x, row.centre().y};
      canvas.rectangle(Box{middle.x, middle.y, 0, 0}.inset(-kBox / 2), {style::kRule, {}});
    }
  }
  for (int column = 0; column < count; ++column) {
    const std::size_t day = first + static_cast<std::size_t>(column);
    const bool month = column > 0 && day < days_.size() && days_[day].begins_month;
    canvas.line({columns[column].x, all.y + head_height_}, {columns[column].x, all.bottom()},
                month || column == 0 ? style::kRule : style::kHairline);
  }
}

void ScoreGrid::draw_head(const Box& box, const std::vector<Box>& columns,
                          std::size_t first) const {
  Canvas& canvas = book_.canvas();
  const Words& words = book_.words();
  const Box names = box.bottom(5.5).without_bottom(1);
  draw_line(canvas, names.left(kNumber).without_right(1), words.say("cue_starts.number"),
            style::kSmall, Align::right, style::kLeast);
  draw_line(canvas, names.without_left(kNumber).left(kBar).without_right(1.5),
            words.say("cue_starts.from"), style::kSmall, Align::right, style::kLeast);
  TextStyle upwards = style::kNote;
  upwards.turn = Turn::upwards;
  for (std::size_t column = 0; column < columns.size(); ++column) {
    const std::size_t day = first + column;
    if (day < days_.size())
      draw_line(canvas, {columns[column].x, box.y, columns[column].width, box.height - 1},
                days_[day].label, upwards, Align::left, style::kLeast);
    // To write a date in.
    else
      canvas.line({columns[column].x, box.y + 2}, {columns[column].x, box.bottom()},
                  style::kHairline);
  }
  canvas.line({box.x, box.bottom()}, {box.right(), box.bottom()}, style::kRule);
}

void ScoreGrid::draw_row(const Box& row, const CueStart& cue) const {
  draw_line(book_.canvas(), row.left(kNumber).without_right(1), std::to_string(cue.number),
            style::kSmall, Align::right, style::kLeast);
  draw_line(book_.canvas(), row.without_left(kNumber).left(kBar).without_right(1.5),
            std::to_string(cue.bar), style::kStandText, Align::right, style::kLeastStand);
}

}  // namespace cahier
