// A file as it is named on the command line.
#pragma once

#include <string>
#include <vector>

#include "text/source.h"

namespace cahier {

// Reads the file, or standard input for "-", which can be read once. Throws FileError.
Source read_source(const std::string& path);

std::vector<Source> read_sources(const std::vector<std::string>& paths);

}  // namespace cahier
