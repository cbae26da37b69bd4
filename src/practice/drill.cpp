#include "practice/drill.h"

namespace cahier {

std::string_view drill_word(Drill drill) {
  switch (drill) {
    case Drill::learn:
      return "learn";
    case Drill::join:
      return "join";
    case Drill::recall:
      return "recall";
    case Drill::cue_starts:
      return "cue_starts";
    case Drill::slow_pass:
      return "slow_pass";
    case Drill::counted_pass:
      return "counted_pass";
    case Drill::run_through:
      return "run_through";
    case Drill::spoken_part:
      return "spoken_part";
    case Drill::write_out:
      return "write_out";
  }
  return "";
}

Stage stage_of(Drill drill) {
  switch (drill) {
    case Drill::learn:
    case Drill::join:
    case Drill::recall:
      return Stage::build;
    case Drill::cue_starts:
    case Drill::slow_pass:
    case Drill::counted_pass:
    case Drill::run_through:
      return Stage::prove;
    case Drill::spoken_part:
    case Drill::write_out:
      return Stage::temper;
  }
  return Stage::build;
}

std::string_view stage_word(Stage stage) {
  switch (stage) {
    case Stage::build:
      return "build";
    case Stage::prove:
      return "prove";
    case Stage::temper:
      return "temper";
  }
  return "";
}

bool retrieves(Drill drill) {
  return drill == Drill::recall || drill == Drill::cue_starts || drill == Drill::slow_pass ||
         drill == Drill::counted_pass || drill == Drill::run_through;
}

}  // namespace cahier
