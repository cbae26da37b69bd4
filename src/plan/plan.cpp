#include "plan/plan.h"

namespace cahier {

double Day::minutes() const {
  double sum = 0;
  for (const Task& task : tasks) sum += task.minutes;
  return sum;
}

double Plan::minutes_total() const {
  double sum = 0;
  for (const Day& day : days) sum += day.minutes();
  return sum;
}

}  // namespace cahier
