// The words of the JSON and of the catalogue's keys for a plan's enumerations.
#pragma once

#include <string>
#include <string_view>

#include "plan/left_out.h"
#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

constexpr std::string_view kDot = " · ";  // between what stands on one line

// "best_gap"; "none" without a reason. Also a key under "reasons".
std::string_view reason_word(Reason reason);
// "no_room_to_learn". Also a key under "why".
std::string_view why_word(Why why);
// "run_alone"; "none" without a note. Also a key under "notes".
std::string_view note_word(DayNote note);

// In a sentence; empty for Reason::none, and for DayNote::none.
std::string say_reason(const Words& words, const Task& task);
std::string say_why(const Words& words, Why why);
std::string say_note(const Words& words, DayNote note);

// "If learning takes 25 % longer than estimated, everything still fits."
std::string say_sensitivity(const Words& words, const Sensitivity& one);

// "learn 1–4", "cue starts 1, 3 and 2 throws", "2 run-throughs".
std::string say_task(const Words& words, const Task& task);

// "learn 1–4 and 9–12", "2 run-throughs", "cue starts in 1–48": so many tasks of one drill.
std::string say_drill(const Words& words, Drill drill, int tasks, const std::string& bars);

// "[2] " before what belongs to the second of several pieces; empty for a single piece.
std::string piece_mark(const Plan& plan, int piece);

// "join 17–24: 3 min; no practice day has room left to join these bars".
std::string say_left_out(const Words& words, const Plan& plan, const LeftOut& kind);

}  // namespace cahier
