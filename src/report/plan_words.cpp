#include "report/plan_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "text/phrasing.h"

namespace cahier {
namespace {

std::string numbers(const std::vector<int>& list) {
  return fmt::format("{}", fmt::join(list, ", "));
}

std::string say_cue_starts(const Words& words, const Task& task) {
  if (task.cues.empty()) return words.count("drills.cue_starts_by_dice", task.throws);
  const std::string_view key = task.fork               ? "drills.fork"
                               : task.cues.size() == 1 ? "drills.cue_start"
                                                       : "drills.cue_starts";
  // Two ways on from one start name it once.
  std::vector<int> cues;
  for (const int cue : task.cues)
    if (std::ranges::find(cues, cue) == cues.end()) cues.push_back(cue);
  std::string text = words.say(key, {{"cues", numbers(cues)}});
  if (task.throws > 0) text.append(" ").append(words.count("drills.throws", task.throws));
  return text;
}

}  // namespace

std::string_view reason_word(Reason reason) {
  switch (reason) {
    case Reason::none:
      return "none";
    case Reason::new_material:
      return "new_material";
    case Reason::first_night:
      return "first_night";
    case Reason::best_gap:
      return "best_gap";
    case Reason::slips:
      return "slips";
    case Reason::sooner:
      return "sooner";
    case Reason::last_chance:
      return "last_chance";
    case Reason::joins_new:
      return "joins_new";
    case Reason::joins_return:
      return "joins_return";
    case Reason::fork:
      return "fork";
    case Reason::every_start:
      return "every_start";
    case Reason::whole:
      return "whole";
    case Reason::section:
      return "section";
    case Reason::half:
      return "half";
    case Reason::recorded:
      return "recorded";
    case Reason::listener:
      return "listener";
    case Reason::weakest_first:
      return "weakest_first";
    case Reason::worthwhile:
      return "worthwhile";
  }
  return "none";
}

std::string_view why_word(Why why) {
  switch (why) {
    case Why::no_room_to_learn:
      return "no_room_to_learn";
    case Why::no_room_to_recall:
      return "no_room_to_recall";
    case Why::no_room_to_join:
      return "no_room_to_join";
    case Why::no_room_to_prove:
      return "no_room_to_prove";
    case Why::no_room_to_run:
      return "no_room_to_run";
    case Why::no_room_to_temper:
      return "no_room_to_temper";
  }
  return "no_room_to_learn";
}

std::string_view note_word(DayNote note) {
  switch (note) {
    case DayNote::none:
      return "none";
    case DayNote::run_alone:
      return "run_alone";
    case DayNote::catch_up:
      return "catch_up";
    case DayNote::everything_learned:
      return "everything_learned";
    case DayNote::last_day:
      return "last_day";
  }
  return "none";
}

std::string say_reason(const Words& words, const Task& task) {
  if (task.reason == Reason::none) return {};
  return words.say(fmt::format("reasons.{}", reason_word(task.reason)),
                   {{"number", task.reason_number}});
}

std::string say_why(const Words& words, Why why) {
  return words.say(fmt::format("why.{}", why_word(why)));
}

std::string say_note(const Words& words, DayNote note) {
  if (note == DayNote::none) return {};
  return words.say(fmt::format("notes.{}", note_word(note)));
}

std::string say_sensitivity(const Words& words, const Sensitivity& one) {
  const std::string percent = number_text((one.learning - 1) * 100);
  if (!one.days_late) return words.say("plan.longer_never", {{"percent", percent}});
  if (*one.days_late == 0) return words.say("plan.longer_fits", {{"percent", percent}});
  return words.count("plan.longer_late", *one.days_late, {{"percent", percent}});
}

std::string say_task(const Words& words, const Task& task) {
  if (covers(task.drill, Covers::starts)) return say_cue_starts(words, task);
  return say_drill(words, task.drill, task.steps.empty() ? 1 : task.steps[0].times,
                   bar_range(task.bars.first, task.bars.last));
}

std::string say_drill(const Words& words, Drill drill, int tasks, const std::string& bars) {
  const std::string key = fmt::format("drills.{}", drill_word(drill));
  switch (facts_of(drill).covers) {
    case Covers::piece:
      return words.count(key, tasks);
    case Covers::starts:
      return words.say(key + "_in", {{"bars", bars}});
    case Covers::chunk:
    case Covers::bars:
      return words.say(key, {{"bars", bars}});
  }
  return {};
}

std::string piece_mark(const Plan& plan, int piece) {
  return plan.pieces.size() > 1 ? fmt::format("[{}] ", piece + 1) : "";
}

std::string say_left_out(const Words& words, const Plan& plan, const LeftOut& kind) {
  std::vector<std::string> bars;
  for (const BarRange& range : kind.bars) bars.push_back(bar_range(range.first, range.last));
  const std::string named = say_drill(words, kind.drill, kind.tasks, list_text(words, bars));
  return words.say("plan.unplaced", {{"work", piece_mark(plan, kind.piece) + named},
                                     {"minutes", minutes_text(kind.minutes)},
                                     {"why", say_why(words, kind.why)}});
}

}  // namespace cahier
