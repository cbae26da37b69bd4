// How much of a score cahier takes in. What is larger is refused with the number below.
#pragma once

#include <cstddef>

namespace cahier {

inline constexpr std::size_t kMostScoreBytes = 32u << 20;  // of the file
inline constexpr std::size_t kMostUnpackedBytes = 64u
                                                  << 20;  // of all that a compressed score holds
inline constexpr std::size_t kMostArchiveEntries = 1000;
inline constexpr std::size_t kMostContainerBytes = 64u << 10;  // of META-INF/container.xml
inline constexpr std::size_t kMostXmlElements = 2000000;
inline constexpr std::size_t kMostXmlDepth = 64;
inline constexpr std::size_t kMostXmlTextBytes = 4096;  // of one text or attribute value
inline constexpr std::size_t kMostScoreParts = 64;
inline constexpr int kMostStaves = 8;
inline constexpr std::size_t kMostMeasureElements = 10000;
inline constexpr int kMostPasses = 99;                    // of a repeat
inline constexpr std::size_t kMostUnfoldedBars = 100000;  // measure elements, as played
inline constexpr std::size_t kMostScoreWarnings = 1000;

}  // namespace cahier
