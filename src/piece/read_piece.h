// A piece from its YAML file.
#pragma once

#include <optional>

#include "piece/piece.h"
#include "text/diagnostics.h"
#include "text/source.h"
#include "text/yaml.h"

namespace cahier {

// Reads and checks a piece. Adds every problem found to `diagnostics`; nullopt exactly when there
// was an error. What is only worth saying (bars that no section names) is added as a warning.
std::optional<Piece> read_piece(const Source& source, Diagnostics& diagnostics);

// The same from a tree: that of the source, to which entries may have been added. A score that it
// names is taken for joined already. The caller puts the problems in order.
std::optional<Piece> read_piece(const Source& source, const YamlNode& root,
                                Diagnostics& diagnostics);

}  // namespace cahier
