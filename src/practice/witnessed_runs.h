// Which run-throughs somebody or something else hears.
#pragma once

#include <cstddef>

namespace cahier {

// Which run-throughs of `asked` in all, counted from 0, are to be witnessed: the first half of them
// needs no witness; then a recording is made, and in the last quarter somebody listens as well.
inline bool asks_recording(std::size_t run, std::size_t asked) { return 2 * run >= asked; }
inline bool asks_listener(std::size_t run, std::size_t asked) { return 4 * run >= 3 * asked; }

}  // namespace cahier
