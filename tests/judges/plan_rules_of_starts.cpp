// Rules 7 to 9: cue starts and their dice, look-alikes, Temper.
#include <algorithm>
#include <cmath>
#include <map>

#include "plan_rules.h"

namespace judge {
namespace {

// Each part said while the others are played, then played and said itself; at last all together.
bool spoken_as_taught(const Task& task, const std::vector<std::string>& parts) {
  std::size_t at = 0;
  for (std::size_t turn = 0; turn < parts.size(); ++turn) {
    if (at >= task.steps.size()) return false;
    const Step& others = task.steps[at++];
    if (others.say.empty() || others.parts.size() + 1 != parts.size() || others.times < 1 ||
        std::count(others.parts.begin(), others.parts.end(), others.say) > 0)
      return false;
    if (parts.size() > 3) continue;
    if (at >= task.steps.size()) return false;
    const Step& own = task.steps[at++];
    if (own.say != others.say || own.parts != std::vector{own.say} || own.times < 1) return false;
  }
  return at + 1 == task.steps.size() && task.steps[at].say.empty() &&
         task.steps[at].parts.size() == parts.size();
}

}  // namespace

void Judge::judge_cues(const Piece& piece) {
  for (std::size_t index = 0; index < piece.cues.size(); ++index)
    if (piece.cues[index].number != static_cast<int>(index) + 1) say(7, "cue numbers");
  // In bar order those of a first edition, and in each later one those it adds, at the end.
  std::set<int> bars;
  for (std::size_t index = 0; index < piece.cues.size(); ++index) {
    const Cue& cue = piece.cues[index];
    const std::string start = "cue start " + std::to_string(cue.number);
    if (!bars.insert(cue.bar).second) say(7, start + " is at the bar of another");
    if (index == 0) continue;
    const Cue& before = piece.cues[index - 1];
    if (before.is_new && !cue.is_new) say(7, start + " was there before one that is new");
    if ((plan_.edition == 1 || before.is_new) && cue.bar < before.bar)
      say(7, start + " is before the one before it");
  }
  for (const Section& section : piece.sections) {
    int inside = 0;
    bool at_start = false;
    for (const Cue& cue : piece.cues) {
      if (cue.bar == section.bars.first)
        at_start = true;
      else if (section.bars.holds(cue.bar))
        ++inside;
    }
    if (!at_start) say(7, "section " + section.name + " has no cue at its start");
    if (section.bars.size() > 16 && inside == 0)
      say(7, "section " + section.name + " is long and has no cue inside");
  }
}

void Judge::judge_dice(const Piece& piece) {
  std::multiset<int> cues;
  for (const Dice& table : piece.dice) {
    const int outcomes = static_cast<int>(std::lround(std::pow(table.faces, table.count)));
    const int rows = static_cast<int>(table.rows.size());
    if (table.name != std::to_string(table.count) + "d" + std::to_string(table.faces))
      say(7, "the dice are called " + table.name);
    if (!table.order_matters) say(7, "a sum of dice is never an index");
    if (rows < 1 || rows > outcomes) {
      say(7, "a dice table of " + std::to_string(rows) + " rows");
      continue;
    }
    const auto weight_of = [&](const Dice::Row& row) {
      return piece.cues.at(static_cast<std::size_t>(row.cue) - 1).weight;
    };
    int weights = 0;
    for (const Dice::Row& row : table.rows) weights += weight_of(row);
    std::set<std::vector<int>> seen;
    const auto take = [&](const std::vector<std::vector<int>>& thrown) {
      for (const std::vector<int>& faces_up : thrown) {
        const bool sound = static_cast<int>(faces_up.size()) == table.count &&
                           std::all_of(faces_up.begin(), faces_up.end(),
                                       [&](int face) { return face >= 1 && face <= table.faces; });
        if (!sound || !seen.insert(faces_up).second) say(7, "an outcome is wrong or given twice");
      }
    };
    for (const Dice::Row& row : table.rows) {
      cues.insert(row.cue);
      if (static_cast<int>(row.outcomes.size()) != outcomes / weights * weight_of(row))
        say(7, "the shares of the dice are not in proportion");
      take(row.outcomes);
    }
    take(table.again);
    if (static_cast<int>(seen.size()) != outcomes) say(7, "outcomes are missing");
  }
  std::multiset<int> numbers;
  for (const Cue& cue : piece.cues) numbers.insert(cue.number);
  if (cues != numbers) say(7, "the dice do not bring each cue once");
}

void Judge::judge_look_alikes(const Piece& piece) {
  for (const LookAlikes& alike : piece.look_alikes) {
    for (std::size_t one = 0; one < alike.passages.size(); ++one)
      for (std::size_t other = one + 1; other < alike.passages.size(); ++other) {
        const std::set<int> left = chunks_in(piece, alike.passages[one]);
        const std::set<int> right = chunks_in(piece, alike.passages[other]);
        for (const int chunk : left)
          for (const int twin : right)
            if (!right.contains(chunk) && !left.contains(twin) && day_of(chunk) >= plan_.first &&
                day_of(chunk) == day_of(twin))
              say(8, piece.chunks[chunk].id + " and " + piece.chunks[twin].id +
                         " look alike and are new on one day");
      }
    if (!plan_.fits) continue;
    for (const int fork : alike.forks) judge_fork(piece, alike, fork);
  }
}

void Judge::judge_fork(const Piece& piece, const LookAlikes& alike, int fork) {
  When learned{-1, -1};
  for (const Bars& passage : alike.passages)
    for (const int chunk : chunks_in(piece, passage)) learned = std::max(learned, learned_[chunk]);
  const bool drilled = std::any_of(tasks_.begin(), tasks_.end(), [&](const Placed& placed) {
    if (placed.task->drill != "cue_starts" || placed.when <= learned) return false;
    return std::any_of(placed.task->cues.begin(), placed.task->cues.end(), [&](int number) {
      const int bar = piece.cues.at(static_cast<std::size_t>(number) - 1).bar;
      return bar <= fork && fork - bar <= asked_.chunk_most;
    });
  });
  if (!drilled) say(8, "the fork at bar " + std::to_string(fork) + " is never drilled");
}

// Whether a slow or counted pass over all of the chunk, where it stands, lies before the day.
bool Judge::passed_before(const Piece& piece, int chunk, int day) const {
  const Bars& bars = piece.chunks[static_cast<std::size_t>(chunk)].bars;
  return std::any_of(tasks_.begin(), tasks_.end(), [&](const Placed& placed) {
    const Task& task = *placed.task;
    return (task.drill == "slow_pass" || task.drill == "counted_pass") &&
           task.bars.first <= bars.first && bars.last <= task.bars.last && placed.when.first < day;
  });
}

void Judge::judge_ways(const Piece& piece) {
  for (const Placed& placed : tasks_)
    for (const Bars& way : placed.task->ways) {
      const std::string what = at(placed) + " goes from " + std::to_string(way.first) + " to " +
                               std::to_string(way.last);
      const auto is_fork_of = [&](const LookAlikes& alike) {
        return way.last - way.first <= 1 &&
               std::count(alike.forks.begin(), alike.forks.end(), way.last) > 0;
      };
      const bool goes_back = way.last <= way.first;
      const bool is_known =
          goes_back ||
          std::any_of(piece.look_alikes.begin(), piece.look_alikes.end(), is_fork_of) ||
          std::any_of(piece.ways_on.begin(), piece.ways_on.end(),
                      [&](const Bars& on) { return on.first == way.first && on.last == way.last; });
      if (!is_known) say(8, what + ", which is no way on");
      for (const int bar : {way.first, way.last}) {
        const int chunk = piece.chunk_of(bar);
        if (chunk < 0 || day_of(chunk) < 0 || day_of(chunk) >= placed.when.first)
          say(8, what + " before both are learned");
      }
    }
}

void Judge::judge_rejoin(const Piece& piece) {
  for (const int bar : piece.rejoin)
    for (const LookAlikes& alike : piece.look_alikes)
      for (std::size_t at = 0; at < alike.passages.size(); ++at)
        if (alike.passages[at].holds(bar) && bar < alike.forks[at])
          say(8, "one rejoins at " + std::to_string(bar) + ", before look-alikes part");
}

void Judge::judge_temper(const Piece& piece) {
  std::map<std::string, std::map<int, int>> first;  // by drill: the day each chunk first has it
  for (const Placed& placed : tasks_) {
    const Task& task = *placed.task;
    if (task.stage != "temper" || is_past(placed)) continue;
    if (asked_.temper == "no") say(9, at(placed) + " was not asked for");
    if (task.drill == "spoken_part" && piece.parts.size() < 2)
      say(9, at(placed) + " with a single part");
    if (task.drill == "spoken_part" && !spoken_as_taught(task, piece.parts))
      say(9, at(placed) + ": steps");
    for (const int chunk : chunks_in(piece, task.bars)) {
      if (day_of(chunk) < 0 || day_of(chunk) >= placed.when.first)
        say(9, at(placed) + " is not learned on an earlier day");
      if (!passed_before(piece, chunk, placed.when.first))
        say(9, at(placed) + " comes before a slow or counted pass");
      if (asked_.temper == "weak" && piece.chunks[chunk].level < asked_.weak_level)
        say(9, at(placed) + " is not weak");
      first[task.drill].emplace(chunk, placed.when.first);
    }
  }
  for (const auto& [drill, days] : first)
    for (const auto& [chunk, day] : days)
      for (const auto& [other, later] : days)
        if (later > day && piece.chunks[other].level > piece.chunks[chunk].level &&
            passed_before(piece, other, day))
          say(9, piece.chunks[chunk].id + " has its " + drill + " before the weaker " +
                     piece.chunks[other].id);
}

}  // namespace judge
