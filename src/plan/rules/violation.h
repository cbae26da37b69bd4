// One fault that the checker finds in a plan.
#pragma once

#include <string>

namespace cahier {

struct Violation {
  // What is wrong, whatever the words for it.
  enum class Kind {
    // The plan's own form.
    days_not_in_order,
    past_not_in_order,
    past_not_of_record,
    no_piece,
    outside_the_piece,
    no_such_piece,
    no_such_chunk,
    sections_do_not_cover,
    sections_not_of_piece,
    return_not_of_piece,
    task_name,
    recall_not_cold,
    weakness_not_of_record,
    // What a task holds and asks for.
    chunk_not_named,
    chunk_not_played,
    chunk_named_twice,
    not_learned_before,
    no_start,
    no_such_start,
    bars_not_of_starts,
    steps,
    // 1 and 2: chunks, learned once.
    bar_not_in_one_chunk,
    crosses_a_phrase,
    chunk_size,
    chunk_name,
    not_one_chunk,
    learned_again,
    never_learned,
    parts_not_apart_then_together,
    repetitions,
    // 3: allowances.
    allowance_of_a_day_off,
    work_on_a_day_off,
    over_the_allowance,
    no_half_minutes,
    sitting_out_of_turn,
    // 4 and 5: joins and recalls.
    join_not_played,
    first_recall_late,
    gap_too_long,
    // 6: run-throughs.
    new_at_the_end,
    too_few_runs,
    too_few_run_days,
    too_many_runs_a_day,
    run_not_whole,
    // 7: cue starts.
    start_number,
    start_order,
    start_renumbered,
    start_share,
    start_section,
    section_without_start,
    long_section_without_start,
    wish_without_start,
    dice_unfair,
    dice_not_of_starts,
    // 8: look-alikes.
    both_new,
    fork_not_drilled,
    way_of_no_fork,
    way_without_start,
    // 9: Temper.
    temper_not_asked_for,
    temper_not_weak,
    temper_before_pass,
    temper_before_weaker,
    temper_missing,
    only_part_spoken,
    // 10.
    fits_and_unplaced,
  };

  int rule;  // 1 … 10, as numbered in DEVELOPERS.md; 0 when the plan contradicts its own form
  Kind kind;
  std::string what;  // in words, with dates and bars
};

}  // namespace cahier
