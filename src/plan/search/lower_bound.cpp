#include "plan/search/lower_bound.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "plan/search/least_work.h"

namespace cahier {
namespace {

constexpr double kSliver = 1e-6;
constexpr ByLevel kAlike = {1, 1, 1, 1, 1};

using Portions = std::map<int, double>;  // half minutes to the most that such a task is worth

double worth(const ByLevel& notes, const ByLevel& weights) {
  return std::inner_product(notes.begin(), notes.end(), weights.begin(), 0.0);
}

void weigh(const std::set<Portion>& from, const ByLevel& weights, Portions& into) {
  for (const Portion& portion : from)
    into[portion.halves] = std::max(into[portion.halves], worth(portion.notes, weights));
}

// The most that can be done in so many half minutes, however they are filled with whole tasks.
class Fill {
 public:
  Fill(const Portions& portions, double longest)
      : most_(static_cast<std::size_t>(longest * 2 + kSliver) + 1, 0) {
    for (int room = 1; room < static_cast<int>(most_.size()); ++room) {
      most_[room] = most_[room - 1];
      for (const auto& [halves, notes] : portions) {
        if (halves > room) break;
        most_[room] = std::max(most_[room], most_[room - halves] + notes);
      }
    }
  }

  double in(double minutes) const {
    return minutes <= 0 ? 0 : most_[static_cast<std::size_t>(minutes * 2 + kSliver)];
  }

 private:
  std::vector<double> most_;
};

// The most that the days can take in when every chunk's first recall, of at least `recall` minutes,
// comes `within` so many practice days, and a run-through may do for the last chunks. Days may be
// given up to recalls.
double most_learned(const std::vector<double>& room, const Fill& fill, double recall, int within) {
  std::vector<double> whole;
  std::vector<double> less;  // what a recall takes from a day
  for (const double minutes : room) {
    whole.push_back(fill.in(minutes));
    less.push_back(whole.back() - fill.in(minutes - recall));
  }
  const double sum = std::accumulate(whole.begin(), whole.end(), 0.0);
  std::sort(whole.begin(), whole.end());
  std::sort(less.begin(), less.end());
  std::vector<double> lost(less.size() + 1, 0);
  std::partial_sum(less.begin(), less.end(), lost.begin() + 1);
  const int count = static_cast<int>(room.size());
  double best = 0;
  double given_up = 0;
  for (int free = 0; free <= count; ++free) {
    const int recalls = std::max(0, (count - free - 1) / std::max(1, within) - free);
    best = std::max(best, sum - given_up - lost[recalls]);
    if (free < count) given_up += whole[free];
  }
  return best;
}

// All pieces and all days, with what there can be at most of the one and is at least of the other.
class Bound {
 public:
  Bound(const std::vector<Piece>& pieces, const Terms& terms) : terms_(terms) {
    const std::vector<Day> all = calendar(terms);
    for (std::size_t day = 0; day < all.size(); ++day)
      if (all[day].allowance > 0) {
        room_.push_back(all[day].allowance);
        may_learn_.push_back(static_cast<int>(all.size() - day) > terms.method.quiet_days);
      }
    if (room_.empty()) return;
    longest_ = *std::max_element(room_.begin(), room_.end());
    for (const Piece& piece : pieces) works_.push_back(least_work(piece, terms));
  }

  bool could_fit() const {
    if (room_.empty()) return false;
    const bool each = std::all_of(works_.begin(), works_.end(), [&](const LeastWork& work) {
      return work.largest <= longest_ + kSliver && runs_have_room(0, work);
    });
    return each && in_all() && new_work();
  }

 private:
  bool is_alone(const LeastWork& work) const { return work.run > longest_; }

  // Whether a piece's run-throughs have room from a position among the practice days on.
  bool runs_have_room(std::size_t from, const LeastWork& work) const {
    int runs = 0;
    int on_days = 0;
    for (std::size_t i = from; i < room_.size(); ++i) {
      const int today = is_alone(work) ? 1
                                       : std::min(terms_.method.runs_a_day,
                                                  static_cast<int>(room_[i] / work.run + kSliver));
      runs += today;
      on_days += today > 0 ? 1 : 0;
    }
    return runs >= terms_.runs_required() && on_days >= terms_.method.run_days;
  }

  // Everything together: by minutes, and as whole tasks fill the days; of those once with every
  // minute at the notes worth the same, once with what each level asks worth its share of a day.
  bool in_all() const {
    // Run-throughs that stand alone take whole days; the shortest ones at best.
    int alone = 0;
    double total = 0;
    for (const LeastWork& work : works_) {
      total += work.learning + work.once_through;
      if (is_alone(work))
        alone += terms_.runs_required();
      else
        total += work.run * terms_.runs_required();
    }
    if (alone > static_cast<int>(room_.size())) return false;
    std::vector<double> shared = room_;
    std::sort(shared.begin(), shared.end());
    shared.erase(shared.begin(), shared.begin() + alone);
    const double room = std::accumulate(shared.begin(), shared.end(), 0.0);
    if (total > room + kSliver) return false;
    if (shared.empty()) return true;
    const double mean = room / static_cast<double>(shared.size());
    return fills(shared, kAlike, 1) && fills(shared, shares_of(mean), 1 / mean);
  }

  // Whether whole tasks that are worth so much can fill the days with all there is to do.
  bool fills(const std::vector<double>& days, const ByLevel& learning, double running) const {
    double needed = 0;
    Portions portions;
    for (const LeastWork& work : works_) {
      needed += worth(work.notes, learning);
      weigh(work.chunks, learning, portions);
      if (is_alone(work)) continue;
      needed += work.run * running * terms_.runs_required();
      double& most = portions[static_cast<int>(work.run * 2 + kSliver)];
      most = std::max(most, work.run * running);
    }
    const Fill fill(portions, longest_);
    double most = 0;
    for (const double minutes : days) most += fill.in(minutes);
    return needed <= most * (1 + kSliver);
  }

  // The days on which something new may come: of a single piece those before its run-throughs.
  std::vector<double> days_to_learn() const {
    std::size_t end = room_.size();
    if (works_.size() == 1)
      while (end > 0 && !runs_have_room(end, works_.front())) --end;
    std::vector<double> minutes;
    for (std::size_t i = 0; i < end; ++i)
      if (may_learn_[i]) minutes.push_back(room_[i]);
    return minutes;
  }

  // What is new has its place, with the first recalls: once with all notes worth the same, once
  // with each level's notes worth the share of a day that they take.
  bool new_work() const {
    const std::vector<double> minutes = days_to_learn();
    const double sum = std::accumulate(minutes.begin(), minutes.end(), 0.0);
    double learning = 0;
    double recall = longest_;
    ByLevel notes{};
    for (const LeastWork& work : works_) {
      learning += work.learning;
      recall = std::min(recall, work.recall);
      for (std::size_t level = 0; level < notes.size(); ++level) notes[level] += work.notes[level];
    }
    if (minutes.empty()) return learning <= 0;
    if (learning > sum + kSliver) return false;
    const double mean = sum / static_cast<double>(minutes.size());
    for (const ByLevel& weights : {kAlike, shares_of(mean)}) {
      Portions portions;
      for (const LeastWork& work : works_) weigh(work.chunks, weights, portions);
      const double most =
          most_learned(minutes, Fill(portions, longest_), recall, terms_.method.first_recall_days);
      if (worth(notes, weights) > most * (1 + kSliver)) return false;
    }
    return true;
  }

  // By level: the share of a day of so many minutes that a minute at the notes takes when tasks of
  // that level fill it as well as they can.
  ByLevel shares_of(double minutes) const {
    ByLevel shares{};
    for (std::size_t level = 0; level < shares.size(); ++level) {
      ByLevel only{};
      only[level] = 1;
      Portions portions;
      for (const LeastWork& work : works_) weigh(work.chunks, only, portions);
      const double notes = Fill(portions, minutes).in(minutes);
      if (notes > 0) shares[level] = 1 / notes;
    }
    return shares;
  }

  const Terms& terms_;
  std::vector<double> room_;  // minutes of each practice day
  std::vector<bool> may_learn_;
  double longest_ = 0;
  std::vector<LeastWork> works_;
};

}  // namespace

bool could_fit(const std::vector<Piece>& pieces, const Terms& terms) {
  return Bound(pieces, terms).could_fit();
}

}  // namespace cahier
