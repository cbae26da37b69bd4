// The `sections:` of a piece file.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "piece/read_bars.h"

namespace cahier {

// A section as written, with the places that messages about it point at.
struct WrittenSection {
  Section section;
  Place name_at;
  Place bars_at;
  Place same_as_at;
};

// Reads every section that can be read and checks each for itself: name, bars, phrases, level.
std::vector<WrittenSection> read_sections(YamlFields& fields, const Extent& extent);

// Checks order, overlaps and names, gives the pickup to the first section and makes sections of the
// bars between (with a warning). `all_read` is false when a section could not be read: then nothing
// is said of gaps, which may be that section's. REQUIRES: extent.last is known.
std::vector<WrittenSection> complete_sections(const Source& source,
                                              std::vector<WrittenSection> written,
                                              const Extent& extent, bool all_read,
                                              Diagnostics& diagnostics);

// Checks what `same as` asks for: as many bars, not the pickup, not itself, learned somewhere, no
// circle. REQUIRES: sections in bar order, without overlap.
void check_returns(const Source& source, const std::vector<WrittenSection>& sections,
                   const Extent& extent, Diagnostics& diagnostics);

}  // namespace cahier
