#include "plan/lower_bound.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

#include "plan/division.h"
#include "practice/time_model.h"

namespace cahier {
namespace {

constexpr double kSliver = 1e-6;

// The least that learning and keeping a piece takes, whatever its chunks are.
struct Least {
  double learning = 0;      // minutes
  double settled = 0;       // minutes: learning and Temper together
  double largest = 0;       // minutes of the largest task that must come
  double once_through = 0;  // minutes of playing all that is learned once more, from memory
  double run = 0;           // minutes of a run-through
  double notes = 0;         // minutes at the notes themselves: learning without any pause or setup
  double recall = 0;        // minutes of the shortest recall
  double tempered = 0;      // the same for Temper
  std::map<int, double> chunks;  // half minutes to learn a chunk, and the most notes in such a one
  std::map<int, double> drills;  // the same for spoken parts and write-outs
};

class LeastWork {
 public:
  LeastWork(const Piece& piece, const Terms& terms)
      : piece_(piece), terms_(terms), method_(terms.method), time_(piece, terms.method) {}

  Least find() const {
    Least least;
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
  void add(BarRange phrase, Least& least) const {
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
        largest[end] = std::min(largest[end], std::max(largest[end - size], learn));
      }
    if (learning[bars] == kNever) return;  // cut in a way of its own
    least.learning += learning[bars];
    least.settled += settled[bars];
    least.largest = std::max(least.largest, largest[bars]);
    least.once_through += playing(phrase);
    least.notes += notes(phrase);
    least.tempered += tempered(phrase);
  }

  void add_chunk(BarRange chunk, Least& least) const {
    const double learn = note_chunk(chunk, least);
    least.learning += learn;
    least.settled += learn + temper(chunk);
    least.largest = std::max(least.largest, learn);
    least.once_through += playing(chunk);
    least.notes += notes(chunk);
    least.tempered += tempered(chunk);
  }

  // Minutes to learn the chunk; it becomes one of those that a day may be filled with.
  double note_chunk(BarRange chunk, Least& least) const {
    const double learn = time_.learn(chunk, level(chunk));
    double& most = least.chunks[static_cast<int>(std::lround(learn * 2))];
    most = std::max(most, notes(chunk));
    if (is_tempered(level(chunk))) note_drills(chunk, least);
    return learn;
  }

  bool is_tempered(int level) const {
    return terms_.temper == Temper::yes ||
           (terms_.temper == Temper::weak && level >= method_.weak_level);
  }

  void note_drills(BarRange chunk, Least& least) const {
    const auto note = [&](double minutes, double notes) {
      double& most = least.drills[static_cast<int>(std::lround(minutes * 2))];
      most = std::max(most, notes);
    };
    note(time_.write_out(chunk, level(chunk)), written(chunk));
    if (piece_.parts().size() > 1) note(time_.spoken_part(chunk, level(chunk)), spoken(chunk));
  }

  double written(BarRange bars) const {
    double seconds = 0;
    for (int bar = bars.first; bar <= bars.last; ++bar)
      seconds += method_.write_out_seconds[piece_.level_at(bar) - 1];
    return seconds / 60 * static_cast<double>(piece_.parts().size());
  }

  double spoken(BarRange bars) const {
    double minutes = 0;
    for (int bar = bars.first; bar <= bars.last; ++bar)
      minutes +=
          time_.playing({bar, bar}, 1) / time_.share(Drill::spoken_part, piece_.level_at(bar));
    return minutes * method_.recall_stumble * method_.spoken_times *
           static_cast<double>(piece_.parts().size());
  }

  double tempered(BarRange phrase) const {
    double minutes = 0;
    for (int bar = phrase.first; bar <= phrase.last; ++bar)
      if (is_tempered(piece_.level_at(bar)))
        minutes += written({bar, bar}) + (piece_.parts().size() > 1 ? spoken({bar, bar}) : 0);
    return minutes;
  }

  double notes(BarRange bars) const {
    double minutes = 0;
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      const int index = piece_.level_at(bar) - 1;
      minutes +=
          time_.playing({bar, bar}, 1) / method_.learn_tempo[index] * method_.learn_stumble[index];
    }
    return minutes * time_.learning_steps() * method_.repetitions;
  }

  int level(BarRange bars) const { return hardest_level(piece_, bars); }

  double temper(BarRange chunk) const {
    const int hardest = level(chunk);
    if (!is_tempered(hardest)) return 0;
    const double spoken = piece_.parts().size() > 1 ? time_.spoken_part(chunk, hardest) : 0;
    return spoken + time_.write_out(chunk, hardest);
  }

  // Every join asks that the bars on its two sides be played from memory, at the fastest tempo that
  // any drill across joins has.
  double playing(BarRange bars) const {
    double fastest = 0;
    for (const Drill drill : {Drill::join, Drill::recall, Drill::slow_pass, Drill::counted_pass})
      for (int level = 1; level <= 5; ++level)
        fastest = std::max(fastest, time_.share(drill, level));
    return time_.playing(bars, 1) / fastest * method_.recall_stumble;
  }

  double shortest_recall() const {
    double shortest = time_.cue_starts(1);
    for (int bar = piece_.first_bar(); bar <= piece_.bars; ++bar)
      for (int level = 1; level <= 5; ++level)
        for (const double minutes :
             {time_.recall({bar, bar}, level), time_.slow_pass({bar, bar}, level),
              time_.counted_pass({bar, bar}, level)})
          shortest = std::min(shortest, minutes);
    return shortest;
  }

  const Piece& piece_;
  const Terms& terms_;
  const Method& method_;
  TimeModel time_;
};

// Half minutes of a day to the most notes that can be learned in them, however the day is filled.
std::vector<double> most_notes(const std::map<int, double>& chunks, double longest) {
  std::vector<double> most(static_cast<std::size_t>(longest * 2) + 1, 0);
  for (int room = 1; room < static_cast<int>(most.size()); ++room) {
    most[room] = most[room - 1];
    for (const auto& [halves, notes] : chunks) {
      if (halves > room) break;
      most[room] = std::max(most[room], most[room - halves] + notes);
    }
  }
  return most;
}

double at(const std::vector<double>& most, double minutes) {
  return minutes <= 0 ? 0 : most[static_cast<std::size_t>(minutes * 2 + kSliver)];
}

// The most notes that the days can take in when every chunk's first recall comes within so many
// practice days, and the last chunks' may be a run-through. Days may be given up to recalls.
double notes_in(const std::vector<double>& room, const std::vector<double>& most, double recall,
                int within) {
  std::vector<double> whole;
  std::vector<double> less;  // what a recall takes from a day
  for (const double minutes : room) {
    whole.push_back(at(most, minutes));
    less.push_back(whole.back() - at(most, minutes - recall));
  }
  double sum = 0;
  for (const double notes : whole) sum += notes;
  std::sort(whole.begin(), whole.end());
  std::sort(less.begin(), less.end());
  const int count = static_cast<int>(room.size());
  double best = 0;
  double given_up = 0;
  for (int free = 0; free <= count; ++free) {
    const int learning = count - free;
    const int recalls = std::max(0, (learning - 1) / within) - free;
    double lost = given_up;
    for (int i = 0; i < recalls; ++i) lost += less[i];
    best = std::max(best, sum - lost);
    if (free < count) given_up += whole[free];
  }
  return best;
}

// Whether the run-throughs of one piece have room from a position among the practice days on.
bool runs_have_room(const std::vector<double>& room, std::size_t from, const Least& least,
                    const Terms& terms, double longest) {
  int runs = 0;
  int on_days = 0;
  for (std::size_t i = from; i < room.size(); ++i) {
    const int today =
        least.run > longest
            ? 1
            : std::min(terms.method.runs_a_day, static_cast<int>(room[i] / least.run + kSliver));
    runs += today;
    on_days += today > 0 ? 1 : 0;
  }
  return runs >= terms.runs_required() && on_days >= terms.method.run_days;
}

}  // namespace

bool could_fit(const std::vector<Piece>& pieces, const Terms& terms) {
  const std::vector<Day> all_days = calendar(terms);
  const int end = static_cast<int>(all_days.size());
  std::vector<double> room;
  std::vector<bool> may_learn;
  for (int day = 0; day < end; ++day)
    if (all_days[day].allowance > 0) {
      room.push_back(all_days[day].allowance);
      may_learn.push_back(end - day > terms.method.quiet_days);
    }
  if (room.empty()) return false;
  const double longest = *std::max_element(room.begin(), room.end());

  Least all;
  all.recall = longest;
  double learning = 0;
  double total = 0;
  std::size_t runs_from = room.size();  // the latest position that leaves room for every piece
  int alone = 0;
  for (const Piece& piece : pieces) {
    const Least least = LeastWork(piece, terms).find();
    if (least.largest > longest + kSliver) return false;
    learning += least.learning;
    all.notes += least.notes;
    all.recall = std::min(all.recall, least.recall);
    for (const auto& [halves, notes] : least.chunks)
      all.chunks[halves] = std::max(all.chunks[halves], notes);
    total += least.settled + least.once_through;
    all.tempered += least.tempered;
    for (const auto& [halves, notes] : least.drills)
      all.drills[halves] = std::max(all.drills[halves], notes);
    if (least.run > longest) {
      alone += terms.runs_required();
    } else {
      const double runs = least.run * terms.runs_required();
      total += runs;
      all.tempered += runs;
      double& most = all.drills[static_cast<int>(std::lround(least.run * 2))];
      most = std::max(most, least.run);
    }
    std::size_t from = room.size();
    while (from > 0 && !runs_have_room(room, from, least, terms, longest)) --from;
    if (!runs_have_room(room, from, least, terms, longest)) return false;
    runs_from = std::min(runs_from, from);
  }
  // Run-throughs that stand alone take whole days; the shortest days at best.
  std::vector<double> shared = room;
  std::sort(shared.begin(), shared.end());
  if (alone > static_cast<int>(shared.size())) return false;
  shared.erase(shared.begin(), shared.begin() + alone);
  double room_in_all = 0;
  for (const double minutes : shared) room_in_all += minutes;
  if (total > room_in_all + kSliver) return false;

  // Learning, Temper and run-throughs fill the days as whole tasks do.
  std::map<int, double> tasks = all.drills;
  for (const auto& [halves, notes] : all.chunks) tasks[halves] = std::max(tasks[halves], notes);
  const std::vector<double> most = most_notes(tasks, longest);
  double in_all = 0;
  for (const double minutes : shared) in_all += at(most, minutes);
  if (all.notes + all.tempered > in_all + kSliver) return false;

  // The days on which something new may come, before the run-throughs of a single piece.
  std::vector<double> to_learn;
  for (std::size_t i = 0; i < (pieces.size() > 1 ? room.size() : runs_from); ++i)
    if (may_learn[i]) to_learn.push_back(room[i]);
  const double room_to_learn = std::accumulate(to_learn.begin(), to_learn.end(), 0.0);
  if (learning > room_to_learn + kSliver) return false;
  return all.notes <= notes_in(to_learn, most_notes(all.chunks, longest), all.recall,
                               terms.method.first_recall_days) +
                          kSliver;
}

}  // namespace cahier
