#include "cli/input_source.h"

namespace cahier {

Source read_source(const std::string& path) {
  return Source::from_file(path);
}

std::vector<Source> read_sources(const std::vector<std::string>& paths) {
  std::vector<Source> sources;
  for (const std::string& path : paths) sources.push_back(read_source(path));
  return sources;
}

}  // namespace cahier
