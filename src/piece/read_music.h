// Meter, key, tempo and their changes, and the instrument, of a piece file.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "piece/read_bars.h"

namespace cahier {

// Each reports what is wrong and then returns as if the field were absent.
std::optional<Meter> read_meter(YamlFields& fields);
std::optional<Key> read_key(YamlFields& fields);

// `tempo:` with `beat:`. Without `beat:` the tempo counts `usual`.
std::optional<Tempo> read_tempo(YamlFields& fields, Beat usual);

// `pickup:`, in beats of the meter's unit, less than a bar; 0 when there is none.
double read_pickup(YamlFields& fields, const Meter& meter);

// `instrument:` and `parts:`.
Instrument read_instrument(YamlFields& fields);

// `changes:`, in bar order. A new meter alone leaves the tempo counting what it counted; a new
// tempo without `beat:` counts the natural beat of a meter given beside it, else what the tempo
// before it counted.
std::vector<Change> read_changes(YamlFields& fields, const Meter& meter,
                                 const std::optional<Tempo>& tempo, const Extent& extent);

}  // namespace cahier
