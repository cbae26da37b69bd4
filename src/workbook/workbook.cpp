#include "workbook/workbook.h"

#include "paper/pdf_canvas.h"
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

PrintedBook print_book(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                       const Words& words, const Print& print) {
  // Page numbers in the text hardly move anything, but they may: draw until they stand still.
  Contents contents;
  for (int round = 0; round < 3; ++round) {
    RecordingCanvas recording(typefaces);
    Contents found = draw_workbook(recording, plan, packet, words, print, contents);
    const bool settled = found == contents;
    contents = std::move(found);
    if (settled) break;
  }
  PdfCanvas pdf(typefaces);
  draw_workbook(pdf, plan, packet, words, print, contents);
  return {pdf.bytes(), contents.pages};
}

}  // namespace cahier
