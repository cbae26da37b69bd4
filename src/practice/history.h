// What a record tells of one piece: which of its bars are learned, and how well they hold.
#pragma once

#include <optional>
#include <vector>

#include "piece/piece.h"
#include "practice/learned_bars.h"
#include "practice/record.h"
#include "practice/slip_chance.h"

namespace cahier {

class History {
 public:
  History() = default;  // of a piece that nothing is told of
  History(const Record& record, int index, const Piece& piece);

  const LearnedBars& learned() const { return learned_; }
  const NumberedStarts& starts() const { return starts_; }

  // How often all of `chunk` was played from memory, and how often it slipped; a cue start hit or
  // missed counts for the bars it begins in, and a slip further on where it was.
  SlipCount slips(BarRange chunk) const;
  // The last day on which it slipped.
  std::optional<Date> last_slip(BarRange chunk) const;

 private:
  struct Trial {
    Date date;
    std::vector<BarRange> held;  // bars played, where they are learned
    std::vector<int> slips;      // likewise
    bool start = false;          // from a cue start: its bar only
  };
  void add_trials(const Done& done);

  LearnedBars learned_;
  NumberedStarts starts_;
  std::vector<Trial> trials_;
};

// By piece.
std::vector<History> histories_of(const Record& record, const std::vector<Piece>& pieces);

}  // namespace cahier
