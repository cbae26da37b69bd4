// The pieces cut up in one way, and all that is to be planned of them.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/schedule/learning_order.h"
#include "plan/schedule/past_tasks.h"
#include "plan/schedule/work.h"
#include "plan/terms.h"

namespace cahier {

struct DividedWork {
  // `calendar` from the first day of the past on.
  DividedWork(std::vector<Analysis> cut, const Terms& terms, const std::vector<Day>& calendar)
      : analyses(std::move(cut)),
        work{terms,
             analyses,
             calendar,
             learning_order(analyses, terms.order),
             past_days(terms.record, analyses, terms.method, terms.from),
             static_cast<int>((terms.from - calendar.front().date).count())} {
    for (const Day& day : work.past)
      for (const Task& task : day.tasks)
        if (task.drill == Drill::learn)
          std::erase_if(work.order, [&](const Work::Item& item) {
            return item.piece == task.piece && item.chunk == task.chunks.front();
          });
  }
  DividedWork(const DividedWork&) = delete;
  DividedWork& operator=(const DividedWork&) = delete;

  std::vector<int> sizes() const {
    std::vector<int> sizes;
    for (const Analysis& analysis : analyses)
      for (const Chunk& chunk : analysis.planned.chunks) sizes.push_back(chunk.bars.size());
    return sizes;
  }

  std::vector<Analysis> analyses;
  Work work;
};

}  // namespace cahier
