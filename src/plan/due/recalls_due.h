// What has been learned and recalled so far in a plan being made, and what is due.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/tempo_steps.h"
#include "practice/method.h"

namespace cahier {

// Bars to recall on a day, and how pressing that is.
struct Want {
  BarRange bars;
  std::vector<int> chunks;
  int stretch = 0;
  bool whole = false;   // all of the stretch, and none of it for the first time
  bool first = false;   // holds a first recall
  bool weak = false;    // what slips, by itself: sooner than the rest
  bool must = false;    // another day would be too late
  double ripeness = 0;  // days since the last recall, in best gaps
  int left = 0;         // days to the date, counted from the last recall
};

// Days are indices into the calendar, which begins with what is past; the date itself has index
// `end`.
class RecallsDue {
 public:
  // `practice_days` in order, none before `first`, the first day of the plan. `to_the_edge` lets
  // gaps be as long as the rules allow when rounded to days; else they stay within the exact limit.
  // What was overdue when the plan began comes back within its first week. REQUIRES: everything
  // passed in outlives this object.
  RecallsDue(const Analysis& analysis, const Method& method, const std::vector<int>& practice_days,
             int first, int end, bool to_the_edge);

  void learn(int chunk, int day);
  // Played from memory. A chunk is recalled only where all of it is played in one go; what else is
  // played keeps to its own limit.
  void retrieve(const Task& task, int day);

  bool learned(int chunk) const { return learned_[chunk] >= 0; }
  bool learned_before(int chunk, int day) const { return learned(chunk) && learned_[chunk] < day; }
  bool learned_before(const std::vector<int>& chunks, int day) const;
  int learned_count() const { return learned_count_; }
  bool everything_learned() const { return learned_count_ == static_cast<int>(learned_.size()); }
  int last_learning_day() const { return last_learning_day_; }

  bool waits_for_first(int chunk) const { return learned(chunk) && recalled_[chunk] < 0; }
  // Whether a slow or counted pass was over the chunk, where it is learned, before `day`.
  bool passed_before(int chunk, int day) const {
    return passed_[chunk] >= 0 && passed_[chunk] < day;
  }
  // Whether the chunk's next recall would be late on the practice day after this one.
  bool must(int chunk, int position) const;

  // Days since all of the chunk was last played from memory or learned, in best gaps.
  double ripeness(int chunk, int day) const;
  // Whether all are learned, first recalled, and at least so many best gaps ago.
  bool ripe_enough(const std::vector<int>& chunks, int day, double gaps = 0.5) const;
  // The same of the bars that a start plays, as they stand.
  bool ripe_enough(const BarRange& bars, int day, double gaps = 0.5) const;

  // As in TempoSteps.
  double tempo_progress(const std::vector<int>& chunks, int day) const {
    return tempo_.progress(chunks, day);
  }
  double tempo_reached(const std::vector<int>& chunks) const {
    return tempo_.reached_progress(chunks);
  }
  TempoSteps& tempo() { return tempo_; }

  // Whether two days are at least half a best gap apart.
  bool far_enough(int day, int later) const { return later - day >= best(day) / 2; }

  // What should be recalled on a practice day. `position` is its place among the practice days;
  // `next_played` the day, from this one on, for which each stretch is set aside anyway, or -1.
  // What is set aside for this day is not wanted besides.
  std::vector<Want> wants(int position, const std::vector<int>& next_played) const;

  // What is worth recalling sooner than the best gap asks: what slips, what has not come back three
  // times in the first ten days, and what is not yet near its tempo.
  std::vector<Want> wants_sooner(int day) const;
  // Hard bars, more often than the others, where there are others.
  std::vector<Want> hard_on(int day) const;
  // Hard bars and those that slip, as far as they are not recalled on that day already.
  std::vector<Want> weak_on(int day) const;

  // Whether the chunk's recall is overdue on no practice day left, asked after the last day.
  bool holds_to_the_end(int chunk) const;

 private:
  int last(int chunk) const { return recalled_[chunk] >= 0 ? recalled_[chunk] : learned_[chunk]; }
  double best(int from_day) const { return best_gap_[end_ - from_day]; }
  int limit_day(int chunk) const;
  bool better_left(int chunk, int position, int next_played) const;
  bool weak_and_due(int chunk, int position) const;
  bool sooner(int chunk, int day) const;
  // Neighbouring chunks of one stretch that belong, put together.
  template <typename Belongs>
  std::vector<Want> runs_of(Belongs belongs) const;
  bool ends_before(int chunk, int first) const;
  void add_wants(const Stretch& stretch, int index, int position, int next_played,
                 std::vector<Want>& wants) const;

  const Analysis& analysis_;
  const Method& method_;
  const std::vector<int>& practice_days_;
  int end_;
  TempoSteps tempo_;
  std::vector<double> best_gap_;  // by days left
  std::vector<int> latest_;       // by day: the last day for the next recall
  std::vector<int> learned_;      // by chunk: day, or -1
  std::vector<int> recalled_;     // by chunk: last day on which all of it was played, or -1
  std::vector<int> turns_;        // by chunk: days on which all of it was recalled
  std::vector<int> passed_;       // by chunk: day of the first slow or counted pass, or -1
  std::vector<int> source_of_;    // by bar: where it is learned
  std::vector<int> chunk_of_;     // by bar where it is learned
  std::vector<int> played_;       // by bar where it is learned: last day, or -1
  std::vector<int> position_of_;  // by day: practice days before it
  bool slips_ = false;            // some of it more than it should
  int learned_count_ = 0;
  int last_learning_day_ = -1;
};

}  // namespace cahier
