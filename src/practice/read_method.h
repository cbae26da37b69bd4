// A method read from its file.
#pragma once

#include <string>

#include "practice/method.h"
#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

// Reads and checks a method file: every number with its source, all of them, none unknown.
// Adds every problem to `diagnostics`. The method is usable only when no error was added.
Method read_method(const Source& source, std::string name, Diagnostics& diagnostics);

}  // namespace cahier
