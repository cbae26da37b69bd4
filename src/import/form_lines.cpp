#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

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

std::string passes_text(const std::vector<int>& passes) {
  std::string list;
  for (const int pass : passes) list += fmt::format("{}{}", list.empty() ? "" : ", ", pass);
  return list;
}

// A repeat by bars, with its endings as a piece file has them: each pass in one of them, following
// each other, the last one in the repeat or just after it.
struct RepeatOfBars {
  struct Ending {
    int first = 0;
    int last = 0;
    std::vector<int> passes;
  };
  int first = 0;
  int last = 0;
  int times = 2;
  std::vector<Ending> endings;

  int reach() const { return endings.empty() ? last : std::max(last, endings.back().last); }
};

bool endings_fit(const RepeatOfBars& repeat) {
  std::vector<int> passes;
  for (std::size_t at = 0; at < repeat.endings.size(); ++at) {
    const RepeatOfBars::Ending& ending = repeat.endings[at];
    const bool is_last = at + 1 == repeat.endings.size();
    const int next = is_last ? repeat.last + 1 : repeat.endings[at + 1].first;
    const bool follows = is_last && at > 0 && ending.first == repeat.last + 1 &&
                         ending.passes == std::vector{repeat.times};
    if (ending.first <= repeat.first || ending.last < ending.first ||
        (ending.last + 1 != next && !follows))
      return false;
    passes.insert(passes.end(), ending.passes.begin(), ending.passes.end());
  }
  std::ranges::sort(passes);
  for (int pass = 1; pass <= repeat.times; ++pass)
    if (static_cast<int>(passes.size()) != repeat.times ||
        passes[static_cast<std::size_t>(pass) - 1] != pass)
      return false;
  return true;
}

std::optional<RepeatOfBars> repeat_of_bars(const Score& score, const PlayedRepeat& played) {
  RepeatOfBars repeat{bar_from(score, played.first), bar_of(score, played.last), played.times, {}};
  if (repeat.first > repeat.last) return std::nullopt;
  bool has_last_pass = false;
  for (const PlayedRepeat::Ending& ending : played.endings) {
    repeat.endings.push_back(
        {bar_from(score, ending.first), bar_of(score, ending.last), ending.passes});
    has_last_pass =
        has_last_pass || std::ranges::find(ending.passes, played.times) != ending.passes.end();
  }
  // After a lone first ending the last pass goes on with the bar after it.
  const int next = repeat.last + 1;
  if (!repeat.endings.empty() && !has_last_pass && next < static_cast<int>(score.bars.size()))
    repeat.endings.push_back({next, next, {played.times}});
  return repeat;
}

// Endings that a piece file cannot have go without saying; those that reach into another repeat,
// too.
std::vector<RepeatOfBars> repeats_of_bars(const Score& score) {
  std::vector<RepeatOfBars> all;
  for (const PlayedRepeat& played : score.play_order.repeats)
    if (auto repeat = repeat_of_bars(score, played)) all.push_back(std::move(*repeat));
  for (std::size_t at = 0; at < all.size(); ++at) {
    const bool runs_on = at + 1 < all.size() && all[at].reach() >= all[at + 1].first;
    if (runs_on || !endings_fit(all[at])) all[at].endings.clear();
  }
  return all;
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

std::string phrases_text(const Score& score, const std::vector<ProposedPhrase>& phrases) {
  std::string list;
  for (const ProposedPhrase& one : phrases)
    list += (list.empty() ? "" : ", ") + bars_text(score, one.first, one.last);
  return list.empty() ? "" : fmt::format(", phrases: [{}]", list);
}

}  // namespace

std::string section_lines(const Score& score, const std::vector<ProposedSection>& sections,
                          const ProposedLevels& levels) {
  if (sections.empty()) return {};
  std::string text = "sections:\n";
  for (std::size_t at = 0; at < sections.size(); ++at) {
    const ProposedSection& one = sections[at];
    text += fmt::format("  - {{name: {}, bars: {}", yaml_quoted(one.name, 50),
                        bars_text(score, one.first, one.last));
    if (one.source)
      text += fmt::format(", same as: {}",
                          bars_text(score, *one.source, *one.source + one.last - one.first));
    text += phrases_text(score, one.phrases);
    if (levels.sections[at] != kUsualLevel) text += fmt::format(", level: {}", levels.sections[at]);
    text += "}\n";
  }
  return text;
}

std::string repeat_lines(const Score& score) {
  std::string repeats;
  std::string endings;
  for (const RepeatOfBars& repeat : repeats_of_bars(score)) {
    repeats += fmt::format("  - {{bars: {}, times: {}}}\n",
                           bars_text(score, repeat.first, repeat.last), repeat.times);
    for (const RepeatOfBars::Ending& ending : repeat.endings)
      endings +=
          fmt::format("  - {{bars: {}, times: [{}]}}\n",
                      bars_text(score, ending.first, ending.last), passes_text(ending.passes));
  }
  std::string text;
  if (!repeats.empty()) text += "repeats:\n" + repeats;
  if (!endings.empty()) text += "endings:\n" + endings;
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
                        bars_text(score, one.first + from, one.first + to),
                        bars_text(score, one.later + from, one.later + to),
                        number_at(score, one.first + one.fork),
                        number_at(score, one.later + one.fork), plain_line(one.difference, 100));
    ++lines;
  }
  return text.empty() ? text : "look-alikes:\n" + text;
}

}  // namespace cahier
