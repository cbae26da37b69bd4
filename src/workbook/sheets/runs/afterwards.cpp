#include "workbook/sheets/runs/afterwards.h"

#include <algorithm>

#include "workbook/parts/writing_lines.h"

namespace cahier {
namespace {

constexpr const char* kQuestions[] = {"afterwards.held", "afterwards.slipped", "afterwards.noticed",
                                      "afterwards.otherwise"};

}  // namespace

void draw_afterwards(Book& book) {
  const Words& words = book.words();
  book.rename_sheet(words.say("afterwards.title"));
  Box page = book.open_page();
  const TextBlock when(book.typefaces(), words.say("afterwards.when"), style::kBody, page.width);
  page = page.without_top(when.draw(book.canvas(), page) - page.y);
  const double each = page.height / std::size(kQuestions);
  for (const char* key : kQuestions) {
    const Box block = page.top(each);
    page = page.without_top(each);
    const TextBlock question(book.typefaces(), words.say(key), style::kStrong, page.width);
    const Box above = block.without_top(2 * kGrid);
    const Box lines = above.without_top(question.draw(book.canvas(), above) - above.y);
    draw_writing_lines(book.canvas(), lines,
                       std::max(1, static_cast<int>(lines.height / style::kWritingRow)));
  }
}

}  // namespace cahier
