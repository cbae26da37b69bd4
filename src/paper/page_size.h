// Sheets of paper.
#pragma once

#include <optional>
#include <string_view>

namespace cahier {

// Width and height in millimetres.
struct PageSize {
  double width = 210;
  double height = 297;

  constexpr PageSize landscape() const { return width >= height ? *this : PageSize{height, width}; }
  constexpr PageSize portrait() const { return width <= height ? *this : PageSize{height, width}; }
  bool operator==(const PageSize&) const = default;
};

// ISO 216; Letter is 8.5 by 11 inches.
inline constexpr PageSize kA4{210, 297};
inline constexpr PageSize kA5{148, 210};
inline constexpr PageSize kLetter{215.9, 279.4};

inline constexpr double kPointsPerMillimetre = 72.0 / 25.4;
constexpr double points(double millimetres) { return millimetres * kPointsPerMillimetre; }
constexpr double millimetres(double points) { return points / kPointsPerMillimetre; }

// "a4", "letter" or "a5", upright; nullopt for any other word.
constexpr std::optional<PageSize> parse_page_size(std::string_view name) {
  if (name == "a4") return kA4;
  if (name == "a5") return kA5;
  if (name == "letter") return kLetter;
  return std::nullopt;
}

}  // namespace cahier
