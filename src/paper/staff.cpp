#include "paper/staff.h"

#include <algorithm>

#include "paper/bar_share.h"
#include "paper/system_layout.h"

namespace cahier {

namespace {

// Draws one system; everything measured in millimetres.
class Engraving {
 public:
  Engraving(Canvas& canvas, const Box& box, const StaffSystem& system,
            const StaffMeasures& measures)
      : canvas_(canvas),
        typefaces_(canvas.typefaces()),
        system_(system),
        measures_(measures),
        space_(measures.space()),
        layout_(typefaces_, system, measures),
        music_{box.x + layout_.joint_room(), box.y + measures.number_room,
               box.width - layout_.joint_room(), layout_.height_of(layout_.staff_count())} {}

  Box draw() const {
    draw_staff_lines();
    draw_joint();
    draw_opening();
    const double bars_end = music_.right() - layout_.tail_width();
    double x = music_.x + layout_.head_width() - layout_.joint_room();
    const std::vector<double> widths = layout_.bar_widths(bars_end - x);
    for (std::size_t i = 0; i < widths.size(); ++i) {
      if (system_.bars[i].number) draw_number(i == 0 ? music_.x : x, *system_.bars[i].number);
      draw_signature(layout_.signature(i), x + kBeforeSignature * space_);
      if (layout_.opens_apart(i)) draw_line(BarLine::opens_repeat, x + layout_.change_width(i));
      x += widths[i];
      if (i + 1 < widths.size()) draw_line_ending_at(layout_.line_before(i + 1), x);
    }
    draw_line_ending_at(layout_.last_line(), bars_end);
    draw_signature(layout_.closing(), bars_end + kBeforeSignature * space_);
    return {music_.x, music_.y, bars_end - music_.x, music_.height};
  }

 private:
  int staff_count() const { return layout_.staff_count(); }
  StaffClef clef(int staff) const { return system_.staves[static_cast<std::size_t>(staff)]; }
  double staff_top(int staff) const {
    return music_.y + staff * (measures_.height + measures_.gap);
  }

  void draw_staff_lines() const {
    const Stroke stroke{kStaffLine * space_, 0, 0, 0, true};
    for (int staff = 0; staff < staff_count(); ++staff) {
      for (int line = 0; line < 5; ++line) {
        const double y = staff_top(staff) + line * space_;
        canvas_.line({music_.x, y}, {music_.right(), y}, stroke);
      }
    }
  }

  // The line at the left of all staves, and the brace or bracket of those that belong together.
  void draw_joint() const {
    if (staff_count() > 1)
      draw_bar_line(canvas_, BarLine::thin, music_.x, {run(0, staff_count())}, {}, space_);
    if (layout_.is_braced()) {
      const MusicGlyph brace = brace_glyph(layout_.height_of(layout_.joined()), space_);
      canvas_.fill(brace.outline.moved(music_.x - kBraceGap * space_ - brace.width, music_.y), {});
    } else if (layout_.is_bracketed()) {
      const BarLineRun joined = run(0, layout_.joined());
      const double x = music_.x - (kBracketGap + kBracketThickness) * space_;
      const MusicGlyph bracket = bracket_glyph(joined.bottom - joined.top, space_);
      canvas_.fill(bracket.outline.moved(x, joined.top), {});
    }
  }

  void draw_opening() const {
    const double x = music_.x + kBeforeClef * space_;
    const double width = layout_.clef_width();
    for (int staff = 0; staff < staff_count(); ++staff) {
      const MusicGlyph glyph = clef_glyph(typefaces_, clef(staff), space_);
      const double line = staff_top(staff) + (4 - clef_line(clef(staff))) * space_ / 2;
      canvas_.fill(glyph.outline.moved(x + (width - glyph.width) / 2, line), {});
    }
    draw_signature(layout_.opening(), x + width + kAfterClef * space_);
  }

  void draw_signature(const Signature& signature, double x) const {
    for (int staff = 0; staff < staff_count(); ++staff) {
      const MusicGlyph glyph = signature_glyph(typefaces_, clef(staff), signature, space_);
      if (glyph.outline.empty()) continue;
      canvas_.fill(glyph.outline.moved(x, staff_top(staff) + 2 * space_), {});
    }
  }

  void draw_number(double x, int number) const {
    const Box within{x - 0.5, music_.y - measures_.number_room, layout_.number_width(number) + 1,
                     measures_.number_room};
    canvas_.text({x, music_.y - layout_.number_rise()}, std::to_string(number),
                 measures_.number_style, within);
  }

  // From the outer edge of a staff's top line to that of another's bottom line.
  BarLineRun run(int first, int count) const {
    const double edge = kStaffLine * space_ / 2;
    return {staff_top(first) - edge, staff_top(first) + layout_.height_of(count) + edge};
  }

  // Through the joined staves together and through each other staff by itself.
  void draw_line(BarLine kind, double left) const {
    std::vector<BarLineRun> runs;
    if (layout_.joined() > 0) runs.push_back(run(0, layout_.joined()));
    for (int staff = layout_.joined(); staff < staff_count(); ++staff)
      runs.push_back(run(staff, 1));
    std::vector<double> middles;
    for (int staff = 0; staff < staff_count(); ++staff)
      middles.push_back(staff_top(staff) + 2 * space_);
    draw_bar_line(canvas_, kind, left, runs, middles, space_);
  }

  // The bar behind it begins at `x`.
  void draw_line_ending_at(BarLine kind, double x) const {
    draw_line(kind, x - (bar_line_width(kind) - bar_line_lead(kind)) * space_);
  }

  Canvas& canvas_;
  const Typefaces& typefaces_;
  const StaffSystem& system_;
  const StaffMeasures& measures_;
  double space_;
  SystemLayout layout_;
  Box music_;  // from the top line of the first staff to the bottom line of the last
};

}  // namespace

double system_height(const StaffSystem& system, const StaffMeasures& measures) {
  const double count = static_cast<double>(system.staves.size());
  return measures.number_room + count * measures.height + (count - 1) * measures.gap;
}

double number_room_for(const Typefaces& typefaces, const StaffSystem& system,
                       const StaffMeasures& measures) {
  const SystemLayout layout(typefaces, system, measures);
  const TextStyle& style = measures.number_style;
  const bool numbered = std::any_of(system.bars.begin(), system.bars.end(),
                                    [](const StaffBar& bar) { return bar.number.has_value(); });
  const double numbers =
      numbered
          ? layout.number_rise() + typefaces.metrics(style.face, style.size_pt).cap_height + 0.1
          : 0;
  return std::max(numbers, layout.sign_rise() + 0.2);
}

double system_head_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures) {
  return SystemLayout(typefaces, system, measures).head_width();
}

double system_tail_width(const Typefaces& typefaces, const StaffSystem& system,
                         const StaffMeasures& measures) {
  return SystemLayout(typefaces, system, measures).tail_width();
}

int bars_that_fit(const Typefaces& typefaces, const StaffSystem& system,
                  const StaffMeasures& measures, double width) {
  const SystemLayout layout(typefaces, system, measures);
  const double usual = usual_length(system.bars);
  double used = layout.head_width() + layout.tail_width();
  int count = 0;
  for (std::size_t i = 0; i < system.bars.size(); ++i) {
    used += layout.lead_width(i) + bar_share(system.bars[i], usual) * measures.least_bar;
    if (used > width + 1e-9) break;
    ++count;
  }
  return std::max(1, count);
}

Box draw_system(Canvas& canvas, const Box& box, const StaffSystem& system,
                const StaffMeasures& measures) {
  return Engraving(canvas, box, system, measures).draw();
}

}  // namespace cahier
