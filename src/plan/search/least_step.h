// The least step of something growing at which work fits.
#pragma once

#include <functional>
#include <optional>

namespace cahier {

// The least step of 1 … `most` that fits, found by halving; nullopt when large ones do not. Asking
// of a step that fits costs little, of one that does not much, so it comes from above. Where
// fitting comes and goes over `ripple` neighbouring steps, so many are asked before it gives up,
// and so many below what was found, on and on while one of them fits. The step returned was asked
// and fits, and none of the `ripple` steps below it does. REQUIRES: ripple >= 1.
std::optional<int> least_step(int most, int ripple, const std::function<bool(int)>& fits);

}  // namespace cahier
