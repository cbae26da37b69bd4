#include "cli/input_source.h"

#include <fcntl.h>
#include <unistd.h>

#include <iostream>

#include "cli/request.h"
#include "text/errors.h"

namespace cahier {
namespace {

void refuse_closed_input() {
  const int mode = ::fcntl(STDIN_FILENO, F_GETFL);
  if (mode < 0 || (mode & O_ACCMODE) == O_WRONLY)
    throw FileError("cannot read standard input: it is closed");
}

}  // namespace

Source read_source(const std::string& path) {
  if (path != kTerminal) return Source::from_file(path);
  refuse_closed_input();
  return Source::from_stream(std::cin, "standard input");
}

std::string read_input_bytes(const std::string& path, std::size_t max_bytes) {
  if (path != kTerminal) return read_bytes(path, max_bytes);
  refuse_closed_input();
  return read_bytes(std::cin, "standard input", max_bytes);
}

std::vector<Source> read_sources(const std::vector<std::string>& paths) {
  std::vector<Source> sources;
  for (const std::string& path : paths) sources.push_back(read_source(path));
  return sources;
}

}  // namespace cahier
