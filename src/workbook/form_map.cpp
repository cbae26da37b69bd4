#include <algorithm>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/learning_calendar.h"
#include "workbook/parts_form_line.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kBetweenLines = 6;
constexpr double kLegendRow = 6.4;

std::string head_text(const Book& book, const PlannedPiece& piece) {
  const BarRange whole = piece.piece.whole();
  return book.words().say("form_map.right", {{"piece", piece.piece.title},
                                             {"bars", bar_range(whole.first, whole.last)}});
}

// Half the width of a line is kept clear at both sides.
Box open_map_page(Book& book, const PlannedPiece& piece) {
  return book.open_page(head_text(book, piece)).inset(0.3, 0);
}

// Signs and their meanings in two columns.
class Legend {
 public:
  Legend(Book& book, const PlannedPiece& piece, double width) : book_(book), piece_(piece) {
    const Words& words = book.words();
    const double text_width = (width - kBetweenColumns) / 2 - kSignRoom;
    const auto add = [&](Sign sign, const std::string& text) {
      entries_.push_back({sign, TextBlock(book.typefaces(), text, style::kNote, text_width)});
    };
    add(Sign::section, words.say("form_map.legend_section"));
    add(Sign::hard, words.say("form_map.legend_hard"));
    add(Sign::chunk, words.say("form_map.legend_chunk"));
    add(Sign::cue, words.say("form_map.legend_cue"));
    const Piece& music = piece.piece;
    if (std::any_of(music.sections.begin(), music.sections.end(),
                    [](const Section& section) { return !section.phrases.empty(); }))
      add(Sign::phrase, words.say("form_map.legend_phrase"));
    if (!music.look_alikes.empty()) add(Sign::fork, words.say("form_map.legend_fork"));
    if (!music.repeats.empty()) add(Sign::repeat, words.say("form_map.legend_repeat"));
    for (std::size_t at = 0; at < entries_.size(); at += 2) {
      double row = kLegendRow;
      for (std::size_t in = at; in < std::min(at + 2, entries_.size()); ++in)
        row = std::max(row, entries_[in].text.height() + 1.5);
      rows_.push_back(row);
    }
  }

  double height() const {
    double height = kHeading;
    for (const double row : rows_) height += row;
    return height;
  }

  void draw(Box box) {
    draw_line(book_.canvas(), box.top(6), book_.words().say("form_map.legend"), style::kHeading,
              Align::left, style::kLeast);
    box = box.without_top(kHeading);
    for (std::size_t at = 0; at < entries_.size(); ++at) {
      const double row = rows_[at / 2];
      const Box cell = box.top(row).columns(2, kBetweenColumns)[at % 2];
      draw_sign(entries_[at].sign, cell.left(9.6).top(6));
      const TextBlock& text = entries_[at].text;
      // A single line stands beside the middle of its sign.
      const double down = text.lines().size() == 1 ? (6 - text.height()) / 2 : 0;
      text.draw(book_.canvas(), cell.without_left(kSignRoom).without_top(down));
      if (at % 2 == 1) box = box.without_top(row);
    }
  }

 private:
  static constexpr double kHeading = 7;
  static constexpr double kBetweenColumns = 6;
  static constexpr double kSignRoom = 12;

  enum class Sign { section, hard, chunk, cue, phrase, fork, repeat };
  struct Entry {
    Sign sign;
    TextBlock text;
  };

  void draw_sign(Sign sign, const Box& box) {
    Canvas& canvas = book_.canvas();
    switch (sign) {
      case Sign::section: {
        const Box half = box.inset(0, 0.8).left(4.6);
        draw_form_pattern(canvas, half, 1);
        draw_form_pattern(canvas, half.moved(5, 0), 2);
        canvas.rectangle(half, {style::kRule, {}});
        canvas.rectangle(half.moved(5, 0), {style::kRule, {}});
        return;
      }
      case Sign::hard:
        for (const int level : {3, 4, 5})
          canvas.rectangle({box.x + (level - 3) * 3.2, box.y + 1.2, 3.2, 3.4},
                           {style::kHairline, level_fill(level)});
        return;
      case Sign::chunk:
        canvas.rectangle(box.inset(0, 0.5), {style::kHairline, {}});
        draw_line(canvas, box.inset(0.5, 0.5), piece_.chunks.front().id, style::kNote,
                  Align::centre, style::kLeast);
        return;
      case Sign::cue:
        draw_cue_sign(canvas, {box.x + 2.3, box.y + 0.5}, 1);
        return;
      case Sign::phrase:
        draw_phrase_sign(canvas, box.inset(0, 2.2).top(1.2), true, true);
        return;
      case Sign::fork:
        draw_fork_sign(canvas, {box.x + 3.3, box.y + 0.5});
        return;
      case Sign::repeat:
        draw_repeat_sign(canvas, box.x + 2, box.y + 1.2, 3.6, true);
        draw_repeat_sign(canvas, box.x + 7.6, box.y + 1.2, 3.6, false);
        return;
    }
  }

  Book& book_;
  const PlannedPiece& piece_;
  std::vector<Entry> entries_;
  std::vector<double> rows_;  // heights
};

// Sections whose names did not fit in their bands, on as many pages as they take.
void draw_names(Book& book, const PlannedPiece& piece, Box& page, double& used) {
  const Words& words = book.words();
  constexpr double kName = 5;
  bool needs_head = true;
  for (const PlannedSection& section : piece.sections) {
    if (used + kName + (needs_head ? 8 : 0) > page.height) {
      page = open_map_page(book, piece);
      used = 0;
      needs_head = true;
    }
    if (needs_head) {
      draw_line(book.canvas(), page.without_top(used).top(6), words.say("form_map.names"),
                style::kHeading, Align::left, style::kLeast);
      used += 7;
      needs_head = false;
    }
    draw_line(
        book.canvas(), page.without_top(used).top(kName),
        words.say("form_map.names_row", {{"bars", bar_range(section.bars.first, section.bars.last)},
                                         {"name", section.name}}),
        style::kNote, Align::left, style::kLeast);
    used += kName;
  }
  used += 4;
}

void draw_map(Book& book, int index) {
  const PlannedPiece& piece = book.plan().pieces[index];
  Box page = open_map_page(book, piece);
  if (book.plan().pieces.size() > 1) book.mark(piece.piece.title);

  // Two lines and a little of sixteen bars at least; a bar stays 4 mm wide or wider.
  const int bars = piece.piece.bars;
  int most = bars <= 96 ? 16 : bars <= 240 ? 24 : 32;
  while (most > 8 && page.width / (most + 0.5) < 4) most -= 8;
  const double pickup = piece.piece.first_bar() == 0 ? 0.5 : 0;
  const double bar_width = std::min(page.width / (std::min(most, bars) + pickup), 24.0);

  double used = 0;
  bool whole_names = true;
  for (const BarRange& bars_of_line : form_lines(piece, most)) {
    const double indent = bars_of_line.first == 0 ? 0 : pickup * bar_width;
    const FormLine line(book, piece, BarScale(page.x + indent, bar_width, bars_of_line));
    if (used > 0 && used + line.height() > page.height) {
      page = open_map_page(book, piece);
      used = 0;
      // On the other side of the leaf the margins change places.
      const FormLine moved(book, piece, BarScale(page.x + indent, bar_width, bars_of_line));
      whole_names = moved.draw(page.y) && whole_names;
    } else {
      whole_names = line.draw(page.y + used) && whole_names;
    }
    used += line.height() + kBetweenLines;
  }

  Legend legend(book, piece, page.width);
  if (used + legend.height() > page.height) {
    page = open_map_page(book, piece);
    used = 0;
  }
  legend.draw(page.without_top(used).top(legend.height()));
  used += legend.height() + kBetweenLines;
  if (!whole_names) draw_names(book, piece, page, used);
  draw_learning_calendar(book, index, page, used);
}

}  // namespace

void draw_form_map(Book& book) {
  book.open_sheet("form map", book.words().say("form_map.title"));
  for (std::size_t index = 0; index < book.plan().pieces.size(); ++index)
    draw_map(book, static_cast<int>(index));
}

}  // namespace cahier
