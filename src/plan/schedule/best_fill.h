// Filling a day with whole tasks.
#pragma once

#include <vector>

namespace cahier {

// Which of tasks of these minutes (multiples of one half) fill `room` minutes best: indices in
// order; of equally good choices the one with earlier tasks.
std::vector<int> best_fill(const std::vector<double>& minutes, double room);

}  // namespace cahier
