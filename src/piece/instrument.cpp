#include "piece/instrument.h"

#include <utility>

namespace cahier {
namespace {

// One staff and one part; the player's hands do not hold parts of their own.
Instrument single(std::string name, Clef clef, std::string part = "part") {
  return {std::move(name), {std::move(part)}, {clef}, 0, 0, false};
}

Instrument two_hands(std::string name) {
  return {std::move(name), {"right hand", "left hand"}, {Clef::treble, Clef::bass}, 2, 0, true};
}

// Clefs as their printed music commonly has them (common practice); the double bass, like the
// guitar, sounds an octave lower than written, but only the guitar's clef says so.
const std::vector<Instrument>& known_instruments() {
  static const std::vector<Instrument> all = {
      two_hands("piano"),
      {"organ",
       {"right hand", "left hand", "pedals"},
       {Clef::treble, Clef::bass, Clef::bass},
       2,
       0,
       true},
      two_hands("harp"),
      two_hands("harpsichord"),
      two_hands("celesta"),
      two_hands("accordion"),
      single("guitar", Clef::treble_8_below),
      single("lute", Clef::treble_8_below),
      single("violin", Clef::treble),
      single("viola", Clef::alto),
      single("cello", Clef::bass),
      single("double bass", Clef::bass),
      single("flute", Clef::treble),
      single("oboe", Clef::treble),
      single("clarinet", Clef::treble),
      single("bassoon", Clef::bass),
      single("saxophone", Clef::treble),
      single("horn", Clef::treble),
      single("trumpet", Clef::treble),
      single("trombone", Clef::bass),
      single("tuba", Clef::bass),
      single("recorder", Clef::treble),
      single("voice", Clef::treble, "voice"),
      single("tenor voice", Clef::treble_8_below, "voice"),
      single("baritone voice", Clef::bass, "voice"),
      single("bass voice", Clef::bass, "voice"),
      {"marimba", {"right hand", "left hand"}, {Clef::treble, Clef::bass}, 2, 0, true},
      {"vibraphone", {"right hand", "left hand"}, {Clef::treble}, 0, 0, true},
  };
  return all;
}

}  // namespace

const Instrument* find_instrument(std::string_view name) {
  for (const Instrument& instrument : known_instruments()) {
    if (instrument.name == name) return &instrument;
  }
  return nullptr;
}

std::vector<std::string> instrument_names() {
  std::vector<std::string> names;
  for (const Instrument& instrument : known_instruments()) names.push_back(instrument.name);
  return names;
}

Instrument with_staves(Instrument instrument, std::vector<Clef> staves) {
  const int count = static_cast<int>(staves.size());
  const int apart = static_cast<int>(instrument.staves.size()) - instrument.braced;
  if (instrument.braced > 1)
    instrument.braced = count > 2 ? count - apart : count;
  else
    instrument.bracketed = count;
  instrument.staves = std::move(staves);
  return instrument;
}

}  // namespace cahier
