// Whole runs of the program, in a folder of their own.
#pragma once

#include <string>
#include <vector>

namespace fuzz {

std::vector<std::string> lines_of(const std::string& input);

// Runs the program with one argument a line, among a few sound files and with nothing to read from
// the terminal. Arguments that could lead out of the folder are not tried. Throws std::logic_error
// on the exit code of an internal error, and on one that the manual does not have.
void run_command_line(const std::string& input);

}  // namespace fuzz
