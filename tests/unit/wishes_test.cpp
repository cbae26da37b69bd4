#include "piece/wishes.h"

#include <catch2/catch.hpp>

#include "piece/instrument.h"

using namespace cahier;

TEST_CASE("wishes win over their fallback one by one") {
  Wishes typed;
  typed.blocks = 2;
  Wishes file;
  file.blocks = 3;
  file.temper = Temper::no;
  const Wishes both = typed.over(file);
  CHECK(both.blocks == 2);
  CHECK(both.temper == Temper::no);
  CHECK_FALSE(both.minutes);
}

TEST_CASE("orders and tempers are read as the file and as the command line write them") {
  CHECK(parse_order("hardest first") == Order::hardest_first);
  CHECK(parse_order("hardest-first") == Order::hardest_first);
  CHECK(parse_order("backward") == Order::backward);
  CHECK_FALSE(parse_order("hardest"));
  CHECK(parse_temper("weak bars only") == Temper::weak);
  CHECK(parse_temper("weak") == Temper::weak);
  CHECK(parse_temper("true") == Temper::yes);
  CHECK(parse_temper("off") == Temper::no);
  CHECK_FALSE(parse_temper("maybe"));
}

TEST_CASE("days off are weekdays, days and spans") {
  DaysOff off;
  CHECK(parse_day_off("sun", off));
  CHECK(parse_day_off("2027-02-14", off));
  CHECK(parse_day_off("2027-02-20..2027-02-23", off));
  CHECK(off.weekdays == std::array<bool, 7>{false, false, false, false, false, false, true});
  REQUIRE(off.dates.size() == 2);
  CHECK(off.dates[0].first == off.dates[0].last);
  CHECK(iso(off.dates[1].last) == "2027-02-23");
  CHECK(off.dates[1].contains(*parse_date("2027-02-23")));
  CHECK_FALSE(off.dates[1].contains(*parse_date("2027-02-24")));
  for (const char* text : {"", "sunday", "2027-02-30", "2027-02-23..2027-02-20", "..",
                           "2027-02-20..", "2027-02-20...2027-02-23", "mon..wed"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_day_off(text, off));
  }
  CHECK(off.dates.size() == 2);
}

TEST_CASE("every known instrument has parts and staves, and is found by its name") {
  CHECK(instrument_names().size() == 28);
  for (const std::string& name : instrument_names()) {
    CAPTURE(name);
    const Instrument* instrument = find_instrument(name);
    REQUIRE(instrument);
    CHECK_FALSE(instrument->parts.empty());
    CHECK_FALSE(instrument->staves.empty());
    CHECK(static_cast<std::size_t>(instrument->braced) <= instrument->staves.size());
  }
  CHECK(find_instrument("organ")->parts.back() == "pedals");
  CHECK(find_instrument("viola")->staves.front() == Clef::alto);
  CHECK_FALSE(find_instrument("Piano"));
}
