// Run-throughs from when everything is learned on, so that the first does not wait for the end.
#pragma once

#include <optional>
#include <vector>

#include "plan/due/run_days.h"

namespace cahier {

// Days for run-throughs of `minutes` each among those after `learned`, the last day with new bars:
// the first and the distances as the method has them, and in the last week those that it names. As
// many as that takes, and no fewer than are asked for. Nullopt where the date leaves less than
// three weeks, or the days no room.
std::optional<RunDays> choose_growing_runs(const Method& method, const std::vector<Day>& calendar,
                                           const std::vector<double>& room, int learned,
                                           const RunsAsked& asked, double minutes);

}  // namespace cahier
