// Sections that are learned and have not been played whole from memory yet.
#pragma once

#include <optional>
#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/recalls_due.h"

namespace cahier {

class SectionsDue {
 public:
  // Those of some length that are learned where they stand. A long one is played in parts,
  // each as long as may be.
  SectionsDue(const Analysis& analysis, const Method& method);

  // The parts to be played on a day: of a section that was learned before it, and whose chunks all
  // have been recalled once. Those whose time is nearly over come first.
  std::vector<BarRange> on_day(const RecallsDue& recalls, int day) const;

  // Whether so many days have gone by since the section's last new bars that it waits no longer.
  bool presses(BarRange part, const RecallsDue& recalls, int day) const;

  // `task` was played from memory.
  void played(const Task& task);

 private:
  struct Part {
    BarRange bars;
    std::vector<int> chunks;          // of the part
    std::vector<int> section_chunks;  // of the whole section
  };

  const Method& method_;
  std::vector<Part> waiting_;
};

}  // namespace cahier
