#include "cli/input_source.h"

#include <iostream>

#include "cli/request.h"

namespace cahier {

Source read_source(const std::string& path) {
  if (path == kTerminal) return Source::from_stream(std::cin, "standard input");
  return Source::from_file(path);
}

std::vector<Source> read_sources(const std::vector<std::string>& paths) {
  std::vector<Source> sources;
  for (const std::string& path : paths) sources.push_back(read_source(path));
  return sources;
}

}  // namespace cahier
