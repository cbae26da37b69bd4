#include "plan/schedule/day_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <list>
#include <map>
#include <utility>

#include "practice/numbers.h"

namespace cahier {
namespace {

// Takes the tasks of one part of the day in their order, each time the first that is not on the
// passage of the task before it, where there is one. Temper goes by weakness: what is weaker waits
// for nothing.
void append_apart(std::vector<Task>& ordered, std::list<Task> turn, const LevelOf& level_of) {
  while (!turn.empty()) {
    auto next = turn.begin();
    const auto overtakes = [&](const Task& task) {
      return stage_of(task.drill) == Stage::temper &&
             std::any_of(turn.begin(), turn.end(), [&](const Task& weaker) {
               return weaker.drill == task.drill && weaker.piece == task.piece &&
                      level_of(weaker) > level_of(task);
             });
    };
    if (!ordered.empty())
      next = std::find_if(turn.begin(), turn.end(), [&](const Task& task) {
        return !same_passage(task, ordered.back()) && !overtakes(task);
      });
    if (next == turn.end()) next = turn.begin();
    ordered.push_back(std::move(*next));
    turn.erase(next);
  }
}

// What a piece has on a day.
struct PieceDay {
  std::array<std::list<Task>, 3> parts;  // by part of the day
  bool has_run = false;

  std::list<Task>& part(DayPart of) { return parts[static_cast<std::size_t>(of)]; }
};

void append_all(std::vector<Task>& ordered, PieceDay& piece, const LevelOf& level_of) {
  for (std::list<Task>& part : piece.parts)
    append_apart(ordered, std::exchange(part, {}), level_of);
}

// The sitting of every task, counted from the last one back, when none may pass `most` minutes.
std::vector<int> sittings_from_the_end(const Day& day, double most) {
  std::vector<int> sittings(day.tasks.size(), 0);
  int sitting = 0;
  double filled = 0;
  for (int at = static_cast<int>(day.tasks.size()) - 1; at >= 0; --at) {
    if (filled > 0 && filled + day.tasks[at].minutes > most) {
      ++sitting;
      filled = 0;
    }
    sittings[at] = sitting;
    filled += day.tasks[at].minutes;
  }
  return sittings;
}

// The same in at most `wanted` sittings, the longest as short as can be.
std::vector<int> sittings_from_the_end(const Day& day, int wanted) {
  double most = day.minutes() / wanted;
  std::vector<int> sittings = sittings_from_the_end(day, most);
  while (sittings.front() >= wanted) sittings = sittings_from_the_end(day, most += 0.5);
  return sittings;
}

// Whether a sitting of several tasks is longer than `most` minutes.
bool one_too_long(const Day& day, const std::vector<int>& sittings, double most) {
  double minutes = 0;
  for (std::size_t at = 0; at < sittings.size(); ++at) {
    const bool begins = at == 0 || sittings[at] != sittings[at - 1];
    minutes = begins ? day.tasks[at].minutes : minutes + day.tasks[at].minutes;
    if (!begins && minutes > most) return true;
  }
  return false;
}

double first_sitting(const Day& day, const std::vector<int>& sittings) {
  double minutes = 0;
  for (std::size_t at = 0; at < sittings.size() && sittings[at] == sittings.front(); ++at)
    minutes += day.tasks[at].minutes;
  return minutes;
}

}  // namespace

bool same_passage(const Task& one, const Task& other) {
  if (one.piece != other.piece) return false;
  // In the head nothing is played twice.
  if (one.drill == Drill::silent_run || other.drill == Drill::silent_run) return false;
  if (covers(one.drill, Covers::piece) || covers(other.drill, Covers::piece)) return false;
  const bool one_starts = covers(one.drill, Covers::starts);
  const bool other_starts = covers(other.drill, Covers::starts);
  const bool dice_alone = (one_starts && one.cues.empty()) || (other_starts && other.cues.empty());
  if (dice_alone) return false;
  const bool in_common = std::any_of(one.chunks.begin(), one.chunks.end(), [&](int chunk) {
    return std::find(other.chunks.begin(), other.chunks.end(), chunk) != other.chunks.end();
  });
  const std::vector<BarRange> played = one.played();
  const std::vector<BarRange> others = other.played();
  return in_common || std::any_of(played.begin(), played.end(), [&](const BarRange& bars) {
           return std::any_of(others.begin(), others.end(),
                              [&](const BarRange& also) { return bars.overlaps(also); });
         });
}

void put_in_order(Day& day, const LevelOf& level_of) {
  std::stable_sort(day.tasks.begin(), day.tasks.end(), [&](const Task& a, const Task& b) {
    const DrillFacts& one = facts_of(a.drill);
    const DrillFacts& other = facts_of(b.drill);
    if (one.part != other.part) return one.part < other.part;
    if (one.part == DayPart::fresh) return level_of(a) > level_of(b);
    return one.rank < other.rank;
  });
  std::map<int, PieceDay> pieces;
  std::vector<Task> last;
  for (Task& task : day.tasks) {
    PieceDay& piece = pieces[task.piece];
    const bool second = task.drill == Drill::run_through && std::exchange(piece.has_run, true);
    if (second)
      last.push_back(std::move(task));
    else
      piece.parts[static_cast<std::size_t>(facts_of(task.drill).part)].push_back(std::move(task));
  }
  // What is new stands behind all that is recalled; a piece without anything new is done with at
  // once, so that the pieces change as seldom as may be.
  std::vector<PieceDay*> with_new;
  std::vector<Task> ordered;
  for (auto& [number, piece] : pieces)
    if (piece.part(DayPart::fresh).empty())
      append_all(ordered, piece, level_of);
    else
      with_new.push_back(&piece);
  std::stable_sort(with_new.begin(), with_new.end(), [&](PieceDay* one, PieceDay* other) {
    return level_of(one->part(DayPart::fresh).front()) <
           level_of(other->part(DayPart::fresh).front());
  });
  for (PieceDay* piece : with_new)
    append_apart(ordered, std::exchange(piece->part(DayPart::cold), {}), level_of);
  for (auto piece = with_new.rbegin(); piece != with_new.rend(); ++piece)
    append_all(ordered, **piece, level_of);
  for (Task& task : last) ordered.push_back(std::move(task));
  day.tasks = std::move(ordered);
}

void divide_into_sittings(Day& day, int blocks, double break_after) {
  // A day that hardly passes one block's share needs no break.
  if (day.tasks.empty()) return;
  const double minutes = day.minutes();
  const int by_blocks = std::min(
      blocks,
      static_cast<int>(std::ceil(minutes * blocks / (numbers::kHardlyABlock * day.allowance))));
  int wanted = std::max({1, by_blocks, static_cast<int>(std::ceil(minutes / break_after))});
  std::vector<int> sittings = sittings_from_the_end(day, wanted);
  // On a long day a break more, until none comes too late, and the first one in the first half or
  // after the first task.
  if (minutes > break_after)
    while (wanted < static_cast<int>(day.tasks.size()) &&
           (one_too_long(day, sittings, break_after) ||
            first_sitting(day, sittings) > std::max(minutes / 2, day.tasks.front().minutes)))
      sittings = sittings_from_the_end(day, ++wanted);
  for (std::size_t at = 0; at < sittings.size(); ++at)
    day.tasks[at].block = sittings.front() - sittings[at];
}

void number_tasks(std::vector<Day>& calendar) {
  std::map<std::pair<unsigned, unsigned>, int> numbers;
  for (Day& day : calendar) {
    const std::chrono::year_month_day date(day.date);
    const auto month = static_cast<unsigned>(date.month());
    const auto of_month = static_cast<unsigned>(date.day());
    for (Task& task : day.tasks)
      task.id = fmt::format("{:02}{:02}-{}", month, of_month, ++numbers[{month, of_month}]);
  }
}

}  // namespace cahier
