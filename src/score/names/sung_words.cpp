#include "score/names/sung_words.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "score/hand_notes.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr int kMostBars = 4;  // in which the last word comes to its end

struct SyllableAt {
  Quarters onset;  // from the beginning of its bar
  const SungSyllable* syllable = nullptr;
};

// By onset, of all verses or of one; of that at an onset one, where several voices sing it.
std::vector<SyllableAt> syllables_in(const Score& score, int hand, int bar,
                                     const std::string* verse) {
  std::vector<SyllableAt> found;
  const ScoreBar& at = score.bars[static_cast<std::size_t>(bar)];
  Quarters begin;
  for (int element = at.first; element <= at.last; ++element) {
    const ScoreMeasure& measure = score.measures[static_cast<std::size_t>(element) - 1];
    for (const ScoreNote& note : measure.notes)
      if (note.sounds() && hand_of_staff(score.hands, note.staff) == hand)
        for (const SungSyllable& one : note.sung)
          if (!verse || one.verse == *verse) found.push_back({begin + note.onset, &one});
    begin = begin + measure.length;
  }
  std::ranges::stable_sort(found, {}, &SyllableAt::onset);
  const auto is_again = [&](const SyllableAt& one, const SyllableAt& next) {
    return verse && one.onset == next.onset;
  };
  found.erase(std::unique(found.begin(), found.end(), is_again), found.end());
  return found;
}

class SungWords {
 public:
  // False where the words are complete without it.
  bool take(const SungSyllable& one, bool is_in_time) {
    if (!is_in_time && !(one.joined && goes_on_)) return false;
    if (one.joined && goes_on_)
      words_.back() += one.text;
    else
      words_.push_back((one.joined ? "-" : "") + one.text);
    goes_on_ = one.goes_on;
    return true;
  }

  bool goes_on() const { return goes_on_; }

  std::string text() const {
    std::string text;
    for (const std::string& word : words_) {
      const std::string with = text.empty() ? word : text + " " + word;
      if (count_characters(with) > kMostSungCharacters) break;
      text = with;
    }
    return text;
  }

 private:
  std::vector<std::string> words_;
  bool goes_on_ = false;
};

}  // namespace

std::string sung_words(const Score& score, int hand, int bar, double until) {
  const std::vector<SyllableAt> all = syllables_in(score, hand, bar, nullptr);
  if (all.empty() || all.front().onset.value() >= until) return {};
  const std::string& verse = all.front().syllable->verse;
  SungWords words;
  const int end = std::min(bar + kMostBars, static_cast<int>(score.bars.size()));
  for (int at = bar; at < end && (at == bar || words.goes_on()); ++at)
    for (const SyllableAt& one : syllables_in(score, hand, at, &verse))
      if (!words.take(*one.syllable, at == bar && one.onset.value() < until)) return words.text();
  return words.text();
}

}  // namespace cahier
