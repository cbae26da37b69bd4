// The pieces cut up in one way, and all that is to be planned of them.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "plan/chunks/anatomy.h"
#include "plan/schedule/comfortable.h"
#include "plan/schedule/past_tasks.h"
#include "plan/terms.h"

namespace cahier {

struct Cut {
  // `calendar` from the first day of the past on.
  Cut(std::vector<Anatomy> cut, const Terms& terms, const std::vector<Day>& calendar)
      : anatomies(std::move(cut)),
        work{terms,
             anatomies,
             calendar,
             learning_order(anatomies, terms.order),
             past_days(terms.record, anatomies, terms.method, terms.from),
             static_cast<int>((terms.from - calendar.front().date).count())} {
    for (const Day& day : work.past)
      for (const Task& task : day.tasks)
        if (task.drill == Drill::learn)
          std::erase_if(work.order, [&](const Work::Item& item) {
            return item.piece == task.piece && item.chunk == task.chunks.front();
          });
  }
  Cut(const Cut&) = delete;
  Cut& operator=(const Cut&) = delete;

  std::vector<int> sizes() const {
    std::vector<int> sizes;
    for (const Anatomy& anatomy : anatomies)
      for (const Chunk& chunk : anatomy.planned.chunks) sizes.push_back(chunk.bars.size());
    return sizes;
  }

  std::vector<Anatomy> anatomies;
  Work work;
};

}  // namespace cahier
