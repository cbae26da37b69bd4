// What is said aloud while counting a bar.
#pragma once

#include <string>

#include "piece/meter.h"

namespace cahier {

// "1 2 3", and "1 2, 1 2 3" for a bar in groups; the beats of a group stay on one line. Nine and
// twelve eighths are counted in threes, as they are felt (common practice); six may be counted out.
std::string beats_said(const Meter& meter);

}  // namespace cahier
