// What a workbook must hold, one fact a line, from `cahier plan --json` on standard input: "bars
// 17–20" for each task but cue starts and run-throughs, "date 2027-01-04" for each day that has
// something to do (others stand on the week's sheet only, by their number).
#include <iostream>
#include <set>
#include <stdexcept>

#include "judged_plan.h"

int main() {
  try {
    const judge::Plan plan = judge::read_plan(std::cin);
    std::set<std::string> facts;
    for (std::size_t index = plan.first; index < plan.days.size(); ++index) {
      const judge::Day& day = plan.days[index];
      if (!day.tasks.empty()) facts.insert("date " + judge::iso(day.date));
      for (const judge::Task& task : day.tasks) {
        if (task.drill == "cue_starts" || task.drill == "run_through") continue;
        const std::string first = std::to_string(task.bars.first);
        const bool one = task.bars.first == task.bars.last;
        facts.insert("bars " + first + (one ? "" : "–" + std::to_string(task.bars.last)));
      }
    }
    for (const std::string& fact : facts) std::cout << fact << "\n";
    return 0;
  } catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 2;
  }
}
