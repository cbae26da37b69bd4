// Sheets drawn on a recording canvas, as a book would draw them.
#pragma once

#include <string>

#include "catch.h"
#include "paper/layout_check.h"
#include "paper/recording_canvas.h"
#include "workbook/all_sheets.h"
#include "workbook/style.h"
#include "workbook/workbook.h"

namespace cahier::sample {

inline const Typefaces& typefaces() {
  static const Typefaces faces;
  return faces;
}

// One sheet by itself, drawn twice: the second time its page numbers are known.
class DrawnSheet {
 public:
  DrawnSheet(void (*draw)(Book&), const Plan& plan, const Print& print = {},
             const Words& words = english_words())
      : canvas_(typefaces()) {
    Packet packet;
    packet.sheets = {{{}, "sheet", draw}};
    RecordingCanvas first(typefaces());
    const Contents known = draw_workbook(first, plan, packet, words, print, Contents{});
    draw_workbook(canvas_, plan, packet, words, print, known);
  }

  const RecordingCanvas& canvas() const { return canvas_; }
  int pages() const { return canvas_.page_count(); }
  // Every text on every page, each on a line of its own.
  std::string words() const {
    std::string all;
    for (const DrawnPage& page : canvas_.pages()) all += page.words() + "\n";
    return all;
  }
  // What the layout check finds, each fault on a line of its own.
  std::string faults() const {
    std::string all;
    for (const std::string& fault : cahier::faults(canvas_, style::kMargins)) all += fault + "\n";
    return all;
  }
  int circles_to_tick() const {
    int number = 0;
    for (const DrawnPage& page : canvas_.pages())
      for (const DrawnItem& item : page.items)
        if (const auto* circle = std::get_if<DrawnCircle>(&item);
            circle != nullptr && circle->use == CircleUse::tick)
          ++number;
    return number;
  }

 private:
  RecordingCanvas canvas_;
};

}  // namespace cahier::sample
