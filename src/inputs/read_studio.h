// The file of a studio.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "inputs/studio.h"
#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

// Adds every problem to `diagnostics`; nullopt exactly when there was an error.
std::optional<Studio> read_studio(const Source& source, Diagnostics& diagnostics);

// A name as the beginning of a file name: A to Z in small letters; of ASCII's signs and spaces,
// each run is one hyphen, none at the ends; other letters stay. Empty where nothing is left.
std::string as_file_name(std::string_view name);

}  // namespace cahier
