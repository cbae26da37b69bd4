// A few empty bars to write music in.
#include <algorithm>

#include "workbook/all_sheets.h"
#include "workbook/sheets/child/child_pages.h"
#include "workbook/sheets/write_outs/write_out_staves.h"

namespace cahier {
namespace {

constexpr int kMostEmptyBars = 10;
constexpr int kLeastEmptyBars = 2;
constexpr double kChildStaff = 11;  // millimetres high, as printed

}  // namespace

void draw_child_staves(Book& book) {
  const Words& words = book.words();
  book.open_sheet(SheetKind::child_staves, words.say("child.staves_title"));
  ChildPages pages(book);
  pages.text(words.say("child.staves_title"), child_great(book.print()));
  pages.skip(kGrid);
  for (const std::string& text : words.list("child.staves_how")) pages.point(text, Shape::star);
  pages.skip(2 * kGrid);
  const Piece& piece = book.plan().pieces.front().piece;
  const double asked = std::max(book.print().staff_height, book.print().laid_out(kChildStaff));
  const StaffMeasures measures =
      fitting_measures(book.typefaces(), piece, asked, pages.rest().height);
  StaffSystem system = blank_system(book.typefaces(), piece, measures, pages.rest().width);
  system.meter.reset();
  const double height = system_height(system, measures) + below_system(measures);
  for (int left = kMostEmptyBars;;) {
    draw_system(book.canvas(), pages.take(height), system, measures);
    left -= static_cast<int>(system.bars.size());
    if (left < kLeastEmptyBars || pages.rest().height < height) return;
    if (static_cast<int>(system.bars.size()) > left)
      system.bars.resize(static_cast<std::size_t>(left));
  }
}

}  // namespace cahier
