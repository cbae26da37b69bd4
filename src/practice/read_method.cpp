#include "practice/read_method.h"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "practice/method_reader.h"
#include "text/yaml.h"

namespace cahier {

Method read_method(const Source& source, std::string name, Diagnostics& diagnostics) {
  Method method;
  method.name = std::move(name);
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return method;
  const Diagnostics::Within within(diagnostics,
                                   fmt::format("while reading method \"{}\"", method.name));
  MethodReader read(source, *root, diagnostics);
  method.about = read.about();
  read.whole("chunk least", method.chunk_least, 1, 16);
  read.whole("chunk most", method.chunk_most, 1, 32);
  read.number("chunk minutes", method.chunk_minutes, 0.5, 120);
  read.whole("stretch bars", method.stretch_bars, 1, 200);
  read.whole("repetitions", method.repetitions, 1, 20);
  read.by_level("learn tempo", method.learn_tempo, 0.05, 1, "[0.6, 0.5, 0.45, 0.4, 0.33]");
  read.by_level("learn stumble", method.learn_stumble, 1, 10, "[1.2, 1.3, 1.5, 1.7, 2]");
  read.number("learn pause", method.learn_pause, 0, 60);
  read.number("setup", method.setup, 0, 300);
  read.number("join tempo", method.join_tempo, 0.05, 1);
  read.number("recall tempo", method.recall_tempo, 0.05, 1);
  read.number("slow tempo", method.slow_tempo, 0.05, 1);
  read.number("counted tempo", method.counted_tempo, 0.05, 1);
  read.number("proved tempo", method.proved_tempo, 0.05, 1);
  read.whole("proved times", method.proved_times, 1, 10);
  read.number("recall stumble", method.recall_stumble, 1, 10);
  read.number("cue start seconds", method.cue_start_seconds, 5, 600);
  read.whole("cue throws", method.cue_throws, 1, 12);
  read.whole("spoken times", method.spoken_times, 1, 10);
  read.whole("spoken own times", method.spoken_own_times, 1, 10);
  read.whole("spoken together times", method.spoken_together_times, 1, 10);
  read.number("spoken tempo", method.spoken_tempo, 0.05, 1);
  read.by_level("write out seconds", method.write_out_seconds, 1, 1800, "[20, 25, 35, 45, 60]");
  read.number("silent stumble", method.silent_stumble, 1, 10);
  read.whole("silent days", method.silent_days, 1, 60);
  read.number("run setup", method.run_setup, 0, 1800);
  read.number("minutes", method.minutes, 1, 480);
  read.whole("blocks", method.blocks, 1, 6);
  read.number("break minutes", method.break_minutes, 1, 60);
  read.number("break after", method.break_after, 5, 60);
  read.whole("quiet days", method.quiet_days, 0, 60);
  read.whole("first recall days", method.first_recall_days, 1, 7);
  read.whole("run throughs", method.run_throughs, 5, 60);
  read.whole("run throughs for a new performer", method.run_throughs_new, 5, 60);
  read.whole("run days", method.run_days, 3, 30);
  read.whole("runs a day", method.runs_a_day, 1, 2);
  read.whole("weak level", method.weak_level, 1, 5);
  read.number("learn share", method.learn_share, 0, 1);
  read.number("prove share", method.prove_share, 0, 0.8);
  read.spacing(method.spacing);
  read.number("longest gap", method.longest_gap, 1, 2);
  read.whole("criterion", method.criterion, 1, 10);
  read.whole("criterion days", method.criterion_days, 2, 60);
  read.number("hard gap", method.hard_gap, 0.01, 1);
  read.number("slip gap", method.slip_gap, 0.05, 1);
  read.whole("join days", method.join_days, 1, 30);
  read.whole("section days", method.section_days, 6, 60);
  read.whole("section bars", method.section_bars, 8, 200);
  read.whole("passes", method.passes, 1, 3);
  read.whole("second pass days", method.second_pass_days, 21, 366);
  read.number("first recall tempo", method.first_recall_tempo, 1, 2);
  read.number("tempo step", method.tempo_step, 0.02, 1);
  read.whole("session starts", method.session_starts, 1, 36);
  read.whole("sessions apart", method.sessions_apart, 1, 30);
  read.whole("fork drills", method.fork_drills, 1, 3);
  read.whole("fork drill days", method.fork_drill_days, 14, 366);
  read.whole("last fork days", method.last_fork_days, 3, 60);
  read.number("spoken and written share", method.temper_share, 0, 0.9);
  read.whole("spoken and written quiet days", method.temper_quiet_days, 0, 60);
  read.whole("first run days", method.first_run_days, 2, 60);
  read.runs_apart(method.runs_apart);
  read.falling_days("last run days", method.last_run_days, 7);
  read.falling_days("listener days", method.listener_days, 60);
  read.number("crumbs", method.crumbs, 0.05, 0.9);
  read.number("least learn share", method.least_learn_share, 0, 1);
  read.number("most learn share", method.most_learn_share, 0, 1);
  read.whole("prove days", method.prove_days, 0, 366);
  read.whole("upkeep gap", method.upkeep_gap, 1, 60);
  read.whole("upkeep growth", method.upkeep_growth, 1, 10);
  read.whole("upkeep whole turn", method.upkeep_whole_turn, 1, 20);
  read.by_level("slip chance", method.slip_chance, 0.001, 0.9, "[0.02, 0.04, 0.08, 0.15, 0.25]");
  read.number("slip weight", method.slip_weight, 0.5, 100);
  read.number("pace of players", method.pace_of_players, 0.01, 2);
  read.number("pace of levels", method.pace_of_levels, 0.01, 2);
  read.number("pace of times", method.pace_of_times, 0.01, 2);
  read.require(
      method.chunk_most >= method.least_chunk_most(), "chunk most", "chunk least",
      fmt::format("with chunks of at least {} bars, \"chunk most\" must be at least {}, or "
                  "some phrases cannot be divided",
                  method.chunk_least, method.least_chunk_most()));
  read.require(std::is_sorted(method.slip_chance.begin(), method.slip_chance.end()), "slip chance",
               "slip chance",
               "a harder level cannot have a smaller chance of a slip than an easier one");
  read.require(method.least_learn_share <= method.most_learn_share, "most learn share",
               "least learn share", "the most for learning cannot be less than the least");
  read.require(method.run_throughs_new >= method.run_throughs, "run throughs for a new performer",
               "run throughs", "a new performer cannot need fewer run-throughs than others");
  read.finish();
  return method;
}

}  // namespace cahier
