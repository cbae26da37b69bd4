#include "workbook/parts/flow.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("Content flows to a new page when it does not fit, and not before") {
  int opened = 0;
  Flow flow([&opened] {
    ++opened;
    return Box{0, 10, 100, 50};
  });
  CHECK_FALSE(flow.fits(1));
  CHECK(flow.take(30) == Box{0, 10, 100, 30});
  CHECK(flow.fits(20));
  flow.skip(0.5);
  CHECK(flow.fits(18.5));
  CHECK_FALSE(flow.fits(18.6));  // what follows begins on the grid of 1.5 mm
  CHECK(flow.take(20) == Box{0, 10, 100, 20});
  CHECK(opened == 2);
  flow.next_page();
  flow.next_page();
  flow.take(80);  // too high for any page
  CHECK(opened == 3);
}
