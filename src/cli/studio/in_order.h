// Work for several threads, whose results are taken one after the other.
#pragma once

#include <cstddef>
#include <functional>

namespace cahier {

// Does the piece of work of a number, and keeps what comes of it.
using WorkOne = std::function<void(std::size_t number)>;

// Calls `worker` once in each of `threads` threads for what that thread works with, and with that
// does 0 … count - 1; meanwhile calls `take` in the calling thread for each in order, as soon as it
// is done. What `take` throws ends the work, with what is under way. No signal is delivered to the
// threads. REQUIRES: neither `worker` nor what it returns throws; `threads` is at least 1.
void in_order(std::size_t count, std::size_t threads, const std::function<WorkOne()>& worker,
              const std::function<void(std::size_t number)>& take);

}  // namespace cahier
