// Small pieces and terms by number: the same number gives the same work, on every machine.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <vector>

#include "../judges/judged_plan.h"

namespace exact {

using judge::Bars;
using Date = std::chrono::sys_days;

struct Section {
  std::string name;
  Bars bars;
  std::vector<Bars> phrases;  // none in a return
  int level = 0;              // 0: the piece's
  bool returns = false;       // repeats the first section, from its first bar on
};

// A tempo from a bar on.
struct Pulse {
  int from = 0;
  int tempo = 0;  // natural beats a minute
};

struct HardBars {
  Bars bars;
  int level = 0;
};

// Two passages that begin alike.
struct Alike {
  Bars passages[2];
  int forks[2];
};

struct SmallWork {
  long number = 0;
  std::string instrument;
  int parts = 1;
  std::string meter;
  double quarters = 4;       // in a bar
  double beat_quarters = 1;  // in a natural beat
  bool pickup = false;       // of one beat of the meter
  double pickup_quarters = 1;
  int level = 2;
  int bars = 0;
  std::vector<Pulse> pulses;
  std::vector<Section> sections;
  std::vector<HardBars> hard;
  std::vector<Alike> alikes;

  Date from;
  int days = 0;
  std::vector<unsigned> weekdays_off;  // ISO numbers, 1 for Monday
  std::vector<int> days_off;           // by day from the first
  bool long_saturdays = false;         // half as long again
  bool new_to_performing = false;
  int repetitions = 5;  // of each step of learning

  int first_bar() const { return pickup ? 0 : 1; }
  int level_at(int bar) const;
  int tempo_at(int bar) const;
  // The bar whose notes a bar has.
  int learned_as(int bar) const;
  // Half minutes of a day, where others have so many; 0 on a day off.
  int room(int day, int halves) const;
};

SmallWork small_work(long number);

// The piece file, and the options of a plan within so many half minutes a day.
std::string piece_file(const SmallWork& work);
std::string options(const SmallWork& work, int halves);

}  // namespace exact
