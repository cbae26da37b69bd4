// How much each measure of a bar adds to its level, and where the measures begin. Nobody has
// measured these: what is common practice says so, the rest is our choice, made by looking at the
// levels of real scores.
#pragma once

namespace cahier::level_weights {

// One level is:
inline constexpr double kOnset = 1.0 / 3;   // 3 onsets a second; our choice
inline constexpr double kChordNote = 0.2;   // 5 notes more in the largest chord; our choice
inline constexpr double kSpread = 0.3;      // 3 steps beyond an octave, nearly; common practice
inline constexpr double kLeap = 0.06;       // 16 steps a second, beyond octaves; our choice
inline constexpr double kAccidental = 0.2;  // 5 notes that the key does not have; our choice
inline constexpr double kApart = 0.2;       // 5 onsets a second against the other hand; our choice
inline constexpr double kMet = 1;           // having met the bar; our choice

inline constexpr int kWideSteps = 7;          // on the staff: an octave lies in most hands
inline constexpr int kMostSpread = 3;         // beyond it: what is wider is broken or shared
inline constexpr double kLeapSeconds = 0.5;   // in more a hand gets anywhere; our choice
inline constexpr double kBusySeconds = 1;     // whose busiest onsets tell the speed; our choice
inline constexpr double kLeastSeconds = 0.5;  // a shorter bar or pickup is no faster; our choice
inline constexpr double kUsualTempo = 96;     // quarters a minute without a tempo; our choice

}  // namespace cahier::level_weights
