#include "text/date.h"

#include <ctime>
#include <string>

#include "catch.h"

using namespace cahier;

namespace {

std::string week_text(Date date) {
  const IsoWeek week = iso_week(date);
  const std::string number = (week.week < 10 ? "0" : "") + std::to_string(week.week);
  return std::to_string(week.year) + "-W" + number + "-" + std::to_string(week.weekday);
}

Date date_of(const char* text) { return parse_date(text).value(); }

// The same from the C library, which knows nothing of <chrono>.
std::string week_text_of_c_library(Date date) {
  const std::time_t seconds = static_cast<std::time_t>(date.time_since_epoch().count()) * 86400;
  std::tm parts{};
  REQUIRE(gmtime_r(&seconds, &parts) != nullptr);
  char text[32];
  REQUIRE(std::strftime(text, sizeof text, "%G-W%V-%u", &parts) > 0);
  return text;
}

}  // namespace

TEST_CASE("week dates follow the published examples of ISO 8601") {
  CHECK(week_text(date_of("2004-12-31")) == "2004-W53-5");
  CHECK(week_text(date_of("2008-12-31")) == "2009-W01-3");
  CHECK(week_text(date_of("2010-01-01")) == "2009-W53-5");
  CHECK(week_text(date_of("1996-12-31")) == "1997-W01-2");
  CHECK(week_text(date_of("2027-01-01")) == "2026-W53-5");
}

TEST_CASE("every day from 1990 to 2100 has the week date and the form the C library gives it") {
  int days_seen = 0;
  int different = 0;
  for (Date date = date_of("1990-01-01"); date <= date_of("2100-12-31"); date += days{1}) {
    ++days_seen;
    const bool same = week_text(date) == week_text_of_c_library(date) &&
                      weekday_index(date) == iso_week(date).weekday - 1 &&
                      parse_date(iso(date)) == date;
    if (!same) ++different;
  }
  CHECK(days_seen == 40542);  // 111 years of 365 days and 27 leap days (not 2100)
  CHECK(different == 0);
}

TEST_CASE("only days of the calendar are dates") {
  CHECK(parse_date("2028-02-29"));
  CHECK_FALSE(parse_date("2027-02-29"));
  CHECK_FALSE(parse_date("2027-02-30"));
  CHECK_FALSE(parse_date("2100-02-29"));
  CHECK(parse_date("2000-02-29"));
  CHECK_FALSE(parse_date("2027-13-01"));
  CHECK_FALSE(parse_date("2027-00-10"));
  CHECK_FALSE(parse_date("2027-04-31"));
  CHECK_FALSE(parse_date("1899-12-31"));
  CHECK(parse_date("1900-01-01"));
  CHECK(parse_date("2999-12-31"));
  CHECK_FALSE(parse_date("3000-01-01"));
}

TEST_CASE("a date is written with all its digits and nothing else") {
  for (const char* text : {"", "2027-2-14", "2027/02/14", "14.02.2027", "2027-02-14 ",
                           " 2027-02-14", "+027-02-14", "2027-02-1a", "20270214"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_date(text));
  }
  CHECK(iso(date_of("2027-02-04")) == "2027-02-04");
}

TEST_CASE("weekdays are mon to sun") {
  CHECK(parse_weekday("mon") == 0);
  CHECK(parse_weekday("sun") == 6);
  CHECK_FALSE(parse_weekday("Sun"));
  CHECK_FALSE(parse_weekday("sunday"));
  CHECK_FALSE(parse_weekday(""));
}
