#include "paper/staff.h"

#include <algorithm>

#include "paper/bar_share.h"

namespace cahier {

namespace {

// In staff spaces.
constexpr double kBraceGap = 0.3;
constexpr double kBeforeClef = 0.8;
constexpr double kAfterClef = 0.9;
constexpr double kBeforeSignature = 0.7;
constexpr double kAfterSignature = 0.9;

// Places and draws one system; everything measured in millimetres.
class Engraving {
 public:
  Engraving(const Typefaces& typefaces, const StaffSystem& system, const StaffMeasures& measures)
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

  double head_width() const {
    return brace_room() + kBeforeClef * space_ + clef_width() + kAfterClef * space_ +
           signature_room(opening());
  }

  double tail_width() const { return change_width(closing_); }

  // What a change in front of a bar takes away from it.
  double change_width(std::size_t bar) const { return change_width(signatures_[bar]); }

  Box draw(Canvas& canvas, const Box& box) const {
    const double left = box.x + brace_room();
    const double top = box.y + measures_.number_room;
    const Box music{left, top, box.right() - left, music_height()};
    draw_staff_lines(canvas, music);
    draw_brace(canvas, music);
    draw_opening(canvas, music);
    const double bars_end = music.right() - tail_width();
    double x = left + head_width() - brace_room();
    const double room = room_per_share(bars_end - x);
    const double usual = usual_length(system_.bars);
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      const StaffBar& bar = system_.bars[i];
      if (bar.number) draw_number(canvas, i == 0 ? left : x, *bar.number, music);
      draw_signature(canvas, signatures_[i], x + kBeforeSignature * space_, music);
      x += change_width(i) + bar_share(bar, usual) * room;
      if (i + 1 < system_.bars.size()) {
        draw_bar_line(canvas, x, music, changes_key(signatures_[i + 1]));
      }
    }
    draw_end(canvas, bars_end, music);
    return {music.x, music.y, bars_end - music.x, music.height};
  }

 private:
  Signature opening() const {
    const StaffBar first = system_.bars.empty() ? StaffBar{} : system_.bars.front();
    return {first.fifths.value_or(system_.fifths), 0, first.meter ? first.meter : system_.meter};
  }

  int staff_count() const { return static_cast<int>(system_.staves.size()); }
  int braced() const { return std::min(system_.braced, staff_count()) > 1 ? system_.braced : 0; }
  double staff_top(const Box& music, int staff) const {
    return music.y + staff * (measures_.height + measures_.gap);
  }
  double music_height() const {
    return staff_count() * measures_.height + (staff_count() - 1) * measures_.gap;
  }
  double braced_height() const {
    return braced() * measures_.height + (braced() - 1) * measures_.gap;
  }
  double brace_room() const {
    if (braced() == 0) return 0;
    return brace_glyph(braced_height(), space_).width + kBraceGap * space_;
  }

  double clef_width() const {
    double width = 0;
    for (StaffClef clef : system_.staves) {
      width = std::max(width, clef_glyph(typefaces_, clef, space_).width);
    }
    return width;
  }

  double change_width(const Signature& signature) const {
    const double room = signature_room(signature);
    return room > 0 ? kBeforeSignature * space_ + room : 0;
  }

  // A percussion staff alone shows no key, so that no double bar line announces one.
  bool changes_key(const Signature& signature) const {
    return signature.fifths && change_width({signature.fifths, signature.cancelled, {}}) > 0;
  }

  // 0 when nothing is written.
  double signature_room(const Signature& signature) const {
    double width = 0;
    for (StaffClef clef : system_.staves) {
      width = std::max(width, signature_glyph(typefaces_, clef, signature, space_).width);
    }
    return width > 0 ? width + kAfterSignature * space_ : 0;
  }

  double room_per_share(double room) const {
    const double usual = usual_length(system_.bars);
    double shares = 0;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      shares += bar_share(system_.bars[i], usual);
      room -= change_width(i);
    }
    return shares > 0 ? std::max(0.0, room / shares) : 0;
  }

  Stroke stroke(double spaces) const { return {spaces * space_, 0, 0, 0, true}; }

  void draw_staff_lines(Canvas& canvas, const Box& music) const {
    for (int staff = 0; staff < staff_count(); ++staff) {
      for (int line = 0; line < 5; ++line) {
        const double y = staff_top(music, staff) + line * space_;
        canvas.line({music.x, y}, {music.right(), y}, stroke(kStaffLine));
      }
    }
  }

  void draw_brace(Canvas& canvas, const Box& music) const {
    const double thin = kThinBarLine * space_;
    if (staff_count() > 1) {
      draw_upright(canvas, music.x + thin / 2, music.y, music.bottom(), kThinBarLine);
    }
    if (braced() == 0) return;
    const MusicGlyph brace = brace_glyph(braced_height(), space_);
    canvas.fill(brace.outline.moved(music.x - kBraceGap * space_ - brace.width, music.y), {});
  }

  void draw_opening(Canvas& canvas, const Box& music) const {
    const double x = music.x + kBeforeClef * space_;
    for (int staff = 0; staff < staff_count(); ++staff) {
      const StaffClef clef = system_.staves[static_cast<std::size_t>(staff)];
      const MusicGlyph glyph = clef_glyph(typefaces_, clef, space_);
      const double line = staff_top(music, staff) + (4 - clef_line(clef)) * space_ / 2;
      canvas.fill(glyph.outline.moved(x + (clef_width() - glyph.width) / 2, line), {});
    }
    draw_signature(canvas, opening(), x + clef_width() + kAfterClef * space_, music);
  }

  void draw_signature(Canvas& canvas, const Signature& signature, double x,
                      const Box& music) const {
    for (int staff = 0; staff < staff_count(); ++staff) {
      const StaffClef clef = system_.staves[static_cast<std::size_t>(staff)];
      const MusicGlyph glyph = signature_glyph(typefaces_, clef, signature, space_);
      if (glyph.outline.empty()) continue;
      canvas.fill(glyph.outline.moved(x, staff_top(music, staff) + 2 * space_), {});
    }
  }

  double number_width(int number) const {
    const TextStyle& style = measures_.number_style;
    return typefaces_.width(std::to_string(number), style.face, style.size_pt);
  }

  // The top of what stands on the first staff within `reach` of its beginning, counted from the
  // staff's top line; negative above it.
  double highest(const MusicGlyph& glyph, double line, double reach) const {
    double top = 0;
    for (const Outline& contour : glyph.outline.contours()) {
      const Box bounds = contour.bounds();
      if (bounds.x < reach) top = std::min(top, bounds.y + line);
    }
    return top;
  }

  // The numbers of a system share a baseline that clears the clef and the signatures under them.
  double number_baseline(const Box& music) const {
    const StaffClef clef = system_.staves.front();
    double top = -0.4 * space_;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      if (!system_.bars[i].number) continue;
      const double reach = number_width(*system_.bars[i].number) + 0.5;
      top =
          std::min(top, i == 0 ? highest(clef_glyph(typefaces_, clef, space_),
                                         (4 - clef_line(clef)) * space_ / 2, reach)
                               : highest(signature_glyph(typefaces_, clef, signatures_[i], space_),
                                         2 * space_, reach - kBeforeSignature * space_));
    }
    return music.y + top - 0.2 * space_;
  }

  void draw_number(Canvas& canvas, double x, int number, const Box& music) const {
    const Box within{x - 0.5, music.y - measures_.number_room, number_width(number) + 1,
                     measures_.number_room};
    canvas.text({x, number_baseline(music)}, std::to_string(number), measures_.number_style,
                within);
  }

  // From the outer edge of a staff line to the outer edge of another.
  void draw_upright(Canvas& canvas, double x, double top, double bottom, double spaces) const {
    const double edge = kStaffLine * space_ / 2;
    canvas.line({x, top - edge}, {x, bottom + edge}, stroke(spaces));
  }

  // Through the braced staves together and through each other staff by itself; `x` is the line's
  // middle.
  void draw_through_staves(Canvas& canvas, double x, const Box& music, double spaces) const {
    if (braced() > 0) draw_upright(canvas, x, music.y, music.y + braced_height(), spaces);
    for (int staff = braced(); staff < staff_count(); ++staff) {
      const double top = staff_top(music, staff);
      draw_upright(canvas, x, top, top + measures_.height, spaces);
    }
  }

  // A change of key stands behind a double bar line (common practice). `x` is the right edge.
  void draw_bar_line(Canvas& canvas, double x, const Box& music, bool is_double) const {
    const double thin = kThinBarLine * space_;
    draw_through_staves(canvas, x - thin / 2, music, kThinBarLine);
    if (!is_double) return;
    draw_through_staves(canvas, x - thin * 1.5 - kBarLineSeparation * space_, music, kThinBarLine);
  }

  void draw_end(Canvas& canvas, double x, const Box& music) const {
    if (!system_.final_bar_line) {
      draw_bar_line(canvas, x, music, changes_key(closing_));
      draw_signature(canvas, closing_, x + kBeforeSignature * space_, music);
      return;
    }
    const double thick = kThickBarLine * space_;
    draw_through_staves(canvas, x - thick / 2, music, kThickBarLine);
    draw_through_staves(canvas, x - thick - (kBarLineSeparation + kThinBarLine / 2) * space_, music,
                        kThinBarLine);
  }

  const Typefaces& typefaces_;
  const StaffSystem& system_;
  const StaffMeasures& measures_;
  double space_;
  std::vector<Signature> signatures_;  // in front of each bar; that of the first bar is empty
  Signature closing_;
};

}  // namespace

double system_height(const StaffSystem& system, const StaffMeasures& measures) {
  const double count = static_cast<double>(system.staves.size());
  return measures.number_room + count * measures.height + (count - 1) * measures.gap;
}

double system_head_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures) {
  return Engraving(typefaces, system, measures).head_width();
}

double system_tail_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures) {
  return Engraving(typefaces, system, measures).tail_width();
}

int bars_that_fit(const Typefaces& typefaces, const StaffSystem& system,
                  const StaffMeasures& measures, double width) {
  const Engraving engraving(typefaces, system, measures);
  const double usual = usual_length(system.bars);
  double used = engraving.head_width() + engraving.tail_width();
  int count = 0;
  for (std::size_t i = 0; i < system.bars.size(); ++i) {
    used += engraving.change_width(i) + bar_share(system.bars[i], usual) * measures.least_bar;
    if (used > width + 1e-9) break;
    ++count;
  }
  return std::max(1, count);
}

Box draw_system(Canvas& canvas, const Box& box, const StaffSystem& system,
                const StaffMeasures& measures) {
  return Engraving(canvas.typefaces(), system, measures).draw(canvas, box);
}

}  // namespace cahier
