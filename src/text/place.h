// Where something stands in a text.
#pragma once

namespace cahier {

// A position in a source; line and column count from one, columns in characters (not bytes).
struct Place {
  int line = 1;
  int column = 1;
};

}  // namespace cahier
