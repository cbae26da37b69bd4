#include "score/level/bar_measures.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

#include "score/hand_notes.h"
#include "score/level/level_weights.h"
#include "score/passages/bar_notes.h"

namespace cahier {
namespace {

using namespace level_weights;

constexpr double kSliver = 1e-9;  // of rounding, in seconds

// Notes struck together.
struct Strike {
  Quarters onset;
  double seconds = 0;                 // from the beginning of the bar
  std::vector<SpelledPitch> pitches;  // from the bottom of the staff
  bool grace = false;
};

struct StruckBar {
  double seconds = 0;
  std::vector<Strike> strikes;
};

StruckBar struck_bar(const Score& score, int bar, int hand) {
  const ScoreBar& at = score.bars[static_cast<std::size_t>(bar)];
  const auto& tempo = score.measures[static_cast<std::size_t>(at.first) - 1].tempo;
  const double quarter = 60 / (tempo ? tempo->per_minute : kUsualTempo);
  StruckBar struck{at.length.value() * quarter, {}};
  for (const HandNote& note : hand_notes(score, bar, hand)) {
    if (note.held) continue;
    std::vector<Strike>& all = struck.strikes;
    if (all.empty() || all.back().grace || all.back().onset != note.onset)
      all.push_back({note.onset, note.onset.value() * quarter, {}, note.grace});
    all.back().pitches.push_back(note.pitch);
  }
  return struck;
}

double per_second(double count, double seconds) { return count / std::max(seconds, kLeastSeconds); }

double busiest_second(const StruckBar& bar) {
  const double window = std::min(bar.seconds, kBusySeconds);
  std::ptrdiff_t most = 0;
  auto past = bar.strikes.begin();
  for (auto first = bar.strikes.begin(); first != bar.strikes.end(); ++first) {
    if (past == first) ++past;
    while (past != bar.strikes.end() && past->seconds < first->seconds + window - kSliver) ++past;
    most = std::max(most, past - first);
  }
  return per_second(static_cast<double>(most), window);
}

// Where a hand is on the staff.
struct Reach {
  double seconds = 0;  // from the beginning of the bar
  int low = 0;
  int high = 0;
};

// Of what has a pitch and is no grace note, `seconds` later than it is.
std::vector<Reach> reaches(const StruckBar& bar, double seconds) {
  std::vector<Reach> found;
  for (const Strike& strike : bar.strikes)
    if (!strike.grace &&
        std::ranges::none_of(strike.pitches, [](const SpelledPitch& one) { return one.drum; }))
      found.push_back({strike.seconds + seconds, staff_steps(strike.pitches.front()),
                       staff_steps(strike.pitches.back())});
  return found;
}

int beyond_octave(int steps) { return std::max(0, steps - kWideSteps); }

// What a hand has struck in the last half second.
class JustBefore {
 public:
  void strike(const Reach& reach) {
    all_.push_back(reach);
    lows_.insert(reach.low);
    highs_.insert(reach.high);
  }

  // From the farthest of it, forgetting what is longer ago.
  int steps_to(const Reach& reach) {
    for (; gone_ < all_.size() && all_[gone_].seconds < reach.seconds - kLeapSeconds - kSliver;
         ++gone_) {
      lows_.erase(lows_.find(all_[gone_].low));
      highs_.erase(highs_.find(all_[gone_].high));
    }
    return lows_.empty() ? 0 : std::max(reach.high - *lows_.begin(), *highs_.rbegin() - reach.low);
  }

 private:
  std::vector<Reach> all_;
  std::size_t gone_ = 0;
  std::multiset<int> lows_;
  std::multiset<int> highs_;
};

double leaps(const StruckBar& bar, const StruckBar* before) {
  JustBefore just_before;
  if (before != nullptr)
    for (const Reach& reach : reaches(*before, -before->seconds)) just_before.strike(reach);
  int beyond = 0;
  for (const Reach& reach : reaches(bar, 0)) {
    beyond += beyond_octave(just_before.steps_to(reach));
    just_before.strike(reach);
  }
  return per_second(beyond, bar.seconds);
}

int spread(const StruckBar& bar) {
  int widest = 0;
  for (const Reach& reach : reaches(bar, 0)) widest = std::max(widest, reach.high - reach.low);
  return std::min(beyond_octave(widest), kMostSpread);
}

// In hundredths of a semitone, by the order in which sharps and flats stand in a signature.
int alteration_in_key(char step, int fifths) {
  constexpr std::string_view kSharps = "FCGDAEB";
  const int place = static_cast<int>(kSharps.find(step));
  if (place < fifths) return 100;
  return place >= 7 + fifths ? -100 : 0;
}

int accidentals(const StruckBar& bar, int fifths) {
  std::set<std::pair<char, int>> found;
  for (const Strike& strike : bar.strikes)
    for (const SpelledPitch& pitch : strike.pitches)
      if (!pitch.drum && pitch.alter != alteration_in_key(pitch.step, fifths))
        found.emplace(pitch.step, pitch.alter);
  return static_cast<int>(found.size());
}

std::set<Quarters> onsets_of(const StruckBar& bar) {
  std::set<Quarters> onsets;
  for (const Strike& strike : bar.strikes) onsets.insert(strike.onset);
  return onsets;
}

double apart(const std::vector<StruckBar>& hands, std::size_t hand) {
  std::set<Quarters> others;
  for (std::size_t other = 0; other < hands.size(); ++other)
    if (other != hand) others.merge(onsets_of(hands[other]));
  const std::set<Quarters> own = onsets_of(hands[hand]);
  const auto alone = static_cast<std::size_t>(
      std::ranges::count_if(own, [&](const Quarters& onset) { return !others.contains(onset); }));
  return per_second(static_cast<double>(std::min(alone, others.size())), hands[hand].seconds);
}

BarMeasures measure_hand(const StruckBar& bar, const StruckBar* before, int fifths) {
  BarMeasures measured;
  measured.onsets = busiest_second(bar);
  for (const Strike& strike : bar.strikes)
    measured.chord = std::max(measured.chord, static_cast<int>(strike.pitches.size()));
  measured.spread = spread(bar);
  measured.leaps = leaps(bar, before);
  measured.accidentals = accidentals(bar, fifths);
  return measured;
}

}  // namespace

std::vector<std::vector<BarMeasures>> measure_bars(const Score& score) {
  const std::vector<BarNotes> contents = notes_of_bars(score);
  std::vector<std::set<int>> met(score.hands.size());
  std::vector<std::vector<BarMeasures>> all;
  std::vector<StruckBar> before;
  for (std::size_t at = 0; at < score.bars.size(); ++at) {
    const auto& key = score.measures[static_cast<std::size_t>(score.bars[at].first) - 1].key;
    std::vector<StruckBar> hands;
    for (std::size_t hand = 0; hand < score.hands.size(); ++hand)
      hands.push_back(struck_bar(score, static_cast<int>(at), static_cast<int>(hand)));
    std::vector<BarMeasures> measured;
    for (std::size_t hand = 0; hand < hands.size(); ++hand) {
      measured.push_back(measure_hand(hands[hand], before.empty() ? nullptr : &before[hand],
                                      key ? key->fifths : 0));
      measured.back().apart = apart(hands, hand);
      measured.back().met = !met[hand].insert(contents[at].content[hand]).second;
    }
    all.push_back(std::move(measured));
    before = std::move(hands);
  }
  return all;
}

}  // namespace cahier
