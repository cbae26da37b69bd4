#include "plan/due/task_maker.h"

#include <algorithm>
#include <utility>

#include "plan/due/task_tempo.h"
#include "plan/spoken_steps.h"

namespace cahier {

TaskMaker::TaskMaker(const Analysis& analysis, const Method& method, int piece)
    : analysis_(analysis), method_(method), piece_(piece) {}

Step TaskMaker::together(int times) const { return {analysis_.planned.piece.parts(), {}, times}; }

Task TaskMaker::begun(Drill drill, BarRange bars, double minutes) const {
  Task task;
  task.piece = piece_;
  task.drill = drill;
  task.bars = bars;
  task.minutes = minutes;
  return task;
}

void TaskMaker::play_at(Task& task, double share) const {
  if (facts_of(task.drill).tempo != AtTempo::none)
    set_tempo(task, analysis_.planned.piece, analysis_.time, share);
}

std::vector<Step> TaskMaker::steps_of(Drill drill) const {
  const auto& parts = analysis_.planned.piece.parts();
  std::vector<Step> steps;
  switch (facts_of(drill).manner) {
    case Manner::apart_then_together:
      if (parts.size() > 1)
        for (auto part = parts.rbegin(); part != parts.rend(); ++part)
          steps.push_back({{*part}, {}, method_.repetitions});
      steps.push_back(together(method_.repetitions));
      break;
    case Manner::together:
      steps.push_back(together(1));
      break;
    case Manner::spoken_in_turn:
      steps = spoken_steps(parts, method_);
      break;
  }
  return steps;
}

Task TaskMaker::of_chunk(Drill drill, int chunk) const {
  const Chunk& of = analysis_.planned.chunks[chunk];
  Task task = begun(drill, of.bars, analysis_.time.minutes(drill, of.bars, of.level));
  play_at(task, analysis_.time.share(drill, of.level));
  task.chunks = {chunk};
  task.steps = steps_of(drill);
  return task;
}

double TaskMaker::minutes(Drill drill, BarRange bars) const {
  return analysis_.time.minutes(drill, bars, analysis_.level_in(bars));
}

Task TaskMaker::of_bars(Drill drill, BarRange bars) const {
  const int level = analysis_.level_in(bars);
  return of_bars(drill, bars, level, analysis_.time.share(drill, level));
}

Task TaskMaker::of_bars(Drill drill, BarRange bars, int level, double share) const {
  Task task = begun(drill, bars, analysis_.time.minutes(drill, bars, level));
  play_at(task, share);
  task.chunks = analysis_.chunks_in(bars);
  task.steps = steps_of(drill);
  return task;
}

Task TaskMaker::learn(int chunk) const { return of_chunk(Drill::learn, chunk); }
Task TaskMaker::spoken_part(int chunk) const { return of_chunk(Drill::spoken_part, chunk); }
Task TaskMaker::write_out(int chunk) const { return of_chunk(Drill::write_out, chunk); }
Task TaskMaker::join(BarRange bars) const { return of_bars(Drill::join, bars); }
Task TaskMaker::slow_pass(BarRange bars) const { return of_bars(Drill::slow_pass, bars); }
Task TaskMaker::counted_pass(BarRange bars) const { return of_bars(Drill::counted_pass, bars); }

Task TaskMaker::run_through() const {
  return of_bars(Drill::run_through, analysis_.planned.piece.whole());
}

Task TaskMaker::recall(BarRange bars, double progress) const {
  const int level = analysis_.level_in(bars);
  return of_bars(Drill::recall, bars, level, raised(level, progress));
}

double TaskMaker::raised(int level, double progress) const {
  const double share = analysis_.time.share(Drill::learn, level);
  return share + (1 - share) * std::clamp(progress, 0.0, 1.0);
}

Task TaskMaker::fork_drill(const std::vector<int>& cues, std::vector<PlayedWay> ways) const {
  Task task = cue_starts(cues, 0);
  task.fork = true;
  task.ways = std::move(ways);
  play_at(task, raised(level_of(cues), 0));
  return task;
}

int TaskMaker::level_of(const std::vector<int>& cues) const {
  int level = 1;
  for (const int cue : cues)
    level = std::max(level, analysis_.level_in(analysis_.starts[cue - 1].bars));
  return level;
}

Task TaskMaker::cue_starts(const std::vector<int>& cues, int throws, double progress) const {
  BarRange bars = analysis_.planned.piece.whole();
  if (!cues.empty()) {
    bars = analysis_.starts[cues.front() - 1].bars;
    for (const int cue : cues) {
      bars.first = std::min(bars.first, analysis_.starts[cue - 1].bars.first);
      bars.last = std::max(bars.last, analysis_.starts[cue - 1].bars.last);
    }
  }
  const int starts = static_cast<int>(cues.size()) + throws;
  const int level =
      throws > 0 ? analysis_.level_in(analysis_.planned.piece.whole()) : level_of(cues);
  Task task = begun(Drill::cue_starts, bars, analysis_.time.cue_starts(starts));
  for (const int cue : cues) {
    const StartFromCue& start = analysis_.starts[cue - 1];
    task.chunks.insert(task.chunks.end(), start.chunks.begin(), start.chunks.end());
    task.from_starts.push_back(start.bars);
  }
  play_at(task, raised(level, progress));
  std::sort(task.chunks.begin(), task.chunks.end());
  task.chunks.erase(std::unique(task.chunks.begin(), task.chunks.end()), task.chunks.end());
  task.steps = {together(starts)};
  task.cues = cues;
  task.throws = throws;
  return task;
}

}  // namespace cahier
