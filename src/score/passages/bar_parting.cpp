#include "score/passages/bar_parting.h"

#include <algorithm>

#include "piece/meter.h"
#include "score/passages/bar_likeness.h"
#include "score/passages/hand_changes.h"

namespace cahier {
namespace {

constexpr int kMostAlike = 256;  // bars before the two that are looked at

class PartingBars {
 public:
  PartingBars(const Score& score, const std::vector<BarNotes>& bars, int one, int other)
      : score_(score), bars_(bars), one_(one), other_(other) {}

  Parting find() const {
    Parting found;
    found.one = score_bar(one_).number;
    found.other = score_bar(other_).number;
    const int most = std::min({one_, other_ - one_ - 1, kMostAlike});
    while (found.alike < most && is_same(-found.alike - 1)) ++found.alike;
    while (found.apart < kMostApart && !is_same(found.apart)) ++found.apart;
    found.likeness = likeness(bar(one_), bar(other_));
    const auto first = first_difference(bar(one_), bar(other_));
    if (first) {
      found.beat = beat_at(first->onset);
      std::vector<std::string> hands;
      for (const ScoreHand& hand : score_.hands) hands.push_back(hand.name);
      found.changes = hand_changes(*first, hands);
    } else if (!is_same(0)) {
      const bool is_as_long = score_bar(one_).length == score_bar(other_).length;
      found.changes.push_back(
          {is_as_long ? HandChange::Kind::ornaments : HandChange::Kind::length});
    }
    return found;
  }

 private:
  const BarNotes& bar(int index) const { return bars_[static_cast<std::size_t>(index)]; }
  const ScoreBar& score_bar(int index) const {
    return score_.bars[static_cast<std::size_t>(index)];
  }

  // So many bars after the two; beyond the end nothing is.
  bool is_same(int after) const {
    return other_ + after < static_cast<int>(bars_.size()) &&
           bar(one_ + after).all == bar(other_ + after).all;
  }

  // A pickup is counted as the end of a bar.
  double beat_at(const Quarters& onset) const {
    const ScoreBar& at = score_bar(one_);
    const auto& meter = score_.measures[static_cast<std::size_t>(at.first) - 1].meter;
    double from_begin = onset.value();
    if (at.pickup && meter) from_begin += (meter->length - at.length).value();
    const auto counted = meter ? parse_meter(meter->text) : std::nullopt;
    return 1 + from_begin / (counted ? quarters(natural_beat(*counted)) : 1);
  }

  const Score& score_;
  const std::vector<BarNotes>& bars_;
  int one_;
  int other_;
};

}  // namespace

Parting bar_parting(const Score& score, const std::vector<BarNotes>& bars, int one, int other) {
  return PartingBars(score, bars, one, other).find();
}

}  // namespace cahier
