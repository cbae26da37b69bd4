#include "cli/waiting_line.h"

#include <sys/ioctl.h>

#include <algorithm>

#include "text/terminal.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::chrono::milliseconds kLegible{250};  // a line stands at least so long
constexpr std::size_t kColumns = 80;                // where the terminal does not tell its own

// What fits beside the terminal's edge: a line that went over it could not be erased.
std::string cut_to_width(const std::string& line, int stream) {
  winsize size{};
  const bool told = ::ioctl(stream, TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  std::vector<char32_t> characters = decode_utf8(line);
  characters.resize(std::min(characters.size(), (told ? size.ws_col : kColumns) - 1));
  return encode_utf8(characters);
}

}  // namespace

WaitingLine::WaitingLine(const Words& words, std::string_view search, int stream,
                         Clock::duration patience)
    : words_(words),
      search_(search),
      stream_(stream),
      on_terminal_(::isatty(stream) == 1),
      next_(Clock::now() + patience) {}

WaitingLine::~WaitingLine() {
  if (shown_.empty()) return;
  show("");
  [[maybe_unused]] const auto written = ::write(stream_, "\r", 1);
}

void WaitingLine::tries(const std::string& change) { change_ = change; }

void WaitingLine::goes_on() {
  if (!on_terminal_ || Clock::now() < next_) return;
  show(cut_to_width(
      line_for_terminal(change_.empty() ? words_.say(search_)
                                        : words_.say("waiting.trying", {{"change", change_}})),
      stream_));
  next_ = Clock::now() + kLegible;
}

void WaitingLine::show(const std::string& line) {
  if (line == shown_) return;
  const std::size_t before = count_characters(shown_);
  const std::size_t now = count_characters(line);
  const std::string blanks(before > now ? before - now : 0, ' ');
  const std::string text = "\r" + line + blanks;
  // Where nobody can be told, the search goes on.
  [[maybe_unused]] const auto written = ::write(stream_, text.data(), text.size());
  shown_ = line;
}

}  // namespace cahier
