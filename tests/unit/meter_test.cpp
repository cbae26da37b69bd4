#include "piece/meter.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("meters are read as written and print the same") {
  for (const char* text : {"4/4", "3/4", "6/8", "2+3/8", "5/4", "1/1", "64/32", "3+2+2/16"}) {
    CAPTURE(text);
    REQUIRE(parse_meter(text));
    CHECK(parse_meter(text)->text() == text);
  }
  CHECK(parse_meter("2+3/8")->count() == 5);
  CHECK(parse_meter("2+3/8")->quarters() == 2.5);
  CHECK(parse_meter("6/8")->quarters() == 3);
  CHECK(parse_meter("2/2")->quarters() == 4);
}

TEST_CASE("what is no meter is refused") {
  for (const char* text : {"", "C", "cut", "4", "/4", "4/", "0/4", "4/0", "4/3", "4/64", "65/4",
                           "33+32/4", "+3/8", "2+/8", "4/4/4", "-3/4", "3.5/4", "04/4"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_meter(text));
  }
}

// Common practice.
TEST_CASE("a tempo counts the natural beat of its meter") {
  const auto beat = [](const char* meter) { return natural_beat(*parse_meter(meter)); };
  CHECK(beat("4/4") == Beat::quarter);
  CHECK(beat("6/8") == Beat::dotted_quarter);
  CHECK(beat("9/8") == Beat::dotted_quarter);
  CHECK(beat("12/8") == Beat::dotted_quarter);
  CHECK(beat("3/8") == Beat::eighth);
  CHECK(beat("5/8") == Beat::eighth);
  CHECK(beat("2+3/8") == Beat::eighth);
  CHECK(beat("2/2") == Beat::half);
  CHECK(beat("6/4") == Beat::quarter);
}

TEST_CASE("beats are words, with dotted before them") {
  for (const Beat beat : {Beat::eighth, Beat::dotted_eighth, Beat::quarter, Beat::dotted_quarter,
                          Beat::half, Beat::dotted_half}) {
    CHECK(parse_beat(beat_name(beat)) == beat);
  }
  CHECK(quarters(Beat::dotted_quarter) == 1.5);
  CHECK(quarters(Beat::dotted_half) == 3);
  CHECK_FALSE(parse_beat("crotchet"));
  CHECK((Tempo{60, Beat::dotted_quarter}.quarters_per_minute()) == 90);
}
