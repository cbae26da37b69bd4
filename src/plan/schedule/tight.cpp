#include "plan/schedule/tight.h"

#include <algorithm>
#include <list>

#include "plan/due/growing_runs.h"
#include "plan/schedule/best_fill.h"
#include "plan/schedule/draft.h"
#include "plan/schedule/welcome_work.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

class TightLayout {
 public:
  TightLayout(const Work& work, const TightVariant& variant)
      : method_(work.terms.method), variant_(variant), draft_(work, true), random_(variant.seed) {
    waiting_.assign(work.order.begin(), work.order.end());
    if (variant.turn == TightVariant::Turn::backward) waiting_.reverse();
    if (variant.seed != 0) shuffle(work);
  }

  // `runs_from` is the first day that may hold a run-through.
  Schedule run(int runs_from) {
    for (auto& progress : draft_.pieces) {
      set_runs_aside(*progress, runs_from);
      if (variant_.welcome) progress->ask_for_halves();
    }
    for (int position = 0; position < static_cast<int>(draft_.practice_days.size()); ++position) {
      const int day = draft_.practice_days[position];
      if (!runs_alone(day)) fill(position, day);
      if (!draft_.schedule.unplaced.empty() || too_late_to_learn(day))
        return std::move(draft_.schedule);
      draft_.place_runs(day);
      draft_.finish(day);
    }
    draft_.collect_unplaced(true);
    return std::move(draft_.schedule);
  }

 private:
  bool runs_alone(int day) const { return draft_.schedule.days[day].note == DayNote::run_alone; }

  void set_runs_aside(PieceProgress& progress, int from) {
    const auto& days = draft_.schedule.days;
    const RunsAsked asked = progress.runs_asked(draft_.work.terms);
    const double minutes = progress.analysis.time.run_through();
    if (!variant_.chosen.empty()) return draft_.set_aside(progress, chosen_runs());
    if (variant_.runs == RunPlacing::growing)
      if (auto growing = choose_growing_runs(method_, days, draft_.room, from - 1, asked, minutes))
        return draft_.set_aside(progress, *std::move(growing));
    draft_.set_aside(progress, place_runs_tightly(method_, days, draft_.room, from, asked, minutes,
                                                  variant_.runs));
  }

  RunDays chosen_runs() const {
    RunDays days;
    days.runs.assign(draft_.schedule.days.size(), 0);
    for (std::size_t position = 0; position < variant_.chosen.size(); ++position)
      days.runs[draft_.practice_days[position]] = variant_.chosen[position].runs;
    return days;
  }

  // A number below `count`, from the seed.
  int draw(int count) {
    random_ = random_ * 1664525u + 1013904223u;  // a linear congruential generator; Knuth, TAOCP 2
    return static_cast<int>((random_ >> 16) % static_cast<unsigned>(count));
  }

  void shuffle(const Work& work) {
    std::vector<Work::Item> order = work.order;
    for (int left = static_cast<int>(order.size()); left > 1; --left)
      std::swap(order[left - 1], order[draw(left)]);
    waiting_.assign(order.begin(), order.end());
  }

  void vary_the_day() {
    constexpr Reach kReaches[] = {Reach::unsettled, Reach::ripe, Reach::all, Reach::due};
    variant_.reach = kReaches[draw(4)];
    variant_.recalls_grow = draw(2) == 1;
  }

  // Does what was chosen for the day; what has no room is missed.
  void follow(const DayChoice& choice, int day) {
    PieceProgress& progress = *draft_.pieces.front();
    for (const BarRange& bars : choice.recalls)
      if (!put_recall(progress, bars, progress.analysis.chunks_in(bars), day))
        draft_.miss(progress.make.recall(bars), Why::no_room_to_recall);
    for (const int chunk : choice.learned) {
      const auto item =
          std::find_if(waiting_.begin(), waiting_.end(),
                       [chunk](const Work::Item& waiting) { return waiting.chunk == chunk; });
      if (item != waiting_.end()) learn_one(item, day);
    }
    if (choice.forks) draft_.drill_forks(progress, day);
    for (const BarRange& bars : choice.joins) {
      Task task = progress.make.join(bars);
      task.reason = Reason::joins_new;
      if (task.minutes > draft_.room[day]) continue;
      progress.joins.played(task);
      draft_.put(std::move(task), day);
    }
  }

  void fill(int position, int day) {
    if (!variant_.chosen.empty()) {
      follow(variant_.chosen[position], day);
      if (variant_.welcome) add_welcome(position, day);
      return;
    }
    if (variant_.seed != 0) vary_the_day();
    const double kept = variant_.recalls_grow ? 0 : next_learning_minutes(day);
    for (auto& progress : draft_.pieces)
      recall(*progress, day, kept, true,
             [&](int chunk) { return progress->recalls.must(chunk, position); });
    learn(day);
    for (auto& progress : draft_.pieces) {
      draft_.drill_forks(*progress, day);
      recall(*progress, day, 0, false,
             [&](int chunk) { return progress->recalls.waits_for_first(chunk); });
    }
    // While there is something to learn, the recalls to come play most joins.
    for (auto& progress : draft_.pieces)
      if (progress->recalls.everything_learned() && progress->recalls.last_learning_day() < day)
        join(*progress, day);
    for (auto& progress : draft_.pieces) {
      recall(*progress, day, 0, false, [&](int chunk) {
        const bool weak = progress->analysis.planned.chunks[chunk].raised;
        return progress->recalls.ripeness(chunk, day) * (weak ? 2 : 1) >= numbers::kSoonDue;
      });
      join(*progress, day);
    }
    if (variant_.welcome) add_welcome(position, day);
  }

  // What room is left goes to what no rule asks for, what counts most first.
  void add_welcome(int position, int day) {
    more_.play_sections(day);
    more_.pass(day);
    for (auto& progress : draft_.pieces)
      for (Task& task : progress->starts_due.on_day(
               position, draft_.practice_days, draft_.end, progress->recalls, progress->make,
               progress->next_set_aside(day), draft_.room[day], true, 0)) {
        progress->recalls.retrieve(task, day);
        draft_.put(std::move(task), day);
      }
    more_.recall_sooner(day);
    more_.recall_hard(day);
    draft_.temper(position);
  }

  // Whether chunks wait that have no day left; names them as having no room.
  bool too_late_to_learn(int day) {
    for (const Work::Item& item : waiting_) {
      PieceProgress& progress = *draft_.pieces[item.piece];
      const int run = progress.next_run(-1);
      if (draft_.end - day - 1 > method_.quiet_days && (run < 0 || day + 1 < run)) continue;
      draft_.miss(progress.make.learn(item.chunk), Why::no_room_to_learn);
      return true;
    }
    return false;
  }

  double next_learning_minutes(int day) const {
    if (waiting_.empty()) return 0;
    const Work::Item& next = waiting_.front();
    const PieceProgress& progress = *draft_.pieces[next.piece];
    return may_learn(progress, next.chunk, day) ? progress.analysis.learn_minutes[next.chunk] : 0;
  }

  // Recalls the chunks that `due` names among those learned on an earlier day, each together with
  // as many of its neighbours as leave `kept` minutes of the day.
  void recall(PieceProgress& progress, int day, double kept, bool must, const Due& due) {
    if (progress.runs.runs[day] > 0) return;
    const int chunks = static_cast<int>(progress.analysis.planned.chunks.size());
    for (int chunk = 0; chunk < chunks; ++chunk) {
      if (!progress.recalls.learned_before(chunk, day) || !due(chunk)) continue;
      const auto [first, last] = reach_from(progress, chunk, day, draft_.room[day] - kept, due);
      if (put_recall(progress, first, last, day))
        chunk = last;
      else if (must)
        draft_.miss(progress.make.recall(progress.analysis.planned.chunks[chunk].bars),
                    Why::no_room_to_recall);
    }
  }

  // A recall over a join is quicker than the join played slowly.
  void join(PieceProgress& progress, int day) {
    recall_across_joins(progress, day);
    for (Task& task :
         progress.joins.take(progress.recalls, progress.make, draft_.room[day], {day, false}))
      draft_.put(std::move(task), day);
  }

  void recall_across_joins(PieceProgress& progress, int day) {
    const int chunks = static_cast<int>(progress.analysis.planned.chunks.size());
    for (int chunk = 0; chunk + 1 < chunks; ++chunk) {
      if (!progress.recalls.learned_before(chunk, day) || !follows(progress, chunk + 1, day))
        continue;
      if (!progress.joins.waits(chunk, chunk + 1)) continue;
      const auto none = [](int) { return false; };
      const auto [first, last] = reach_from(progress, chunk, day, draft_.room[day], none);
      if (last > chunk) put_recall(progress, first, last, day);
    }
  }

  std::pair<int, int> reach_from(const PieceProgress& progress, int chunk, int day, double room,
                                 const Due& due) const {
    return recall_reach(progress, chunk, day, room, variant_.reach, due);
  }

  bool put_recall(PieceProgress& progress, int first, int last, int day) {
    const auto& chunks = progress.analysis.planned.chunks;
    std::vector<int> played;
    for (int chunk = first; chunk <= last; ++chunk) played.push_back(chunk);
    return put_recall(progress, {chunks[first].bars.first, chunks[last].bars.last}, played, day);
  }

  bool put_recall(PieceProgress& progress, BarRange bars, const std::vector<int>& played, int day) {
    if (progress.make.minutes(Drill::recall, bars) > draft_.room[day]) return false;
    Task task = progress.make.recall(bars, progress.recalls.tempo_progress(played, day));
    task.reason = std::any_of(played.begin(), played.end(),
                              [&](int chunk) { return progress.recalls.waits_for_first(chunk); })
                      ? Reason::first_night
                      : Reason::last_chance;
    task.reason_number = draft_.end - day;
    progress.recalls.retrieve(task, day);
    progress.joins.played(task);
    draft_.put(std::move(task), day);
    return true;
  }

  bool may_learn(const PieceProgress& progress, int chunk, int day) const {
    if (draft_.end - day <= method_.quiet_days) return false;
    const int run = progress.next_run(-1);
    if (run >= 0 && day >= run) return false;
    const auto& rivals = progress.analysis.rivals[chunk];
    return std::none_of(rivals.begin(), rivals.end(), [&](int rival) {
      return progress.recalls.learned(rival) && !progress.recalls.learned_before(rival, day);
    });
  }

  void learn(int day) {
    if (variant_.turn == TightVariant::Turn::filling) return learn_what_fills(day);
    while (!waiting_.empty() && learn_one(waiting_.begin(), day)) {
    }
  }

  // Of the next few chunks those that fill the day best.
  void learn_what_fills(int day) {
    std::vector<std::list<Work::Item>::iterator> next;
    std::vector<double> minutes;
    for (auto item = waiting_.begin(); item != waiting_.end(); ++item) {
      const PieceProgress& progress = *draft_.pieces[item->piece];
      if (static_cast<int>(next.size()) == numbers::kLookAhead) break;
      if (!may_learn(progress, item->chunk, day)) continue;
      next.push_back(item);
      minutes.push_back(progress.analysis.learn_minutes[item->chunk]);
    }
    for (const int chosen : best_fill(minutes, draft_.room[day])) learn_one(next[chosen], day);
  }

  bool learn_one(std::list<Work::Item>::iterator item, int day) {
    PieceProgress& progress = *draft_.pieces[item->piece];
    if (progress.analysis.learn_minutes[item->chunk] > draft_.room[day]) return false;
    if (!may_learn(progress, item->chunk, day)) return false;
    Task task = progress.make.learn(item->chunk);
    task.reason = Reason::new_material;
    progress.recalls.learn(item->chunk, day);
    progress.joins.learned(item->chunk, day, progress.recalls);
    draft_.put(std::move(task), day);
    waiting_.erase(item);
    return true;
  }

  const Method& method_;
  TightVariant variant_;
  Draft draft_;
  std::list<Work::Item> waiting_;  // to be learned, in order
  unsigned random_;
  WelcomeWork more_{draft_};
};

}  // namespace

Schedule lay_tight(const Work& work, const TightVariant& variant) {
  if (!is_once_learned(variant.runs)) return TightLayout(work, variant).run(0);
  // When everything is learned shows once the run-throughs are out of the way.
  TightVariant late = variant;
  late.runs = RunPlacing::late;
  Schedule schedule = TightLayout(work, late).run(0);
  const auto unlearned = [](const Unplaced& one) { return one.why == Why::no_room_to_learn; };
  if (std::any_of(schedule.unplaced.begin(), schedule.unplaced.end(), unlearned)) return schedule;
  int learned = 0;
  for (int day = 0; day < static_cast<int>(schedule.days.size()); ++day)
    for (const Task& task : schedule.days[day].tasks)
      if (task.drill == Drill::learn) learned = day;
  return TightLayout(work, variant).run(learned + 1);
}

}  // namespace cahier
