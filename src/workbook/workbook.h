// A plan as a printed book.
#pragma once

#include <string>

#include "paper/recording_canvas.h"
#include "workbook/book.h"
#include "workbook/packet.h"

namespace cahier {

// Draws the packet's sheets on a canvas. `known` as found by an earlier drawing.
Contents draw_workbook(Canvas& canvas, const Plan& plan, const Packet& packet, const Words& words,
                       const Print& print, const Contents& known);

// The whole PDF file, and how many pages it has.
struct PrintedBook {
  std::string pdf;
  int pages = 0;
};

// The book is drawn on a recording canvas first, to learn its page numbers.
PrintedBook print_book(const Typefaces& typefaces, const Plan& plan, const Packet& packet,
                       const Words& words, const Print& print);

}  // namespace cahier
