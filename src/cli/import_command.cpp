#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/input_source.h"
#include "cli/say.h"
#include "import/score_json.h"
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

}  // namespace

int import_score(const Request& request) {
  const std::string& path = request.files.front();
  const std::string name = path == kTerminal ? "standard input" : path;
  const Score score = read_score(name, read_input_bytes(path, kMostScoreBytes), request.part);
  say_part_choice(score);
  say_out(score_json(score));
  return 0;
}

}  // namespace cahier
