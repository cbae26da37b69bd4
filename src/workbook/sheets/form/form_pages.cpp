#include "workbook/sheets/form/form_pages.h"

#include <optional>

#include "paper/text_fitting.h"

namespace cahier {
namespace {

// White space below a line, millimetres.
constexpr double kMostBetween = 6 * kGrid;
constexpr double kUsualBetween = 4 * kGrid;
constexpr double kLeastBetween = 3 * kGrid;  // only where it saves a page

constexpr double kRounding = 1e-6;

// The lines shared out over `pages`, as evenly as can be; nullopt where they do not fit.
std::optional<std::vector<int>> shared(const std::vector<double>& heights, std::size_t pages,
                                       double between, double page, double key) {
  std::vector<int> lines;
  std::size_t at = 0;
  for (std::size_t left = pages; left > 0; --left) {
    const std::size_t count = (heights.size() - at + left - 1) / left;
    double used = -between;
    for (std::size_t line = 0; line < count; ++line) used += heights[at++] + between;
    if (left == 1 && key > 0) used += between + key;
    if (used > page + kRounding) return std::nullopt;
    lines.push_back(static_cast<int>(count));
  }
  return lines;
}

}  // namespace

FormPages form_pages(const std::vector<double>& heights, double page, double key) {
  for (std::size_t pages = 1; pages <= heights.size(); ++pages) {
    const double least = pages == 1 ? kLeastBetween : kUsualBetween;
    for (double between = kMostBetween; between >= least; between -= kGrid)
      if (auto lines = shared(heights, pages, between, page, key)) return {*lines, between};
  }
  return {std::vector<int>(heights.size(), 1), kUsualBetween};
}

}  // namespace cahier
