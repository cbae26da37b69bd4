// The order in which chunks are learned.
#pragma once

#include <vector>

#include "plan/schedule/work.h"

namespace cahier {

// Chunks in the order they are learned: forward, backward (the last section first) or hardest
// section first; within a section always forward. Several pieces take turns by their size.
std::vector<Work::Item> learning_order(const std::vector<Analysis>& analyses, Order order);

// The sections of one piece in that order, by index.
std::vector<int> sections_in_order(const Analysis& analysis, Order order);

}  // namespace cahier
