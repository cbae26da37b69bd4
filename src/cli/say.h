// What goes to the terminal.
#pragma once

#include <string>
#include <vector>

#include "text/errors.h"

namespace cahier {

// To standard output. Throws FileError when it cannot be written (a full disk, a closed pipe).
void say_out(const std::string& text);

// To standard error.
void say_err(const std::string& text);

// To standard error, each composed; of many of one kind the first ones and how many more.
void say_all(const std::vector<Diagnostic>& diagnostics);

}  // namespace cahier
