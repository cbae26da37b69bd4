// A log from its YAML file.
#pragma once

#include <optional>

#include "log/written_log.h"
#include "text/diagnostics.h"
#include "text/yaml.h"

namespace cahier {

// Whether a file is a log: a list.
bool is_log(const YamlNode& root);

// Reads what is written, without knowing the pieces. Adds every problem to `diagnostics`; nullopt
// exactly when there was an error.
std::optional<Log> read_log(const Source& source, Diagnostics& diagnostics);

// The same, but what can be read of a log with errors is returned, so that contradictions in it can
// be reported in the same run. nullopt where that would be guesswork: it is not a log, or an
// edition line has an error.
std::optional<Log> read_log_in_part(const Source& source, Diagnostics& diagnostics);

}  // namespace cahier
