// Dates, bars, minutes and lists in words.
#pragma once

#include <string>
#include <vector>

#include "text/date.h"
#include "text/words.h"

namespace cahier {

std::string weekday_long(const Words& words, Date date);   // "Monday"
std::string weekday_short(const Words& words, Date date);  // "Mon"
std::string month_long(const Words& words, Date date);     // "January"
std::string month_short(const Words& words, Date date);    // "Jan"
int day_of_month(Date date);

std::string day_month(const Words& words, Date date);          // "4 January"
std::string day_month_short(const Words& words, Date date);    // "4 Jan"
std::string day_month_year(const Words& words, Date date);     // "4 January 2027"
std::string weekday_day_month(const Words& words, Date date);  // "Monday 4 January"
std::string full_date(const Words& words, Date date);          // "Monday 4 January 2027"

// "18–24 January 2027", "28 January – 3 February 2027", "28 December 2026 – 3 January 2027", or
// one day.
std::string date_span(const Words& words, Date first, Date last);

// "17–20" with an en dash, or "17".
std::string bar_range(int first, int last);

// Minutes to the nearest half: "14½", "½", "0", "-3".
std::string minutes_text(double minutes);

// At most one decimal: "132", "66.5".
std::string number_text(double number);

// "1, 5 and 9", with the catalogue's "and".
std::string list_text(const Words& words, const std::vector<std::string>& items);

}  // namespace cahier
