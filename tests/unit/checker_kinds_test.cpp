// Each kind of violation is found in a plan that was sound until one thing was changed.
#include <map>
#include <set>
#include <utility>

#include "broken_rules.h"

using namespace cahier;

namespace {

using Change = std::function<void(Plan&)>;

PlannedPiece& piece(Plan& plan) { return plan.pieces[0]; }
Task& task(Plan& plan, int day, int number) { return plan.days[day].tasks[number]; }

void leave_the_rest_out(Plan& plan) {
  plan.fits = false;
  plan.unplaced = {{0, Drill::join, {1, 12}, 1, Why::no_room_to_join}};
}

const std::multimap<Kind, Change>& changes() {
  static const std::multimap<Kind, Change> all = {
      {Kind::days_not_in_order, [](Plan& p) { p.days.pop_back(); }},
      {Kind::days_not_in_order, [](Plan& p) { std::swap(p.days[5], p.days[8]); }},
      {Kind::past_not_in_order, [](Plan& p) { p.past = {p.days[0]}; }},
      {Kind::past_not_of_record,
       [](Plan& p) {
         p.past.emplace_back();
         p.past[0].date = p.from - days{1};
         p.past[0].tasks = {p.days[1].tasks[2]};
       }},
      {Kind::no_piece, [](Plan& p) { p.pieces.clear(); }},
      {Kind::outside_the_piece,
       [](Plan& p) {
         task(p, 0, 0).bars = {1, 40};
       }},
      {Kind::outside_the_piece,
       [](Plan& p) {
         piece(p).chunks[1].bars = {5, 13};
       }},
      {Kind::outside_the_piece, [](Plan& p) { piece(p).cues[2].bar = 13; }},
      {Kind::no_such_piece, [](Plan& p) { task(p, 0, 0).piece = 3; }},
      {Kind::no_such_piece,
       [](Plan& p) {
         leave_the_rest_out(p);
         p.unplaced[0].piece = 1;
       }},
      {Kind::no_such_chunk, [](Plan& p) { task(p, 0, 0).chunks = {7}; }},
      {Kind::sections_do_not_cover, [](Plan& p) { piece(p).sections.pop_back(); }},
      {Kind::sections_not_of_piece,
       [](Plan& p) {
         piece(p).sections[0].bars = {1, 8};
         piece(p).sections.erase(piece(p).sections.begin() + 1);
       }},
      {Kind::return_not_of_piece,
       [](Plan& p) {
         piece(p).sections[2].same_as = BarRange{5, 8};
       }},
      {Kind::return_not_of_piece,
       [](Plan& p) {
         piece(p).sections[2].same_as = BarRange{1, 3};
       }},
      {Kind::task_name, [](Plan& p) { task(p, 0, 0).id = "0104-2"; }},
      {Kind::recall_not_cold, [](Plan& p) { std::swap(task(p, 1, 0), task(p, 1, 1)); }},
      {Kind::weakness_not_of_record, [](Plan& p) { piece(p).chunks[0].raised = true; }},
      {Kind::chunk_not_named, [](Plan& p) { task(p, 2, 0).chunks = {0}; }},
      {Kind::chunk_not_played,
       [](Plan& p) {
         task(p, 1, 0).chunks = {0, 1};
       }},
      {Kind::chunk_named_twice,
       [](Plan& p) {
         task(p, 1, 0).chunks = {0, 0};
       }},
      {Kind::not_learned_before, [](Plan& p) { task(p, 1, 2).drill = Drill::counted_pass; }},
      {Kind::no_start,
       [](Plan& p) {
         task(p, 2, 1).cues.clear();
         task(p, 2, 1).throws = 0;
       }},
      {Kind::no_such_start,
       [](Plan& p) {
         task(p, 2, 1).cues = {1, 2, 8};
       }},
      {Kind::bars_not_of_starts,
       [](Plan& p) {
         task(p, 2, 1).bars = {2, 5};
       }},
      {Kind::steps, [](Plan& p) { task(p, 2, 0).steps.clear(); }},
      {Kind::steps,
       [](Plan& p) {
         task(p, 2, 0).tempi = {{1, 66}};
       }},
      {Kind::steps,
       [](Plan& p) {
         task(p, 2, 0).tempi = {{1, 60}, {5, 66}};
       }},
      {Kind::steps,
       [](Plan& p) {
         task(p, 2, 1).tempi_after_jumps = {{11, 60}};
       }},
      {Kind::steps,
       [](Plan& p) {
         task(p, 2, 0).tempi = {{5, 66}, {5, 60}};
       }},
      {Kind::steps,
       [](Plan& p) {
         task(p, 2, 0).tempi = {{1, 66}, {13, 60}};
       }},
      {Kind::bar_not_in_one_chunk,
       [](Plan& p) {
         piece(p).chunks[1].bars = {5, 7};
       }},
      {Kind::bar_not_in_one_chunk,
       [](Plan& p) {
         piece(p).chunks.push_back({"X1", {9, 12}, 2, 2});
       }},
      {Kind::crosses_a_phrase,
       [](Plan& p) {
         piece(p).piece.sections[1].phrases = {{5, 6}, {7, 8}};
       }},
      {Kind::chunk_size, [](Plan& p) { p.method.chunk_most = 3; }},
      {Kind::chunk_name, [](Plan& p) { piece(p).chunks[1].id = "A1"; }},
      {Kind::not_one_chunk, [](Plan& p) { task(p, 0, 0).chunks.clear(); }},
      {Kind::not_one_chunk,
       [](Plan& p) {
         task(p, 0, 0).bars = {1, 3};
       }},
      {Kind::learned_again,
       [](Plan& p) {
         p.days[5].tasks = {task(p, 0, 0)};
         task(p, 5, 0).id = "0109-1";
       }},
      {Kind::never_learned, [](Plan& p) { p.days[0].tasks.clear(); }},
      {Kind::parts_not_apart_then_together,
       [](Plan& p) { std::swap(task(p, 0, 0).steps[0], task(p, 0, 0).steps[2]); }},
      {Kind::repetitions, [](Plan& p) { p.method.repetitions = 4; }},
      {Kind::allowance_of_a_day_off, [](Plan& p) { p.days[5].off = true; }},
      {Kind::work_on_a_day_off, [](Plan& p) { p.days[4].allowance = 0; }},
      {Kind::over_the_allowance, [](Plan& p) { p.days[1].allowance = 12.5; }},
      {Kind::no_half_minutes, [](Plan& p) { task(p, 0, 0).minutes = 8.25; }},
      {Kind::sitting_out_of_turn, [](Plan& p) { task(p, 0, 0).block = 1; }},
      {Kind::join_not_played,
       [](Plan& p) {
         for (const int day : {1, 2, 12}) task(p, day, day == 1 ? 2 : 0).bars = {5, 12};
       }},
      {Kind::first_recall_late,
       [](Plan& p) {
         for (const int day : {1, 2, 4}) task(p, day, 0).drill = Drill::join;
         task(p, 2, 1).cues = {2};
       }},
      {Kind::gap_too_long, [](Plan& p) { p.days[12].tasks.clear(); }},
      {Kind::new_at_the_end, [](Plan& p) { p.method.quiet_days = 13; }},
      {Kind::too_few_runs, [](Plan& p) { p.new_to_performing = true; }},
      {Kind::too_few_run_days, [](Plan& p) { p.method.run_days = 4; }},
      {Kind::too_many_runs_a_day, [](Plan& p) { p.method.runs_a_day = 1; }},
      {Kind::run_not_whole,
       [](Plan& p) {
         task(p, 7, 0).bars = {1, 8};
       }},
      {Kind::start_number, [](Plan& p) { piece(p).cues[2].number = 4; }},
      {Kind::start_order, [](Plan& p) { std::swap(piece(p).cues[1].bar, piece(p).cues[2].bar); }},
      {Kind::start_order, [](Plan& p) { piece(p).cues[2].bar = piece(p).cues[0].bar; }},
      {Kind::start_renumbered,
       [](Plan& p) {
         p.record.starts = {{{1, 9}, 2}};
       }},
      {Kind::start_renumbered,
       [](Plan& p) {
         p.record.starts = {{{1, 5, 9, 11}, 4}};
       }},
      {Kind::start_renumbered,
       [](Plan& p) {
         p.record.starts = {{{1, 5}, 2}};
       }},
      {Kind::start_renumbered, [](Plan& p) { piece(p).cues[1].is_new = true; }},
      {Kind::start_share, [](Plan& p) { piece(p).cues[1].weight = 2; }},
      {Kind::start_section, [](Plan& p) { piece(p).cues[1].section = 0; }},
      {Kind::section_without_start, [](Plan& p) { piece(p).cues[2].bar = 10; }},
      {Kind::long_section_without_start,
       [](Plan& p) {
         piece(p).piece.bars = 20;
         piece(p).piece.sections = {{"A", {1, 20}, {}, {}, {}}};
         piece(p).sections = {{"A", {1, 20}, {}}};
         piece(p).cues = {{1, 1, 0}};
       }},
      {Kind::wish_without_start, [](Plan& p) { piece(p).piece.cues = {7}; }},
      {Kind::dice_unfair,
       [](Plan& p) {
         piece(p).dice[0].rows[0].outcomes.back() = {6, 6};
       }},
      {Kind::dice_not_of_starts,
       [](Plan& p) {
         piece(p).dice = dice_tables({1, 2});
       }},
      {Kind::both_new,
       [](Plan& p) {
         p.days[0].tasks.push_back(task(p, 1, 1));
         p.days[1].tasks.erase(p.days[1].tasks.begin() + 1);
       }},
      {Kind::fork_not_drilled,
       [](Plan& p) {
         task(p, 2, 1).cues = {1, 3};
       }},
      {Kind::way_of_no_fork,
       [](Plan& p) {
         task(p, 2, 1).ways = {{2, 3}, {6, 9}};
       }},
      {Kind::way_without_start,
       [](Plan& p) {
         task(p, 2, 1).ways = {{2, 3}, {6, 7}};
         p.method.chunk_most = 1;
       }},
      {Kind::temper_not_asked_for, [](Plan& p) { p.temper = Temper::no; }},
      {Kind::temper_before_pass, [](Plan& p) { task(p, 2, 0).drill = Drill::recall; }},
      {Kind::temper_before_pass,
       [](Plan& p) {
         task(p, 2, 0).bars = {1, 7};
       }},
      {Kind::temper_before_pass, [](Plan& p) { std::swap(p.days[2].tasks, p.days[3].tasks); }},
      {Kind::temper_not_weak, [](Plan& p) { p.temper = Temper::weak; }},
      {Kind::temper_before_weaker, [](Plan& p) { piece(p).piece.sections[0].level = 5; }},
      {Kind::temper_missing, [](Plan& p) { p.days[4].tasks.pop_back(); }},
      {Kind::only_part_spoken,
       [](Plan& p) { piece(p).piece.instrument = *find_instrument("violin"); }},
      {Kind::fits_and_unplaced, [](Plan& p) { p.fits = false; }},
  };
  return all;
}

}  // namespace

TEST_CASE("the checker finds each kind of violation") {
  std::set<Kind> known;
  int number = 0;
  for (const auto& [kind, change] : changes()) {
    // By their order: of which rule, says violation.h.
    CAPTURE(static_cast<int>(kind), number++);
    CHECK_FALSE(finds(sound_plan(), kind));
    CHECK(finds(change, kind));
    known.insert(kind);
  }
  for (int kind = 0; kind <= static_cast<int>(Kind::fits_and_unplaced); ++kind) {
    CAPTURE(kind);
    CHECK(known.count(static_cast<Kind>(kind)) == 1);
  }
}
