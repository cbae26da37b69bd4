// The `practice:` block of a piece or programme file.
#pragma once

#include "piece/wishes.h"
#include "text/diagnostics.h"
#include "text/yaml.h"

namespace cahier {

// Reads what the player asks for from fields that may hold others too; anything invalid is reported
// and left empty.
Wishes read_wishes(YamlFields& fields);

// The same from a map that may hold nothing else.
Wishes read_practice(const Source& source, const YamlNode& node, Diagnostics& diagnostics);

}  // namespace cahier
