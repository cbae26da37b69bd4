#include "paper/music_glyphs.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "paper/page_size.h"

namespace cahier {

namespace {

// Noto Music: staff lines 250 units apart, 1000 units to the em.
constexpr double kSpacesPerEm = 4;

// Moves the ink's left edge to 0.
MusicGlyph from_left_edge(const Outline& outline) {
  const Box bounds = outline.bounds();
  return {outline.moved(-bounds.x, 0), bounds.width};
}

// The middle of the two dots of the F clef: its two smallest contours.
double dots_middle(const Outline& f_clef) {
  std::vector<Box> boxes;
  for (const Outline& contour : f_clef.contours()) boxes.push_back(contour.bounds());
  std::sort(boxes.begin(), boxes.end(), [](const Box& one, const Box& other) {
    return one.width * one.height < other.width * other.height;
  });
  return (boxes.at(0).centre().y + boxes.at(1).centre().y) / 2;
}

// The clef's line in the glyph's own coordinates, y downwards, in millimetres from the glyph's
// bottom staff line. The G clef is drawn to the second line; the C clef is symmetrical about its
// line and the F clef's dots stand about theirs.
double reference_line(StaffClef clef, const Outline& outline, double space) {
  if (clef == StaffClef::bass || clef == StaffClef::bass_8_below) return dots_middle(outline);
  if (clef == StaffClef::alto || clef == StaffClef::tenor) return outline.bounds().centre().y;
  return -1 * space;
}

char32_t clef_character(StaffClef clef) {
  switch (clef) {
    case StaffClef::treble:
      return U'\U0001D11E';
    case StaffClef::treble_8_above:
      return U'\U0001D11F';
    case StaffClef::treble_8_below:
      return U'\U0001D120';
    case StaffClef::bass:
    case StaffClef::bass_8_below:
      return U'\U0001D122';
    case StaffClef::alto:
    case StaffClef::tenor:
    case StaffClef::percussion:
      break;
  }
  return U'\U0001D121';
}

// Two upright bars across the middle spaces. Noto Music's are as high as the staff and would be
// taken for bar lines.
MusicGlyph percussion_clef(double space) {
  const double bar = 0.45 * space;
  const double gap = 0.4 * space;
  Outline outline = Outline::rectangle({0, -space, bar, 2 * space});
  outline.append(Outline::rectangle({bar + gap, -space, bar, 2 * space}));
  return {outline, 2 * bar + gap};
}

// A figure exactly two spaces high, its middle at y = 0; meters are set wider than text.
MusicGlyph meter_figure(const Typefaces& typefaces, char32_t figure, double space) {
  constexpr double kWider = 1.15;
  const Outline shape = typefaces.glyph(figure, Face::serif_bold, 3 * space);
  const Box bounds = shape.bounds();
  const double factor = 2 * space / bounds.height;
  return {shape.transformed(factor * kWider, factor, -bounds.x * factor * kWider,
                            -bounds.centre().y * factor),
          bounds.width * factor * kWider};
}

// Below the staff and the middle of an F clef `width` wide: Noto Music's own stands on the staff's
// bottom line and meets the clef's tail. As high as the 8 of its G clefs.
Outline eight_below_f_clef(const Typefaces& typefaces, double width, double space) {
  constexpr double kHeight = 1.1;
  const MusicGlyph eight = meter_figure(typefaces, U'8', space * kHeight / 2);
  const double bottom_line = 3;
  return eight.outline.moved((width - eight.width) / 2, (bottom_line + 0.3 + kHeight / 2) * space);
}

MusicGlyph plus_sign(double space) {
  const double arm = 0.5 * space;
  const double half = 0.1 * space;
  Outline outline = Outline::rectangle({0, -half, 2 * arm, 2 * half});
  outline.append(Outline::rectangle({arm - half, -arm, 2 * half, 2 * arm}));
  return {outline, 2 * arm};
}

MusicGlyph meter_row(const Typefaces& typefaces, std::string_view figures, double space) {
  MusicGlyph row;
  for (char figure : figures) {
    const MusicGlyph glyph =
        figure == '+' ? plus_sign(space)
                      : meter_figure(typefaces, static_cast<unsigned char>(figure), space);
    if (row.width > 0) row.width += 0.15 * space;
    row.outline.append(glyph.outline.moved(row.width, 0));
    row.width += glyph.width;
  }
  return row;
}

char32_t note_character(NoteValue value) {
  switch (value) {
    case NoteValue::eighth:
      return U'\U0001D160';
    case NoteValue::quarter:
      return U'\U0001D15F';
    case NoteValue::half:
      break;
  }
  return U'\U0001D15E';
}

struct TempoMark {
  MusicGlyph note;
  double head_drop = 0;  // from the middle of the note's head to its bottom
  std::string figures;
  double gap = 0;
  double figures_width = 0;

  double width() const { return note.width + gap + figures_width; }
};

TempoMark tempo_mark(const Typefaces& typefaces, NoteValue beat, bool dotted,
                     std::string_view number, const TextStyle& style) {
  // The note is nearly one and a half capitals high, so that its head is a letter's size.
  const double space = typefaces.metrics(style.face, style.size_pt).cap_height * 0.37;
  TempoMark mark;
  mark.note = note_glyph(typefaces, beat, dotted, space);
  mark.head_drop = mark.note.outline.bounds().bottom();
  mark.figures = fmt::format("= {}", number);
  mark.gap = typefaces.width(" ", style.face, style.size_pt) * 1.2;
  mark.figures_width = typefaces.width(mark.figures, style.face, style.size_pt);
  return mark;
}

}  // namespace

int clef_line(StaffClef clef) {
  switch (clef) {
    case StaffClef::treble:
    case StaffClef::treble_8_below:
    case StaffClef::treble_8_above:
      return -2;
    case StaffClef::bass:
    case StaffClef::bass_8_below:
    case StaffClef::tenor:
      return 2;
    case StaffClef::alto:
    case StaffClef::percussion:
      break;
  }
  return 0;
}

MusicGlyph clef_glyph(const Typefaces& typefaces, StaffClef clef, double space) {
  if (clef == StaffClef::percussion) return percussion_clef(space);
  const Outline shape = typefaces.glyph(clef_character(clef), Face::music, kSpacesPerEm * space);
  MusicGlyph glyph = from_left_edge(shape.moved(0, -reference_line(clef, shape, space)));
  if (clef == StaffClef::bass_8_below)
    glyph.outline.append(eight_below_f_clef(typefaces, glyph.width, space));
  return glyph;
}

MusicGlyph meter_glyph(const Typefaces& typefaces, std::string_view count, int unit, double space) {
  const MusicGlyph upper = meter_row(typefaces, count, space);
  const MusicGlyph lower = meter_row(typefaces, std::to_string(unit), space);
  const double width = std::max(upper.width, lower.width);
  Outline outline = upper.outline.moved((width - upper.width) / 2, -space);
  outline.append(lower.outline.moved((width - lower.width) / 2, space));
  return {outline, width};
}

MusicGlyph brace_glyph(double height, double space) {
  // Each half is one S between two curves that meet at the point and at the end, and are widest
  // apart between them.
  const double width = std::clamp(height * 0.085, space, 1.6 * space);
  const auto at = [&](double across, double down) { return Point{across * width, down * height}; };
  Outline outline;
  outline.move_to(at(1, 0));
  outline.curve_to(at(-0.15, 0.17), at(0.95, 0.37), at(0, 0.5));
  outline.curve_to(at(0.95, 0.63), at(-0.15, 0.83), at(1, 1));
  outline.curve_to(at(0.3, 0.84), at(1.35, 0.61), at(0, 0.5));
  outline.curve_to(at(1.35, 0.39), at(0.3, 0.16), at(1, 0));
  outline.close();
  return {outline, width};
}

MusicGlyph bracket_glyph(double height, double space) {
  const double thickness = kBracketThickness * space;
  const double reach = 1.6 * space;
  const double rise = kBracketRise * space;
  Outline outline;
  outline.move_to({0, 0});
  outline.curve_to({thickness, 0}, {reach * 0.8, -rise * 0.35}, {reach, -rise});
  outline.curve_to({reach * 0.85, rise * 0.05}, {thickness * 1.3, rise * 0.4},
                   {thickness, rise * 0.4});
  outline.line_to({thickness, height - rise * 0.4});
  outline.curve_to({thickness * 1.3, height - rise * 0.4}, {reach * 0.85, height - rise * 0.05},
                   {reach, height + rise});
  outline.curve_to({reach * 0.8, height + rise * 0.35}, {thickness, height}, {0, height});
  outline.close();
  return {outline, reach};
}

MusicGlyph note_glyph(const Typefaces& typefaces, NoteValue value, bool dotted, double space) {
  const Outline shape = typefaces.glyph(note_character(value), Face::music, kSpacesPerEm * space);
  const Outline head = typefaces.glyph(U'\U0001D158', Face::music, kSpacesPerEm * space);
  const Box head_box = head.bounds();
  const double middle = shape.bounds().bottom() - head_box.height / 2;
  MusicGlyph glyph = from_left_edge(shape.moved(0, -middle));
  if (dotted) {
    constexpr double kDotRadius = 0.22;
    constexpr double kLeastDot = 0.55;  // millimetres: smaller ones are lost at 80 dots an inch
    // Clear of the head, and of an eighth's flag, which hangs low.
    const double radius = std::max(kDotRadius * space, kLeastDot / 2);
    const double x = std::max(head_box.width + 0.6 * space, glyph.width + 0.3 * space) + radius -
                     kDotRadius * space;
    glyph.outline.append(Outline::ellipse({x, 0}, radius, radius));
    glyph.width = std::max(glyph.width, x + radius);
  }
  return glyph;
}

double tempo_mark_width(const Typefaces& typefaces, NoteValue beat, bool dotted,
                        std::string_view number, const TextStyle& style) {
  return tempo_mark(typefaces, beat, dotted, number, style).width();
}

double draw_tempo_mark(Canvas& canvas, const Box& box, NoteValue beat, bool dotted,
                       std::string_view number, const TextStyle& style) {
  const TempoMark mark = tempo_mark(canvas.typefaces(), beat, dotted, number, style);
  const double capitals = canvas.typefaces().metrics(style.face, style.size_pt).cap_height;
  const double baseline = box.centre().y + capitals / 2;
  canvas.fill(mark.note.outline.moved(box.x, baseline - mark.head_drop), {style.grey, false});
  canvas.text({box.x + mark.note.width + mark.gap, baseline}, mark.figures, style, box);
  return mark.width();
}

}  // namespace cahier
