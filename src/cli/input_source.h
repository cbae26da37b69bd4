// A file as it is named on the command line.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "text/source.h"

namespace cahier {

// Reads the file, or standard input for "-", which can be read once. Throws FileError.
Source read_source(const std::string& path);

// The same for a file that need not be text, of `max_bytes` at most.
std::string read_input_bytes(const std::string& path, std::size_t max_bytes);

std::vector<Source> read_sources(const std::vector<std::string>& paths);

}  // namespace cahier
