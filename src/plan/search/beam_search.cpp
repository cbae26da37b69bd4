#include "plan/search/beam_search.h"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>

#include "plan/search/quickest_tasks.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// What one day holds.
struct Choice {
  Played recalls;
  Played joins;
  Mask learned = 0;
  bool forks = false;
  int runs = 0;
};

struct Beginning {
  Mask learned = 0;
  Mask waiting = 0;  // learned and not recalled yet
  Mask joined = 0;
  Mask forked = 0;
  std::array<short, kMostInMask> played{};  // by chunk: position of the last play
  int runs = 0;
  int run_days = 0;
  Choice last{};    // of its last day
  int before = -1;  // the beginning a day shorter, among those of that day
  double left = 0;  // minutes that are surely still to be spent

  auto key() const { return std::tie(learned, waiting, joined, forked, played, runs, run_days); }
};

class BeamSearch {
 public:
  BeamSearch(const TinyPiece& piece, Effort& effort) : piece_(piece), effort_(effort) {}

  // By position, the beginnings that end there; without the last days where there are none.
  std::vector<std::vector<Beginning>> run() {
    std::vector<std::vector<Beginning>> by_day;
    std::vector<Beginning> now(1);
    for (position_ = 0; position_ < piece_.positions() && !now.empty(); ++position_) {
      next_.clear();
      for (std::size_t at = 0; at < now.size() && !effort_.used_up(); ++at)
        go_on(now[at], static_cast<int>(at));
      effort_.spend(static_cast<double>(next_.size()));
      by_day.push_back(best_of_next());
      now = by_day.back();
    }
    return by_day;
  }

  bool is_complete(const Beginning& one) const {
    return one.learned == piece_.all_chunks() && one.joined == only(count(piece_.joins)) - 1 &&
           one.forked == only(count(piece_.forks)) - 1 && one.runs >= piece_.runs &&
           one.run_days >= piece_.run_days;
  }

 private:
  template <typename Of>
  static int count(const std::vector<Of>& all) {
    return static_cast<int>(all.size());
  }

  int due(const Beginning& one, int chunk) const {
    return holds(one.waiting, chunk) ? piece_.first_by[one.played[chunk]]
                                     : piece_.again_by[one.played[chunk]];
  }

  void go_on(const Beginning& from, int index) {
    const bool all = from.learned == piece_.all_chunks();
    const int most_runs =
        all ? std::min(piece_.runs_a_day, std::max(1, piece_.runs - from.runs)) : 0;
    for (int runs = 0; runs <= most_runs; ++runs) {
      const double room = piece_.room[position_] - runs * piece_.run_through;
      if (room < 0) break;
      for (const bool forks : {false, true}) {
        const auto [ready, minutes] = ready_forks(from);
        if (forks && (ready == 0 || minutes > room)) continue;
        Choice choice;
        choice.runs = runs;
        choice.forks = forks;
        add_recalls(from, index, choice, room - (forks ? minutes : 0));
      }
    }
  }

  std::pair<Mask, double> ready_forks(const Beginning& from) const {
    Mask ready = 0;
    double minutes = 0;
    for (int fork = 0; fork < count(piece_.forks); ++fork) {
      if (holds(from.forked, fork) || (piece_.forks[fork].learned & ~from.learned) != 0) continue;
      ready |= only(fork);
      minutes += piece_.forks[fork].minutes;
    }
    return {ready, minutes};
  }

  // What must be recalled, and then more and more of what must be next, each with and without what
  // is still to be joined.
  void add_recalls(const Beginning& from, int index, const Choice& begun, double room) {
    std::vector<int> in_turn;
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk)
      if (holds(from.learned, chunk)) in_turn.push_back(chunk);
    std::stable_sort(in_turn.begin(), in_turn.end(),
                     [&](int a, int b) { return due(from, a) < due(from, b); });
    Mask wanted = 0;
    Mask played = 0;  // by run-throughs and forks
    if (begun.forks)
      for (int fork = 0; fork < count(piece_.forks); ++fork)
        if (holds(ready_forks(from).first, fork)) played |= piece_.forks[fork].recalled;
    if (begun.runs > 0) played = from.learned;
    std::set<std::pair<Mask, Mask>> seen;
    const auto offer = [&] {
      for (const Mask open : {Mask{0}, open_joins(from, from.learned)}) {
        Choice choice = begun;
        choice.recalls =
            quickest_tasks(piece_, from.learned, wanted & ~played, open, piece_.recall);
        if (choice.recalls.minutes > room) continue;
        if (!seen.insert({choice.recalls.passages, choice.recalls.begins}).second) continue;
        add_learning(from, index, choice, room - choice.recalls.minutes);
      }
    };
    std::size_t next = 0;
    for (; next < in_turn.size() && due(from, in_turn[next]) <= position_; ++next)
      wanted |= only(in_turn[next]);
    offer();
    for (; next < in_turn.size(); ++next) {
      wanted |= only(in_turn[next]);
      offer();
    }
  }

  // Joins whose chunks are all among `learned` and that were not played.
  Mask open_joins(const Beginning& from, Mask learned) const {
    Mask open = 0;
    for (int join = 0; join < count(piece_.joins); ++join)
      if (!holds(from.joined, join) && (piece_.joins[join].chunks & ~learned) == 0)
        open |= only(join);
    return open;
  }

  // As many new chunks as the day still holds, in every way.
  void add_learning(const Beginning& from, int index, const Choice& begun, double room) {
    if (!piece_.may_learn[position_] || from.runs + begun.runs > 0) {
      end_day(from, index, begun, room);
      return;
    }
    learn(from, index, begun, room, 0, 0);
  }

  void learn(const Beginning& from, int index, const Choice& begun, double room, int first,
             Mask chosen) {
    bool full = true;
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk) {
      if (holds(from.learned | chosen, chunk) || piece_.learning[chunk] > room ||
          (piece_.rivals[chunk] & chosen) != 0)
        continue;
      full = false;
      if (chunk >= first)
        learn(from, index, begun, room - piece_.learning[chunk], chunk + 1, chosen | only(chunk));
    }
    if (!full) return;
    Choice choice = begun;
    choice.learned = chosen;
    end_day(from, index, choice, room);
  }

  // With what can be joined in the time left, or without.
  void end_day(const Beginning& from, int index, Choice choice, double room) {
    const Mask learned = from.learned | choice.learned;
    add(from, index, choice);
    const Mask open = open_joins(from, learned) & ~joined_by(piece_, choice.recalls);
    if (open == 0) return;
    choice.joins = quickest_tasks(piece_, learned, 0, open, piece_.join);
    for (Mask left = open; choice.joins.minutes > room && left != 0;) {
      left &= left - 1;
      choice.joins = quickest_tasks(piece_, learned, 0, left, piece_.join);
    }
    if (choice.joins.passages != 0) add(from, index, choice);
  }

  void add(const Beginning& from, int index, const Choice& choice) {
    Beginning one = from;
    one.last = choice;
    one.before = index;
    const auto play = [&](int chunk) {
      one.played[chunk] = static_cast<short>(position_);
      one.waiting &= ~only(chunk);
    };
    for (int at = 0; at < piece_.passages(); ++at)
      if (holds(choice.recalls.passages & piece_.whole, at)) play(piece_.chunk_at[at]);
    if (choice.forks) {
      const Mask ready = ready_forks(from).first;
      for (int fork = 0; fork < count(piece_.forks); ++fork)
        for (int chunk = 0; chunk < piece_.chunks(); ++chunk)
          if (holds(ready, fork) && holds(piece_.forks[fork].recalled & from.learned, chunk))
            play(chunk);
      one.forked |= ready;
    }
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk) {
      if (choice.runs > 0) play(chunk);
      if (!holds(choice.learned, chunk)) continue;
      one.learned |= only(chunk);
      play(chunk);
      one.waiting |= only(chunk);
    }
    one.joined |= joined_by(piece_, choice.recalls) | joined_by(piece_, choice.joins);
    one.runs += choice.runs;
    one.run_days += choice.runs > 0 ? 1 : 0;
    if (is_hopeless(one)) return;
    one.left = minutes_left(one);
    next_.push_back(one);
  }

  // Whether something is late, or has not days enough.
  bool is_hopeless(const Beginning& one) const {
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk)
      if (holds(one.learned, chunk) && due(one, chunk) <= position_) return true;
    const int days_left = piece_.positions() - position_ - 1;
    if (piece_.run_days - one.run_days > days_left) return true;
    double learning = 0;
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk)
      if (!holds(one.learned, chunk)) learning += piece_.learning[chunk];
    double room = 0;
    const int proving = std::max(0, piece_.run_days - one.run_days);
    for (int at = position_ + 1; at + proving < piece_.positions(); ++at)
      if (piece_.may_learn[at]) room += piece_.room[at];
    return learning > room;
  }

  // A guess, to rank beginnings: what is to be learned, proved and drilled, and a recall of each
  // learned chunk as often as it must come back before the run-throughs.
  double minutes_left(const Beginning& one) const {
    double minutes = std::max(0, piece_.runs - one.runs) * piece_.run_through;
    const int until = piece_.positions() - std::max(1, piece_.run_days - one.run_days);
    for (int chunk = 0; chunk < piece_.chunks(); ++chunk) {
      if (!holds(one.learned, chunk)) {
        minutes += piece_.learning[chunk];
        continue;
      }
      const int place = piece_.place_of[chunk];
      for (int at = due(one, chunk); at < until; at = piece_.again_by[at])
        minutes += piece_.recall[place][place];
    }
    for (int fork = 0; fork < count(piece_.forks); ++fork)
      if (!holds(one.forked, fork)) minutes += piece_.forks[fork].minutes;
    return minutes;
  }

  // The first of those with the least left, none twice.
  std::vector<Beginning> best_of_next() {
    std::stable_sort(next_.begin(), next_.end(),
                     [](const Beginning& a, const Beginning& b) { return a.left < b.left; });
    std::vector<Beginning> best;
    const auto less = [](const Beginning* a, const Beginning* b) { return a->key() < b->key(); };
    std::set<const Beginning*, decltype(less)> kept(less);
    for (const Beginning& one : next_) {
      if (best.size() == numbers::kBeamWidth) break;
      if (kept.insert(&one).second) best.push_back(one);
    }
    return best;
  }

  const TinyPiece& piece_;
  Effort& effort_;
  int position_ = 0;
  std::vector<Beginning> next_;
};

}  // namespace

std::vector<std::vector<DayChoice>> beam_search(const TinyPiece& piece, const Analysis& analysis,
                                                Effort& effort) {
  BeamSearch search(piece, effort);
  const std::vector<std::vector<Beginning>> by_day = search.run();
  std::vector<std::vector<DayChoice>> plans;
  if (by_day.size() < piece.room.size()) return plans;
  for (const Beginning& complete : by_day.back()) {
    if (!search.is_complete(complete)) continue;
    std::vector<DayChoice> plan(by_day.size());
    const Beginning* at = &complete;
    for (std::size_t day = by_day.size(); day-- > 0;) {
      DayChoice& choice = plan[day];
      choice.recalls = bars_of(at->last.recalls, piece, analysis);
      choice.joins = bars_of(at->last.joins, piece, analysis);
      for (int chunk = 0; chunk < piece.chunks(); ++chunk)
        if (holds(at->last.learned, chunk)) choice.learned.push_back(chunk);
      choice.forks = at->last.forks;
      choice.runs = at->last.runs;
      if (day > 0) at = &by_day[day - 1][at->before];
    }
    plans.push_back(std::move(plan));
  }
  return plans;
}

}  // namespace cahier
