#include "workbook/workbook.h"

#include <fmt/format.h>

#include <map>
#include <utility>

#include "paper/booklet.h"
#include "paper/pdf_canvas.h"
#include "paper/placement.h"
#include "text/phrasing.h"

namespace cahier {

Contents draw_workbook(Canvas& canvas, const Plan& plan, const Packet& packet, const Words& words,
                       const Print& print, const Contents& known) {
  Book book(canvas, plan, words, print, known);
  canvas.metadata({book.title(), plan.pieces.front().piece.composer,
                   words.say("book.subject", {{"date", day_month_year(words, plan.by)}}),
                   words.say("book.language")});
  for (const Sheet& sheet : packet.sheets) sheet.draw(book);
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
