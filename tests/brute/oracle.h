// Whether any plan exists for a piece, on a calendar, within an allowance.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "plan/plan.h"
#include "plan/terms.h"
#include "search.h"

namespace cahier::brute {

// The terms with this many half minutes on every weekday that is practised at all.
Terms with_halves(Terms terms, int halves);

class Oracle {
 public:
  // Takes a copy of the piece. REQUIRES: the piece can be cut into at most 6 chunks, its returns
  // cut none, and `terms` practises equally long on each day.
  Oracle(const Piece& piece, const Terms& terms);

  // A plan within so many half minutes a day; nullopt when none keeps the rules, whatever the
  // chunks.
  std::optional<Plan> plan(int halves, const Freedom& freedom = {}) const;
  // The same with the piece cut as in `chunks`.
  std::optional<Plan> plan_cut_as(const std::vector<Chunk>& chunks, int halves) const;
  // The fewest half minutes a day for which a plan exists; nullopt when there are none at all.
  std::optional<int> least() const;

 private:
  struct Way {
    Piece cut;  // the piece, its phrases being its chunks
    std::unique_ptr<Analysis> analysis;
    std::unique_ptr<Facts> facts;
  };

  std::optional<Plan> plan(const Way& way, int halves, const Freedom& freedom) const;
  std::optional<int> least(const Way& way, int below) const;

  Piece piece_;
  Terms terms_;
  std::vector<std::unique_ptr<Way>> ways_;
};

}  // namespace cahier::brute
