// Pieces that several tests draw.
#pragma once

namespace cahier::sample {

// Returns, look-alikes, and nothing that changes.
inline constexpr const char* kStudy = R"(
title: Lantern Study
bars: 48
meter: 3/4
key: A minor
tempo: 132
sections:
  - {name: A, bars: 1-16}
  - {name: B, bars: 17-32, level: 4}
  - {name: A again, bars: 33-44, same as: 1-12}
  - {name: Close, bars: 45-48}
look-alikes: [{bars: [9-16, 41-48], fork: [13, 45]}]
)";

// The same with a pickup, changes, repeats, marks and days off.
inline constexpr const char* kLantern = R"(
title: Lantern Study
composer: Nobody At All
bars: 48
pickup: 1
meter: 3/4
key: A minor
tempo: 132
changes: [{bar: 25, meter: 2/4, key: A major, tempo: 96}]
sections:
  - {name: A, bars: 1-16, phrases: [1-8, 9-16]}
  - {name: B, bars: 17-32, level: 4}
  - {name: A again, bars: 33-44, same as: 1-12}
  - {name: Close, bars: 45-48}
look-alikes: [{bars: [9-16, 41-48], fork: [13, 45]}]
repeats: [{bars: 1-16, times: 3}]
marks: [{bar: 17, note: new manual}]
cues: [18]
practice: {days off: [sun]}
)";

}  // namespace cahier::sample
