// The weeks of a plan: Monday to Sunday, cut off at the plan's first and last day.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

struct PlanWeek {
  int number = 1;         // from 1
  std::size_t weeks = 1;  // that the plan has
  std::span<const Day> days;

  bool idle() const;  // no task on any day

  Date first() const { return days.front().date; }
  Date last() const { return days.back().date; }
};

// REQUIRES: the plan outlives the result.
std::vector<PlanWeek> weeks_of(const Plan& plan);

// Those to print. While a learned piece is kept most weeks are idle: these are left out but for the
// last one, and the others keep their numbers. REQUIRES: the plan outlives the result.
std::vector<PlanWeek> shown_weeks(const Plan& plan);

// Of these, the ones among the plan's first `most` weeks; all of them where that is 0.
std::vector<PlanWeek> printed_weeks(const Plan& plan, int most);

// "2027-W03", ISO 8601.
std::string iso_week_text(Date date);

// "Week 3 of 11", and the same with its dates and its ISO week: "18–24 January 2027 · 2027-W03".
std::string week_title(const Words& words, const PlanWeek& week);
std::string week_dates(const Words& words, const PlanWeek& week);

// What the week is for, in one sentence: "By Sunday: bars 1–24 from memory." It names all that is
// learned by then, in earlier editions too, without the returns.
std::string week_goal(const Words& words, const Plan& plan, const PlanWeek& week);

}  // namespace cahier
