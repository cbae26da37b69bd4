#include "plan/due/temper_due.h"

#include <algorithm>

#include "plan/chunks/divide.h"

namespace cahier {

TemperList::TemperList(const Anatomy& anatomy, const Terms& terms) {
  if (terms.temper == Temper::no) return;
  const auto& chunks = anatomy.planned.chunks;
  std::vector<int> weakest_first;
  for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk)
    if (terms.temper == Temper::yes || chunks[chunk].level >= terms.method.weak_level)
      weakest_first.push_back(chunk);
  std::stable_sort(weakest_first.begin(), weakest_first.end(),
                   [&](int a, int b) { return chunks[a].level > chunks[b].level; });
  const auto wait = [&](int chunk, Drill drill) {
    const Chunk& of = chunks[chunk];
    const double minutes = drill == Drill::spoken_part ? anatomy.time.spoken_part(of.bars, of.level)
                                                       : anatomy.time.write_out(of.bars, of.level);
    const bool required = terms.temper == Temper::yes ||
                          hardest_level(anatomy.planned.piece, of.bars) >= terms.method.weak_level;
    waiting_.push_back({chunk, drill, of.level, minutes, required});
  };
  // Who plays with two hands can play with one and speak the other.
  const Instrument& instrument = anatomy.planned.piece.instrument;
  if (instrument.parts.size() < 2 || !instrument.has_hands) {
    for (const int chunk : weakest_first) wait(chunk, Drill::write_out);
    return;
  }
  // A chunk is written out after the next one is spoken, so that two turns on the same bars do not
  // follow each other.
  for (std::size_t i = 0; i < weakest_first.size(); ++i) {
    wait(weakest_first[i], Drill::spoken_part);
    if (i > 0) wait(weakest_first[i - 1], Drill::write_out);
  }
  if (!weakest_first.empty()) wait(weakest_first.back(), Drill::write_out);
}

void TemperList::strike(int chunk, Drill drill) {
  waiting_.remove_if([&](const Item& item) { return item.chunk == chunk && item.drill == drill; });
}

void TemperList::relax(int chunk, Drill drill) {
  for (Item& item : waiting_)
    if (item.chunk == chunk && item.drill == drill) item.required = false;
}

std::vector<TemperList::Place> TemperList::weakest(const Memory& memory, int day) const {
  std::vector<Place> places;
  for (const Drill drill : {Drill::spoken_part, Drill::write_out}) {
    int level = 0;
    for (auto item = waiting_.begin(); item != waiting_.end(); ++item)
      if (item->drill == drill && memory.learned_before(item->chunk, day)) {
        if (level == 0) level = item->level;
        if (item->level == level) places.push_back(item);
      }
  }
  return places;
}

TemperList::Place TemperList::next(const Memory& memory, int day) const {
  return std::find_if(waiting_.begin(), waiting_.end(),
                      [&](const Item& item) { return memory.learned_before(item.chunk, day); });
}

Task TemperList::task(const Item& item, const TaskMaker& make) {
  Task task =
      item.drill == Drill::spoken_part ? make.spoken_part(item.chunk) : make.write_out(item.chunk);
  task.reason = Reason::weakest_first;
  return task;
}

std::vector<Task> TemperList::left_over(const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (const Item& item : waiting_)
    if (item.required) tasks.push_back(task(item, make));
  return tasks;
}

}  // namespace cahier
