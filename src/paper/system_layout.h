// Where everything in a system of staves stands: measured before it is drawn. Millimetres.
#pragma once

#include <vector>

#include "paper/bar_line.h"
#include "paper/staff_system.h"

namespace cahier {

// In staff spaces.
inline constexpr double kBraceGap = 0.3;
inline constexpr double kBracketGap = 0.4;
inline constexpr double kBeforeClef = 0.8;
inline constexpr double kAfterClef = 0.9;
inline constexpr double kBeforeSignature = 0.7;
inline constexpr double kAfterSignature = 0.9;

class SystemLayout {
 public:
  // REQUIRES: everything passed in outlives the layout.
  SystemLayout(const Typefaces& typefaces, const StaffSystem& system,
               const StaffMeasures& measures);

  int staff_count() const { return static_cast<int>(system_.staves.size()); }
  bool is_braced() const;
  bool is_bracketed() const;
  // How many of the first staves a brace or a bracket joins; 0 for none.
  int joined() const;
  // From the top line of the first of so many staves to the bottom line of the last.
  double height_of(int staves) const;

  // In front of the staves, for the brace or the bracket.
  double joint_room() const;
  double clef_width() const;
  // In front of the first bar and behind the last.
  double head_width() const;
  double tail_width() const { return change_width(closing_); }
  // What a change, and what it and a repeat's sign, take away at the beginning of a bar.
  double change_width(std::size_t bar) const { return change_width(signatures_[bar]); }
  double lead_width(std::size_t bar) const;
  // Of each bar, in millimetres, when all have `room` together.
  std::vector<double> bar_widths(double room) const;

  double number_width(int number) const;
  // From the top line up to the baseline that all numbers share: it clears the clef, a bracket's
  // hook and the signatures under them.
  double number_rise() const;
  // From the top line up to the highest of all that stands on the first staff, numbers apart.
  double sign_rise() const;

  Signature opening() const;
  const Signature& closing() const { return closing_; }
  // What is written in front of a bar; nothing in front of the first.
  const Signature& signature(std::size_t bar) const { return signatures_[bar]; }
  // A repeat opens behind the signature where there is one, else with the bar line (common
  // practice).
  bool opens_apart(std::size_t bar) const;
  // A change of key stands behind a double bar line (common practice).
  BarLine line_before(std::size_t bar) const;
  BarLine last_line() const;

 private:
  double change_width(const Signature& signature) const;
  bool changes_key(const Signature& signature) const;
  double signature_room(const Signature& signature) const;
  double repeat_width(std::size_t bar) const;
  double bracket_rise() const;
  double clef_rise(double reach) const;

  const Typefaces& typefaces_;
  const StaffSystem& system_;
  const StaffMeasures& measures_;
  double space_;
  std::vector<Signature> signatures_;
  Signature closing_;
};

}  // namespace cahier
