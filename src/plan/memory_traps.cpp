#include "plan/memory_traps.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

bool jumps(ForkFrom from) { return from == ForkFrom::repeat || from == ForkFrom::ending; }

class TrapWeights {
 public:
  explicit TrapWeights(const Piece& piece) : piece_(piece), learned_(piece.learned_bars()) {}

  MemoryTrap weigh(const Fork& fork, int index) const {
    MemoryTrap trap{index};
    for (std::size_t at = 0; at < fork.ways.size(); ++at) {
      if (at == 0 && fork.ways.size() > 1) continue;
      const MemoryTrap pair = weigh(fork, fork.ways.front(), fork.ways[at]);
      if (pair.danger > trap.danger) trap = {index, pair.bars_alike, pair.danger};
    }
    return trap;
  }

 private:
  MemoryTrap weigh(const Fork& fork, const WayOn& one, const WayOn& other) const {
    const Parting* told = piece_.parting_of(one.to, other.to);
    MemoryTrap pair;
    pair.bars_alike = std::min(bars_before(fork, one), bars_before(fork, other));
    const bool same_bars = one.at == other.at;
    if (told && !same_bars) pair.bars_alike = std::max(pair.bars_alike, told->alike);
    pair.danger = fork_danger(pair.bars_alike, told ? told->likeness : 0);
    if (fork.from == ForkFrom::repeat) pair.danger *= numbers::kDangerOfRepeat;
    const bool meet_again = told ? told->apart == 1 : is_same(one.to + 1, other.to + 1);
    if (meet_again) pair.danger *= numbers::kDangerOfOneBar;
    return pair;
  }

  static int bars_before(const Fork& fork, const WayOn& way) {
    return jumps(fork.from) ? way.alike.size() : way.to - way.alike.first;
  }

  // Whether two bars are learned as one, as far as the form tells.
  bool is_same(int one, int other) const {
    const auto end = static_cast<int>(learned_.size());
    return one != other && one < end && other < end && learned_[one] == learned_[other];
  }

  const Piece& piece_;
  std::vector<int> learned_;
};

// Whether a bar stands before the fork in any of the passages that are alike.
bool leads_into(const Fork& fork, int bar) {
  return !jumps(fork.from) && std::ranges::any_of(fork.ways, [&](const WayOn& way) {
    return way.alike.first <= bar && bar < way.to;
  });
}

const CueStart* start_beyond(const PlannedPiece& piece, const Method& method, const Fork& fork,
                             const WayOn& way) {
  const CueStart* first = nullptr;
  for (const CueStart& cue : piece.cues)
    if (cue.bar >= way.to && cue.bar < way.to + method.chunk_most && !leads_into(fork, cue.bar) &&
        (!first || cue.bar < first->bar))
      first = &cue;
  return first;
}

}  // namespace

std::vector<MemoryTrap> memory_traps(const PlannedPiece& piece) {
  const TrapWeights weights(piece.piece);
  std::vector<MemoryTrap> traps;
  for (std::size_t fork = 0; fork < piece.forks.size(); ++fork)
    traps.push_back(weights.weigh(piece.forks[fork], static_cast<int>(fork)));
  std::ranges::stable_sort(traps, [&](const MemoryTrap& one, const MemoryTrap& other) {
    if (one.danger != other.danger) return one.danger > other.danger;
    return piece.forks[one.fork].ways.front().to < piece.forks[other.fork].ways.front().to;
  });
  return traps;
}

bool plays_way(const Task& task, const WayOn& way) {
  return std::ranges::any_of(task.ways, [&](const PlayedWay& played) {
    return played.at == way.at && played.to == way.to;
  });
}

TrapAnswers answers_to(const Plan& plan, int piece, const Fork& fork) {
  const auto any_way = [&](auto holds) { return std::ranges::any_of(fork.ways, holds); };
  TrapAnswers answers;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (task.piece != piece) continue;
      if (task.fork && any_way([&](const WayOn& way) { return plays_way(task, way); }))
        answers.fork_drills.push_back({day.date, &task});
      if (!any_way([&](const WayOn& way) { return task.bars.contains(way.to); })) continue;
      if (task.drill == Drill::spoken_part) answers.spoken_parts.push_back({day.date, &task});
      if (task.drill == Drill::write_out) answers.write_outs.push_back({day.date, &task});
    }
  const PlannedPiece& planned = plan.pieces[piece];
  for (const WayOn& way : fork.ways)
    if (const CueStart* cue = start_beyond(planned, plan.method, fork, way);
        cue && std::ranges::find(answers.starts, cue) == answers.starts.end())
      answers.starts.push_back(cue);
  std::ranges::sort(answers.starts, {}, [](const CueStart* cue) { return cue->bar; });
  return answers;
}

}  // namespace cahier
