#include "text/phrasing.h"

#include "catch.h"
#include "text/wrap.h"

using namespace cahier;

namespace {
Date on(const char* text) { return parse_date(text).value(); }
}  // namespace

TEST_CASE("dates are said as they are spoken") {
  const Words& words = english_words();
  // 4 January 2027 is a Monday: 2027-01-01 is 2026-W53-5, a Friday (ISO 8601).
  CHECK(full_date(words, on("2027-01-04")) == "Monday 4 January 2027");
  CHECK(weekday_day_month(words, on("2027-01-03")) == "Sunday 3 January");
  CHECK(day_month(words, on("2027-12-31")) == "31 December");
  CHECK(day_month_short(words, on("2027-09-05")) == "5 Sep");
  CHECK(weekday_short(words, on("2028-02-29")) == "Tue");  // value from memory
}

TEST_CASE("a span of dates names month and year no more often than needed") {
  const Words& words = english_words();
  CHECK(date_span(words, on("2027-01-18"), on("2027-01-24")) == "18–24 January 2027");
  CHECK(date_span(words, on("2027-01-28"), on("2027-02-03")) == "28 January – 3 February 2027");
  CHECK(date_span(words, on("2026-12-28"), on("2027-01-03")) ==
        "28 December 2026 – 3 January 2027");
  CHECK(date_span(words, on("2027-01-18"), on("2027-01-18")) == "18 January 2027");
  CHECK(date_span(words, on("2026-01-18"), on("2027-01-24")) ==
        "18 January 2026 – 24 January 2027");
}

TEST_CASE("bars are told as a range with an en dash, or as one bar") {
  CHECK(bar_range(17, 20) == "17–20");
  CHECK(bar_range(17, 17) == "17");
  CHECK(bar_range(0, 3) == "0–3");
}

TEST_CASE("minutes are told in halves") {
  CHECK(minutes_text(14.5) == "14½");
  CHECK(minutes_text(0.5) == "½");
  CHECK(minutes_text(0) == "0");
  CHECK(minutes_text(1.5) == "1½");
  CHECK(minutes_text(812) == "812");
  CHECK(minutes_text(-0.5) == "-½");
  CHECK(minutes_text(-0.1) == "0");
}

TEST_CASE("numbers have at most one decimal") {
  CHECK(number_text(132) == "132");
  CHECK(number_text(66.5) == "66.5");
  CHECK(number_text(0.04) == "0");
  CHECK(number_text(-0.04) == "0");
}

TEST_CASE("a list is told with commas and a last and") {
  const Words& words = english_words();
  CHECK(list_text(words, {}).empty());
  CHECK(list_text(words, {"1"}) == "1");
  CHECK(list_text(words, {"1", "5"}) == "1 and 5");
  CHECK(list_text(words, {"1", "5", "9"}) == "1, 5 and 9");
}

TEST_CASE("text is wrapped between items, else between words, with a hanging indent") {
  CHECK(wrap("Mon  ", {"one", "two", "three"}, " · ", 5, 20) == "Mon  one · two ·\n     three\n");
  CHECK(wrap("Mon  ", {"one", "two", "three"}, " · ", 5, 80) == "Mon  one · two · three\n");
  CHECK(wrap("", {"a longer sentence that goes on"}, "", 2, 12) ==
        "a longer\n  sentence\n  that goes\n  on\n");
  CHECK(wrap("", {"unbreakablyLongWord"}, "", 2, 8) == "unbreakablyLongWord\n");
  CHECK(wrap("Sun  ", {}, " · ", 5, 20) == "Sun\n");
}
