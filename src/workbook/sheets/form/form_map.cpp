#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/chunk_labels.h"
#include "plan/standing.h"
#include "text/phrasing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/form_signs.h"
#include "workbook/sheets/form/form_line.h"
#include "workbook/sheets/form/form_pages.h"
#include "workbook/sheets/form/learned_parts.h"
#include "workbook/sheets/form/learning_calendar.h"
#include "workbook/style.h"

namespace cahier {
namespace {

std::string head_text(const Book& book, const PlannedPiece& piece) {
  const BarRange whole = piece.piece.whole();
  return book.words().say("form_map.right", {{"piece", book.title_in_head(piece)},
                                             {"bars", bar_range(whole.first, whole.last)}});
}

// Half the width of a line is kept clear at both sides.
Box open_map_page(Book& book, const PlannedPiece& piece) {
  return book.open_page(head_text(book, piece)).inset(0.3, 0);
}

// Signs and their meanings in two columns: those that the piece makes use of.
class Key {
 public:
  Key(Book& book, int index, double width) : book_(book), piece_(book.plan().pieces[index]) {
    const PlannedPiece& piece = piece_;
    const Piece& music = piece.piece;
    const double text_width = (width - kBetweenColumns) / 2 - kSignRoom;
    const auto add = [&](bool used, Sign sign, std::string_view key) {
      if (used)
        entries_.push_back(
            {sign, TextBlock(book.typefaces(), book.words().say(key), style::kNote, text_width)});
    };
    const bool comes_back =
        std::any_of(piece.sections.begin(), piece.sections.end(),
                    [](const PlannedSection& section) { return section.same_as.has_value(); });
    bool is_hard = false;
    const std::vector<FormPart> parts = form_parts(piece);
    for (int bar = music.first_bar(); bar <= music.bars; ++bar)
      is_hard = is_hard || level_fill(shown_level(piece, parts, bar)).has_value();
    const std::vector<bool> learned = chunks_learned(book.plan(), index);
    add(comes_back, Sign::section, "form_map.legend_section");
    add(comes_back, Sign::back, "form_map.legend_back");
    add(std::find(learned.begin(), learned.end(), true) != learned.end(), Sign::learned,
        is_later_edition(book.plan()) ? "form_map.legend_learned" : "form_map.legend_taken");
    add(true, Sign::cue, "form_map.legend_cue");
    add(is_hard, Sign::hard, "form_map.legend_hard");
    const bool forks = std::ranges::any_of(piece.forks, [](const Fork& fork) {
      return fork.from == ForkFrom::look_alikes || fork.from == ForkFrom::return_;
    });
    add(forks, Sign::fork, "form_map.legend_fork");
    add(!music.repeats.empty(), Sign::repeat, "form_map.legend_repeat");
    for (std::size_t at = 0; at < entries_.size(); at += 2) {
      double row = style::kRow;
      for (std::size_t in = at; in < std::min(at + 2, entries_.size()); ++in)
        row = std::max(row, entries_[in].text.height() + kGrid);
      rows_.push_back(row);
    }
  }

  double height() const {
    double height = kHeading;
    for (const double row : rows_) height += row;
    return height;
  }

  void draw(Box box) {
    draw_line(book_.canvas(), box.top(style::kRow), book_.words().say("form_map.legend"),
              style::kHeading, Align::left, style::kLeast);
    box = box.without_top(kHeading);
    for (std::size_t at = 0; at < entries_.size(); ++at) {
      const double row = rows_[at / 2];
      const Box cell = box.top(row).columns(2, kBetweenColumns)[at % 2];
      draw_sign(entries_[at].sign, cell.left(9.6).top(style::kRow));
      const TextBlock& text = entries_[at].text;
      // A single line stands beside the middle of its sign.
      const double down = text.lines().size() == 1 ? (style::kRow - text.height()) / 2 : 0;
      text.draw(book_.canvas(), cell.without_left(kSignRoom).without_top(down));
      if (at % 2 == 1) box = box.without_top(row);
    }
  }

 private:
  static constexpr double kHeading = 7.5;
  static constexpr double kBetweenColumns = 6;
  static constexpr double kSignRoom = 12;

  enum class Sign { section, back, learned, cue, hard, fork, repeat };
  struct Entry {
    Sign sign;
    TextBlock text;
  };

  void draw_sign(Sign sign, const Box& box) {
    Canvas& canvas = book_.canvas();
    switch (sign) {
      case Sign::section: {
        const Box band = box.inset(0, 0.75);
        draw_form_pattern(canvas, band, 1);
        canvas.rectangle(band, {style::kRule, {}});
        return;
      }
      case Sign::back:
        draw_chunk_box(canvas, box.inset(0, 0.5), true);
        draw_line(canvas, box.inset(0.5, 0.5), chunk_that_returns(), style::kSmall, Align::centre,
                  style::kLeast);
        return;
      case Sign::learned:
        draw_chunk_box(canvas, box.inset(0, 0.75), false);
        draw_learned_sign(canvas, box.inset(0, 0.75));
        return;
      case Sign::cue:
        draw_cue_sign(canvas, {box.x + 2.3, box.y + 0.5}, 1);
        return;
      case Sign::hard:
        for (const int level : {3, 4, 5})
          canvas.rectangle({box.x + (level - 3) * 3.2, box.y + 1.5, 3.2, 3},
                           {style::kHairline, level_fill(level)});
        return;
      case Sign::fork:
        draw_fork_sign(canvas, {box.x + 3.3, box.y + 0.5});
        return;
      case Sign::repeat:
        draw_repeat_sign(canvas, box.x + 2, box.y + 1.5, 3, true);
        draw_repeat_sign(canvas, box.x + 7.6, box.y + 1.5, 3, false);
        return;
    }
  }

  // The first chunk that comes back, as an example of one.
  std::string chunk_that_returns() const {
    const ChunkLabels labels(piece_);
    for (const FormPart& part : form_parts(piece_))
      if (part.back) return labels.of(piece_.chunks[part.chunk]);
    return labels.of(piece_.chunks.front());
  }

  Book& book_;
  const PlannedPiece& piece_;
  std::vector<Entry> entries_;
  std::vector<double> rows_;  // heights
};

// What was cut in the map in full: the names of sections, and marks.
void draw_in_full(Book& book, Flow& flow, const std::string& heading,
                  const std::vector<std::string>& entries) {
  constexpr double kHeading = 7.5;
  bool needs_head = true;
  for (const std::string& entry : entries) {
    const TextBlock text(book.typefaces(), entry, style::kNote, book.upright().width - 0.6);
    if (!flow.fits(text.height() + (needs_head ? kHeading : 0))) {
      flow.next_page();
      needs_head = true;
    }
    if (needs_head)
      draw_line(book.canvas(), flow.take(kHeading).top(style::kRow), heading, style::kHeading,
                Align::left, style::kLeast);
    needs_head = false;
    text.draw(book.canvas(), flow.take(text.height()));
  }
  flow.skip(style::kRow);
}

std::string in_full(const Words& words, BarRange bars, const std::string& text) {
  return words.say("form_map.names_row",
                   {{"bars", bar_range(bars.first, bars.last)}, {"name", text}});
}

void draw_names(Book& book, const PlannedPiece& piece, Flow& flow) {
  std::vector<std::string> entries;
  for (const PlannedSection& section : piece.sections)
    entries.push_back(in_full(book.words(), section.bars, section.name));
  draw_in_full(book, flow, book.words().say("form_map.names"), entries);
}

void draw_cut_marks(Book& book, const PlannedPiece& piece, const FormLayout& layout, Flow& flow) {
  std::vector<std::string> entries;
  for (const Mark& mark : piece.piece.marks)
    if (!FormLine::holds_mark(book, layout, mark))
      entries.push_back(in_full(book.words(), {mark.bar, mark.bar}, mark.note));
  if (!entries.empty()) draw_in_full(book, flow, book.words().say("form_map.marks"), entries);
}

void draw_map(Book& book, int index) {
  const PlannedPiece& piece = book.plan().pieces[index];
  Flow flow([&] { return open_map_page(book, piece); });
  const Box page = flow.take(0);
  if (book.plan().pieces.size() > 1) book.mark(piece.piece.title);

  const FormLayout layout = form_layout(book, piece);
  std::vector<double> heights;
  for (const BarRange& bars : layout.lines)
    heights.push_back(FormLine(book, piece, layout, bars, page.x).height());
  Key key(book, index, page.width);
  const FormPages pages = form_pages(heights, flow.left(), key.height());
  const SectionBands bands = FormLine::bands(book, piece, layout);
  bool whole_names = true;
  std::size_t next = 0;
  for (const int lines : pages.lines) {
    if (next > 0) flow.next_page();
    for (int at = 0; at < lines; ++at, ++next) {
      const Box box = flow.take(heights[next]);
      // Margins change places on the other side of a leaf.
      const FormLine line(book, piece, layout, layout.lines[next], box.x);
      whole_names = line.draw(bands, box.y) && whole_names;
      flow.skip(pages.between);
    }
  }

  key.draw(flow.take(key.height()));
  flow.skip(style::kRow);
  if (!whole_names) draw_names(book, piece, flow);
  draw_cut_marks(book, piece, layout, flow);
  book.rename_sheet(book.words().say(book.plan().upkeep ? "form_map.calendar_kept_title"
                                                        : "form_map.calendar_title"));
  draw_learning_calendar(book, index, flow);
  book.rename_sheet(book.words().say("form_map.title"));
}

}  // namespace

void draw_form_map(Book& book) {
  book.open_sheet(SheetKind::form_map, book.words().say("form_map.title"));
  for (std::size_t index = 0; index < book.plan().pieces.size(); ++index)
    draw_map(book, static_cast<int>(index));
}

}  // namespace cahier
