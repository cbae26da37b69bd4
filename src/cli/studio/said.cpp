#include "cli/studio/said.h"

#include <unistd.h>

#include <algorithm>
#include <thread>

#include "cli/say.h"
#include "text/diagnostics.h"
#include "text/terminal.h"
#include "text/utf8.h"

namespace cahier {

void Said::say(const Outcome& outcome) {
  for (const Diagnostic& one : first_of_each_kind(outcome.said))
    if (std::string text = compose(one); before_.insert(text).second) say_err(text);
  if (!outcome.error.empty()) say_err(outcome.error);
}

Progress::Progress() : on_terminal_(::isatty(STDERR_FILENO) == 1) {}

void Progress::show(const std::string& line) {
  if (!on_terminal_) return;
  clear();
  constexpr std::size_t kMostCharacters = 79;
  std::vector<char32_t> characters = decode_utf8(line_for_terminal(line));
  characters.resize(std::min(characters.size(), kMostCharacters));
  shown_ = characters.size();
  const std::string text = encode_utf8(characters);
  [[maybe_unused]] const auto written = ::write(STDERR_FILENO, text.data(), text.size());
}

void Progress::clear() {
  if (shown_ == 0) return;
  const std::string blank = "\r" + std::string(shown_, ' ') + "\r";
  shown_ = 0;
  // Where nobody can be told, the work goes on.
  [[maybe_unused]] const auto written = ::write(STDERR_FILENO, blank.data(), blank.size());
}

std::size_t threads_for(const Request& request) {
  if (request.jobs > 0) return static_cast<std::size_t>(request.jobs);
  return std::max(1u, std::thread::hardware_concurrency());
}

}  // namespace cahier
