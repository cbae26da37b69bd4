// Sections that are learned, and halves of the piece where they have no day of their own, that have
// not been played whole from memory yet.
#pragma once

#include <limits>
#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/recalls_due.h"

namespace cahier {

// Bars to be played without stopping.
struct WholeStretch {
  BarRange bars;
  Reason reason = Reason::section;
  bool presses = false;  // its time is nearly over: it comes before what can wait
  bool operator==(const WholeStretch&) const = default;
};

class SectionsDue {
 public:
  // Those of some length that are learned where they stand. A long one is played in parts,
  // each as long as may be.
  SectionsDue(const Analysis& analysis, const Method& method);

  // Asks for these bars besides, before the day of the first run-through, in as few parts as there
  // would be of a long section, each from where a phrase begins.
  void add_half(BarRange half, const Analysis& analysis, int first_run);

  // The parts to be played on a day: of what was learned before it, and whose chunks all have been
  // recalled once. Those that press come first: a section some days after its last new bars, a half
  // at once.
  std::vector<WholeStretch> on_day(const RecallsDue& recalls, int day) const;

  // `task` was played from memory.
  void played(const Task& task);

 private:
  struct Part {
    BarRange bars;
    std::vector<int> chunks;          // of the part
    std::vector<int> section_chunks;  // of the whole section, or half
    Reason reason = Reason::section;
    int before = std::numeric_limits<int>::max();  // the first day that is too late
  };

  bool presses(const Part& part, const RecallsDue& recalls, int day) const;

  const Method& method_;
  std::vector<Part> waiting_;
};

}  // namespace cahier
