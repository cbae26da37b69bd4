// How much two bars have in common, and where they part.
#pragma once

#include <optional>
#include <vector>

#include "score/passages/bar_notes.h"

namespace cahier {

// Notes alike as a share of all notes of the two bars, 0 to 1 (Jaccard's index); alike are notes of
// one hand, onset, length and spelling. 1 for two silent bars.
double likeness(const BarNotes& one, const BarNotes& other);

struct BarDifference {
  Quarters onset;                   // where the first note differs
  std::vector<NoteInBar> only_one;  // the notes there that only `one` has
  std::vector<NoteInBar> only_other;
};

// nullopt where all notes are alike: the bars may still differ in grace notes, ties or length.
std::optional<BarDifference> first_difference(const BarNotes& one, const BarNotes& other);

}  // namespace cahier
