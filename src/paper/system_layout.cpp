#include "paper/system_layout.h"

#include <algorithm>

#include "paper/bar_share.h"

namespace cahier {

namespace {

constexpr double kEverything = 1e9;

// How far what stands on the first staff within `reach` of its beginning rises above the staff's
// top line; `line` is the glyph's own below that.
double rise_of(const MusicGlyph& glyph, double line, double reach) {
  double rise = 0;
  for (const Outline& contour : glyph.outline.contours()) {
    const Box bounds = contour.bounds();
    if (bounds.x < reach) rise = std::max(rise, -bounds.y - line);
  }
  return rise;
}

}  // namespace

SystemLayout::SystemLayout(const Typefaces& typefaces, const StaffSystem& system,
                           const StaffMeasures& measures)
    : typefaces_(typefaces), system_(system), measures_(measures), space_(measures.space()) {
  int fifths = opening().fifths.value_or(0);
  signatures_.emplace_back();
  for (std::size_t i = 1; i < system.bars.size(); ++i) {
    const StaffBar& bar = system.bars[i];
    signatures_.push_back({bar.fifths, fifths, bar.meter});
    fifths = bar.fifths.value_or(fifths);
  }
  closing_ = {system.next_fifths, fifths, system.next_meter};
}

bool SystemLayout::is_braced() const { return std::min(system_.braced, staff_count()) > 1; }

bool SystemLayout::is_bracketed() const {
  return !is_braced() && std::min(system_.bracketed, staff_count()) > 1;
}

int SystemLayout::joined() const {
  if (is_braced()) return std::min(system_.braced, staff_count());
  return is_bracketed() ? std::min(system_.bracketed, staff_count()) : 0;
}

double SystemLayout::height_of(int staves) const {
  return staves * measures_.height + (staves - 1) * measures_.gap;
}

double SystemLayout::joint_room() const {
  if (is_braced()) return brace_glyph(height_of(joined()), space_).width + kBraceGap * space_;
  return is_bracketed() ? (kBracketThickness + kBracketGap) * space_ : 0;
}

double SystemLayout::clef_width() const {
  double width = 0;
  for (StaffClef clef : system_.staves)
    width = std::max(width, clef_glyph(typefaces_, clef, space_).width);
  return width;
}

double SystemLayout::head_width() const {
  return joint_room() + kBeforeClef * space_ + clef_width() + kAfterClef * space_ +
         signature_room(opening());
}

double SystemLayout::lead_width(std::size_t bar) const {
  return change_width(bar) + repeat_width(bar);
}

std::vector<double> SystemLayout::bar_widths(double room) const {
  const double usual = usual_length(system_.bars);
  double shares = 0;
  for (std::size_t i = 0; i < system_.bars.size(); ++i) {
    shares += bar_share(system_.bars[i], usual);
    room -= lead_width(i);
  }
  const double each = shares > 0 ? std::max(0.0, room / shares) : 0;
  std::vector<double> widths;
  for (std::size_t i = 0; i < system_.bars.size(); ++i)
    widths.push_back(lead_width(i) + bar_share(system_.bars[i], usual) * each);
  return widths;
}

double SystemLayout::number_width(int number) const {
  const TextStyle& style = measures_.number_style;
  return typefaces_.width(std::to_string(number), style.face, style.size_pt);
}

double SystemLayout::number_rise() const {
  double rise = std::max(0.4 * space_, bracket_rise());
  for (std::size_t i = 0; i < system_.bars.size(); ++i) {
    if (!system_.bars[i].number) continue;
    const double reach = number_width(*system_.bars[i].number) + 0.5;
    rise = std::max(rise, i == 0 ? clef_rise(reach)
                                 : rise_of(signature_glyph(typefaces_, system_.staves.front(),
                                                           signatures_[i], space_),
                                           2 * space_, reach - kBeforeSignature * space_));
  }
  return rise + 0.2 * space_;
}

double SystemLayout::sign_rise() const {
  double rise = std::max(bracket_rise(), clef_rise(kEverything));
  std::vector<Signature> all = signatures_;
  all.push_back(opening());
  all.push_back(closing_);
  for (const Signature& each : all)
    rise = std::max(rise, rise_of(signature_glyph(typefaces_, system_.staves.front(), each, space_),
                                  2 * space_, kEverything));
  return rise;
}

double SystemLayout::bracket_rise() const {
  return is_bracketed() ? (kBracketRise + kStaffLine) * space_ : 0;
}

double SystemLayout::clef_rise(double reach) const {
  const StaffClef clef = system_.staves.front();
  return rise_of(clef_glyph(typefaces_, clef, space_), (4 - clef_line(clef)) * space_ / 2, reach);
}

Signature SystemLayout::opening() const {
  const StaffBar first = system_.bars.empty() ? StaffBar{} : system_.bars.front();
  return {first.fifths.value_or(system_.fifths), 0, first.meter ? first.meter : system_.meter};
}

bool SystemLayout::opens_apart(std::size_t bar) const {
  return system_.bars[bar].opens_repeat && (bar == 0 || change_width(bar) > 0);
}

BarLine SystemLayout::line_before(std::size_t bar) const {
  const bool closes = system_.bars[bar - 1].closes_repeat;
  if (system_.bars[bar].opens_repeat && !opens_apart(bar))
    return closes ? BarLine::closes_and_opens : BarLine::opens_repeat;
  if (closes) return BarLine::closes_repeat;
  return changes_key(signatures_[bar]) ? BarLine::two_thin : BarLine::thin;
}

BarLine SystemLayout::last_line() const {
  if (!system_.bars.empty() && system_.bars.back().closes_repeat) return BarLine::closes_repeat;
  if (system_.final_bar_line) return BarLine::final;
  return changes_key(closing_) ? BarLine::two_thin : BarLine::thin;
}

double SystemLayout::change_width(const Signature& signature) const {
  const double room = signature_room(signature);
  return room > 0 ? kBeforeSignature * space_ + room : 0;
}

// A percussion staff alone shows no key, so that no double bar line announces one.
bool SystemLayout::changes_key(const Signature& signature) const {
  return signature.fifths && change_width({signature.fifths, signature.cancelled, {}}) > 0;
}

// 0 when nothing is written.
double SystemLayout::signature_room(const Signature& signature) const {
  double width = 0;
  for (StaffClef clef : system_.staves)
    width = std::max(width, signature_glyph(typefaces_, clef, signature, space_).width);
  return width > 0 ? width + kAfterSignature * space_ : 0;
}

double SystemLayout::repeat_width(std::size_t bar) const {
  if (!system_.bars[bar].opens_repeat) return 0;
  return space_ * (opens_apart(bar) ? bar_line_width(BarLine::opens_repeat)
                                    : bar_line_lead(BarLine::opens_repeat));
}

}  // namespace cahier
