// How many ways a tight calendar is tried.
#include "plan/schedule/tight_variants.h"

#include "catch.h"

namespace cahier {

TEST_CASE("small work is shuffled forty times for each way of placing run-throughs", "[numbers]") {
  int shuffled = 0;
  for (const TightVariant& variant : tight_variants(true)) shuffled += variant.seed > 0 ? 1 : 0;
  CHECK(shuffled == 40 * 4);
  for (const TightVariant& variant : tight_variants(false)) CHECK(variant.seed == 0);
}

}  // namespace cahier
