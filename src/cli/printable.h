// Refuses text that the typefaces cannot print, before anything is drawn.
#pragma once

#include <vector>

#include "paper/typeface.h"
#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

// Adds an error for every character in the texts of a YAML file that cannot be printed, each once,
// at its place. Comments may hold anything. Adds nothing for a file that is not YAML.
void name_unprintable(const Typefaces& typefaces, const Source& source, Diagnostics& diagnostics);

// The same for several files. Throws InputError.
void refuse_unprintable(const Typefaces& typefaces, const std::vector<Source>& sources);

}  // namespace cahier
