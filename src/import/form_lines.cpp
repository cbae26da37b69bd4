#include <fmt/format.h>

#include <algorithm>

#include "import/bar_of_element.h"
#include "import/piece_lines.h"
#include "import/yaml_quoted.h"

namespace cahier {
namespace {

constexpr std::size_t kMostLookAlikeLines = 20;
constexpr int kBarsBeforeFork = 4;
constexpr int kBarsAfterFork = 2;

int number_at(const Score& score, int bar) {
  return score.bars[static_cast<std::size_t>(bar)].number;
}

// "9-16", or "9".
std::string range_text(const Score& score, int first, int last) {
  return first == last ? fmt::format("{}", number_at(score, first))
                       : fmt::format("{}-{}", number_at(score, first), number_at(score, last));
}

std::string passes_text(const std::vector<int>& passes) {
  std::string list;
  for (const int pass : passes) list += fmt::format("{}{}", list.empty() ? "" : ", ", pass);
  return list;
}

// Endings as a piece file wants them: each pass in one of them, following each other.
struct RepeatLines {
  std::string repeats;
  std::string endings;
};

void add_repeat(const Score& score, const PlayedRepeat& repeat, RepeatLines& lines) {
  const int count = static_cast<int>(score.bars.size());
  const int first = bar_from(score, repeat.first);
  const int last = bar_of(score, repeat.last);
  if (first > last) return;
  std::string endings;
  std::vector<bool> named(static_cast<std::size_t>(repeat.times) + 1, false);
  int next = -1;
  bool fits = true;
  for (const PlayedRepeat::Ending& ending : repeat.endings) {
    const int from = bar_from(score, ending.first);
    int to = bar_of(score, ending.last);
    if (next < 0) next = from;
    fits = fits && from == next && from <= to && from > first;
    if (!fits) break;
    next = to + 1;
    for (const int pass : ending.passes)
      if (pass <= repeat.times) named[static_cast<std::size_t>(pass)] = true;
    endings += fmt::format("  - {{bars: {}, times: [{}]}}\n", range_text(score, from, to),
                           passes_text(ending.passes));
  }
  if (fits && !repeat.endings.empty() && !named.back() && next < count) {
    // The last pass goes on with the bar after a lone ending.
    named.back() = true;
    endings +=
        fmt::format("  - {{bars: {}, times: [{}]}}\n", range_text(score, next, next), repeat.times);
  }
  const bool all_named = std::all_of(named.begin() + 1, named.end(), [](bool is) { return is; });
  lines.repeats +=
      fmt::format("  - {{bars: {}, times: {}}}\n", range_text(score, first, last), repeat.times);
  if (!repeat.endings.empty() && fits && all_named) lines.endings += endings;
}

void add_mark(const Score& score, int bar, const std::string& note, std::string& marks) {
  marks += fmt::format("  - {{bar: {}, note: {}}}\n", number_at(score, bar), yaml_quoted(note));
}

std::string mark_lines(const Score& score) {
  std::string marks;
  const bool jumps = std::ranges::any_of(
      score.signs, [](const MeasureSigns& signs) { return signs.jump.has_value(); });
  if (!jumps) return marks;
  for (std::size_t at = 0; at < score.signs.size(); ++at) {
    const MeasureSigns& signs = score.signs[at];
    const int bar = bar_of(score, static_cast<int>(at) + 1);
    if (!signs.segnos.empty()) add_mark(score, bar, "segno", marks);
    if (!signs.codas.empty()) add_mark(score, bar, "coda", marks);
    if (signs.to_coda) add_mark(score, bar, "To Coda, after the jump", marks);
    if (signs.fine) add_mark(score, bar, "Fine, after the jump", marks);
    if (!signs.jump) continue;
    const std::string said = plain_line(signs.jump->words, 60);
    add_mark(score, bar, !said.empty() ? said : signs.jump->to_start ? "D.C." : "D.S.", marks);
  }
  return "marks:\n" + marks;
}

bool is_in_return(const ScoreLookAlikes& one, const std::vector<ProposedSection>& sections) {
  return std::ranges::any_of(sections, [&](const ProposedSection& section) {
    return section.source && section.first <= one.later + one.fork - 1 &&
           one.later + one.fork - 1 <= section.last && one.fork > 0 &&
           section.first - *section.source == one.later - one.first;
  });
}

}  // namespace

std::string section_lines(const Score& score, const std::vector<ProposedSection>& sections) {
  if (sections.empty()) return {};
  std::string text = "sections:\n";
  for (const ProposedSection& one : sections) {
    text += fmt::format("  - {{name: {}, bars: {}", yaml_quoted(one.name, 50),
                        range_text(score, one.first, one.last));
    if (one.source)
      text += fmt::format(", same as: {}",
                          range_text(score, *one.source, *one.source + one.last - one.first));
    text += "}\n";
  }
  return text;
}

std::string repeat_lines(const Score& score) {
  RepeatLines lines;
  for (const PlayedRepeat& repeat : score.play_order.repeats) add_repeat(score, repeat, lines);
  std::string text;
  if (!lines.repeats.empty()) text += "repeats:\n" + lines.repeats;
  if (!lines.endings.empty()) text += "endings:\n" + lines.endings;
  return text + mark_lines(score);
}

std::string look_alike_lines(const Score& score, const std::vector<ScoreLookAlikes>& look_alikes,
                             const std::vector<ProposedSection>& sections) {
  std::string text;
  std::size_t lines = 0;
  for (const ScoreLookAlikes& one : look_alikes) {
    if (one.transposed != 0 || is_in_return(one, sections) || lines == kMostLookAlikeLines)
      continue;
    const int from = std::max(0, one.fork - kBarsBeforeFork);
    const int to = std::min(one.length - 1, one.fork + kBarsAfterFork - 1);
    text += fmt::format("  - {{bars: [{}, {}], fork: [{}, {}]}}  # {}\n",
                        range_text(score, one.first + from, one.first + to),
                        range_text(score, one.later + from, one.later + to),
                        number_at(score, one.first + one.fork),
                        number_at(score, one.later + one.fork), plain_line(one.difference, 100));
    ++lines;
  }
  return text.empty() ? text : "look-alikes:\n" + text;
}

}  // namespace cahier
