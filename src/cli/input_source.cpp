#include "cli/input_source.h"

#include <fcntl.h>
#include <unistd.h>

#include <iostream>

#include "cli/request.h"
#include "text/errors.h"

namespace cahier {

Source read_source(const std::string& path) {
  if (path == kTerminal) {
    const int mode = ::fcntl(STDIN_FILENO, F_GETFL);
    if (mode < 0 || (mode & O_ACCMODE) == O_WRONLY)
      throw FileError("cannot read standard input: it is closed");
    return Source::from_stream(std::cin, "standard input");
  }
  return Source::from_file(path);
}

std::vector<Source> read_sources(const std::vector<std::string>& paths) {
  std::vector<Source> sources;
  for (const std::string& path : paths) sources.push_back(read_source(path));
  return sources;
}

}  // namespace cahier
