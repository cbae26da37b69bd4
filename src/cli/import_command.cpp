#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/input_source.h"
#include "cli/output.h"
#include "cli/say.h"
#include "import/bar_of_element.h"
#include "import/printable_score.h"
#include "import/score_json.h"
#include "import/write_piece.h"
#include "score/read_score.h"
#include "score/xml/score_limits.h"
#include "text/terminal.h"

namespace cahier {
namespace {

std::string part_called(const ScorePart& part) {
  return part.name.empty() ? part.id : fmt::format("{} ({})", part.id, part.name);
}

// Which part was taken and which were left out; nothing where there is only one.
void say_part_choice(const Score& score) {
  std::string taken;
  std::string left_out;
  for (const ScorePart& part : score.parts) {
    std::string& list = part.taken ? taken : left_out;
    list += (list.empty() ? "" : ", ") + part_called(part);
  }
  if (left_out.empty()) return;
  say_err(
      line_for_terminal(fmt::format("{}: {} is taken, {}; left out: {} (--part chooses another)",
                                    score.file, taken, score.part_reason, left_out)) +
      "\n");
}

// As in the piece file, for those who do not look there.
void say_warnings(const Score& score) {
  constexpr std::size_t kMostSaid = 10;
  std::size_t said = 0;
  for (const ScoreWarning& one : score.warnings) {
    if (said++ == kMostSaid) {
      say_err(fmt::format("  and {} more like this\n", score.warnings.size() - kMostSaid));
      return;
    }
    const std::string place =
        one.element > 0 ? fmt::format("bar {}: ", bar_number_of(score, one.element)) : "";
    say_err(line_for_terminal(fmt::format("{}: warning: {}{}", score.file, place, one.say)) + "\n");
  }
}

void write_new_file(const Request& request, const std::string& text) {
  Output output(request.output, Replaces::nothing, request.replace, request.files);
  output.write(text);
  const std::string name = line_for_terminal(request.output);
  say_text(request.json ? name + ": written\n"
                        : name + ": compare it with your score, then run cahier print " + name +
                              " --by DATE\n");
  output.commit();
}

}  // namespace

int import_score(const Request& request) {
  const std::string& path = request.files.front();
  const std::string name = path == kTerminal ? "standard input" : path;
  const bool to_terminal = request.output.empty() || is_standard_output(request.output);
  if (!to_terminal) Output(request.output, Replaces::nothing, request.replace, request.files);
  Score score = read_score(name, read_input_bytes(path, kMostScoreBytes), request.part);
  if (!request.json) score = printable(std::move(score));
  say_part_choice(score);
  if (!request.json) say_warnings(score);
  const std::string text = request.json ? score_json(score) : write_piece(score);
  if (to_terminal)
    say_out(text);
  else
    write_new_file(request, text);
  return 0;
}

}  // namespace cahier
