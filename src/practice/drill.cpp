#include "practice/drill.h"

#include <optional>

#include "practice/method.h"
#include "text/rows.h"

namespace cahier {
namespace {

constexpr std::optional<DrillFacts> row_of(Drill drill) {
  switch (drill) {
    case Drill::learn:
      return DrillFacts{.drill = drill,
                        .word = "learn",
                        .noun = "learning",
                        .counted = "weeks.new",
                        .stage = Stage::build,
                        .covers = Covers::chunk,
                        .manner = Manner::apart_then_together,
                        .tempo = AtTempo::of_learning,
                        .share = nullptr,
                        .part = DayPart::fresh,
                        .rank = 1,
                        .last_days = LastDays::never,
                        .retrieves = false,
                        .takes_score = true,
                        .needs_instrument = true,
                        .plays_across = false,
                        .in_one_go = false,
                        .slips = Slips::nowhere};
    case Drill::join:
      return DrillFacts{.drill = drill,
                        .word = "join",
                        .noun = "join",
                        .counted = "weeks.joins",
                        .stage = Stage::build,
                        .covers = Covers::bars,
                        .manner = Manner::together,
                        .tempo = AtTempo::share,
                        .share = &Method::join_tempo,
                        .part = DayPart::after,
                        .rank = 5,
                        .last_days = LastDays::if_it_must,
                        .retrieves = false,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = true,
                        .in_one_go = true,
                        .slips = Slips::with_the_day};
    case Drill::recall:
      return DrillFacts{.drill = drill,
                        .word = "recall",
                        .noun = "recall",
                        .counted = "weeks.recalls",
                        .stage = Stage::build,
                        .covers = Covers::bars,
                        .manner = Manner::together,
                        .tempo = AtTempo::share,
                        .share = &Method::recall_tempo,
                        .part = DayPart::cold,
                        .rank = 1,
                        .last_days = LastDays::if_it_must,
                        .retrieves = true,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = true,
                        .in_one_go = false,
                        .slips = Slips::with_the_day};
    case Drill::cue_starts:
      return DrillFacts{.drill = drill,
                        .word = "cue_starts",
                        .noun = "cue start",
                        .counted = "weeks.cue_starts",
                        .stage = Stage::prove,
                        .covers = Covers::starts,
                        .manner = Manner::together,
                        .tempo = AtTempo::share,
                        .share = &Method::recall_tempo,
                        .part = DayPart::after,
                        .rank = 6,
                        .last_days = LastDays::welcome,
                        .retrieves = true,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = false,
                        .in_one_go = false,
                        .slips = Slips::on_start_sheet};
    case Drill::slow_pass:
      return DrillFacts{.drill = drill,
                        .word = "slow_pass",
                        .noun = "slow pass",
                        .counted = "weeks.slow",
                        .stage = Stage::prove,
                        .covers = Covers::bars,
                        .manner = Manner::together,
                        .tempo = AtTempo::share,
                        .share = &Method::slow_tempo,
                        .part = DayPart::cold,
                        .rank = 2,
                        .last_days = LastDays::if_it_must,
                        .retrieves = true,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = true,
                        .in_one_go = true,
                        .slips = Slips::with_the_day};
    case Drill::counted_pass:
      return DrillFacts{.drill = drill,
                        .word = "counted_pass",
                        .noun = "counted pass",
                        .counted = "weeks.counted",
                        .stage = Stage::prove,
                        .covers = Covers::bars,
                        .manner = Manner::together,
                        .tempo = AtTempo::share,
                        .share = &Method::counted_tempo,
                        .part = DayPart::cold,
                        .rank = 2,
                        .last_days = LastDays::if_it_must,
                        .retrieves = true,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = true,
                        .in_one_go = true,
                        .slips = Slips::with_the_day};
    case Drill::run_through:
      return DrillFacts{.drill = drill,
                        .word = "run_through",
                        .noun = "run-through",
                        .counted = "weeks.runs",
                        .stage = Stage::prove,
                        .covers = Covers::piece,
                        .manner = Manner::together,
                        .tempo = AtTempo::full,
                        .share = nullptr,
                        .part = DayPart::cold,
                        .rank = 0,
                        .last_days = LastDays::welcome,
                        .retrieves = true,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = false,
                        .in_one_go = true,
                        .slips = Slips::with_the_run};
    case Drill::spoken_part:
      return DrillFacts{.drill = drill,
                        .word = "spoken_part",
                        .noun = "spoken part",
                        .counted = "weeks.spoken",
                        .stage = Stage::temper,
                        .covers = Covers::chunk,
                        .manner = Manner::spoken_in_turn,
                        .tempo = AtTempo::share,
                        .share = &Method::spoken_tempo,
                        .part = DayPart::after,
                        .rank = 3,
                        .last_days = LastDays::if_it_must,
                        .retrieves = false,
                        .takes_score = false,
                        .needs_instrument = true,
                        .plays_across = false,
                        .in_one_go = false,
                        .slips = Slips::nowhere};
    case Drill::write_out:
      return DrillFacts{.drill = drill,
                        .word = "write_out",
                        .noun = "write-out",
                        .counted = "weeks.write_outs",
                        .stage = Stage::temper,
                        .covers = Covers::chunk,
                        .manner = Manner::together,
                        .tempo = AtTempo::none,
                        .share = nullptr,
                        .part = DayPart::after,
                        .rank = 4,
                        .last_days = LastDays::if_it_must,
                        .retrieves = false,
                        .takes_score = false,
                        .needs_instrument = false,
                        .plays_across = false,
                        .in_one_go = false,
                        .slips = Slips::nowhere};
    case Drill::silent_run:
      return DrillFacts{.drill = drill,
                        .word = "silent_run",
                        .noun = "silent play-through",
                        .counted = "weeks.silent",
                        .stage = Stage::prove,
                        .covers = Covers::bars,
                        .manner = Manner::together,
                        .tempo = AtTempo::none,
                        .share = nullptr,
                        .part = DayPart::after,
                        .rank = 2,
                        .last_days = LastDays::if_it_must,
                        .retrieves = false,
                        .takes_score = false,
                        .needs_instrument = false,
                        .plays_across = false,
                        .in_one_go = true,
                        .slips = Slips::with_the_day};
  }
  return std::nullopt;
}

constexpr auto kRows = rows<Drill, row_of>();

}  // namespace

std::span<const DrillFacts> every_drill() { return kRows; }

const DrillFacts& facts_of(Drill drill) { return kRows[static_cast<std::size_t>(drill)]; }

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

}  // namespace cahier
