// Rule 9: Temper only when asked for, after a slow or counted pass, the weakest bars first.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

constexpr int kLevels = 6;  // index 1 … 5

bool is_asked_for(const Plan& plan, const Weakness& chunk) {
  return plan.temper == Temper::yes ||
         (plan.temper == Temper::weak && chunk.level >= plan.method.weak_level);
}

// By chunk: the day of its first slow or counted pass where it is learned, or a day never reached.
std::vector<int> pass_days(const IndexedPlan& indexed, const IndexedPiece& piece) {
  std::vector<int> passed(piece.chunks().size(), indexed.day_count());
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (task.piece != piece.index ||
        (task.drill != Drill::slow_pass && task.drill != Drill::counted_pass))
      return;
    for (std::size_t chunk = 0; chunk < passed.size(); ++chunk)
      if (task.bars.contains(piece.chunks()[chunk].bars))
        passed[chunk] = std::min(passed[chunk], moment.day);
  });
  return passed;
}

// One drill of one piece: which chunks in a pass it has not touched yet, counted by level.
class Waiting {
 public:
  Waiting(const IndexedPlan& indexed, const IndexedPiece& piece)
      : plan_(indexed.plan),
        piece_(piece),
        touched_(piece.chunks().size(), false),
        passed_(pass_days(indexed, piece)) {
    for (std::size_t chunk = 0; chunk < piece.chunks().size(); ++chunk)
      if (piece.learned[chunk] && is_asked_for(plan_, piece.weakness[chunk]))
        by_day_.push_back(static_cast<int>(chunk));
    std::sort(by_day_.begin(), by_day_.end(),
              [&](int one, int other) { return passed_[one] < passed_[other]; });
  }

  void pass_before(int day) {
    for (; next_ < by_day_.size() && passed_before(by_day_[next_], day); ++next_)
      if (!touched_[by_day_[next_]]) ++count_[piece_.weakness[by_day_[next_]].level];
  }

  bool passed_before(int chunk, int day) const { return passed_[chunk] < day; }

  int weakest() const {
    int level = kLevels - 1;
    while (level > 0 && count_[level] == 0) --level;
    return level;
  }

  // REQUIRES pass_before(day of the task).
  void touch(int chunk, int day) {
    if (touched_[chunk]) return;
    touched_[chunk] = true;
    const Weakness& done = piece_.weakness[chunk];
    if (is_asked_for(plan_, done) && piece_.learned[chunk] && passed_before(chunk, day))
      --count_[done.level];
  }

  bool touched(int chunk) const { return touched_[chunk]; }

 private:
  const Plan& plan_;
  const IndexedPiece& piece_;
  std::vector<bool> touched_;
  std::vector<int> passed_;  // by chunk: day
  std::vector<int> by_day_;  // of the first pass
  std::size_t next_ = 0;
  std::array<int, kLevels> count_{};
};

// Whether the log tells of a slip in a chunk on that day or later.
bool has_slipped_since(const IndexedPlan& indexed, const IndexedPiece& piece, int chunk, int day) {
  const auto lies_in_chunk = [&](int bar) { return piece.chunk_at[bar] == chunk; };
  const auto& done = indexed.plan.record.done;
  return std::any_of(done.begin(), done.end(), [&](const Done& one) {
    if (one.piece != piece.index || one.date < indexed.days[day]->date) return false;
    const bool slipped =
        one.slips && std::any_of(one.slips->begin(), one.slips->end(), lies_in_chunk);
    return slipped || std::any_of(one.missed.begin(), one.missed.end(), lies_in_chunk);
  });
}

void check_task(IndexedPlan& indexed, const Moment& moment, const Task& task, Waiting& waiting) {
  const IndexedPiece& piece = indexed.pieces[task.piece];
  const std::string what = in_words(indexed, moment);
  if (task.drill == Drill::spoken_part && piece.planned->piece.parts().size() < 2)
    indexed.violation(9, Kind::only_part_spoken, what + " speaks the only part");
  if (indexed.plan.temper == Temper::no)
    indexed.violation(9, Kind::temper_not_asked_for, what + " is not asked for");
  waiting.pass_before(moment.day);
  const std::vector<int> chunks = piece.touched(task.bars);
  int level = kLevels - 1;
  for (const int chunk : chunks) {
    level = std::min(level, piece.weakness[chunk].level);
    if (!waiting.passed_before(chunk, moment.day))
      indexed.violation(9, Kind::temper_before_pass,
                        fmt::format("{} tempers chunk {} before a slow or counted pass", what,
                                    piece.chunks()[chunk].id));
    if (indexed.plan.temper == Temper::weak && !is_asked_for(indexed.plan, piece.weakness[chunk]))
      indexed.violation(
          9, Kind::temper_not_weak,
          fmt::format("{} tempers chunk {}, which is not weak", what, piece.chunks()[chunk].id));
  }
  for (const int chunk : task.chunks) waiting.touch(chunk, moment.day);
  if (waiting.weakest() > level)
    indexed.violation(9, Kind::temper_before_weaker,
                      fmt::format("{} comes before a weaker chunk (level {}) that waits", what,
                                  waiting.weakest()));
}

// Once, by the piece itself: what only slips ask for, or ask for again, is welcome where there is
// room.
bool is_required(const IndexedPlan& indexed, const IndexedPiece& piece, int chunk, Drill drill) {
  const Plan& plan = indexed.plan;
  if (plan.temper == Temper::no || !piece.learned[chunk]) return false;
  const Piece& music = piece.planned->piece;
  if (plan.temper == Temper::weak &&
      music.hardest_level(piece.chunks()[chunk].bars) < plan.method.weak_level)
    return false;
  const Instrument& instrument = music.instrument;
  return drill == Drill::write_out || (instrument.parts.size() > 1 && instrument.has_hands);
}

bool said_to_give_way(const Plan& plan, int piece, Drill drill, const BarRange& bars) {
  return std::any_of(plan.let_go.begin(), plan.let_go.end(), [&](const Unplaced& work) {
    return work.piece == piece && work.drill == drill && work.bars.contains(bars);
  });
}

}  // namespace

void check_temper(IndexedPlan& indexed) {
  for (const Drill drill : {Drill::spoken_part, Drill::write_out}) {
    std::vector<Waiting> waiting;
    std::set<std::pair<int, int>> done;  // piece and chunk, before the plan
    for (const IndexedPiece& piece : indexed.pieces) waiting.emplace_back(indexed, piece);
    indexed.each_task([&](const Moment& moment, const Task& task) {
      if (task.drill != drill) return;
      Waiting& own = waiting[task.piece];
      const IndexedPiece& piece = indexed.pieces[task.piece];
      if (!indexed.is_past(moment)) return check_task(indexed, moment, task, own);
      own.pass_before(moment.day);
      for (const int chunk : task.chunks) done.insert({task.piece, chunk});
      for (const int chunk : task.chunks)
        if (!piece.weakness[chunk].raised || !has_slipped_since(indexed, piece, chunk, moment.day))
          own.touch(chunk, moment.day);
    });
    for (const IndexedPiece& piece : indexed.pieces)
      for (int chunk = 0; chunk < static_cast<int>(piece.chunks().size()); ++chunk) {
        const Chunk& wanted = piece.chunks()[chunk];
        if (is_required(indexed, piece, chunk, drill) && !waiting[piece.index].touched(chunk) &&
            !done.contains({piece.index, chunk}) &&
            !said_to_give_way(indexed.plan, piece.index, drill, wanted.bars))
          indexed.violation(9, Kind::temper_missing,
                            fmt::format("chunk {} ({}) is asked for in Temper but has no {}",
                                        wanted.id, in_words(wanted.bars), drill_word(drill)));
      }
  }
}

}  // namespace cahier
