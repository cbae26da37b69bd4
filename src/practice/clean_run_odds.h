// What a number of clean run-throughs tells.
#pragma once

namespace cahier {

// One-sided 95 % lower bound on the chance of a clean run-through after `runs` independent cold
// runs with `slips` of them not clean (Clopper and Pearson 1934). REQUIRES 0 <= slips <= runs,
// runs >= 1.
double clean_run_bound(int runs, int slips);

// The fewest runs with so many slips for which the bound is at least `chance` (0 < chance < 1).
int runs_needed(double chance, int slips);

// The chance that `tries` independent runs, each clean with chance `clean`, hold `streak` clean
// ones in a row somewhere. High even for a shaky player: why a streak is no proof.
// REQUIRES streak >= 1, tries >= 0, 0 <= clean <= 1.
double streak_chance(int streak, int tries, double clean);

}  // namespace cahier
