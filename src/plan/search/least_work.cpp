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
      : piece_(piece), terms_(terms), method_(terms.method), time_(piece, terms.method) {}

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
    std::vector<double> settled(bars + 1, kNever);
    std::vector<double> largest(bars + 1, kNever);
    learning[0] = settled[0] = largest[0] = 0;
    for (int end = 1; end <= bars; ++end)
      for (int size = method_.chunk_least; size <= std::min(end, method_.chunk_most); ++size) {
        if (learning[end - size] == kNever) continue;
        BarRange chunk{phrase.first + pickup + end - size, phrase.first + pickup + end - 1};
        if (end == size) chunk.first = phrase.first;
        const double learn = note_chunk(chunk, least);
        learning[end] = std::min(learning[end], learning[end - size] + learn);
        settled[end] = std::min(settled[end], settled[end - size] + learn + temper(chunk));
        largest[end] =
            std::min(largest[end], std::max({largest[end - size], learn, longest_drill(chunk)}));
      }
    if (learning[bars] == kNever) return;  // cut in a way of its own
    least.learning += learning[bars];
    least.settled += settled[bars];
    least.largest = std::max(least.largest, largest[bars]);
    add_phrase(phrase, least);
  }

  void add_chunk(BarRange chunk, LeastWork& least) const {
    const double learn = note_chunk(chunk, least);
    least.learning += learn;
    least.settled += learn + temper(chunk);
    least.largest = std::max({least.largest, learn, longest_drill(chunk)});
    add_phrase(chunk, least);
  }

  // Minutes to learn the chunk; it becomes one of those that a day may be filled with.
  double note_chunk(BarRange chunk, LeastWork& least) const {
    const int hardest = piece_.hardest_level(chunk);
    const double learn = time_.learn(chunk, hardest);
    least.chunks.insert({halves(learn), sum(chunk, [&](int bar) { return notes(bar); })});
    if (!is_tempered(hardest)) return learn;
    least.drills.insert({halves(time_.write_out(chunk, hardest)),
                         sum(chunk, [&](int bar) { return written(bar); })});
    if (speaks())
      least.drills.insert({halves(time_.spoken_part(chunk, hardest)),
                           sum(chunk, [&](int bar) { return spoken(bar); })});
    return learn;
  }

  // Every phrase's own share, whatever its chunks.
  void add_phrase(BarRange phrase, LeastWork& least) const {
    least.once_through += playing(phrase);
    for (int bar = phrase.first; bar <= phrase.last; ++bar) {
      const int level = piece_.level_at(bar);
      least.notes[level - 1] += notes(bar);
      if (is_tempered(level)) least.tempered[level - 1] += written(bar) + spoken(bar);
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

  bool speaks() const { return piece_.parts().size() > 1 && piece_.instrument.has_hands; }

  bool is_tempered(int level) const {
    return terms_.temper == Temper::yes ||
           (terms_.temper == Temper::weak && level >= method_.weak_level);
  }

  double notes(int bar) const {
    const int index = piece_.level_at(bar) - 1;
    return time_.playing({bar, bar}, 1) / method_.learn_tempo[index] *
           method_.learn_stumble[index] * time_.learning_steps() * method_.repetitions *
           method_.learn_factor;
  }

  double written(int bar) const {
    return method_.write_out_seconds[piece_.level_at(bar) - 1] / 60 *
           static_cast<double>(piece_.parts().size());
  }

  double spoken(int bar) const {
    if (!speaks()) return 0;
    return time_.playing({bar, bar}, 1) / time_.share(Drill::spoken_part, piece_.level_at(bar)) *
           method_.recall_stumble * time_.spoken_turns();
  }

  double temper(BarRange chunk) const {
    const int hardest = piece_.hardest_level(chunk);
    if (!is_tempered(hardest)) return 0;
    return time_.write_out(chunk, hardest) + (speaks() ? time_.spoken_part(chunk, hardest) : 0);
  }

  double longest_drill(BarRange chunk) const {
    const int hardest = piece_.hardest_level(chunk);
    if (!is_tempered(hardest)) return 0;
    return std::max(time_.write_out(chunk, hardest),
                    speaks() ? time_.spoken_part(chunk, hardest) : 0);
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
  const Terms& terms_;
  const Method& method_;
  TimeModel time_;
};

}  // namespace

LeastWork least_work(const Piece& piece, const Terms& terms) {
  return Reckoning(piece, terms).find();
}

}  // namespace cahier
