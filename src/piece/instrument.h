// What an instrument's player reads: parts, staves and clefs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cahier {

enum class Clef { treble, treble_8va_bassa, bass, alto, tenor, percussion };

struct Instrument {
  std::string name = "piano";
  std::vector<std::string> parts = {"right hand", "left hand"};  // learned apart, top staff first
  std::vector<Clef> staves = {Clef::treble, Clef::bass};
  int braced = 2;         // how many of the first staves a brace joins; 0 or 1 for none
  bool has_hands = true;  // parts are limbs of one player: sayable while another plays
};

// nullptr for a name that is not known. Known: piano, organ, harp, harpsichord, celesta, accordion,
// guitar, lute, violin, viola, cello, double bass, flute, oboe, clarinet, bassoon, saxophone, horn,
// trumpet, trombone, tuba, recorder, voice, marimba, vibraphone.
const Instrument* find_instrument(std::string_view name);
std::vector<std::string> instrument_names();

}  // namespace cahier
