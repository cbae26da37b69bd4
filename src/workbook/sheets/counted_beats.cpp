#include "workbook/sheets/counted_beats.h"

#include <fmt/format.h>

#include <algorithm>

namespace cahier {
namespace {

constexpr int kLongestCount = 16;  // beats said one by one; a longer bar is counted by its groups
constexpr int kLongestLine = 6;    // beats that are not broken into lines

}  // namespace

std::string beats_said(const Meter& meter) {
  std::string said;
  for (const int written : meter.groups) {
    const bool in_threes = written > 6 && written % 3 == 0;
    const int group = in_threes ? written / 3 : written;
    if (!said.empty()) said += ", ";
    const std::string space = group <= kLongestLine ? "\u00a0" : " ";
    for (int beat = 1; beat <= std::min(group, kLongestCount); ++beat)
      said += (beat > 1 ? space : "") + std::to_string(beat);
    if (group > kLongestCount) said += fmt::format(" – {}", group);
  }
  return "“" + said + "”";
}

}  // namespace cahier
