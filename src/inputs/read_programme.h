// Several pieces under one date and one budget of minutes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "piece/occasion.h"
#include "piece/wishes.h"
#include "text/diagnostics.h"
#include "text/source.h"
#include "text/yaml.h"

namespace cahier {

struct Programme {
  std::string title;
  Occasion occasion;
  Wishes practice;
  struct File {
    std::string path;  // as written: relative to the programme's own folder
    Place at;
  };
  std::vector<File> pieces;  // at least one, at most kMostPieces
};

// Whether a file is a programme: it has the key `programme`.
bool is_programme(const YamlNode& root);

// Adds every problem to `diagnostics`; nullopt exactly when there was an error.
std::optional<Programme> read_programme(const Source& source, Diagnostics& diagnostics);

}  // namespace cahier
