// Refuses text that the typefaces cannot print, before anything is drawn.
#pragma once

#include <string>

#include "paper/typeface.h"

namespace cahier {

// Throws InputError naming every character of the file at `path` that cannot be printed, with its
// place. Comments may hold anything.
void refuse_unprintable(const Typefaces& typefaces, const std::string& path);

}  // namespace cahier
