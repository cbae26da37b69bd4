// The spoken parts and write-outs that are asked for and still to be placed.
#pragma once

#include <list>
#include <vector>

#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"
#include "plan/terms.h"

namespace cahier {

class TemperDue {
 public:
  struct Item {
    int chunk;
    Drill drill;
    int level;
    double minutes;
    bool required;  // by the piece; else the log asks, where there is room
  };
  using Place = std::list<Item>::const_iterator;

  TemperDue(const Analysis& analysis, const Terms& terms);

  // The next of all whose chunk was learned on an earlier day than `day`, the weakest first; end()
  // when none waits. `passed` asks besides that a slow or counted pass has been over it.
  Place next(const RecallsDue& recalls, int day, bool passed) const;
  // All that may come next: of each drill the weakest chunks of those.
  std::vector<Place> weakest(const RecallsDue& recalls, int day) const;
  Place end() const { return waiting_.end(); }
  void strike(Place place) { waiting_.erase(place); }
  void strike(int chunk, Drill drill);
  // What was done once is not required again, however much it slipped since.
  void relax(int chunk, Drill drill);
  int left() const { return static_cast<int>(waiting_.size()); }

  static Task task(const Item& item, const TaskMaker& make);
  // What is required and still waits.
  std::vector<Task> left_over(const TaskMaker& make) const;

 private:
  std::list<Item> waiting_;
};

}  // namespace cahier
