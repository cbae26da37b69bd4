#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "plan/chunk_labels.h"
#include "plan/standing.h"
#include "workbook/all_sheets.h"
#include "workbook/parts/flow.h"
#include "workbook/parts/form_strip.h"
#include "workbook/sheets/form/form_pages.h"
#include "workbook/sheets/form/learned_parts.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kChartNumbers = 3 * kGrid;  // of the bars
constexpr double kChartBand = 4 * kGrid;
constexpr double kNames = 3 * kGrid;     // of the chunks
constexpr double kLeastBox = 3 * kGrid;  // height of a box to colour
constexpr double kUsualBox = 4 * kGrid;
constexpr double kMostBox = 6 * kGrid;
constexpr double kBelowLead = 4 * kGrid;

constexpr std::array<Drill, 5> kDrillOfRow = {Drill::learn, Drill::recall, Drill::slow_pass,
                                              Drill::counted_pass, Drill::run_through};
constexpr std::size_t kRows = kDrillOfRow.size();
// A return is not learned, recalled or passed by itself: only the last row is coloured for it.
constexpr std::size_t kLearningRows = 4;

using Labels = std::array<std::string, kRows>;

Labels row_labels(const Words& words) {
  return {words.say("progress_chart.learned"), words.say("progress_chart.recalled"),
          words.say("progress_chart.slow"), words.say("progress_chart.counted"),
          words.say("progress_chart.by_heart")};
}

// A line of the form with the rows to colour below it.
struct ChartLine {
  BarRange bars;
  std::span<const FormPart> parts;  // those that stand on the line
  std::size_t first_row = 0;        // where only returns stand on the line, learning has no row

  double height(double box) const {
    return kChartNumbers + kChartBand + kNames + box * static_cast<double>(kRows - first_row);
  }
};

std::vector<ChartLine> chart_lines(const FormLayout& layout) {
  std::vector<ChartLine> lines;
  for (const BarRange& bars : layout.lines) {
    ChartLine line{bars, parts_in(layout.parts, bars), 0};
    if (std::all_of(line.parts.begin(), line.parts.end(),
                    [](const FormPart& part) { return part.back; }))
      line.first_row = kLearningRows;
    lines.push_back(std::move(line));
  }
  return lines;
}

void draw_name(Book& book, const std::string& id, const FormPart& part, const Box& box) {
  const TextStyle& type = part.back ? style::kSmall : style::kNote;
  const Box inner = box.inset(0.4, 0);
  if (!fit_line(book.typefaces(), id, type, inner.width, style::kLeast).cut)
    draw_line(book.canvas(), inner, id, type, Align::centre, style::kLeast);
}

// Grey is what went right in an earlier edition.
std::optional<Fill> colour(const Plan& plan, int piece, const std::vector<bool>& learned,
                           Drill drill, const FormPart& part) {
  if (!went_right(plan, piece, learned, drill, part)) return std::nullopt;
  return Fill{style::kPale, true};
}

void draw_chart_line(Book& book, int index, const FormLayout& layout, const SectionBands& bands,
                     const ChartLine& line, const std::vector<bool>& learned, const Labels& labels,
                     const Box& box, double height) {
  const PlannedPiece& piece = book.plan().pieces[index];
  const BarScale scale = layout.scale(line.bars, box.x);
  draw_bar_numbers(book, piece, layout.parts, scale, box.y, kChartNumbers);
  double y = box.y + kChartNumbers;
  bands.draw(book, scale, y);
  y += kChartBand;
  const ChunkLabels names(piece);
  for (const FormPart& part : line.parts)
    if (part.bars.first >= line.bars.first)
      draw_name(book, names.of(piece.chunks[part.chunk]), part, scale.over(part.bars, y, kNames));
  y += kNames;
  for (std::size_t row = line.first_row; row < kRows; ++row) {
    draw_line(book.canvas(), form_label(layout, box.x, y, height), labels[row], style::kNote,
              Align::right, style::kLeast);
    for (const FormPart& part : line.parts)
      if (!part.back || row >= kLearningRows)
        book.canvas().rectangle(
            scale.over(part.bars, y, height),
            {style::kRule, colour(book.plan(), index, learned, kDrillOfRow[row], part)});
    y += height;
  }
}

void draw_chart(Book& book, int index, const Labels& labels) {
  const PlannedPiece& piece = book.plan().pieces[index];
  Flow flow([&] { return book.open_page(book.title_in_head(piece)).inset(0.3, 0); });
  const Box page = flow.take(0);
  if (book.plan().pieces.size() > 1) book.mark(piece.piece.title);
  std::string says = book.words().say("progress_chart.lead");
  if (std::any_of(piece.sections.begin(), piece.sections.end(),
                  [](const PlannedSection& section) { return section.same_as.has_value(); }))
    says += " " + book.words().say("progress_chart.lead_returns");
  if (is_later_edition(book.plan()))
    says += " " + book.words().say("progress_chart.lead_grey");
  else if (has_past(book.plan()))
    says += " " + book.words().say("progress_chart.lead_taken");
  const TextBlock lead(book.typefaces(), says, style::kBody, page.width);
  lead.draw(book.canvas(), flow.take(lead.height()));
  flow.skip(kBelowLead);

  const std::vector<bool> learned = chunks_learned(book.plan(), index);
  const FormLayout layout = form_layout(book, piece);
  const SectionBands bands(book, piece, layout.bar_width, kChartBand);
  const std::vector<ChartLine> lines = chart_lines(layout);
  // Boxes as high as one page allows; on several pages of a usual height.
  const auto pages_of = [&](double box) {
    std::vector<double> heights;
    for (const ChartLine& line : lines) heights.push_back(line.height(box));
    return form_pages(heights, flow.left(), 0);
  };
  double box = kMostBox;
  while (box > kLeastBox && pages_of(box).lines.size() > 1) box -= kGrid;
  if (pages_of(box).lines.size() > 1) box = kUsualBox;
  const FormPages pages = pages_of(box);
  auto line = lines.begin();
  for (const int count : pages.lines) {
    if (line != lines.begin()) flow.next_page();
    for (int at = 0; at < count; ++at, ++line) {
      draw_chart_line(book, index, layout, bands, *line, learned, labels,
                      flow.take(line->height(box)), box);
      flow.skip(pages.between);
    }
  }
}

}  // namespace

void draw_progress_chart(Book& book) {
  book.open_sheet(SheetKind::progress_chart, book.words().say("progress_chart.title"));
  const Labels labels = row_labels(book.words());
  for (std::size_t index = 0; index < book.plan().pieces.size(); ++index)
    draw_chart(book, static_cast<int>(index), labels);
}

}  // namespace cahier
