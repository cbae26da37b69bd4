// The tempo of a task: of each of its places, counted in one unit of beat.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "practice/time_model.h"

namespace cahier {

// Gives the task the metronome marks for a share of the performance tempo: one for each place at
// which what it plays begins or the piece's tempo changes, and for each way's bar beyond a fork,
// where they differ. REQUIRES: what the task plays is set.
void set_tempo(Task& task, const Piece& piece, const TimeModel& time, double share);

// Counts the tasks of each piece on one day in one unit of beat. Where no metronome could, as many
// neighbours as can be share one.
void count_in_one_beat(std::vector<Task>& tasks, const std::vector<const Piece*>& pieces);

}  // namespace cahier
