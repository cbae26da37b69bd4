#include "plan/first_uses.h"

#include <utility>

namespace cahier {

std::set<const Task*> first_uses(const Plan& plan) {
  std::set<const Task*> uses;
  std::set<std::pair<int, int>> waiting;  // pieces and chunks set to be learned on earlier days
  for (const Day& day : plan.days) {
    for (const Task& task : day.tasks)
      for (const int chunk : task.chunks)
        if (task.drill != Drill::learn && waiting.erase({task.piece, chunk}) > 0)
          uses.insert(&task);
    for (const Task& task : day.tasks)
      for (const int chunk : task.chunks)
        if (task.drill == Drill::learn) waiting.insert({task.piece, chunk});
  }
  return uses;
}

}  // namespace cahier
