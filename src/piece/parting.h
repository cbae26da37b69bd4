// How two bars part into which the same bars lead, as a score tells it.
#pragma once

#include <string>
#include <vector>

#include "text/words.h"

namespace cahier {

// What the later of two bars has and the earlier one has not, where they first differ.
struct HandChange {
  enum class Kind {
    instead,      // `is` in place of `was`
    added,        // `is`
    left_out,     // `was`
    held_longer,  // `is`
    held_shorter,
    other_notes,  // more than are worth naming
    ornaments,    // no note is different but grace notes or ties; no hand is named
    length        // one of the bars is longer; no hand is named
  };
  Kind kind = Kind::instead;
  std::string hand{};             // as the score calls it
  std::vector<std::string> is{};  // names of notes: "F♯"
  std::vector<std::string> was{};
};

struct Parting {
  int one = 1;          // the earlier bar, by its number
  int other = 1;        // the later one
  int alike = 0;        // bars before them that are the same, note for note
  int apart = 1;        // bars from them on until both are the same again; kMostApart at most
  double likeness = 0;  // of the two bars: 0 to 1
  double beat = 1;      // where they first differ, from 1, as the meter is commonly counted
  std::vector<HandChange> changes{};  // empty where the bars are the same
};

inline constexpr int kMostApart = 4;

// "right hand: F♯ instead of F; left hand: C added". Empty without changes.
std::string say_changes(const Words& words, const std::vector<HandChange>& changes);

// How easily a memory takes the wrong way, 0 to 1: the longer the bars before the fork are alike,
// and the more alike (0 to 1) the bars are with which the ways begin. Half for three quarters of a
// bar, near 1 for eight bars.
double fork_danger(int bars_alike, double likeness);

}  // namespace cahier
