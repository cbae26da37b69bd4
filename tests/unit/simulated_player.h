// A player who does not exist: how long things really take and where memory really lapses, from a
// seed. What is true of the player is written down, so that what a log makes of it can be held
// against it.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

#include "plan/plan.h"
#include "practice/time_model.h"
#include "sample_chance.h"

namespace cahier::sample {

// The truth, which the planner does not know.
struct PlayerTruth {
  ByLevel pace{1, 1, 1, 1, 1};  // learning takes so many times the method's minutes, by level
  double spread = 0.2;          // of the logarithm of a time
  std::vector<BarRange> weak;   // where they are learned
  double weak_slip = 0.5;       // each time such a chunk is played from memory
  double strong_slip = 0.05;    // … and each of the others
  double miss_a_day = 0.08;

  bool is_weak(BarRange bars) const {
    return std::any_of(weak.begin(), weak.end(),
                       [&](const BarRange& one) { return one.overlaps(bars); });
  }
};

// Something done on a day.
struct ReportedTask {
  Task task;
  double minutes;                      // it took, to the half minute
  std::vector<int> slips;              // bars as printed, of all drills but cue starts
  std::vector<int> hit, missed;        // cue starts, by number
  std::vector<std::vector<int>> runs;  // of a run-through task: the slips of each
};

// One practice day as it went.
struct PractisedDay {
  Date date;
  double allowance = 0;
  bool missed = false;
  std::vector<ReportedTask> deeds;
  std::vector<Task> undone;

  double minutes() const {
    double sum = 0;
    for (const ReportedTask& deed : deeds) sum += deed.minutes;
    return sum;
  }
  std::size_t runs() const {
    std::size_t sum = 0;
    for (const ReportedTask& deed : deeds) sum += deed.runs.size();
    return sum;
  }
};

class SimulatedPlayer {
 public:
  // `usual` is the method before anything is known of the player; it and the piece outlive this.
  SimulatedPlayer(const Piece& piece, const Method& usual, PlayerTruth truth, unsigned seed)
      : piece_(piece), time_(piece, usual), truth_(std::move(truth)), chance_(seed) {}

  // Whether the bar, or the one whose notes it has, was learned on an earlier day.
  bool learned_before(int bar, Date date) const {
    const auto found = learned_.find(piece_.learned_bar(bar));
    return found != learned_.end() && found->second < date;
  }

  // Goes through a day by its panel: first what tests memory of a day that was missed, then what is
  // set, in its order. What has been begun is finished; nothing is begun once the day's minutes are
  // up. Tasks that need bars not learned yet are left out, and no day has more than two
  // run-throughs.
  PractisedDay practise(const PlannedPiece& planned, const Day& day) {
    PractisedDay done;
    done.date = day.date;
    done.allowance = day.allowance;
    done.missed = chance_.happens(truth_.miss_a_day);
    if (done.missed) {
      done.undone = day.tasks;
      for (const Task& task : day.tasks)
        if (is_made_good(task)) waiting_.push_back(task);
      return done;
    }
    std::vector<Task> tasks;
    for (const Task& task : waiting_)
      if (std::none_of(day.tasks.begin(), day.tasks.end(),
                       [&](const Task& other) { return is_in_place_of(other, task); }))
        tasks.push_back(task);
    waiting_.clear();
    tasks.insert(tasks.end(), day.tasks.begin(), day.tasks.end());
    for (const Task& task : tasks)
      if (done.minutes() >= done.allowance || !do_task(planned, task, done))
        done.undone.push_back(task);
    return done;
  }

  // A new workbook: what is left of the one before is in it again.
  void turn_to_next_book() { waiting_.clear(); }

 private:
  // Whatever tests memory of bars that are set: not what the dice alone decide.
  static bool is_made_good(const Task& task) {
    return retrieves(task.drill) && (task.drill != Drill::cue_starts || !task.cues.empty());
  }

  // Whether what is set for today does for something missed as well.
  static bool is_in_place_of(const Task& today, const Task& missed) {
    if (missed.drill == Drill::run_through) return false;
    if (missed.drill == Drill::cue_starts)
      return std::includes(today.cues.begin(), today.cues.end(), missed.cues.begin(),
                           missed.cues.end());
    return retrieves(today.drill) && today.drill != Drill::cue_starts &&
           today.bars.contains(missed.bars);
  }

  bool do_task(const PlannedPiece& planned, const Task& task, PractisedDay& day) {
    ReportedTask deed{task, time_taken(task), {}, {}, {}, {}};
    switch (task.drill) {
      case Drill::learn:
        for (int bar = task.bars.first; bar <= task.bars.last; ++bar) learned_[bar] = day.date;
        break;
      case Drill::join:
        if (!is_learned(task.bars, day.date + days{1})) return false;
        deed.slips = play(planned, task.bars);
        break;
      case Drill::recall:
      case Drill::slow_pass:
      case Drill::counted_pass:
        if (!is_learned(task.bars, day.date)) return false;
        deed.slips = play(planned, task.bars);
        break;
      case Drill::cue_starts:
        if (!start_anywhere(planned, day.date, deed)) return false;
        break;
      case Drill::run_through:
        if (!is_learned(task.bars, day.date) || day.runs() >= 2) return false;
        for (int run = 0; run < task.steps.front().times; ++run)
          deed.runs.push_back(play(planned, task.bars));
        break;
      case Drill::spoken_part:
      case Drill::write_out:
      case Drill::silent_run:
        if (!is_learned(task.bars, day.date)) return false;
        break;
    }
    day.deeds.push_back(std::move(deed));
    return true;
  }

  double time_taken(const Task& task) {
    constexpr double kOtherSpread = 0.1;  // of what is no learning
    double minutes = task.minutes;
    double spread = kOtherSpread;
    if (task.drill == Drill::learn) {
      int level = 1;
      for (int bar = task.bars.first; bar <= task.bars.last; ++bar)
        level = std::max(level, piece_.level_at(bar));
      minutes = time_.learn(task.bars, level) * truth_.pace[level - 1];
      spread = truth_.spread;
    }
    const double taken = minutes * std::exp(spread * chance_.normal());
    return std::max(0.5, std::round(taken * 2) / 2);
  }

  bool is_learned(BarRange bars, Date before) const {
    for (int bar = bars.first; bar <= bars.last; ++bar)
      if (!learned_before(bar, before)) return false;
    return true;
  }

  // The chunks, and shares of chunks in a return, one after the other in `bars`.
  std::vector<BarRange> passages(const PlannedPiece& planned, BarRange bars) const {
    std::vector<BarRange> found;
    int before = -1;
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      const int source = piece_.learned_bar(bar);
      const int chunk = chunk_at(planned, source);
      const bool goes_on = chunk == before && piece_.learned_bar(bar - 1) + 1 == source;
      if (!goes_on) found.push_back({bar, bar});
      found.back().last = bar;
      before = chunk;
    }
    return found;
  }

  static int chunk_at(const PlannedPiece& planned, int learned_bar) {
    const auto& chunks = planned.chunks;
    return static_cast<int>(
        std::find_if(chunks.begin(), chunks.end(),
                     [&](const Chunk& chunk) { return chunk.bars.contains(learned_bar); }) -
        chunks.begin());
  }

  double slip_of(BarRange passage) const {
    const BarRange source{piece_.learned_bar(passage.first), piece_.learned_bar(passage.last)};
    return truth_.is_weak(source) ? truth_.weak_slip : truth_.strong_slip;
  }

  std::vector<int> play(const PlannedPiece& planned, BarRange bars) {
    std::vector<int> slips;
    for (const BarRange& passage : passages(planned, bars))
      if (chance_.happens(slip_of(passage)))
        slips.push_back(chance_.number(passage.first, passage.last));
    return slips;
  }

  // The starts that are assigned, and then so many by the dice; a start into bars not learned yet
  // is thrown again.
  bool start_anywhere(const PlannedPiece& planned, Date date, ReportedTask& deed) {
    const auto can_start = [&](int number) {
      return learned_before(planned.cues[number - 1].bar, date);
    };
    const auto& assigned = deed.task.cues;
    if (!std::all_of(assigned.begin(), assigned.end(), can_start)) return false;
    if (std::none_of(planned.cues.begin(), planned.cues.end(),
                     [&](const CueStart& cue) { return can_start(cue.number); }))
      return false;
    for (const int number : assigned) begin(planned, number, deed);
    for (int left = deed.task.throws; left > 0;) {
      const int number = throw_dice(planned);
      if (number == 0 || !can_start(number)) continue;
      begin(planned, number, deed);
      --left;
    }
    return true;
  }

  void begin(const PlannedPiece& planned, int number, ReportedTask& deed) {
    const int bar = planned.cues[number - 1].bar;
    (chance_.happens(slip_of({bar, bar})) ? deed.missed : deed.hit).push_back(number);
  }

  // One throw on a table of dice; 0 for "throw again".
  int throw_dice(const PlannedPiece& planned) {
    const int tables = static_cast<int>(planned.dice.size());
    const DiceTable& table = planned.dice[chance_.number(0, tables - 1)];
    std::vector<int> thrown;
    for (int die = 0; die < table.count; ++die) thrown.push_back(chance_.number(1, table.faces));
    for (const DiceTable::Row& row : table.rows)
      if (std::count(row.outcomes.begin(), row.outcomes.end(), thrown) > 0) return row.cue;
    return 0;
  }

  const Piece& piece_;
  TimeModel time_;
  PlayerTruth truth_;
  Chance chance_;
  std::map<int, Date> learned_;  // by bar, where it is learned
  std::vector<Task> waiting_;    // to be made good
};

}  // namespace cahier::sample
