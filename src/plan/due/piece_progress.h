// One piece while it is being laid out.
#pragma once

#include <algorithm>
#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/cue_starts_due.h"
#include "plan/due/forks_due.h"
#include "plan/due/joins_due.h"
#include "plan/due/longer_stretches.h"
#include "plan/due/passes_due.h"
#include "plan/due/recalls_due.h"
#include "plan/due/return_seams_due.h"
#include "plan/due/run_days.h"
#include "plan/due/sections_due.h"
#include "plan/due/task_maker.h"
#include "plan/due/temper_due.h"
#include "plan/terms.h"

namespace cahier {

struct PieceProgress {
  // The arguments as in RecallsDue.
  PieceProgress(const Analysis& of, const Terms& terms, int piece,
                const std::vector<int>& practice_days, int first, int end, bool to_the_edge)
      : analysis(of),
        make(of, terms.method, piece),
        recalls(of, terms.method, practice_days, first, end, to_the_edge),
        joins(of, terms.method),
        return_seams(of, terms.method),
        sections(of, terms.method),
        passes_due(of, terms.method),
        passes(of.stretches.size(), 0),
        forks(of, terms.method),
        temper(of, terms),
        starts_due(of, terms, forks) {}
  PieceProgress(const PieceProgress&) = delete;
  PieceProgress& operator=(const PieceProgress&) = delete;

  const Analysis& analysis;
  TaskMaker make;
  RecallsDue recalls;
  JoinsDue joins;
  ReturnSeamsDue return_seams;
  SectionsDue sections;
  PassesDue passes_due;
  std::vector<int> passes;  // whole recalls so far, by stretch
  ForksDue forks;
  TemperDue temper;
  CueStartsDue starts_due;
  RunDays runs;
  int runs_made = 0;
  int run_days_made = 0;
  int last_run_made = -1;
  int weak_turns = 0;                    // recalls of what slips, by itself
  std::vector<ReservedRecall> reserved;  // by day

  // Whether any of it slips more than it should.
  bool slips() const {
    const auto& chunks = analysis.planned.chunks;
    return std::any_of(chunks.begin(), chunks.end(),
                       [](const Chunk& chunk) { return chunk.raised; });
  }

  // Takes account of what was played from memory.
  void played(const Task& task, int day) {
    recalls.retrieve(task, day);
    joins.played(task);
    sections.played(task);
    passes_due.played(task);
  }

  // Run-throughs still required, and the days they must lie on.
  int runs_to_come(const Terms& terms) const {
    return std::max({0, terms.runs_required() - runs_made, run_days_to_come(terms)});
  }
  int run_days_to_come(const Terms& terms) const {
    return std::max(0, terms.method.run_days - run_days_made);
  }

  // Asks for the halves of the piece before the first run-through, where none has a day set aside.
  void ask_for_halves() {
    const int first_run = next_run(-1);
    if (first_run < 0) return;
    for (const BarRange& half : halves(analysis.planned))
      sections.add_half(half, analysis, first_run);
  }

  RunsAsked runs_asked(const Terms& terms) const {
    return {runs_to_come(terms), run_days_to_come(terms), 0};
  }

  // By stretch: the first day from `day` on for which a run-through or a booking of it is set
  // aside, or -1.
  std::vector<int> next_played(int day) const {
    std::vector<int> next(analysis.stretches.size(), next_run(day - 1));
    for (const ReservedRecall& one : reserved) {
      if (one.day < day) continue;
      for (std::size_t i = 0; i < next.size(); ++i)
        if (one.bars.contains(analysis.stretches[i].bars) && (next[i] < 0 || one.day < next[i]))
          next[i] = one.day;
    }
    return next;
  }

  // The first day from `day` on with a run-through or a booking, or -1.
  int next_set_aside(int day) const {
    int next = next_run(day - 1);
    for (const ReservedRecall& one : reserved)
      if (one.day >= day && (next < 0 || one.day < next)) next = one.day;
    return next;
  }

  // The first day after this one with a run-through, or -1.
  int next_run(int after) const {
    for (int day = after + 1; day < static_cast<int>(runs.runs.size()); ++day)
      if (runs.runs[day] > 0) return day;
    return -1;
  }
};

}  // namespace cahier
