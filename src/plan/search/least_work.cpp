#include "plan/search/least_work.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/chunks/divide.h"
#include "practice/time_model.h"

namespace cahier {
namespace {

class Reckoning {
 public:
  Reckoning(const Piece& piece, const Terms& terms)
      : piece_(piece), method_(terms.method), time_(piece, terms.method) {}

  LeastWork find() const {
    LeastWork least;
    int phrases = 0;
    for (const Section& section : divide_into_sections(piece_)) {
      if (section.same_as) continue;
      for (const BarRange& phrase : phrases_of(section)) {
        ++phrases;
        add(phrase, least);
      }
    }
    least.run = time_.run_through();
    least.recall = shortest_recall();
    // A single chunk has no neighbour to be joined with.
    if (phrases == 1 && counted(piece_.whole()) <= method_.chunk_most) least.once_through = 0;
    return least;
  }

 private:
  static int counted(BarRange bars) { return bars.size() - (bars.first == 0 ? 1 : 0); }

  // Over all ways of cutting the phrase: the least sums, and the least of the largest tasks.
  void add(BarRange phrase, LeastWork& least) const {
    constexpr double kNever = std::numeric_limits<double>::infinity();
    const int pickup = phrase.first == 0 ? 1 : 0;
    const int bars = counted(phrase);
    if (bars < method_.chunk_least) return add_chunk(phrase, least);
    std::vector<double> learning(bars + 1, kNever);
    std::vector<double> largest(bars + 1, kNever);
    learning[0] = largest[0] = 0;
    for (int end = 1; end <= bars; ++end)
      for (int size = method_.chunk_least; size <= std::min(end, method_.chunk_most); ++size) {
        if (learning[end - size] == kNever) continue;
        BarRange chunk{phrase.first + pickup + end - size, phrase.first + pickup + end - 1};
        if (end == size) chunk.first = phrase.first;
        const double learn = note_chunk(chunk, least);
        learning[end] = std::min(learning[end], learning[end - size] + learn);
        largest[end] = std::min(largest[end], std::max(largest[end - size], learn));
      }
    if (learning[bars] == kNever) return;  // cut in a way of its own
    least.learning += learning[bars];
    least.largest = std::max(least.largest, largest[bars]);
    add_phrase(phrase, least);
  }

  void add_chunk(BarRange chunk, LeastWork& least) const {
    const double learn = note_chunk(chunk, least);
    least.learning += learn;
    least.largest = std::max(least.largest, learn);
    add_phrase(chunk, least);
  }

  // Minutes to learn the chunk; it becomes one of those that a day may be filled with.
  double note_chunk(BarRange chunk, LeastWork& least) const {
    const int hardest = piece_.hardest_level(chunk);
    const double learn = time_.learn(chunk, hardest);
    least.chunks.insert({halves(learn), sum(chunk, [&](int bar) { return notes(bar); })});
    return learn;
  }

  // Every phrase's own share, whatever its chunks.
  void add_phrase(BarRange phrase, LeastWork& least) const {
    least.once_through += playing(phrase);
    for (int bar = phrase.first; bar <= phrase.last; ++bar) {
      least.notes[piece_.level_at(bar) - 1] += notes(bar);
    }
  }

  static int halves(double minutes) { return static_cast<int>(std::lround(minutes * 2)); }

  template <typename Minutes>
  ByLevel sum(BarRange bars, Minutes minutes) const {
    ByLevel by_level{};
    for (int bar = bars.first; bar <= bars.last; ++bar)
      by_level[piece_.level_at(bar) - 1] += minutes(bar);
    return by_level;
  }

  double notes(int bar) const {
    const int index = piece_.level_at(bar) - 1;
    return time_.playing({bar, bar}, 1) / method_.learn_tempo[index] *
           method_.learn_stumble[index] * time_.learning_steps() * method_.repetitions *
           method_.learn_factor;
  }

  // Every join asks that the bars on its two sides be played from memory, at the fastest tempo that
  // any drill across joins has.
  double playing(BarRange bars) const {
    double fastest = 0;
    for (const DrillFacts& facts : every_drill())
      for (int level = 1; facts.plays_across && level <= 5; ++level)
        fastest = std::max(fastest, time_.share(facts.drill, level));
    return time_.playing(bars, 1) / fastest * method_.recall_stumble;
  }

  // No run-through: it plays all of the piece.
  double shortest_recall() const {
    double shortest = std::numeric_limits<double>::infinity();
    for (const DrillFacts& facts : every_drill()) {
      if (!facts.retrieves || facts.covers == Covers::piece) continue;
      for (int bar = piece_.first_bar(); bar <= piece_.bars; ++bar)
        for (int level = 1; level <= 5; ++level)
          shortest = std::min(shortest, time_.minutes(facts.drill, {bar, bar}, level, 1));
    }
    return shortest;
  }

  const Piece& piece_;
  const Method& method_;
  TimeModel time_;
};

}  // namespace

LeastWork least_work(const Piece& piece, const Terms& terms) {
  return Reckoning(piece, terms).find();
}

}  // namespace cahier
