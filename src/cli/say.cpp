#include "cli/say.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "text/diagnostics.h"
#include "text/terminal.h"

namespace cahier {

void keep_closed_streams() {
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(stream, F_GETFD) >= 0) continue;
    // Open takes the lowest free number. Opened the other way round, it says EBADF as before.
    [[maybe_unused]] const int taken =
        ::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);
  }
}

void say_out(const std::string& text) {
  errno = 0;
  const bool written =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (written) return;
  if (errno == EPIPE) throw NobodyReads();
  throw FileError(std::string("standard output: cannot write: ") +
                  (errno == EBADF ? "it is closed" : std::strerror(errno)));
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
