#include "workbook/workbook.h"

#include <fmt/format.h>

#include <map>
#include <utility>

#include "paper/booklet.h"
#include "paper/pdf_canvas.h"
#include "paper/placement.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

// Draws the sheets of a packet, one after the other.
class Drawing {
 public:
  Drawing(Canvas& canvas, const Plan& plan, const Packet& packet, const Words& words,
          const Print& print, const Contents& known)
      : sheets_(packet.sheets),
        book_(canvas, plan, words, print, known),
        alone_{plan, words, print, known} {}

  Book& book() { return book_; }

  void draw() {
    for (std::size_t at = 0; at < sheets_.size(); ++at) {
      if (day_goes_first(at)) {
        sheets_[at + 1].draw(book_);
        sheets_[at].draw(book_);
        ++at;
      } else {
        sheets_[at].draw(book_);
      }
    }
  }

 private:
  // The card is cut out, and what stands on the other side of it goes with it: that may be a sheet
  // that has been used up by then, not the page of the day. Where it would be, the day comes before
  // the sheet in front of it.
  bool day_goes_first(std::size_t at) const {
    if (at + 2 >= sheets_.size() || sheets_[at + 1].kind != SheetKind::the_day ||
        sheets_[at + 2].kind != SheetKind::rejoin_card || !book_.prints_both_sides())
      return false;
    const int before = pages_of(sheets_[at]);
    const int day = pages_of(sheets_[at + 1]);
    return before > 0 && day > 0 && (book_.page() + before + day) % 2 == 1;
  }

  int pages_of(const Sheet& sheet) const {
    RecordingCanvas canvas(book_.typefaces());
    Book alone(canvas, alone_.plan, alone_.words, alone_.print, alone_.known);
    sheet.draw(alone);
    return canvas.page_count();
  }

  struct Alone {
    const Plan& plan;
    const Words& words;
    const Print& print;
    const Contents& known;
  };

  const std::vector<Sheet>& sheets_;
  Book book_;
  Alone alone_;
};

}  // namespace

Contents draw_workbook(Canvas& canvas, const Plan& plan, const Packet& packet, const Words& words,
                       const Print& print, const Contents& known) {
  Drawing drawing(canvas, plan, packet, words, print, known);
  Book& book = drawing.book();
  canvas.metadata({book.title(), plan.pieces.front().piece.composer,
                   words.say("book.subject", {{"date", day_month_year(words, plan.by)}}),
                   words.say("book.language"), packet.name});
  drawing.draw();
  return book.contents();
}

namespace {

void put_pages(Canvas& paper, RecordingCanvas& drawn, double magnification) {
  const auto same_page = [](int page) { return page; };
  for (int number = 1; number <= drawn.page_count(); ++number) {
    const DrawnPage page = drawn.take_page(number);
    paper.begin_page({page.size.width * magnification, page.size.height * magnification});
    draw_placed(paper, page, {magnification, false, {}}, same_page);
  }
  for (const DrawnOutlineEntry& entry : drawn.outline_entries())
    paper.outline_entry(entry.title, entry.level, entry.page);
}

void put_booklet(Canvas& paper, RecordingCanvas& drawn, PageSize page_size) {
  const std::vector<BookletSide> sides = booklet_sides(drawn.page_count());
  std::map<int, int> side_of;
  for (std::size_t at = 0; at < sides.size(); ++at)
    for (const int page : {sides[at].left, sides[at].right})
      side_of[page] = static_cast<int>(at) + 1;
  const auto to_side = [&](int page) { return side_of.at(page); };
  for (const BookletSide& side : sides) {
    paper.begin_page({2 * page_size.width, page_size.height});
    for (const int half : {0, 1}) {
      const int number = half == 0 ? side.left : side.right;
      if (number == 0) continue;
      const DrawnPage page = drawn.take_page(number);
      const bool sideways = page.size.width > page.size.height;
      draw_placed(paper, page, {1, sideways, {half * page_size.width, 0}}, to_side);
    }
  }
  for (const DrawnOutlineEntry& entry : drawn.outline_entries())
    paper.outline_entry(entry.title, entry.level, to_side(entry.page));
}

}  // namespace

void put_on_paper(RecordingCanvas&& drawn, const Print& print, Canvas& paper) {
  paper.metadata(drawn.info());
  if (print.booklet)
    put_booklet(paper, drawn, print.paper);
  else
    put_pages(paper, drawn, print.magnification);
}

UnsettledPages::UnsettledPages()
    : std::runtime_error(
          fmt::format("the page numbers of this workbook did not settle in {} drawings; "
                      "another --paper or --packet may help",
                      kMostDrawings)) {}

DrawnBook draw_until_settled(const Typefaces& typefaces, const DrawOnce& draw) {
  Contents known;
  for (int drawing = 0; drawing < kMostDrawings; ++drawing) {
    auto canvas = std::make_unique<RecordingCanvas>(typefaces);
    Contents found = draw(*canvas, known);
    if (found == known) return {std::move(canvas), std::move(found)};
    known = std::move(found);
  }
  throw UnsettledPages();
}

PrintedBook print_book(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                       const Words& words, const Print& print) {
  const DrawnBook book = draw_until_settled(typefaces, [&](Canvas& canvas, const Contents& known) {
    return draw_workbook(canvas, plan, packet, words, print, known);
  });
  if (book.canvas->page_count() == 0) return {};
  std::vector<UnfitText> unfit = unfit_texts(*book.canvas, print.margins);
  PdfCanvas pdf(typefaces);
  put_on_paper(std::move(*book.canvas), print, pdf);
  const int pages = book.contents.pages;
  return {pdf.bytes(), pages, print.sheets_of_paper(pages), std::move(unfit)};
}

}  // namespace cahier
