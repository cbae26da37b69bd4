// The kinds of work, and the stage each belongs to.
#pragma once

#include <array>
#include <string_view>

namespace cahier {

enum class Stage { build, prove, temper };

enum class Drill {
  learn,         // a chunk, parts apart and then together
  join,          // slowly through neighbouring chunks
  recall,        // cold, score shut
  cue_starts,    // from a place to begin, no run-up
  slow_pass,     // a stretch much slower
  counted_pass,  // a stretch while counting aloud
  run_through,   // first bar to last, no stopping
  spoken_part,   // one part played, another spoken
  write_out      // from memory on blank staves
};

inline constexpr std::array<Drill, 9> kDrills = {
    Drill::learn,       Drill::join,        Drill::recall,
    Drill::cue_starts,  Drill::slow_pass,   Drill::counted_pass,
    Drill::run_through, Drill::spoken_part, Drill::write_out};

// The drill's word in plan --json and in logs: "cue_starts".
std::string_view drill_word(Drill drill);
Stage stage_of(Drill drill);
std::string_view stage_word(Stage stage);

// Whether the drill is a test of memory that counts as recalling what it covers.
bool retrieves(Drill drill);

}  // namespace cahier
