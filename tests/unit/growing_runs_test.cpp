#include "plan/due/growing_runs.h"

#include <algorithm>

#include "catch.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// `length` days of 15 minutes each.
std::vector<Day> days_of(int length) {
  std::vector<Day> all(static_cast<std::size_t>(length));
  for (int day = 0; day < length; ++day) {
    all[day].date = sample::date("2027-01-04") + days{day};
    all[day].allowance = 15;
  }
  return all;
}

// Days before the date of the run-throughs, of 5 minutes each; empty where there are none.
std::vector<int> days_left(const std::vector<Day>& calendar, const std::vector<double>& room,
                           int learned, RunsAsked asked = {5, 3, 0}) {
  const auto chosen = choose_growing_runs(sample::steady(), calendar, room, learned, asked, 5);
  std::vector<int> left;
  if (!chosen) return left;
  for (std::size_t day = 0; day < calendar.size(); ++day)
    if (chosen->runs[day] > 0) left.push_back(static_cast<int>(calendar.size() - day));
  return left;
}

std::vector<double> rooms(std::size_t length) { return std::vector<double>(length, 15); }

}  // namespace

TEST_CASE("run-throughs grow from ten days after the last new bars to two days before the date",
          "[numbers]") {
  CHECK(days_left(days_of(77), rooms(77), 20) == std::vector<int>{47, 38, 29, 20, 11, 5, 2});
  // A day without room gives way to the nearest one within ten.
  std::vector<double> room = rooms(77);
  room[30] = 0;
  CHECK(days_left(days_of(77), room, 20).front() == 48);
}

TEST_CASE("with more time left run-throughs lie farther apart", "[numbers]") {
  const std::vector<int> left = days_left(days_of(250), rooms(250), 20);
  for (std::size_t run = 1; run < left.size(); ++run) {
    const int apart = left[run - 1] - left[run];
    CHECK(apart <= (left[run - 1] >= 180 ? 21 : left[run - 1] >= 70 ? 14 : 10));
  }
  CHECK(left[0] - left[1] == 20);
}

TEST_CASE("as many run-throughs as are asked for, not more than half of them in the last week",
          "[numbers]") {
  const std::vector<int> left = days_left(days_of(40), rooms(40), 10, {10, 3, 0});
  CHECK(left.size() == 10);
  CHECK(std::count_if(left.begin(), left.end(), [](int one) { return one <= 7; }) <= 5);
}

TEST_CASE("where little time is left, run-throughs do not grow", "[numbers]") {
  CHECK(days_left(days_of(40), rooms(40), 23).empty());
  CHECK(days_left(days_of(40), rooms(40), 22).empty());
  CHECK_FALSE(days_left(days_of(40), rooms(40), 18).empty());
}

TEST_CASE("run-throughs grow where eighteen days follow the last new bars", "[numbers]") {
  CHECK(days_left(days_of(40), rooms(40), 23, {1, 1, 0}).empty());
  CHECK_FALSE(days_left(days_of(40), rooms(40), 22, {1, 1, 0}).empty());
}

}  // namespace cahier
