#include <fmt/core.h>

#include <algorithm>

#include "piece/read_sections.h"

namespace cahier {
namespace {

constexpr int kLearnedHere = -1;

// For each bar the bar it is learned from, and the section that says so.
struct Sources {
  std::vector<int> from;     // by bar; kLearnedHere when the bar is no return
  std::vector<int> section;  // by bar; index, or -1
};

bool is_sound(const Source& source, const WrittenSection& written, Diagnostics& diagnostics) {
  const Section& section = written.section;
  const BarRange& origin = *section.same_as;
  if (section.bars.first == 0 || origin.first == 0) {
    diagnostics.error(
        source, written.same_as_at, "a return cannot include the pickup, bar 0",
        "give bar 0 a section of its own, {name: Pickup, bars: 0}, and begin at bar 1");
    return false;
  }
  if (origin.size() != section.bars.size()) {
    diagnostics.error(
        source, written.same_as_at,
        fmt::format("\"{}\" has {} bars ({}), but \"same as\" names {} ({})", section.name,
                    section.bars.size(), bars_text(section.bars), origin.size(), bars_text(origin)),
        "a return has as many bars as the bars it repeats, note for note");
    return false;
  }
  if (origin.overlaps(section.bars)) {
    diagnostics.error(
        source, written.same_as_at,
        fmt::format("\"{}\" (bars {}) cannot be the same as bars {}, which overlap it",
                    section.name, bars_text(section.bars), bars_text(origin)),
        "give the bars where these are learned");
    return false;
  }
  return true;
}

// The names of the sections in the circle that holds `bar`, in the order they are followed.
std::string circle_names(const Sources& sources, const std::vector<WrittenSection>& sections,
                         int bar) {
  std::vector<int> met;
  for (int at = bar;;) {
    const int section = sources.section[static_cast<std::size_t>(at)];
    if (std::find(met.begin(), met.end(), section) == met.end()) met.push_back(section);
    at = sources.from[static_cast<std::size_t>(at)];
    if (at == bar) break;
  }
  constexpr std::size_t kMostNamed = 6;
  std::string names;
  for (std::size_t index = 0; index < std::min(met.size(), kMostNamed); ++index) {
    names += fmt::format("{}\"{}\"", index == 0 ? "" : ", ",
                         sections[static_cast<std::size_t>(met[index])].section.name);
  }
  if (met.size() > kMostNamed) names += fmt::format(" and {} more", met.size() - kMostNamed);
  return names;
}

}  // namespace

void check_returns(const Source& source, const std::vector<WrittenSection>& sections,
                   const Extent& extent, Diagnostics& diagnostics) {
  const auto count = static_cast<std::size_t>(extent.last) + 1;
  Sources sources{std::vector<int>(count, kLearnedHere), std::vector<int>(count, -1)};
  for (std::size_t index = 0; index < sections.size(); ++index) {
    const Section& section = sections[index].section;
    if (!section.same_as || !is_sound(source, sections[index], diagnostics)) continue;
    for (int bar = section.bars.first; bar <= section.bars.last; ++bar) {
      const int from = section.same_as->first + (bar - section.bars.first);
      // What lies outside the piece is refused elsewhere.
      if (bar < 0 || bar > extent.last || from < 0 || from > extent.last) continue;
      const auto at = static_cast<std::size_t>(bar);
      sources.from[at] = from;
      sources.section[at] = static_cast<int>(index);
    }
  }
  // Each bar is followed once: reaching a bar of the same walk again means a circle.
  std::vector<int> trail(count, 0);
  std::vector<bool> blamed(sections.size(), false);
  for (int start = 1; start <= extent.last; ++start) {
    int bar = start;
    while (bar != kLearnedHere && trail[static_cast<std::size_t>(bar)] == 0) {
      trail[static_cast<std::size_t>(bar)] = start;
      bar = sources.from[static_cast<std::size_t>(bar)];
    }
    if (bar == kLearnedHere || trail[static_cast<std::size_t>(bar)] != start) continue;
    const auto index = static_cast<std::size_t>(sources.section[static_cast<std::size_t>(bar)]);
    if (blamed[index]) continue;
    for (int at = bar;;) {
      blamed[static_cast<std::size_t>(sources.section[static_cast<std::size_t>(at)])] = true;
      at = sources.from[static_cast<std::size_t>(at)];
      if (at == bar) break;
    }
    diagnostics.error(
        source, sections[index].same_as_at,
        fmt::format("bar {} is never learned: \"same as\" goes in a circle through {}", bar,
                    circle_names(sources, sections, bar)),
        "remove \"same as\" from the one that is to be learned");
  }
}

}  // namespace cahier
