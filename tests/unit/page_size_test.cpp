#include "paper/page_size.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("page sizes are those of ISO 216 and US Letter, in millimetres and points") {
  // ISO 216; in points as millimetres * 72 / 25.4.
  CHECK(kA4 == PageSize{210, 297});
  CHECK(kA5 == PageSize{148, 210});
  CHECK(kLetter == PageSize{215.9, 279.4});
  CHECK(points(kA4.width) == Approx(595.276).margin(0.0005));
  CHECK(points(kA4.height) == Approx(841.890).margin(0.0005));
  CHECK(points(kA5.width) == Approx(419.528).margin(0.0005));
  CHECK(points(kLetter.width) == Approx(612).margin(1e-9));
  CHECK(points(kLetter.height) == Approx(792).margin(1e-9));
  CHECK(millimetres(points(12.5)) == Approx(12.5));
}

TEST_CASE("a page size is known by its name, in small letters only") {
  CHECK(parse_page_size("a4") == kA4);
  CHECK(parse_page_size("a5") == kA5);
  CHECK(parse_page_size("letter") == kLetter);
  for (const char* other : {"A4", "", "a3", "letter ", "a44"}) {
    CHECK_FALSE(parse_page_size(other).has_value());
  }
}

TEST_CASE("turning a page on its side twice changes nothing more") {
  CHECK(kA4.landscape() == PageSize{297, 210});
  CHECK(kA4.landscape().landscape() == kA4.landscape());
  CHECK(kA4.landscape().portrait() == kA4);
}
