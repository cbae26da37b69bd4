// The spoken parts and write-outs that are asked for and still to be placed.
#pragma once

#include <list>
#include <vector>

#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"
#include "plan/terms.h"

namespace cahier {

// What a day has for spoken and written work.
struct TemperRoom {
  double room = 0;     // minutes
  bool begun = false;  // it has other work
  double fill = 0;     // minutes that make it worth sitting down
};

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

  // The next of all whose chunk was learned, and was in a slow or counted pass, on an earlier day
  // than `day`, the weakest first; end() when none waits.
  Place next(const RecallsDue& recalls, int day) const;
  Place end() const { return waiting_.end(); }
  void strike(Place place) { waiting_.erase(place); }
  void strike(int chunk, Drill drill);
  // What was done once is not required again, however much it slipped since.
  void relax(int chunk, Drill drill);

  // The day's share of what waits, as far as its room reaches, taken from what waits: once
  // everything is learned, and not in the last week where the date leaves the choice. `position` is
  // the day's place among the practice days; `end` the date. On a day without other work only what
  // fills it: nobody sits down for one write-out.
  std::vector<Task> take(int position, const std::vector<int>& practice_days, int end,
                         const RecallsDue& recalls, const TaskMaker& make, TemperRoom of_day);

  static Task task(const Item& item, const TaskMaker& make);
  // What is required and still waits.
  std::vector<Task> left_over(const TaskMaker& make) const;

 private:
  static bool is_ready(const Item& item, const RecallsDue& recalls, int day);

  int quiet_days_;
  int temper_quiet_days_;
  std::list<Item> waiting_;
};

}  // namespace cahier
