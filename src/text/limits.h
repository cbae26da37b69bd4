// How much cahier takes in, in one place. What is larger is refused with the number below.
#pragma once

#include <cstddef>

namespace cahier {

// Of a file. A log of ten years is about half as long.
inline constexpr std::size_t kMostFileBytes = 2u << 20;
inline constexpr std::size_t kMostDepth = 32;         // lists and maps in one another
inline constexpr std::size_t kMostValues = 200000;    // texts, lists and maps of a file
inline constexpr std::size_t kMostTextBytes = 4096;   // of one text
inline constexpr std::size_t kMostFlowSigns = 50000;  // brackets and commas of one list in brackets

inline constexpr int kMostBars = 10000;         // of a piece, as written
inline constexpr int kMostPlayedBars = 100000;  // of a piece, with its repeats
inline constexpr std::size_t kMostPieces = 30;  // of a programme
inline constexpr std::size_t kMostSheets = 40;  // that a packet lists, one listed twice is two
inline constexpr std::size_t kMostHardPlaces = 1000;  // of a piece
inline constexpr std::size_t kMostForks = 1000;       // of the look-alikes of a piece
inline constexpr std::size_t kMostAlikeBars = 50000;  // of the look-alikes of a piece, added up
// Of the planner, in chunks times days laid on a calendar: for one plan, and again for all remedies
// of a work so large that no pairs of them are looked for.
inline constexpr double kMostEffort = 10e6;
inline constexpr int kMostPages = 4000;  // of a workbook

}  // namespace cahier
