#include "cli/say.h"

#include "text/errors.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace cahier {

void say_out(const std::string& text) {
  errno = 0;
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (!written)
    throw FileError(std::string("standard output: cannot write: ") + std::strerror(errno));
}

void say_all(const std::vector<Diagnostic>& diagnostics) {
  for (const Diagnostic& diagnostic : diagnostics) {
    const std::string text = compose(diagnostic);
    std::fwrite(text.data(), 1, text.size(), stderr);
    if (text.empty() || text.back() != '\n') std::fputc('\n', stderr);
  }
}

}  // namespace cahier
