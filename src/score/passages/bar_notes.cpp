#include "score/passages/bar_notes.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "score/hand_notes.h"

namespace cahier {
namespace {

// With grace notes and ties: what identical bars have in common.
struct ExactNote {
  NoteInBar note;
  int staff = 1;
  bool grace = false;
  bool tie_stop = false;
  auto operator<=>(const ExactNote&) const = default;
};

std::vector<ExactNote> exact_notes(const Score& score, const ScoreBar& bar) {
  std::vector<ExactNote> notes;
  Quarters begin;
  for (int element = bar.first; element <= bar.last; ++element) {
    const ScoreMeasure& measure = score.measures[static_cast<std::size_t>(element) - 1];
    for (const ScoreNote& note : measure.notes)
      if (note.sounds())
        notes.push_back({{hand_of_staff(score.hands, note.staff), begin + note.onset, note.duration,
                          note.pitch},
                         note.staff,
                         note.grace,
                         note.tie_stop});
    begin = begin + measure.length;
  }
  std::ranges::sort(notes);
  notes.erase(std::unique(notes.begin(), notes.end()), notes.end());
  return notes;
}

// Numbers contents in the order in which they first occur.
class Contents {
 public:
  int number(const Quarters& length, std::vector<ExactNote> notes) {
    const int next = static_cast<int>(numbers_.size());
    return numbers_.emplace(std::pair(length, std::move(notes)), next).first->second;
  }

 private:
  std::map<std::pair<Quarters, std::vector<ExactNote>>, int> numbers_;
};

}  // namespace

std::vector<BarNotes> notes_of_bars(const Score& score) {
  const std::size_t hands = score.hands.size();
  std::vector<Contents> of_hand(hands);
  Contents of_all;
  std::map<NoteInBar, int> numbers;
  std::vector<BarNotes> bars;
  for (const ScoreBar& bar : score.bars) {
    const std::vector<ExactNote> notes = exact_notes(score, bar);
    BarNotes found;
    for (std::size_t hand = 0; hand < hands; ++hand) {
      std::vector<ExactNote> own;
      std::ranges::copy_if(notes, std::back_inserter(own), [&](const ExactNote& one) {
        return one.note.hand == static_cast<int>(hand);
      });
      found.silent.push_back(own.empty());
      found.content.push_back(of_hand[hand].number(bar.length, std::move(own)));
    }
    found.all = of_all.number(bar.length, notes);
    for (const ExactNote& one : notes)
      if (!one.grace && (found.notes.empty() || found.notes.back() != one.note))
        found.notes.push_back(one.note);
    for (const NoteInBar& note : found.notes)
      found.note_numbers.push_back(
          numbers.emplace(note, static_cast<int>(numbers.size())).first->second);
    std::ranges::sort(found.note_numbers);
    bars.push_back(std::move(found));
  }
  return bars;
}

}  // namespace cahier
