#include "score/passages/look_alikes.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <set>

#include "score/passages/bar_likeness.h"
#include "score/passages/bar_parting.h"
#include "score/passages/near_bars.h"
#include "score/passages/transposed_bars.h"

namespace cahier {
namespace {

constexpr int kLeastLength = 2;                   // bars
constexpr std::size_t kLeastTransposedNotes = 8;  // of a passage: fewer are alike by chance
constexpr std::size_t kMostOfShape = 16;          // earlier bars of one shape that are tried

// Pairs of bars that a passage was found around, by their distance.
class CoveredPairs {
 public:
  bool contains(int earlier, int later) const {
    const auto found = by_distance_.find(later - earlier);
    if (found == by_distance_.end()) return false;
    const auto after = found->second.upper_bound(earlier);
    return after != found->second.begin() && earlier <= std::prev(after)->second;
  }

  void add(const ScoreLookAlikes& found) {
    int& last = by_distance_[found.later - found.first][found.first];
    last = std::max(last, found.first + found.length - 1);
  }

 private:
  std::map<int, std::map<int, int>> by_distance_;  // first earlier bar to last
};

class LookAlikeSearch {
 public:
  LookAlikeSearch(const Score& score, const std::vector<BarNotes>& bars)
      : score_(score), bars_(bars), shapes_(transposed_bars(bars)) {
    for (const ScoreHand& hand : score.hands) hands_.push_back(hand.name);
  }

  void try_near() {
    for (const auto& [earlier, later] : near_bars(bars_, kLeastLikeness)) try_pair(earlier, later);
  }

  void try_returns(const std::vector<ScoreReturn>& returns) {
    for (const ScoreReturn& one : returns)
      if (one.hands.size() == hands_.size()) try_pair(one.source + one.last - one.first, one.last);
  }

  void try_transposed() {
    std::map<int, std::vector<int>> of_shape;
    for (int bar = 0; bar < count(); ++bar) {
      if (!shape(bar)) continue;
      std::vector<int>& others = of_shape[shape(bar)->shape];
      const std::size_t tried = std::min(others.size(), kMostOfShape);
      for (auto other = others.end() - static_cast<std::ptrdiff_t>(tried); other != others.end();
           ++other)
        if (shape(*other)->base != shape(bar)->base) try_transposed_pair(*other, bar);
      others.push_back(bar);
    }
  }

  std::vector<ScoreLookAlikes> take() {
    std::ranges::stable_sort(found_, [](const ScoreLookAlikes& one, const ScoreLookAlikes& other) {
      if (one.danger != other.danger) return one.danger > other.danger;
      return std::pair(one.later, one.first) < std::pair(other.later, other.first);
    });
    if (found_.size() > kMostLookAlikes) found_.resize(kMostLookAlikes);
    return std::move(found_);
  }

 private:
  int count() const { return static_cast<int>(bars_.size()); }
  const BarNotes& bar(int index) const { return bars_[static_cast<std::size_t>(index)]; }
  const std::optional<TransposedBar>& shape(int index) const {
    return shapes_[static_cast<std::size_t>(index)];
  }

  bool is_same(int earlier, int later) const { return bar(earlier).all == bar(later).all; }

  bool is_near(int earlier, int later) const {
    if (is_same(earlier, later)) return true;
    const std::size_t mine = bar(earlier).notes.size();
    const std::size_t theirs = bar(later).notes.size();
    return mine > 0 && theirs > 0 && likeness(bar(earlier), bar(later)) >= kLeastLikeness;
  }

  int transposition(int earlier, int later) const {
    if (!shape(earlier) || !shape(later) || shape(earlier)->shape != shape(later)->shape) return 0;
    return shape(later)->base - shape(earlier)->base;
  }

  // The bars around the pair for which `is_alike` holds at the same distance, without overlap and
  // up to kMostPassageBars.
  template <typename Alike>
  ScoreLookAlikes passage_around(int earlier, int later, Alike is_alike) const {
    const int distance = later - earlier;
    const int most = std::min(distance, kMostPassageBars);
    int first = earlier;
    int last = earlier;
    while (last - first + 1 < most && last + 1 + distance < count() &&
           is_alike(last + 1, last + 1 + distance))
      ++last;
    while (last - first + 1 < most && first > 0 && is_alike(first - 1, first - 1 + distance))
      --first;
    ScoreLookAlikes found;
    found.first = first;
    found.later = first + distance;
    found.length = last - first + 1;
    return found;
  }

  // False where the same two passages were found already, at other places where they come back.
  bool is_new(const ScoreLookAlikes& found) {
    // FNV-1a, of both passages.
    std::uint64_t hash = 14695981039346656037u;
    for (const int first : {found.first, found.later})
      for (int at = 0; at < found.length; ++at)
        hash = (hash ^ static_cast<std::uint64_t>(bar(first + at).all)) * 1099511628211u;
    return contents_.emplace(found.length, hash).second;
  }

  void try_pair(int earlier, int later) {
    if (known_.contains(earlier, later)) return;
    ScoreLookAlikes found =
        passage_around(earlier, later, [this](int one, int other) { return is_near(one, other); });
    known_.add(found);
    while (found.fork < found.length && is_same(found.first + found.fork, found.later + found.fork))
      ++found.fork;
    if (found.fork == found.length) {
      const bool goes_on =
          found.later + found.length < count() && found.first + found.length < found.later;
      if (!goes_on) return;
      ++found.length;
    }
    if (found.length >= kLeastLength && is_new(found)) add(std::move(found));
  }

  void try_transposed_pair(int earlier, int later) {
    if (transposed_.contains(earlier, later)) return;
    const int semitones = transposition(earlier, later);
    ScoreLookAlikes found = passage_around(earlier, later, [&](int one, int other) {
      return transposition(one, other) == semitones && shape(one).has_value();
    });
    transposed_.add(found);
    std::size_t notes = 0;
    for (int at = 0; at < found.length; ++at) notes += bar(found.first + at).notes.size();
    if (found.length < kLeastLength || notes < kLeastTransposedNotes || !is_new(found)) return;
    found.transposed = semitones;
    found.difference = transposition_words(semitones);
    for (int hand = 0; hand < static_cast<int>(hands_.size()); ++hand) found.hands.push_back(hand);
    found.danger = fork_danger(found.length, 0);
    found_.push_back(std::move(found));
  }

  void add(ScoreLookAlikes found) {
    const int earlier = found.first + found.fork;
    const int later = found.later + found.fork;
    const Parting parting = bar_parting(score_, bars_, earlier, later);
    found.beat = parting.beat;
    found.difference = say_changes(english_words(), parting.changes);
    for (int hand = 0; hand < static_cast<int>(hands_.size()); ++hand)
      if (does_otherwise(parting, hand) ||
          (names_no_hand(parting) && !is_same_in(earlier, later, hand)))
        found.hands.push_back(hand);
    found.danger = fork_danger(found.fork, parting.likeness);
    found_.push_back(std::move(found));
  }

  bool does_otherwise(const Parting& parting, int hand) const {
    return std::ranges::find(parting.changes, hands_[static_cast<std::size_t>(hand)],
                             &HandChange::hand) != parting.changes.end();
  }

  static bool names_no_hand(const Parting& parting) {
    using Kind = HandChange::Kind;
    return std::ranges::any_of(parting.changes, [](const HandChange& change) {
      return change.kind == Kind::ornaments || change.kind == Kind::length;
    });
  }

  bool is_same_in(int earlier, int later, int hand) const {
    const auto at = static_cast<std::size_t>(hand);
    return bar(earlier).content[at] == bar(later).content[at];
  }

  const Score& score_;
  const std::vector<BarNotes>& bars_;
  const std::vector<std::optional<TransposedBar>> shapes_;
  std::vector<std::string> hands_;
  CoveredPairs known_;
  CoveredPairs transposed_;
  std::set<std::pair<int, std::uint64_t>> contents_;
  std::vector<ScoreLookAlikes> found_;
};

}  // namespace

std::vector<ScoreLookAlikes> find_look_alikes(const Score& score, const std::vector<BarNotes>& bars,
                                              const std::vector<ScoreReturn>& returns) {
  LookAlikeSearch search(score, bars);
  search.try_returns(returns);
  search.try_near();
  search.try_transposed();
  return search.take();
}

}  // namespace cahier
