#include <algorithm>

#include "paper/text_fitting.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/table.h"
#include "workbook/parts/ticks.h"
#include "workbook/sheets/runs/afterwards.h"
#include "workbook/sheets/runs/rejoin_points.h"

namespace cahier {
namespace {

constexpr double kEdge = style::kCutLine.width / 2;  // keeps the cut line within the margins
constexpr double kBesideCard = 8;
constexpr double kLeastBeside = 45;  // millimetres for words beside a card
constexpr double kGap = 2 * kGrid;
constexpr double kHeading = 5 * kGrid;
constexpr int kMostRows = 12;  // of the table for practising
constexpr int kLeastRows = 3;

class RejoinSheet {
 public:
  explicit RejoinSheet(Book& book) : book_(book), words_(book.words()) {}

  void draw() {
    Box page = book_.open_page();
    lay_out(page);
    for (std::size_t first = 0; first < cards_.size(); first += on_page_) {
      if (first > 0) page = book_.open_page();
      draw_page(page, first, std::min(first + on_page_, cards_.size()));
    }
    if (!advised_) draw_below(book_.open_page());
  }

 private:
  // One card upright where a single one holds the piece, else two sideways to a page.
  void lay_out(const Box& page) {
    width_ = std::min(kCardShort, page.width - 2 * kEdge);
    height_ = std::min(kCardLong, page.height - 2 * kEdge);
    const auto& pieces = book_.plan().pieces;
    const bool one_upright =
        pieces.size() == 1 && rejoins(pieces.front()).size() <=
                                  rejoin_rows(book_.typefaces(), pieces.front(), width_, height_);
    const bool two_sideways =
        page.width >= kCardLong + 2 * kEdge && page.height >= 2 * (kCardShort + kEdge);
    if (two_sideways && !one_upright) {
      width_ = kCardLong;
      height_ = kCardShort;
      on_page_ = 2;
    }
    for (const PlannedPiece& piece : pieces) add_cards(piece);
  }

  void add_cards(const PlannedPiece& piece) {
    const std::vector<Rejoin> all = rejoins(piece);
    const std::size_t most = rejoin_rows(book_.typefaces(), piece, width_, height_);
    const std::size_t cards = (all.size() + most - 1) / most;
    const std::size_t a_card = (all.size() + cards - 1) / cards;
    for (std::size_t card = 0; card < cards; ++card) {
      const auto first = all.begin() + static_cast<std::ptrdiff_t>(card * a_card);
      const auto last =
          all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), (card + 1) * a_card));
      cards_.push_back(
          {&piece, {first, last}, static_cast<int>(card) + 1, static_cast<int>(cards)});
    }
  }

  void draw_page(const Box& page, std::size_t first, std::size_t last) {
    Box frame{page.x + kEdge, page.y + kEdge, width_, height_};
    for (std::size_t at = first; at < last; ++at) {
      if (book_.plan().pieces.size() > 1 && cards_[at].number == 1)
        book_.mark(cards_[at].piece->piece.title);
      draw_rejoin_card_in(book_, frame, cards_[at]);
      frame = frame.moved(0, height_);
    }
    draw_around(page, page.without_top(frame.y - page.y + kEdge + kGap));
  }

  // The words beside an upright card or below the cards; then a table, where there is room.
  void draw_around(const Box& page, const Box& below) {
    const Box beside = page.without_left(width_ + kBesideCard).top(height_);
    if (!advised_ && on_page_ == 1 && beside.width >= kLeastBeside &&
        advice_height(beside.width) <= beside.height) {
      draw_advice(beside);
      draw_practice(below);
      return;
    }
    draw_below(below);
  }

  void draw_below(const Box& below) {
    Box rest = below;
    if (!advised_) {
      const double height = advice_height(rest.width);
      if (height > rest.height) return;
      draw_advice(rest);
      rest = rest.without_top(on_grid(height) + kGap);
    }
    draw_practice(rest);
  }

  std::vector<TextBlock> advice(double width) const {
    std::vector<TextBlock> blocks;
    for (const std::string& text : words_.list("rejoin_card.advice"))
      blocks.emplace_back(book_.typefaces(), text, style::kBody, width);
    return blocks;
  }

  // Below the cards there is no room to spare between paragraphs.
  static double between_advice(double width) { return width < kCardShort ? kGrid : 0; }

  double advice_height(double width) const {
    double height = 0;
    for (const TextBlock& block : advice(width)) height += block.height() + between_advice(width);
    return height;
  }

  void draw_advice(const Box& box) {
    Box rest = box;
    for (const TextBlock& block : advice(box.width))
      rest =
          rest.without_top(block.draw(book_.canvas(), rest) + between_advice(box.width) - rest.y);
    advised_ = true;
  }

  void draw_practice(const Box& box) {
    if (practised_) return;
    const Table table(book_.typefaces(),
                      {{words_.say("rejoin_card.date"), 2},
                       {words_.say("rejoin_card.stopped_at"), 2.4},
                       {words_.say("rejoin_card.went_on_from"), 2.4},
                       {words_.say("rejoin_card.went_well"), 1.2}},
                      box.width, style::kWritingRow);
    const double room = box.height - kHeading - table.head_height();
    const int rows = std::min(kMostRows, static_cast<int>(room / style::kWritingRow));
    if (rows < kLeastRows) return;
    practised_ = true;
    draw_line(book_.canvas(), box.top(kHeading), words_.say("rejoin_card.practice"),
              style::kHeading, Align::left, style::kLeast);
    Box rest = table.draw_head(book_.canvas(), box.without_top(kHeading));
    for (int row = 0; row < rows; ++row) {
      const std::vector<Box> cells = table.draw_row(book_.canvas(), rest);
      draw_tick(book_.canvas(), cells.back());
      rest = rest.without_top(style::kWritingRow);
    }
  }

  Book& book_;
  const Words& words_;
  double width_ = kCardShort;  // of a card
  double height_ = kCardLong;
  std::size_t on_page_ = 1;  // cards
  std::vector<RejoinCard> cards_;
  bool advised_ = false;    // how to use it has been said
  bool practised_ = false;  // the table stands
};

}  // namespace

void draw_rejoin_card(Book& book) {
  // The page of the day is needed when the card is cut out of the other side.
  if (book.sheet() == SheetKind::the_day && book.prints_both_sides() && !book.next_is_front())
    draw_afterwards(book);
  book.open_sheet(SheetKind::rejoin_card, book.words().say("rejoin_card.title"));
  RejoinSheet(book).draw();
}

}  // namespace cahier
