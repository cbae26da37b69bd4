#include "cli/say.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "text/diagnostics.h"
#include "text/terminal.h"

namespace cahier {

void say_out(const std::string& text) {
  errno = 0;
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (!written)
    throw FileError(std::string("standard output: cannot write: ") + std::strerror(errno));
}

void say_text(const std::string& text) { say_out(for_terminal(text)); }

void say_err(const std::string& text) {
  const std::string shown = for_terminal(text);
  std::fwrite(shown.data(), 1, shown.size(), stderr);
}

void say_all(const std::vector<Diagnostic>& diagnostics) {
  for (const Diagnostic& diagnostic : first_of_each_kind(diagnostics)) say_err(compose(diagnostic));
}

}  // namespace cahier
