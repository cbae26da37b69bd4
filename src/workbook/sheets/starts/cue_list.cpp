#include "workbook/sheets/starts/cue_list.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "plan/alike_starts.h"
#include "plan/cue_reach.h"
#include "practice/time_model.h"
#include "text/phrasing.h"
#include "workbook/parts/tempo_mark.h"

namespace cahier {
namespace {

constexpr double kTwoColumns = 150;    // millimetres of width
constexpr std::size_t kShortList = 8;  // starts that are not worth two columns
constexpr double kBetween = 6;
constexpr double kInset = 1;  // of what stands below a row
constexpr double kTempo = 17;
constexpr double kToWriteOn = 4 * kGrid;  // below each start
constexpr double kLineFoot = 1.2;
constexpr double kMostMark = 0.5;  // of a line: a longer mark has lines of its own
constexpr std::string_view kDot = " · ";

Table list_table(const Book& book, double width) {
  const Words& words = book.words();
  std::vector<Column> columns = {
      {words.say("cue_starts.number"), 8, Align::right},
      {words.say("cue_starts.from_bar"), 14, Align::right},
      {words.say("cue_starts.section"), std::max(12.0, width - 36 - kTempo)},
      {words.say("cue_starts.tempo"), kTempo},
      {words.say("cue_starts.to_end"), 14, Align::right}};
  return Table(book.typefaces(), std::move(columns), width, style::kRow);
}

void draw_start_tempo(Canvas& canvas, const Box& cell, const Tempo& tempo) {
  const bool fits = tempo_width(canvas.typefaces(), tempo, style::kSmall) <= cell.width;
  draw_tempo(canvas, cell, tempo, fits ? style::kSmall : style::kSmall.at(style::kLeast));
}

}  // namespace

std::string alike_text(const Words& words, const PlannedPiece& piece, const CueStart& cue) {
  std::string text;
  for (const AlikeStarts& alike : alike_starts(piece, cue)) {
    std::vector<std::string> bars;
    for (const int bar : alike.bars) bars.push_back(std::to_string(bar));
    if (!text.empty()) text += kDot;
    text +=
        words.say("cue_starts.alike", {{"bars", list_text(words, bars)}, {"until", alike.until}});
  }
  return text;
}

CueList::CueList(Book& book, const PlannedPiece& piece, const std::vector<const CueStart*>& cues,
                 std::set<int> weak, double width)
    : book_(book),
      piece_(piece),
      cues_(cues),
      weak_(std::move(weak)),
      columns_(width >= kTwoColumns && cues.size() > kShortList ? 2 : 1),
      width_(columns_ == 2 ? (width - kBetween) / 2 : width),
      table_(list_table(book, width_)) {
  for (const CueStart* cue : cues) alike_[cue->number] = alike_text(book.words(), piece, *cue);
}

bool CueList::is_short(const std::string& text) const {
  return book_.typefaces().width(text, style::kNote.face, style::kNote.size_pt) <=
         width_ * kMostMark;
}

CueList::Told CueList::told(const CueStart& cue) const {
  Told told;
  std::vector<std::string> texts;
  if (cue.is_new) texts.push_back(book_.words().say("cue_starts.is_new"));
  texts.push_back(alike_.at(cue.number));
  texts.push_back(piece_.piece.beginning_at(cue.bar));
  texts.push_back(piece_.piece.in_force_at(cue.bar));
  for (const std::string& text : texts) {
    if (text.empty()) continue;
    const std::string with = told.on_line.empty() ? text : told.on_line + kDot.data() + text;
    if (is_short(with))
      told.on_line = with;
    else
      told.above += (told.above.empty() ? "" : "\n") + text;
  }
  return told;
}

double CueList::row_height(const CueStart& cue) const {
  const std::string above = told(cue).above;
  const double height =
      above.empty()
          ? 0
          : TextBlock(book_.typefaces(), above, style::kNote, width_ - 2 * kInset).height();
  return style::kRow + on_grid(height) + kToWriteOn;
}

double CueList::height(std::size_t begin, std::size_t end) const {
  const std::size_t rows = in_column(end - begin);
  double highest = 0;
  for (std::size_t next = begin; next < end; next += rows) {
    double column = 0;
    for (std::size_t at = next; at < std::min(end, next + rows); ++at)
      column += row_height(*cues_[at]);
    highest = std::max(highest, column);
  }
  return table_.head_height() + highest;
}

std::size_t CueList::starts_in(double height, std::size_t begin) const {
  std::size_t starts = 1;
  while (begin + starts < cues_.size() && this->height(begin, begin + starts + 1) <= height + 1e-6)
    ++starts;
  return starts;
}

void CueList::draw(const Box& box, std::size_t begin, std::size_t end) const {
  const std::size_t rows = in_column(end - begin);
  Box column{box.x, box.y, width_, box.height};
  for (std::size_t next = begin; next < end; next += rows) {
    draw_column(column, next, std::min(end, next + rows));
    column = column.moved(width_ + kBetween, 0);
  }
}

void CueList::draw_column(const Box& box, std::size_t begin, std::size_t end) const {
  Box rest = table_.draw_head(book_.canvas(), box);
  for (std::size_t at = begin; at < end; ++at) {
    draw_row(table_.cells(rest), *cues_[at]);
    const double height = row_height(*cues_[at]);
    draw_line_to_write_on(rest.top(height).without_top(style::kRow).inset(kInset, 0), *cues_[at]);
    rest = rest.without_top(height);
  }
}

void CueList::draw_line_to_write_on(const Box& box, const CueStart& cue) const {
  Canvas& canvas = book_.canvas();
  const Told told = this->told(cue);
  const Box line = box.bottom(kToWriteOn);
  const double taken = draw_line(canvas, line.without_bottom(kLineFoot - 0.6).bottom(style::kRow),
                                 told.on_line, style::kNote, Align::left, style::kLeast);
  if (!told.above.empty())
    TextBlock(book_.typefaces(), told.above, style::kNote, box.width).draw(canvas, box);
  const double changes = draw_tempo_changes(line, cue);
  const double y = line.bottom() - kLineFoot;
  canvas.line({line.x + (taken > 0 ? taken + 2 : 0), y},
              {line.right() - (changes > 0 ? changes + 2 : 0), y}, style::kWritingLine);
}

double CueList::draw_tempo_changes(const Box& line, const CueStart& cue) const {
  constexpr double kMost = 0.4;  // of the line
  Canvas& canvas = book_.canvas();
  const auto label = [&](int bar) { return book_.words().say("task.tempo_from", {{"bar", bar}}); };
  const auto label_width = [&](int bar) {
    return book_.typefaces().width(label(bar), style::kSmall.face, style::kSmall.size_pt) + 1;
  };
  std::vector<int> bars = tempo_changes_from(piece_, cue);
  const auto width = [&] {
    double sum = 0;
    for (const int bar : bars)
      sum += label_width(bar) + 2 +
             tempo_width(book_.typefaces(), tempo_or_usual(piece_.piece, bar), style::kSmall);
    return std::max(0.0, sum - 2);
  };
  while (bars.size() > 1 && width() > line.width * kMost) bars.pop_back();
  const double all = width();
  Box rest = line.without_bottom(kLineFoot - 0.6).bottom(style::kRow).right(all + 0.5);
  for (const int bar : bars) {
    draw_line(canvas, rest, label(bar), style::kSmall, Align::left, style::kLeast);
    rest = rest.without_left(label_width(bar));
    rest = rest.without_left(
        2 + draw_tempo(canvas, rest, tempo_or_usual(piece_.piece, bar), style::kSmall));
  }
  return all;
}

void CueList::draw_row(const std::vector<Box>& cells, const CueStart& cue) const {
  Canvas& canvas = book_.canvas();
  draw_line(canvas, cells[0], std::to_string(cue.number), style::kSmall, Align::right,
            style::kLeast);
  draw_line(canvas, cells[1], std::to_string(cue.bar), style::kStandText, Align::right,
            style::kLeastStand);
  Box name = cells[2].without_left(0.5);
  if (weak_.contains(cue.number))
    name = name.without_right(2 + draw_line(canvas, name.right(name.width * 0.5),
                                            book_.words().say("cue_starts.weak"), style::kSmall,
                                            Align::right, style::kLeast));
  draw_line(canvas, name, piece_.sections[cue.section].name, style::kBody, Align::left,
            style::kLeast);
  draw_start_tempo(canvas, cells[3], tempo_or_usual(piece_.piece, cue.bar));
  draw_line(canvas, cells[4], std::to_string(last_bar_from(piece_, cue)), style::kBody,
            Align::right, style::kLeast);
}

}  // namespace cahier
