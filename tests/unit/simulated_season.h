// A season of a player who does not exist: each Monday the next edition of the workbook is planned
// from what was done so far, and practised day by day.
#pragma once

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "plan/planner.h"
#include "plan/terms.h"
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

// What a log would tell of one deed; of a run-through task as many as were made.
inline void add_done(const PlannedPiece& planned, Date date, const Deed& deed, Record& record) {
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

inline Record record_of_editions(const std::vector<PractisedEdition>& editions) {
  Record record;
  record.edition = static_cast<int>(editions.size()) + 1;
  for (const PractisedEdition& edition : editions)
    for (const PractisedDay& day : edition.days) {
      for (const Deed& deed : day.deeds)
        add_done(edition.plan.pieces.front(), day.date, deed, record);
      if (!day.deeds.empty()) record.minutes.push_back({day.date, day.minutes()});
    }
  return record;
}

// Practises from Monday to the day before `by`, in editions of a week.
inline std::vector<PractisedEdition> practise_season(const Piece& piece, const Terms& whole,
                                                     SimulatedPlayer& player) {
  std::vector<PractisedEdition> editions;
  for (Date monday = whole.from; monday < whole.by; monday += days{7}) {
    PractisedEdition edition;
    edition.terms = whole;
    edition.terms.from = monday;
    edition.terms.record = record_of_editions(editions);
    edition.plan = make_plan({piece}, edition.terms);
    player.turn_to_next_book();
    for (const Day& day : edition.plan.days)
      if (day.date < monday + days{7} && day.allowance > 0)
        edition.days.push_back(player.practise(edition.plan.pieces.front(), day));
    editions.push_back(std::move(edition));
  }
  return editions;
}

// What was really done, as one plan of the whole season without a past: the pieces of the last
// edition with every cue start that any edition had, days missed as days off, and the minutes of a
// task those that were planned for it. A day on which more was done than was planned allows that.
inline Plan as_one_plan(const std::vector<PractisedEdition>& editions) {
  Plan plan = editions.back().plan;
  plan.from = editions.front().plan.from;
  plan.past.clear();
  plan.record = {};
  PlannedPiece& planned = plan.pieces.front();

  std::set<int> bars;
  for (const PractisedEdition& edition : editions)
    for (const CueStart& cue : edition.plan.pieces.front().cues) bars.insert(cue.bar);
  planned.cues.clear();
  for (const int bar : bars) {
    const auto section = std::find_if(planned.sections.begin(), planned.sections.end(),
                                      [&](const auto& one) { return one.bars.contains(bar); });
    planned.cues.push_back({static_cast<int>(planned.cues.size()) + 1, bar,
                            static_cast<int>(section - planned.sections.begin())});
  }
  planned.dice = weighted_dice_tables(planned.thrown_cues());
  const auto chunk_at = [&](int bar) {
    const auto found = std::find_if(
        planned.chunks.begin(), planned.chunks.end(),
        [&](const Chunk& chunk) { return chunk.bars.contains(planned.piece.learned_bar(bar)); });
    return static_cast<int>(found - planned.chunks.begin());
  };

  plan.days = calendar(editions.front().terms);
  for (Day& day : plan.days) {
    day.off = true;
    day.allowance = 0;
  }
  for (const PractisedEdition& edition : editions)
    for (const PractisedDay& practised : edition.days) {
      Day& day = plan.days[(practised.date - plan.from).count()];
      if (practised.missed) continue;
      day.off = false;
      day.allowance = practised.allowance;
      for (const Deed& deed : practised.deeds) {
        Task task = deed.task;
        task.block = 0;
        task.id = iso(day.date).substr(5, 2) + iso(day.date).substr(8, 2) + "-" +
                  std::to_string(day.tasks.size() + 1);
        const PlannedPiece& of_edition = edition.plan.pieces.front();
        for (int& chunk : task.chunks) chunk = chunk_at(of_edition.chunks[chunk].bars.first);
        std::sort(task.chunks.begin(), task.chunks.end());
        if (task.drill == Drill::cue_starts && !task.cues.empty()) {
          const auto bar_of = [&](int number) { return of_edition.cues[number - 1].bar; };
          if (!deed.by_code) task.chunks.clear();
          for (int& number : task.cues) {
            const int bar = bar_of(number);
            if (!deed.by_code) task.chunks.push_back(chunk_at(bar));
            number = static_cast<int>(std::distance(bars.begin(), bars.find(bar))) + 1;
          }
          if (!deed.by_code) {
            task.bars = {bar_of(deed.task.cues.front()), bar_of(deed.task.cues.back())};
            std::sort(task.chunks.begin(), task.chunks.end());
            task.chunks.erase(std::unique(task.chunks.begin(), task.chunks.end()),
                              task.chunks.end());
          }
        }
        day.tasks.push_back(std::move(task));
      }
      day.allowance = std::max(day.allowance, day.minutes());
    }
  plan.fits = true;
  plan.unplaced.clear();
  return plan;
}

}  // namespace cahier::sample
