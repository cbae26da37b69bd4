#include "workbook/sheets/write_outs/write_out_staves.h"

#include <algorithm>

#include "paper/text_fitting.h"
#include "workbook/style.h"

namespace cahier {
namespace {

// The gap is larger than the staff: a university manuscript hand-out.
constexpr double kGapToStaff = 1.25;
constexpr double kLeastGapToStaff = 1.05;

StaffClef staff_clef(Clef clef) {
  switch (clef) {
    case Clef::treble:
      return StaffClef::treble;
    case Clef::treble_8_below:
      return StaffClef::treble_8_below;
    case Clef::treble_8_above:
      return StaffClef::treble_8_above;
    case Clef::bass:
      return StaffClef::bass;
    case Clef::bass_8_below:
      return StaffClef::bass_8_below;
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

// A bar with what changes at it; nothing does at the first bar of a piece, where a repeat has no
// sign either (common practice).
StaffBar staff_bar(const Piece& piece, int bar) {
  StaffBar made;
  made.length = piece.quarters_in(bar);
  made.number = bar;
  for (const Repeat& repeat : piece.repeats) {
    made.opens_repeat |= repeat.bars.first == bar && bar > piece.first_bar();
    made.closes_repeat |= repeat.goes_back_from(bar);
  }
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
  system.bracketed = piece.instrument.bracketed;
  system.fifths = fifths_at(piece, first_bar);
  system.bars.clear();
  return system;
}

// Enough for eighth notes by hand: a quarter note takes 9 mm on a staff of 8 mm.
double least_bar(double quarters, const StaffMeasures& measures) {
  return std::clamp(quarters * 9, 24.0, 60.0) * measures.height / 8;
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

StaffMeasures writing_measures(const Typefaces& typefaces, const Piece& piece, double height) {
  StaffMeasures measures;
  measures.height = height;
  measures.gap = on_grid(height * kGapToStaff);
  measures.number_style = {Face::serif_italic, style::kSize2, style::kDark, TextRole::desk,
                           Turn::none};
  StaffSystem system = empty_system(piece, piece.first_bar());
  system.bars.emplace_back();
  for (const Change& change : piece.changes)
    if (change.key) system.bars.push_back(staff_bar(piece, change.bar));
  for (StaffBar& bar : system.bars) bar.number = piece.bars;
  measures.number_room = on_grid(number_room_for(typefaces, system, measures));
  return measures;
}

double below_system(const StaffMeasures& measures) { return on_grid(measures.height * 0.9); }

double system_height(const Piece& piece, const StaffMeasures& measures) {
  return system_height(empty_system(piece, piece.first_bar()), measures);
}

StaffMeasures fitting_measures(const Typefaces& typefaces, const Piece& piece, double height,
                               double room) {
  constexpr double kLeastStaff = 4;
  const double gaps = static_cast<double>(piece.instrument.staves.size()) - 1;
  for (;; height -= 0.25) {
    StaffMeasures measures = writing_measures(typefaces, piece, height);
    const double over = system_height(piece, measures) + below_system(measures) - room;
    const double most = gaps * (measures.gap - height * kLeastGapToStaff);
    if (over > 0 && gaps > 0) measures.gap -= std::min(over, most) / gaps;
    if (height <= kLeastStaff || over <= most + 1e-9) return measures;
  }
}

StaffMeasures fitting_measures(const Typefaces& typefaces, const Piece& piece, const Print& print) {
  const double page = page_content(print).height;
  const double heading = style::kWritingRow;
  return fitting_measures(typefaces, piece, print.staff_height,
                          page - heading - style::kWritingRow / 2 - 2 * kGrid);
}

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
