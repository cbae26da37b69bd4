// One piece on a calendar that is being filled, for tests of what a day takes: every day is a
// practice day of so many minutes, and the best gap is ten days, however far the date is.
#pragma once

#include <string>
#include <vector>

#include "laid_out.h"
#include "plan/schedule/divided_work.h"
#include "plan/schedule/draft.h"

namespace cahier::sample {

struct Drafted {
  Piece piece;
  Terms terms;
  std::vector<Day> days;
  DividedWork divided;
  Draft draft;

  Drafted(const std::string& yaml, const std::vector<BarRange>& chunks, int end, double minutes,
          double gap = 10)
      : piece(sample::piece("title: Drafted\n" + yaml)),
        terms(terms_of(piece, end, minutes, gap)),
        days(calendar(terms)),
        divided(analyses_of(piece, chunks, terms.method), terms, days),
        draft(divided.work, true) {}
  Drafted(const Drafted&) = delete;

  PieceProgress& progress() { return *draft.pieces.front(); }
  void learn_all(int day = 0) {
    for (std::size_t chunk = 0; chunk < divided.analyses[0].planned.chunks.size(); ++chunk) {
      progress().recalls.learn(static_cast<int>(chunk), day);
      progress().joins.learned(static_cast<int>(chunk), day, progress().recalls);
    }
  }
  void recall_all(int day) { progress().played(progress().make.recall(piece.whole()), day); }
  // The drills that were put on a day.
  std::vector<Drill> drills_on(int day) const {
    std::vector<Drill> drills;
    for (const Task& task : draft.schedule.days[day].tasks) drills.push_back(task.drill);
    return drills;
  }
  std::size_t count_on(int day) const { return draft.schedule.days[day].tasks.size(); }

 private:
  static Terms terms_of(const Piece& of, int end, double minutes, double gap) {
    Wishes wishes = of.practice;
    wishes.minutes.emplace();
    wishes.minutes->fill(minutes);
    return settle(date("2027-01-04"), date("2027-01-04") + cahier::days{end}, wishes,
                  with_gap(gap));
  }
  static std::vector<Analysis> analyses_of(const Piece& of, const std::vector<BarRange>& chunks,
                                           const Method& method) {
    std::vector<Analysis> all;
    all.push_back(analyse(of, method, LaidOut::named(of, chunks)));
    return all;
  }
};

}  // namespace cahier::sample
