// A whole run of the program.
#pragma once

#include <string>
#include <vector>

#include "text/date.h"

namespace cahier {

// Runs one command and returns the exit code: 0 done, 1 the work does not fit before the date, 2
// something in the input is wrong, 3 a file could not be read or written, 4 an internal error.
// `arguments` without the program's name.
int run(const std::vector<std::string>& arguments, Date today);

}  // namespace cahier
