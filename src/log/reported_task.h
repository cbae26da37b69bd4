// One thing that a log says was done, while it is read.
#pragma once

#include <string>
#include <vector>

#include "log/log_faults.h"
#include "log/past_editions.h"

namespace cahier {

struct ReportedTask {
  Done done;
  Spot spot;
  std::string code;                // empty when no code names it
  PastEdition* edition = nullptr;  // of the code
  int throws = 0;
  std::optional<double> minutes;   // that its workbook set for it
  std::optional<Spot> minutes_at;  // where the log says how long it took
  bool told = false;               // more than its code is reported: bars, starts, how a run went
};

// Whether a slip in it is one of memory that belongs to the day.
bool from_memory(Drill drill);

// "0105-1, a recall of bars 1–4, includes": the beginning of a sentence that continues with a bar.
std::string beginning(const std::string& code, Drill drill, BarRange bars);

// The order of a day: by code, then what has no code.
bool earlier_in_day(const ReportedTask& a, const ReportedTask& b);

// From the least of the bars to the greatest.
BarRange around(const std::vector<int>& bars, BarRange otherwise);

}  // namespace cahier
