#include "piece/wishes.h"

#include "catch.h"
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
  CHECK(find_instrument("cello")->staves.front() == Clef::bass);
  CHECK(find_instrument("guitar")->staves.front() == Clef::treble_8_below);
  CHECK(find_instrument("tenor voice")->staves.front() == Clef::treble_8_below);
  CHECK(find_instrument("organ")->staves.size() == 3);
  CHECK(find_instrument("organ")->braced == 2);
  CHECK(find_instrument("harp")->braced == 2);
  CHECK_FALSE(find_instrument("Piano"));
}

TEST_CASE("other staves are braced as the instrument's own, and single ones bracketed") {
  const auto joined = [](const char* name, std::size_t count) {
    const Instrument made =
        with_staves(*find_instrument(name), std::vector<Clef>(count, Clef::bass));
    CHECK(made.staves.size() == count);
    return std::pair(made.braced, made.bracketed);
  };
  CHECK(joined("piano", 1) == std::pair(1, 0));
  CHECK(joined("piano", 2) == std::pair(2, 0));
  CHECK(joined("piano", 3) == std::pair(3, 0));
  CHECK(joined("organ", 2) == std::pair(2, 0));
  CHECK(joined("organ", 3) == std::pair(2, 0));
  CHECK(joined("organ", 4) == std::pair(3, 0));
  CHECK(joined("violin", 1) == std::pair(0, 1));
  CHECK(joined("violin", 4) == std::pair(0, 4));
}

TEST_CASE("every clef is found by its word") {
  REQUIRE(clef_words().size() == 8);
  for (std::size_t at = 0; at < clef_words().size(); ++at)
    CHECK(parse_clef(clef_words()[at]) == static_cast<Clef>(at));
  CHECK(parse_clef("treble 8 below") == Clef::treble_8_below);
  CHECK(parse_clef("treble 8 above") == Clef::treble_8_above);
  CHECK(parse_clef("bass 8 below") == Clef::bass_8_below);
  CHECK(parse_clef("tenor") == Clef::tenor);
  CHECK_FALSE(parse_clef("Treble"));
}
