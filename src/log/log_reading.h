// A log while it is read.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "log/learned_in_log.h"
#include "log/past_editions.h"

namespace cahier {

// What is read from one date to the next.
struct LogReading {
  const std::vector<Piece>& pieces;
  PastEditions& editions;
  LogFaults& faults;
  LearnedInLog& learned;
  Record& record;
  std::map<std::pair<int, std::string>, Spot> ticked;  // by edition and code
};

// An entry, and the log it stands in.
struct DayEntry {
  int log = 0;
  const LoggedDay* day = nullptr;

  Spot spot(Place at) const { return {log, at}; }
};

}  // namespace cahier
