// Where to start: a coin or a die says it.
#include <algorithm>

#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/dice_faces.h"
#include "workbook/sheets/child/child_pages.h"
#include "workbook/sheets/child/child_throw.h"

namespace cahier {
namespace {

constexpr double kFace = 12;  // a die or a coin, millimetres
constexpr int kTurns = 8;     // shapes for each start
constexpr double kTurnShape = 9;
constexpr Stroke kCoinEdge{0.6, style::kDark, 0, 0, false};

class ChildStarts {
 public:
  explicit ChildStarts(Book& book)
      : book_(book), words_(book.words()), style_(child_strong(book.print())), pages_(book) {}

  void draw() {
    pages_.text(words_.say("child.starts_title"), child_great(book_.print()));
    pages_.skip(kGrid);
    for (const std::string& text : words_.list("child.starts_how"))
      pages_.point(text, Shape::triangle);
    pages_.skip(2 * kGrid);
    for (const PlannedPiece& piece : book_.plan().pieces) {
      const std::vector<DiceTable> tables = child_tables(piece);
      if (tables.empty()) continue;
      if (book_.plan().pieces.size() > 1)
        pages_.text(book_.short_title(piece), child_heading(book_.print()));
      for (const DiceTable& table : tables) draw_table(piece, table);
    }
  }

 private:
  std::string side(const DiceTable& table, int face) const {
    if (table.faces != 2) return std::to_string(face);
    return words_.say(face == 1 ? "child.heads" : "child.tails");
  }

  // "heads", "3", "3 then 4"; several with "or".
  std::string thrown(const DiceTable& table, const std::vector<std::vector<int>>& all) const {
    std::string text;
    for (const std::vector<int>& outcome : all) {
      std::string one;
      for (const int face : outcome)
        one = one.empty() ? side(table, face)
                          : words_.say("child.then", {{"one", one}, {"next", side(table, face)}});
      text = text.empty() ? one : words_.say("lists.more", {{"before", text}, {"next", one}});
    }
    return text;
  }

  int bar_of(const PlannedPiece& piece, int cue) const {
    for (const CueStart& start : piece.cues)
      if (start.number == cue) return start.bar;
    return piece.cues.front().bar;
  }

  void draw_table(const PlannedPiece& piece, const DiceTable& table) {
    for (const DiceTable::Row& row : table.rows) {
      draw_row(table, row.outcomes,
               words_.say("child.start_at", {{"bar", bar_of(piece, row.cue)}}));
      pages_.shapes(kTurns, Shape::triangle, kTurnShape);
      pages_.skip(kGrid);
    }
    if (!table.again.empty()) draw_row(table, table.again, words_.say("child.throw_again"));
  }

  void draw_row(const DiceTable& table, const std::vector<std::vector<int>>& outcomes,
                const std::string& says) {
    const std::string text =
        words_.say("child.thrown", {{"thrown", thrown(table, outcomes)}, {"says", says}});
    const bool pictured = table.count == 1 && table.faces <= 6 && outcomes.size() == 1;
    const double indent = pictured ? kFace + 2 * kGrid : 0;
    const TextBlock block(book_.typefaces(), text, style_, pages_.rest().width - indent);
    const double height = std::max(block.height(), pictured ? kFace : 0) + kGrid;
    const Box row = pages_.take(height);
    if (pictured) draw_face(row.left(kFace).top(kFace), table, outcomes.front().front());
    const double down = std::max(0.0, on_grid((height - kGrid - block.height()) / 2));
    block.draw(book_.canvas(), row.without_left(indent).without_top(down));
  }

  void draw_face(const Box& box, const DiceTable& table, int face) {
    if (table.faces == 6) {
      draw_die(book_.canvas(), box, face);
      return;
    }
    book_.canvas().circle(box.centre(), kFace - kCoinEdge.width, {kCoinEdge, {}},
                          CircleUse::ornament);
    draw_line(book_.canvas(), box.inset(kFace / 5),
              words_.say(face == 1 ? "child.heads_letter" : "child.tails_letter"), style_,
              Align::centre, style_.size_pt);
  }

  Book& book_;
  const Words& words_;
  TextStyle style_;
  ChildPages pages_;
};

}  // namespace

void draw_child_starts(Book& book) {
  const auto& pieces = book.plan().pieces;
  if (std::all_of(pieces.begin(), pieces.end(),
                  [](const PlannedPiece& piece) { return child_tables(piece).empty(); }))
    return;
  book.open_sheet(SheetKind::child_starts, book.words().say("child.starts_title"));
  ChildStarts(book).draw();
}

}  // namespace cahier
