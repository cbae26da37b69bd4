// One piece while it is laid out, for tests of what is due when: every day is a practice day, from
// day 0 on, and the best gap is ten days, however far the date is.
#pragma once

#include <string>
#include <vector>

#include "plan/chunks/analyse.h"
#include "plan/due/piece_progress.h"
#include "sample_plan.h"

namespace cahier::sample {

inline Method with_gap(double days) {
  Method method = steady();
  method.spacing = {{7, days}, {97, days}};
  return method;
}

struct LaidOut {
  Piece piece;
  Terms terms;
  Analysis analysis;
  std::vector<int> days;
  int end;  // the date
  PieceProgress progress;

  LaidOut(const std::string& yaml, const std::vector<BarRange>& chunks, int to, double gap = 10)
      : piece(sample::piece("title: Laid Out\n" + yaml)),
        terms(settle(date("2027-01-04"), date("2027-01-04") + cahier::days{to}, piece.practice,
                     with_gap(gap))),
        analysis(analyse(piece, terms.method, named(piece, chunks))),
        days(every_day(to)),
        end(to),
        progress(analysis, terms, 0, days, 0, to, true) {}
  LaidOut(const LaidOut&) = delete;

  static std::vector<Chunk> named(const Piece& piece, const std::vector<BarRange>& chunks) {
    std::vector<Chunk> made;
    for (const BarRange& bars : chunks) {
      int section = 0;
      while (section + 1 < static_cast<int>(piece.sections.size()) &&
             bars.first > piece.sections[section].bars.last)
        ++section;
      made.push_back(
          {"C" + std::to_string(made.size() + 1), bars, section, piece.hardest_level(bars)});
    }
    return made;
  }

  static std::vector<int> every_day(int to) {
    std::vector<int> all;
    for (int day = 0; day < to; ++day) all.push_back(day);
    return all;
  }

  int chunk_count() const { return static_cast<int>(analysis.planned.chunks.size()); }

  void learn(int chunk, int day) {
    progress.recalls.learn(chunk, day);
    progress.joins.learned(chunk, day, progress.recalls);
  }
  void learn_all(int day = 0) {
    for (int chunk = 0; chunk < chunk_count(); ++chunk) learn(chunk, day);
  }
  void recall(BarRange bars, int day) { progress.played(progress.make.recall(bars), day); }
  void recall_all(int day) { recall(piece.whole(), day); }
};

// Chunks of four bars, one after the other.
inline std::vector<BarRange> fours(int count) {
  std::vector<BarRange> chunks;
  for (int chunk = 0; chunk < count; ++chunk) chunks.push_back({4 * chunk + 1, 4 * chunk + 4});
  return chunks;
}

}  // namespace cahier::sample
