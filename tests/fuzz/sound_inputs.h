// Inputs that are taken, or refused in words, from which the fuzz begins.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace fuzz {

// By the kind of the input: piece, programme, log, method, packet, words, arguments.
using Inputs = std::map<std::string, std::vector<std::string>>;

std::string read_file(const std::filesystem::path& path);
std::vector<std::filesystem::path> sorted_files(const std::filesystem::path& folder);

// Of the examples, the templates, the judges' pieces, the scenarios, and the folders sound and
// kept. `source` is the folder of the project.
Inputs sound_inputs(const std::filesystem::path& source);

}  // namespace fuzz
