#include "import/write_piece.h"

#include <fmt/format.h>

#include <filesystem>

#include "import/bar_of_element.h"
#include "import/piece_lines.h"
#include "import/yaml_quoted.h"

namespace cahier {
namespace {

constexpr std::size_t kMostWarningLines = 40;
constexpr std::size_t kLongestComment = 200;

std::string comment(const std::string& text) {
  return "# " + plain_line(text, kLongestComment) + "\n";
}

std::string part_comment(const Score& score) {
  std::string taken;
  std::string left_out;
  for (const ScorePart& part : score.parts) {
    std::string& list = part.taken ? taken : left_out;
    list += (list.empty() ? "" : ", ") +
            (part.name.empty() ? part.id : fmt::format("{} ({})", part.id, part.name));
  }
  return comment(fmt::format("Part {}, {}{}.", taken, score.part_reason,
                             left_out.empty() ? "" : "; left out: " + left_out));
}

std::string warning_comments(const Score& score) {
  std::string text;
  std::size_t lines = 0;
  for (const ScoreWarning& one : score.warnings) {
    if (lines++ == kMostWarningLines)
      return text +
             comment(fmt::format("and {} more like this", score.warnings.size() - lines + 1));
    text += comment(one.element > 0
                        ? fmt::format("Bar {}: {}.", bar_number_of(score, one.element), one.say)
                        : one.say + ".");
  }
  return text;
}

}  // namespace

std::string write_piece(const Score& score) {
  const std::vector<BarNotes> bars = notes_of_bars(score);
  const std::vector<ScoreReturn> returns = find_returns(bars);
  const std::vector<ProposedSection> sections = propose_sections(score, returns);
  const ProposedLevels levels = propose_levels(score, sections);
  return comment(fmt::format("From {}, by cahier import: compare it with your own score, above all "
                             "the sections.",
                             std::filesystem::path(score.file).filename().string())) +
         part_comment(score) + warning_comments(score) + name_lines(score) + music_lines(score) +
         piece_level_line(levels) + section_lines(score, sections, levels) +
         hard_lines(score, levels) + repeat_lines(score) +
         look_alike_lines(score, find_look_alikes(score, bars, returns), sections);
}

}  // namespace cahier
