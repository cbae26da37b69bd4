#include "workbook/parts_staves.h"

#include <algorithm>

namespace cahier {
namespace {

StaffClef staff_clef(Clef clef) {
  switch (clef) {
    case Clef::treble:
      return StaffClef::treble;
    case Clef::treble_8va_bassa:
      return StaffClef::treble_8va_bassa;
    case Clef::bass:
      return StaffClef::bass;
    case Clef::alto:
      return StaffClef::alto;
    case Clef::tenor:
      return StaffClef::tenor;
    case Clef::percussion:
      return StaffClef::percussion;
  }
  return StaffClef::treble;
}

int fifths_at(const Piece& piece, int bar) {
  const std::optional<Key> key = piece.key_at(bar);
  return key ? key->fifths : 0;
}

StaffMeter staff_meter(const Meter& meter) {
  std::string count;
  for (const int group : meter.groups) count += (count.empty() ? "" : "+") + std::to_string(group);
  return {count, meter.unit};
}

// A bar with what changes at it; nothing does at the first bar of a piece.
StaffBar staff_bar(const Piece& piece, int bar) {
  StaffBar made;
  made.length = piece.quarters_in(bar);
  made.number = bar;
  if (bar <= piece.first_bar()) return made;
  if (fifths_at(piece, bar) != fifths_at(piece, bar - 1)) made.fifths = fifths_at(piece, bar);
  if (piece.meter_at(bar) != piece.meter_at(bar - 1)) made.meter = staff_meter(piece.meter_at(bar));
  return made;
}

StaffSystem empty_system(const Piece& piece, int first_bar) {
  StaffSystem system;
  system.staves.clear();
  for (const Clef clef : piece.instrument.staves) system.staves.push_back(staff_clef(clef));
  system.braced = piece.instrument.braced;
  system.fifths = fifths_at(piece, first_bar);
  system.bars.clear();
  return system;
}

// Enough for sixteenth notes by hand: a quarter note takes 11 mm on a staff of 8 mm.
double least_bar(double quarters, const StaffMeasures& measures) {
  return std::clamp(quarters * 11, 24.0, 60.0) * measures.height / 8;
}

StaffSystem system_of(const Piece& piece, BarRange bars, bool with_meter) {
  StaffSystem system = empty_system(piece, bars.first);
  for (int bar = bars.first; bar <= bars.last; ++bar) system.bars.push_back(staff_bar(piece, bar));
  if (with_meter) system.meter = staff_meter(piece.meter_at(bars.first));
  return system;
}

// How many of `bars` a system holds that begins with the first of them.
int count_that_fit(const Typefaces& typefaces, const Piece& piece, BarRange bars, bool with_meter,
                   StaffMeasures measures, double width) {
  measures.least_bar = least_bar(piece.meter_at(bars.first).quarters(), measures);
  return bars_that_fit(typefaces, system_of(piece, bars, with_meter), measures, width);
}

}  // namespace

StaffMeasures writing_measures(double height) {
  StaffMeasures measures;
  measures.height = height;
  measures.gap = height * 1.3;
  measures.number_room = std::max(6.0, height * 7 / 8);
  return measures;
}

double below_system(const StaffMeasures& measures) { return measures.height * 1.1; }

std::vector<StaffSystem> systems_for(const Typefaces& typefaces, const Piece& piece, BarRange bars,
                                     const StaffMeasures& measures, double width) {
  const auto fit = [&](int first) {
    return count_that_fit(typefaces, piece, {first, bars.last}, first == bars.first, measures,
                          width);
  };
  int needed = 0;
  for (int bar = bars.first; bar <= bars.last; bar += fit(bar)) ++needed;
  std::vector<StaffSystem> systems;
  for (int bar = bars.first; bar <= bars.last;) {
    const int left = bars.last - bar + 1;
    const int lines = std::max(1, needed - static_cast<int>(systems.size()));
    const int count = std::min(fit(bar), (left + lines - 1) / lines);
    StaffSystem system = system_of(piece, {bar, bar + count - 1}, bar == bars.first);
    bar += count;
    if (bar <= bars.last) {
      const StaffBar next = staff_bar(piece, bar);
      system.next_fifths = next.fifths;
      system.next_meter = next.meter;
    }
    system.final_bar_line = bar > piece.bars;
    systems.push_back(std::move(system));
  }
  return systems;
}

StaffSystem blank_system(const Typefaces& typefaces, const Piece& piece,
                         const StaffMeasures& measures, double width) {
  constexpr int kMostBars = 8;
  StaffSystem system = empty_system(piece, 1);
  StaffBar bar;
  bar.length = piece.meter.quarters();
  system.bars.assign(kMostBars, bar);
  system.meter = staff_meter(piece.meter);
  StaffMeasures sized = measures;
  sized.least_bar = least_bar(bar.length, measures);
  system.bars.resize(static_cast<std::size_t>(bars_that_fit(typefaces, system, sized, width)));
  return system;
}

}  // namespace cahier
