#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "text/phrasing.h"
#include "workbook/parts_form_strip.h"
#include "workbook/sheets.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kNumbers = 4.2;
constexpr double kBand = 6.4;
constexpr double kNames = 4.6;     // of the chunks
constexpr double kLeastBox = 5.4;  // height of a box to colour
constexpr double kMostBox = 9;
constexpr std::size_t kBoxes = 5;
constexpr double kBetweenLines = 7;

// The height of a chart line with boxes of this height, and the space below it.
constexpr double row_height(double box) {
  return kNumbers + kBand + kNames + box * kBoxes + kBetweenLines;
}
constexpr Stroke kReturn{0.2, 0.4, 1, 1, false};

using Labels = std::array<std::string, kBoxes>;

Labels box_labels(const Words& words) {
  return {words.say("progress_chart.learned"), words.say("progress_chart.recalled"),
          words.say("progress_chart.slow"), words.say("progress_chart.counted"),
          words.say("progress_chart.by_heart")};
}

void draw_chunk(Book& book, const Chunk& chunk, const BarScale& scale, double y,
                double box_height) {
  Canvas& canvas = book.canvas();
  const Box names = scale.over(chunk.bars, y, kNames);
  const TextStyle small = style::kNote;
  if (chunk.bars.first >= scale.bars().first &&
      !fit_line(book.typefaces(), chunk.id, small, names.width - 0.6, style::kLeast).cut)
    draw_line(canvas, names.inset(0.3, 0), chunk.id, small, Align::centre, style::kLeast);
  for (std::size_t at = 0; at < kBoxes; ++at) {
    const Box box =
        scale.over(chunk.bars, y + kNames + box_height * static_cast<double>(at), box_height)
            .inset(0.35, 0.35);
    canvas.rectangle(box, {style::kRule, {}});
  }
}

// What comes back is not coloured again.
void draw_return(Book& book, const PlannedSection& section, const BarScale& scale, double y,
                 double box_height) {
  const Box box = scale.over(section.bars, y + kNames, box_height * kBoxes).inset(0.35, 0.35);
  book.canvas().rectangle(box, {kReturn, {}});
  const std::string text =
      book.words().say("progress_chart.coloured_at",
                       {{"bars", bar_range(section.same_as->first, section.same_as->last)}});
  const Box row = box.inset(1.5, 0).top(box_height);
  if (!fit_line(book.typefaces(), text, style::kSmall, row.width, style::kLeast).cut)
    draw_line(book.canvas(), row, text, style::kSmall, Align::left, style::kLeast);
}

void draw_chart_line(Book& book, const PlannedPiece& piece, const BarScale& scale,
                     const Labels& labels, const Box& page, double y, double box_height) {
  draw_bar_numbers(book.canvas(), scale, y, kNumbers);
  draw_section_bands(book, piece, scale, y + kNumbers, kBand);
  const double chunks_y = y + kNumbers + kBand;
  for (std::size_t at = 0; at < kBoxes; ++at) {
    const Box label{page.x, chunks_y + kNames + box_height * static_cast<double>(at),
                    scale.left(scale.bars().first) - page.x - 2, box_height};
    draw_line(book.canvas(), label, labels[at], style::kNote, Align::right, style::kLeast);
  }
  for (const Chunk& chunk : piece.chunks)
    if (chunk.bars.overlaps(scale.bars())) draw_chunk(book, chunk, scale, chunks_y, box_height);
  for (const PlannedSection& section : piece.sections)
    if (section.same_as && section.bars.overlaps(scale.bars()))
      draw_return(book, section, scale, chunks_y, box_height);
}

void draw_chart(Book& book, const PlannedPiece& piece, const Labels& labels) {
  Box page = book.open_page(piece.piece.title).inset(0.3, 0);
  if (book.plan().pieces.size() > 1) book.mark(piece.piece.title);
  const TextBlock lead(book.typefaces(), book.words().say("progress_chart.lead"), style::kBody,
                       page.width);
  double y = lead.draw(book.canvas(), page) + 4;

  double label_width = 0;
  for (const std::string& label : labels)
    label_width = std::max(label_width, book.typefaces().width(label, Face::sans, 9));
  label_width = std::min(label_width + 3, page.width * 0.3);
  const double room = page.width - label_width;
  const int bars = piece.piece.bars;
  // The fewest bars a line, in eights, that keep the chart on one page; a bar is 4 mm wide or more.
  const int lines_a_page =
      std::max(1, static_cast<int>((page.bottom() - y + kBetweenLines) / row_height(kLeastBox)));
  int most = 16;
  while (most < 32 && most * lines_a_page < bars) most += 8;
  while (most > 8 && room / (most + 0.5) < 4) most -= 8;
  const double bar_width = std::min(room / (std::min(most, bars) + 0.5), 24.0);

  const std::vector<BarRange> lines = form_lines(piece, most);
  double box_height = kMostBox;
  while (box_height > kLeastBox &&
         y + row_height(box_height) * static_cast<double>(lines.size()) > page.bottom())
    box_height = std::max(kLeastBox, box_height - 0.3);
  const double height = row_height(box_height);
  for (const BarRange& line : lines) {
    if (y + height - kBetweenLines > page.bottom()) {
      page = book.open_page(piece.piece.title).inset(0.3, 0);
      y = page.y;
    }
    const double pickup = line.first == 0 ? 0 : 0.5 * bar_width;
    draw_chart_line(book, piece, BarScale(page.x + label_width + pickup, bar_width, line), labels,
                    page, y, box_height);
    y += height;
  }
}

}  // namespace

void draw_progress_chart(Book& book) {
  book.open_sheet("progress chart", book.words().say("progress_chart.title"));
  const Labels labels = box_labels(book.words());
  for (const PlannedPiece& piece : book.plan().pieces) draw_chart(book, piece, labels);
}

}  // namespace cahier
