// Output to the terminal.
#pragma once

#include <string>
#include <vector>

#include "text/errors.h"

namespace cahier {

// To standard output. Throws FileError when it cannot be written (a full disk, a closed pipe).
void say_out(const std::string& text);

// The same for text that a person reads on a terminal: without control characters.
void say_text(const std::string& text);

// To standard error, without control characters.
void say_err(const std::string& text);

// Writes the messages to standard error; of many of one kind only the first ones, and how many more
// there are.
void say_all(const std::vector<Diagnostic>& diagnostics);

}  // namespace cahier
