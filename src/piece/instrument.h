// What an instrument's player reads: parts, staves and clefs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "piece/clef.h"

namespace cahier {

struct Instrument {
  std::string name = "piano";
  std::vector<std::string> parts = {"right hand", "left hand"};  // learned apart, top staff first
  std::vector<Clef> staves = {Clef::treble, Clef::bass};
  int braced = 2;         // how many of the first staves a brace joins; 0 or 1 for none
  int bracketed = 0;      // or a bracket; one of the two at most
  bool has_hands = true;  // parts are limbs of one player: sayable while another plays
};

// nullptr for a name that is not known. Known: piano, organ, harp, harpsichord, celesta, accordion,
// guitar, lute, violin, viola, cello, double bass, flute, oboe, clarinet, bassoon, saxophone, horn,
// trumpet, trombone, tuba, recorder, voice, tenor voice, baritone voice, bass voice, marimba,
// vibraphone.
const Instrument* find_instrument(std::string_view name);
std::vector<std::string> instrument_names();

// The instrument with other staves. A brace joins what it joined before: all staves of a piano,
// those of the manuals of an organ, whose last staff of three or more is the pedals'. Two or more
// staves of an instrument that commonly has one are joined by a bracket (common practice).
// REQUIRES: at least one staff.
Instrument with_staves(Instrument instrument, std::vector<Clef> staves);

}  // namespace cahier
