// How spoken work goes through the parts.
#include "plan/spoken_steps.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {

TEST_CASE("of up to three parts each is also played and said by itself, of four none",
          "[numbers]") {
  const Method& method = sample::steady();
  CHECK(spoken_steps({"right hand", "left hand", "pedals"}, method).size() == 3 * 2 + 1);
  CHECK(spoken_steps({"soprano", "alto", "tenor", "bass"}, method).size() == 4 + 1);
}

}  // namespace cahier
