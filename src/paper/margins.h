// The clear edges of a page.
#pragma once

#include <optional>
#include <string_view>

#include "paper/geometry.h"
#include "paper/page_size.h"

namespace cahier {

// Inner: the left of odd pages and the right of even ones, for printing on both sides. Left and
// right: the same edge of every page, for printing on one side.
enum class PunchedEdge { inner, left, right };

// "inner", "left" or "right"; nullopt for any other word.
constexpr std::optional<PunchedEdge> parse_punched_edge(std::string_view name) {
  if (name == "inner") return PunchedEdge::inner;
  if (name == "left") return PunchedEdge::left;
  if (name == "right") return PunchedEdge::right;
  return std::nullopt;
}

// Millimetres. ISO 838 holes stand 12 mm from the edge: 20 mm keep clear of them. A page turned
// sideways is bound with its top at the left of an upright one (common practice), so that an edge
// punched at the left is its top, one at the right its bottom.
struct Margins {
  double punched = 20;
  double outer = 10;
  double top = 10;
  double bottom = 10;
  PunchedEdge edge = PunchedEdge::inner;

  // For a page `factor` times as large.
  Margins scaled(double factor) const {
    return {punched * factor, outer * factor, top * factor, bottom * factor, edge};
  }

  // The printable area of a page; pages count from 1.
  Box inside(PageSize size, int page) const {
    const bool at_left = edge == PunchedEdge::inner ? page % 2 == 1 : edge == PunchedEdge::left;
    const double first = at_left ? punched : outer;
    if (size.width > size.height)
      return {bottom, first, size.width - top - bottom, size.height - punched - outer};
    return {first, top, size.width - punched - outer, size.height - top - bottom};
  }
};

}  // namespace cahier
