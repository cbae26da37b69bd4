#include "workbook/parts/form_layout.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLeastBar = 3.6;  // millimetres
constexpr double kMostBar = 24;
constexpr double kBesideLabel = 2;
constexpr double kMostLabels = 0.22;  // of the page's width

// What it costs to end a line somewhere; what a line costs by itself, and how empty it is.
constexpr double kInPhrases = 1.5;  // between two phrases of a section
constexpr double kInPhrase = 3;     // between two chunks of a phrase
constexpr double kInChunk = 30;
constexpr double kLine = 0.5;
constexpr double kEmpty = 0.6;

// What a layout costs besides: every further page, and bars too narrow to name and to colour with
// ease.
constexpr double kFurtherPage = 4;
constexpr double kNoNames = 6;  // some chunks have no room for their names
constexpr double kEasyBar = 8;
constexpr double kUneasyBar = 6;

// The form map: its head, foot and key, and the rows of a line with the space below it.
constexpr double kHeadFootAndKey = 45;
constexpr double kLineOfMap = 34.5;
constexpr double kRowOfMap = 4.5;  // phrases, or what stands above the bars

// By bar, the first chunk that holds it; 0 where there is none.
std::vector<int> chunks_by_bar(const PlannedPiece& piece) {
  std::vector<int> chunk_at(static_cast<std::size_t>(piece.piece.bars) + 1, 0);
  for (int at = static_cast<int>(piece.chunks.size()) - 1; at >= 0; --at)
    for (int bar = piece.chunks[at].bars.first; bar <= piece.chunks[at].bars.last; ++bar)
      chunk_at[bar] = at;
  return chunk_at;
}

// For each bar what it costs to end a line with it.
std::vector<double> costs_of_ends(const PlannedPiece& piece, const std::vector<FormPart>& parts) {
  std::vector<double> costs(piece.piece.bars + 1, kInChunk);
  for (const FormPart& part : parts) costs[part.bars.last] = kInPhrase;
  for (const Section& section : piece.piece.sections)
    for (const BarRange& phrase : section.phrases) costs[phrase.last] = kInPhrases;
  for (const PlannedSection& section : piece.sections) costs[section.bars.last] = 0;
  costs.back() = 0;
  return costs;
}

struct Lines {
  double cost = 0;
  std::vector<BarRange> lines;
};

Lines best_lines(const PlannedPiece& piece, const std::vector<double>& ends, int most) {
  const int bars = piece.piece.bars;
  std::vector<double> best(bars + 1, std::numeric_limits<double>::infinity());
  std::vector<int> before(bars + 1, 0);
  best[0] = 0;
  for (int last = 1; last <= bars; ++last)
    for (int from = std::max(0, last - most); from < last; ++from) {
      const double empty = 1 - static_cast<double>(last - from) / most;
      const double cost = best[from] + ends[last] + kLine + kEmpty * empty * empty;
      if (cost >= best[last]) continue;
      best[last] = cost;
      before[last] = from;
    }
  Lines result{best[bars], {}};
  for (int last = bars; last > 0; last = before[last])
    result.lines.push_back({before[last] + 1, last});
  std::reverse(result.lines.begin(), result.lines.end());
  result.lines.front().first = piece.piece.first_bar();
  return result;
}

// The usual height of a line of the form map when there are so many of them.
double line_height(const Piece& piece, std::size_t lines) {
  const bool has_phrases =
      std::any_of(piece.sections.begin(), piece.sections.end(),
                  [](const Section& section) { return !section.phrases.empty(); });
  const auto above = static_cast<double>(1 + piece.changes.size() + piece.marks.size());
  return kLineOfMap + (has_phrases ? kRowOfMap : 0) +
         kRowOfMap * std::min(1.0, above / static_cast<double>(lines));
}

// The width of a bar from which every chunk has room for its name, and for the number of its first
// bar above it.
double bar_for_names(const Book& book, const PlannedPiece& piece,
                     const std::vector<FormPart>& parts) {
  constexpr double kBesideName = 1.8;
  const auto width = [&](const std::string& text, double size) {
    return book.typefaces().width(text, style::kNote.face, size) + kBesideName;
  };
  double bar = 0;
  for (const FormPart& part : parts) {
    const double text = std::max(width(piece.chunks[part.chunk].id, style::kLeast),
                                 width(std::to_string(part.bars.first), style::kNote.size_pt));
    bar = std::max(bar, text / BarScale::units(part.bars));
  }
  return bar;
}

double labels_width(const Book& book) {
  double widest = 0;
  for (const std::string_view key :
       {"form_map.row_sections", "form_map.row_bars", "form_map.row_phrases", "form_map.row_chunks",
        "form_map.row_cues", "progress_chart.learned", "progress_chart.recalled",
        "progress_chart.slow", "progress_chart.counted", "progress_chart.by_heart"})
    widest = std::max(widest, book.typefaces().width(book.words().say(key), style::kNote.face,
                                                     style::kNote.size_pt));
  return widest + 0.2;
}

}  // namespace

double BarScale::left(int bar) const {
  const double pickup = bars_.first == 0 ? 0.5 : 0;
  if (bar <= bars_.first) return x_;
  return x_ + bar_width_ * (bar - std::max(bars_.first, 1) + pickup);
}

Box BarScale::over(BarRange range, double y, double height) const {
  const double from = left(std::max(range.first, bars_.first));
  const double to = right(std::min(range.last, bars_.last));
  return {from, y, to - from, height};
}

std::vector<FormPart> form_parts(const PlannedPiece& piece) {
  std::vector<FormPart> parts;
  const std::vector<int> chunk_at = chunks_by_bar(piece);
  const std::vector<int> learned_bars = piece.piece.learned_bars();
  for (const PlannedSection& section : piece.sections) {
    int learned_before = 0;
    for (int bar = section.bars.first; bar <= section.bars.last; ++bar) {
      const int learned = section.same_as ? learned_bars[bar] : bar;
      const int chunk = chunk_at[learned];
      const bool goes_on =
          bar > section.bars.first && parts.back().chunk == chunk && learned == learned_before + 1;
      if (goes_on)
        parts.back().bars.last = bar;
      else
        parts.push_back({{bar, bar}, chunk, section.same_as.has_value()});
      learned_before = learned;
    }
  }
  return parts;
}

std::span<const FormPart> parts_in(const std::vector<FormPart>& parts, BarRange bars) {
  const auto first =
      std::lower_bound(parts.begin(), parts.end(), bars.first,
                       [](const FormPart& part, int bar) { return part.bars.last < bar; });
  const auto past =
      std::upper_bound(first, parts.end(), bars.last,
                       [](int bar, const FormPart& part) { return bar < part.bars.first; });
  return {first, past};
}

std::vector<BarRange> form_lines(const PlannedPiece& piece, int most) {
  return best_lines(piece, costs_of_ends(piece, form_parts(piece)), most).lines;
}

BarScale FormLayout::scale(BarRange line, double x) const {
  return {x + labels + (line.first == 0 ? 0 : indent), bar_width, line};
}

FormLayout form_layout(const Book& book, const PlannedPiece& piece) {
  const Box page = book.upright();
  FormLayout layout;
  layout.labels = std::min(labels_width(book) + kBesideLabel, page.width * kMostLabels);
  // Half the width of a line is kept clear at both sides.
  const double room = page.width - layout.labels - 0.6;
  const double pickup = piece.piece.first_bar() == 0 ? 0.5 : 0;
  layout.parts = form_parts(piece);
  const std::vector<double> ends = costs_of_ends(piece, layout.parts);
  const int widest = std::max(1, static_cast<int>(room / kLeastBar - pickup));
  const double bar_with_names = bar_for_names(book, piece, layout.parts);
  double least = std::numeric_limits<double>::infinity();
  for (int most = std::min({8, widest, piece.piece.bars});
       most <= std::min(widest, piece.piece.bars); ++most) {
    Lines tried = best_lines(piece, ends, most);
    int longest = 1;
    for (const BarRange& line : tried.lines)
      longest = std::max(longest, line.last - std::max(line.first, 1) + 1);
    const double bar = std::min(room / (longest + pickup), kMostBar);
    const std::size_t lines = tried.lines.size();
    const double pages = std::ceil(static_cast<double>(lines) * line_height(piece.piece, lines) /
                                   (page.height - kHeadFootAndKey));
    const double cost = tried.cost + kFurtherPage * pages + std::max(0.0, kEasyBar - bar) / 2 +
                        std::max(0.0, kUneasyBar - bar) + (bar < bar_with_names ? kNoNames : 0);
    if (cost >= least) continue;
    least = cost;
    layout.bar_width = bar;
    layout.lines = std::move(tried.lines);
  }
  layout.indent = pickup * layout.bar_width;
  return layout;
}

Box form_label(const FormLayout& layout, double x, double y, double height) {
  return {x, y, layout.labels - kBesideLabel, height};
}

}  // namespace cahier
