// A plan as a printed book.
#pragma once

#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "paper/recording_canvas.h"
#include "workbook/book.h"
#include "workbook/packet.h"
#include "workbook/unfit_texts.h"

namespace cahier {

// Draws the packet's sheets on a canvas. `known` as found by an earlier drawing.
Contents draw_workbook(Canvas& canvas, const Plan& plan, const Packet& packet, const Words& words,
                       const Print& print, const Contents& known);

// The page numbers of a book moved with every drawing. what() says so to the user.
class UnsettledPages : public std::runtime_error {
 public:
  UnsettledPages();
};

inline constexpr int kMostDrawings = 10;  // of one book; two or three are usual

// Draws a book once, with page numbers as an earlier drawing found them, and returns its own.
using DrawOnce = std::function<Contents(Canvas& canvas, const Contents& known)>;

struct DrawnBook {
  std::unique_ptr<RecordingCanvas> canvas;
  Contents contents;
};

// Draws a book again and again until its page numbers are those of the drawing before. Throws
// UnsettledPages when they are not after kMostDrawings.
DrawnBook draw_until_settled(const Typefaces& typefaces, const DrawOnce& draw);

// Puts the pages of a drawn book onto paper: magnified, or two beside one another in the order for
// folding. Outline and links lead to the pages in their new places. Each page leaves memory once it
// is on paper.
void put_on_paper(RecordingCanvas&& drawn, const Print& print, Canvas& paper);

// The whole PDF file, how many pages the book has, and how many sheets of paper they take.
struct PrintedBook {
  std::string pdf;
  int pages = 0;
  int sheets = 0;
  std::vector<UnfitText> unfit;
};

// The book is drawn on a recording canvas until its page numbers are settled; then its pages are
// put on paper as the print asks. Where no sheet of the packet has anything for the plan
// there are no pages, and the file is empty. Throws UnsettledPages.
PrintedBook print_book(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                       const Words& words, const Print& print);

}  // namespace cahier
