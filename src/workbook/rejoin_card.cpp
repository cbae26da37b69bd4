#include <algorithm>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

// ISO 216: A6.
constexpr double kCardWidth = 105;
constexpr double kCardHeight = 148;
constexpr double kRow = 9;
constexpr double kLeastRow = 7.6;  // the largest figures still stand clear of the rules
constexpr double kHead = 29;       // title, date and the heads of the columns

// A lapse anywhere in `from` is followed by a jump to `to`; at the end there is nowhere to go.
struct Rejoin {
  BarRange from;
  int to = 0;           // bar; 0 for the end
  std::string section;  // its name, where one begins at `to`
};

std::vector<Rejoin> rejoins(const PlannedPiece& piece) {
  const auto begins_section = [&](int bar) {
    return std::any_of(piece.sections.begin(), piece.sections.end(),
                       [&](const PlannedSection& section) { return section.bars.first == bar; });
  };
  std::vector<int> points;
  for (const CueStart& cue : piece.cues) points.push_back(cue.bar);
  for (const PlannedSection& section : piece.sections) points.push_back(section.bars.first);
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());

  std::vector<Rejoin> result;
  int first = piece.piece.first_bar();
  for (const int point : points) {
    // After a pickup there is nothing to jump over before bar 1.
    if (point <= std::max(first, 1)) continue;
    // The next bar is no place to catch oneself, unless a section begins there.
    if (point == first + 1 && !begins_section(point)) continue;
    Rejoin rejoin{{first, point - 1}, point, {}};
    for (const PlannedSection& section : piece.sections)
      if (section.bars.first == point) rejoin.section = section.name;
    result.push_back(rejoin);
    first = point;
  }
  result.push_back({{first, piece.piece.bars}, 0, {}});
  return result;
}

void draw_arrow(Canvas& canvas, Point tip) {
  const Stroke stroke{0.4, style::kDark, 0, 0, false};
  canvas.line({tip.x - 6, tip.y}, tip, stroke);
  canvas.line({tip.x - 1.8, tip.y - 1.3}, tip, stroke);
  canvas.line({tip.x - 1.8, tip.y + 1.3}, tip, stroke);
}

void draw_head(Book& book, const Box& head, const PlannedPiece& piece) {
  const Words& words = book.words();
  Canvas& canvas = book.canvas();
  draw_line(canvas, head.top(7), words.say("rejoin_card.forward"), style::kStandBars, Align::left,
            style::kLeastStand);
  draw_line(canvas, head.without_top(7).top(6), piece.piece.title, style::kStrong, Align::left,
            8.5);
  draw_line(canvas, head.without_top(13).top(5.5), full_date(words, book.plan().by), style::kBody,
            Align::left, 8.5);
  const Box labels = head.bottom(7).top(5.5);
  draw_line(canvas, labels.left(38), words.say("rejoin_card.slip_in"), style::kSmall, Align::left,
            style::kLeast);
  draw_line(canvas, labels.without_left(42), words.say("rejoin_card.go_to"), style::kSmall,
            Align::left, style::kLeast);
  canvas.line({head.x, head.bottom()}, {head.right(), head.bottom()}, style::kRule);
}

void draw_row(Book& book, const Box& row, const Rejoin& rejoin) {
  Canvas& canvas = book.canvas();
  draw_line(canvas, row.left(32), bar_range(rejoin.from.first, rejoin.from.last), style::kStandText,
            Align::left, style::kLeastStand);
  draw_arrow(canvas, {row.x + 39, row.centre().y});
  const Box target = row.without_left(42);
  if (rejoin.to == 0) {
    draw_line(canvas, target, book.words().say("rejoin_card.to_the_end"), style::kStandText,
              Align::left, style::kLeastStand);
  } else {
    const bool begins = !rejoin.section.empty();
    const TextStyle bar_style = begins ? style::kStandBars : style::kStandText;
    draw_line(canvas, target.left(22), std::to_string(rejoin.to), bar_style, Align::left,
              style::kLeastStand);
    if (begins)
      draw_line(canvas, target.without_left(23), rejoin.section, style::kStandText, Align::left,
                style::kLeastStand);
  }
  canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()}, style::kHairline);
}

// How to use the card, beside it or, on narrow paper, below it.
void draw_advice(Book& book, const Box& page) {
  const double beside = page.width - kCardWidth;
  Box box = beside >= 45 ? page.without_left(kCardWidth + 8) : page.without_top(kCardHeight + 3);
  for (const std::string& text : book.words().list("rejoin_card.advice")) {
    const TextBlock block(book.typefaces(), text, style::kBody, box.width);
    if (block.height() > box.height) return;
    box = box.without_top(block.draw(book.canvas(), box) + 2.5 - box.y);
  }
}

// Below the card, where there is room: a table for practising the jump.
void draw_practice(Book& book, const Box& page) {
  const Words& words = book.words();
  Box box = page.without_top(kCardHeight + 9);
  const int rows = std::min(8, static_cast<int>((box.height - 12) / style::kWritingRow));
  if (rows < 3) return;
  draw_line(book.canvas(), box.top(6), words.say("rejoin_card.practice"), style::kHeading,
            Align::left, style::kLeast);
  box = box.without_top(6.5);
  const std::vector<double> shares = {2, 3, 3, 1.6};
  const std::vector<std::string> heads = {
      words.say("rejoin_card.date"), words.say("rejoin_card.stopped_at"),
      words.say("rejoin_card.went_on_from"), words.say("rejoin_card.went_well")};
  const std::vector<Box> cells = box.top(5).columns_by_share(shares, 4);
  for (std::size_t at = 0; at < heads.size(); ++at)
    draw_line(book.canvas(), cells[at], heads[at], style::kSmall, Align::left, style::kLeast);
  box = box.without_top(5);
  for (int row = 0; row < rows; ++row) {
    const Box line = box.top(style::kWritingRow);
    const std::vector<Box> fields = line.columns_by_share(shares, 4);
    for (std::size_t at = 0; at + 1 < fields.size(); ++at)
      book.canvas().line({fields[at].x, line.bottom()}, {fields[at].right(), line.bottom()},
                         style::kWritingLine);
    book.canvas().circle({fields.back().x + style::kTick / 2 + 0.5, line.bottom() - 2.8},
                         style::kTick, {style::kRule, {}}, CircleUse::tick);
    box = box.without_top(style::kWritingRow);
  }
}

}  // namespace

void draw_rejoin_card(Book& book) {
  const Words& words = book.words();
  book.open_sheet("rejoin card", words.say("rejoin_card.title"));
  for (const PlannedPiece& piece : book.plan().pieces) {
    const std::vector<Rejoin> all = rejoins(piece);
    const double room = kCardHeight - 10 - kHead;
    const auto most = static_cast<std::size_t>(room / kLeastRow);
    const std::size_t cards = (all.size() + most - 1) / most;
    const std::size_t a_card = (all.size() + cards - 1) / cards;
    const double height = std::min(kRow, room / static_cast<double>(a_card));
    for (std::size_t card = 0; card < cards; ++card) {
      const std::string which =
          cards > 1 ? words.say("rejoin_card.card", {{"number", card + 1}, {"of", cards}}) : "";
      const Box page = book.open_page(which);
      if (card == 0 && book.plan().pieces.size() > 1) book.mark(piece.piece.title);
      const Box frame = Box{page.x, page.y, kCardWidth, kCardHeight}.inset(0.2);
      book.canvas().rectangle(frame, {style::kCutLine, {}});
      const Box inner = frame.inset(5, 5);
      draw_head(book, inner.top(kHead - 1), piece);
      Box row = inner.without_top(kHead - 1).top(height);
      for (std::size_t at = card * a_card; at < std::min(all.size(), (card + 1) * a_card); ++at) {
        draw_row(book, row, all[at]);
        row = row.moved(0, height);
      }
      draw_advice(book, page);
      if (card == 0) draw_practice(book, page);
    }
  }
}

}  // namespace cahier
