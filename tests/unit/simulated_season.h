// A season of a player who does not exist: each Monday the next edition of the workbook is planned
// from what was done so far, and practised day by day.
#pragma once

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "plan/cue_reach.h"
#include "plan/search/planner.h"
#include "plan/terms.h"
#include "played.h"
#include "simulated_player.h"

namespace cahier::sample {

// One workbook, as far as it was practised.
struct PractisedEdition {
  Terms terms;
  Plan plan;
  std::vector<PractisedDay> days;  // the practice days of its week, as they went
};

// Of what is new, a player times each chunk on days of even number, on others only the whole day.
inline bool is_timed(Date date) { return date.time_since_epoch().count() % 2 == 0; }

// What a log would say of one task; of a run-through task as many as were made.
inline void add_done(const PlannedPiece& planned, Date date, const ReportedTask& deed,
                     Record& record) {
  Done done;
  done.date = date;
  done.drill = deed.task.drill;
  done.bars = deed.task.bars;
  done.slips = deed.slips;
  if (done.drill == Drill::learn && is_timed(date)) done.minutes = deed.minutes;
  if (done.drill == Drill::cue_starts) {
    for (const int number : deed.hit) done.hit.push_back(planned.cues[number - 1].bar);
    for (const int number : deed.missed) done.missed.push_back(planned.cues[number - 1].bar);
    std::vector<int> all = done.hit;
    all.insert(all.end(), done.missed.begin(), done.missed.end());
    done.bars = {*std::min_element(all.begin(), all.end()),
                 *std::max_element(all.begin(), all.end())};
  }
  if (done.drill != Drill::run_through) return record.done.push_back(std::move(done));
  for (const std::vector<int>& slips : deed.runs) {
    done.slips = slips;
    record.done.push_back(done);
  }
}

// What was done, without the way over a log.
inline Record record_of_editions(const std::vector<PractisedEdition>& editions) {
  Record record;
  record.edition = static_cast<int>(editions.size()) + 1;
  if (!editions.empty()) record.starts = numbered_in(editions.back().plan);
  for (const PractisedEdition& edition : editions)
    for (const PractisedDay& day : edition.days) {
      for (const ReportedTask& deed : day.deeds)
        add_done(edition.plan.pieces.front(), day.date, deed, record);
      if (!day.deeds.empty()) record.minutes.push_back({day.date, day.minutes()});
    }
  return record;
}

// Practises from Monday to the day before `by`, in editions of a week. `record(editions, terms)` is
// what the next one is told of those before.
template <typename RecordOf>
std::vector<PractisedEdition> practise_season(const Piece& piece, const Terms& whole,
                                              SimulatedPlayer& player, RecordOf record) {
  std::vector<PractisedEdition> editions;
  for (Date monday = whole.from; monday < whole.by; monday += days{7}) {
    PractisedEdition edition;
    edition.terms = whole;
    edition.terms.from = monday;
    edition.terms.record = record(editions, edition.terms);
    edition.plan = make_plan({piece}, edition.terms);
    player.turn_to_next_book();
    for (const Day& day : edition.plan.days)
      if (day.date < monday + days{7} && day.allowance > 0)
        edition.days.push_back(player.practise(edition.plan.pieces.front(), day));
    editions.push_back(std::move(edition));
  }
  return editions;
}

// What was really done, as one plan of the whole season without a past.
class SeasonAsOnePlan {
 public:
  explicit SeasonAsOnePlan(const std::vector<PractisedEdition>& editions)
      : plan_(editions.back().plan), planned_(plan_.pieces.front()) {
    plan_.from = editions.front().plan.from;
    plan_.past.clear();
    plan_.record = {};
    plan_.fits = true;
    plan_.unplaced.clear();
    for (Chunk& chunk : planned_.chunks)
      chunk = {chunk.id, chunk.bars, chunk.section, planned_.piece.hardest_level(chunk.bars)};
    take_cues(editions);
    plan_.days = calendar(editions.front().terms);
    for (Day& day : plan_.days) {
      day.off = true;
      day.allowance = 0;
      day.note = DayNote::none;
    }
    for (const PractisedEdition& edition : editions)
      for (const PractisedDay& day : edition.days)
        if (!day.missed) take_day(edition.plan.pieces.front(), day);
  }

  // The pieces of the last edition with every cue start that any edition had, all of one weight;
  // days missed as days off; of cue starts all that were begun from, thrown for or not. The minutes
  // of a task are those that were planned for it, and a day allows what was done on it.
  const Plan& plan() const { return plan_; }

 private:
  void take_cues(const std::vector<PractisedEdition>& editions) {
    std::set<int> bars;
    for (const PractisedEdition& edition : editions)
      for (const CueStart& cue : edition.plan.pieces.front().cues) bars.insert(cue.bar);
    planned_.cues.clear();
    // As one first edition numbers them.
    for (const int bar : bars) {
      const auto section = std::find_if(planned_.sections.begin(), planned_.sections.end(),
                                        [&](const auto& one) { return one.bars.contains(bar); });
      planned_.cues.push_back({static_cast<int>(planned_.cues.size()) + 1, bar,
                               static_cast<int>(section - planned_.sections.begin())});
    }
    planned_.dice = weighted_dice_tables(planned_.thrown_cues());
  }

  void take_day(const PlannedPiece& of_edition, const PractisedDay& practised) {
    Day& day = plan_.days[(practised.date - plan_.from).count()];
    day.off = false;
    for (const ReportedTask& deed : practised.deeds) {
      Task task = deed.task;
      task.block = 0;
      const std::string date = iso(day.date);
      task.id = date.substr(5, 2) + date.substr(8, 2) + "-" + std::to_string(day.tasks.size() + 1);
      for (int& chunk : task.chunks) chunk = chunk_at(of_edition.chunks[chunk].bars.first);
      if (task.drill == Drill::cue_starts) take_starts(of_edition, deed, task);
      std::sort(task.chunks.begin(), task.chunks.end());
      day.tasks.push_back(std::move(task));
    }
    day.allowance = std::max(practised.allowance, day.minutes());
  }

  void take_starts(const PlannedPiece& of_edition, const ReportedTask& deed, Task& task) const {
    std::set<int> bars;
    for (const auto* numbers : {&deed.hit, &deed.missed})
      for (const int number : *numbers) bars.insert(of_edition.cues[number - 1].bar);
    std::set<int> chunks;
    task.cues.clear();
    task.ways.clear();  // no log tells which way was taken
    for (const CueStart& cue : planned_.cues) {
      if (bars.count(cue.bar) == 0) continue;
      task.cues.push_back(cue.number);
      const BarRange played{cue.bar, last_bar_from(planned_, cue)};
      for (int bar = played.first; bar <= played.last; ++bar)
        if (const int chunk = chunk_at(bar); plays_all_of(chunk, played)) chunks.insert(chunk);
    }
    task.throws = 0;
    task.chunks.assign(chunks.begin(), chunks.end());
    task.bars = {*bars.begin(), *bars.rbegin()};
  }

  // Of chunks that come back as they are.
  bool plays_all_of(int chunk, BarRange played) const {
    const BarRange& bars = planned_.chunks[chunk].bars;
    for (int bar = played.first; bar + bars.size() - 1 <= played.last; ++bar)
      if (planned_.piece.learned_bar(bar) == bars.first &&
          planned_.piece.learned_bar(bar + bars.size() - 1) == bars.last)
        return true;
    return false;
  }

  int chunk_at(int bar) const {
    const int source = planned_.piece.learned_bar(bar);
    const auto found =
        std::find_if(planned_.chunks.begin(), planned_.chunks.end(),
                     [&](const Chunk& chunk) { return chunk.bars.contains(source); });
    return static_cast<int>(found - planned_.chunks.begin());
  }

  Plan plan_;
  PlannedPiece& planned_;
};

}  // namespace cahier::sample
