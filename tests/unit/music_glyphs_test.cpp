#include "paper/music_glyphs.h"

#include <algorithm>

#include "catch.h"
#include "paper/layout_check.h"

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

constexpr double kSpace = 2;

std::vector<Box> contour_boxes(const Outline& outline) {
  std::vector<Box> boxes;
  for (const Outline& contour : outline.contours()) boxes.push_back(contour.bounds());
  std::sort(boxes.begin(), boxes.end(), [](const Box& one, const Box& other) {
    return one.width * one.height < other.width * other.height;
  });
  return boxes;
}

}  // namespace

TEST_CASE("clefs name their lines: G on 2, F on 4, C on 3 or 4, counted from the bottom") {
  // Half-spaces above the middle line: line n lies at 2 (n - 3).
  CHECK(clef_line(StaffClef::treble) == 2 * (2 - 3));
  CHECK(clef_line(StaffClef::treble_8_below) == 2 * (2 - 3));
  CHECK(clef_line(StaffClef::treble_8_above) == 2 * (2 - 3));
  CHECK(clef_line(StaffClef::bass) == 2 * (4 - 3));
  CHECK(clef_line(StaffClef::bass_8_below) == 2 * (4 - 3));
  CHECK(clef_line(StaffClef::alto) == 2 * (3 - 3));
  CHECK(clef_line(StaffClef::tenor) == 2 * (4 - 3));
}

TEST_CASE("the dots of the F clef stand in the spaces about its line") {
  const auto boxes = contour_boxes(clef_glyph(typefaces(), StaffClef::bass, kSpace).outline);
  const double one = boxes.at(0).centre().y;
  const double other = boxes.at(1).centre().y;
  CHECK(one + other == Approx(0).margin(0.01));
  CHECK(std::abs(one) == Approx(kSpace / 2).margin(0.15 * kSpace));
}

TEST_CASE("the C clef is even about its line and as high as a staff") {
  const Box bounds = clef_glyph(typefaces(), StaffClef::alto, kSpace).outline.bounds();
  CHECK(bounds.centre().y == Approx(0).margin(0.01));
  CHECK(bounds.height == Approx(4 * kSpace).margin(0.2 * kSpace));
}

TEST_CASE("the G clef curls around its line and reaches past the staff above and below") {
  const Box bounds = clef_glyph(typefaces(), StaffClef::treble, kSpace).outline.bounds();
  CHECK(bounds.y < -3 * kSpace);        // above the top line, three spaces above line 2
  CHECK(bounds.bottom() > 1 * kSpace);  // below the bottom line
  const Box with_8 = clef_glyph(typefaces(), StaffClef::treble_8_below, kSpace).outline.bounds();
  CHECK(with_8.y == Approx(bounds.y).margin(0.05));
  CHECK(with_8.bottom() > bounds.bottom() + 0.8 * kSpace);
}

TEST_CASE("a small 8 above or below says that a clef sounds an octave away") {
  const Box treble = clef_glyph(typefaces(), StaffClef::treble, kSpace).outline.bounds();
  const Box above = clef_glyph(typefaces(), StaffClef::treble_8_above, kSpace).outline.bounds();
  CHECK(above.y < treble.y - 0.8 * kSpace);
  CHECK(above.bottom() == Approx(treble.bottom()).margin(0.05));
  const MusicGlyph plain = clef_glyph(typefaces(), StaffClef::bass, kSpace);
  const MusicGlyph bass = clef_glyph(typefaces(), StaffClef::bass_8_below, kSpace);
  CHECK(bass.width == plain.width);
  CHECK(bass.outline.bounds().y == Approx(plain.outline.bounds().y));
  // Below the bottom line, which is three spaces below line 4, and clear of the clef's tail.
  const auto contours = bass.outline.contours();
  const std::size_t own = plain.outline.contours().size();
  REQUIRE(contours.size() > own);
  Box eight = contours[own].bounds();
  for (std::size_t i = own; i < contours.size(); ++i) eight = eight.around(contours[i].bounds());
  CHECK(eight.y > 3.1 * kSpace);
  CHECK(eight.y > plain.outline.bounds().bottom());
  CHECK(eight.height == Approx(1.1 * kSpace));
  CHECK(eight.x > 0);
  CHECK(eight.right() < plain.width);
}

TEST_CASE("the percussion clef keeps within the middle spaces") {
  const Box bounds = clef_glyph(typefaces(), StaffClef::percussion, kSpace).outline.bounds();
  CHECK(bounds.y == Approx(-kSpace));
  CHECK(bounds.bottom() == Approx(kSpace));
}

TEST_CASE("every shape begins at x = 0 and is as wide as it says") {
  std::vector<MusicGlyph> glyphs;
  for (StaffClef clef :
       {StaffClef::treble, StaffClef::treble_8_below, StaffClef::treble_8_above, StaffClef::bass,
        StaffClef::bass_8_below, StaffClef::alto, StaffClef::tenor, StaffClef::percussion}) {
    glyphs.push_back(clef_glyph(typefaces(), clef, kSpace));
  }
  for (Accidental accidental : {Accidental::sharp, Accidental::flat, Accidental::natural}) {
    glyphs.push_back(accidental_glyph(accidental, kSpace));
  }
  glyphs.push_back(meter_glyph(typefaces(), "2+3", 8, kSpace));
  glyphs.push_back(meter_glyph(typefaces(), "3", 16, kSpace));
  glyphs.push_back(bracket_glyph(20, kSpace));
  for (NoteValue value : {NoteValue::eighth, NoteValue::quarter, NoteValue::half}) {
    glyphs.push_back(note_glyph(typefaces(), value, true, kSpace));
  }
  for (const MusicGlyph& glyph : glyphs) {
    CHECK(glyph.outline.bounds().x == Approx(0).margin(0.01));
    CHECK(glyph.outline.bounds().width == Approx(glyph.width).margin(0.01));
  }
}

TEST_CASE("meter figures are exactly two spaces high, one row above the middle line, one below") {
  for (int figure = 1; figure <= 9; ++figure) {
    const Box bounds =
        meter_glyph(typefaces(), std::to_string(figure), figure, kSpace).outline.bounds();
    CHECK(bounds.y == Approx(-2 * kSpace));
    CHECK(bounds.bottom() == Approx(2 * kSpace));
  }
  const MusicGlyph mixed = meter_glyph(typefaces(), "2+3", 8, kSpace);
  double lower_left = mixed.width;
  double lower_right = 0;
  for (const Box& box : contour_boxes(mixed.outline)) {
    if (box.y < 0) continue;
    lower_left = std::min(lower_left, box.x);
    lower_right = std::max(lower_right, box.right());
  }
  CHECK(lower_left == Approx(mixed.width - lower_right));  // centred
}

TEST_CASE("a sharp and a natural are even about their note, a flat's bowl lies on it") {
  for (Accidental accidental : {Accidental::sharp, Accidental::natural}) {
    const Box bounds = accidental_glyph(accidental, kSpace).outline.bounds();
    CHECK(bounds.centre().y == Approx(0).margin(0.01));
  }
  const auto boxes = contour_boxes(accidental_glyph(Accidental::flat, kSpace).outline);
  CHECK(boxes.at(2).centre().y == Approx(0.1 * kSpace).margin(0.1 * kSpace));
  CHECK(boxes.at(2).height == Approx(1.2 * kSpace).margin(0.15 * kSpace));
}

TEST_CASE("a brace spans its height, its point in the middle at the left") {
  const MusicGlyph brace = brace_glyph(26, kSpace);
  const Box bounds = brace.outline.bounds();
  CHECK(bounds.y == Approx(0).margin(1e-9));
  CHECK(bounds.height == Approx(26));
  CHECK(bounds.x == Approx(0).margin(0.01));
  CHECK(bounds.width == Approx(brace.width).margin(0.01));
  bool has_point = false;
  for (const OutlineStep& step : brace.outline.steps()) {
    has_point = has_point || step.to == Point{0, 13};
  }
  CHECK(has_point);
}

TEST_CASE("a tempo mark stands in its box and is as wide as foretold") {
  const TextStyle style{Face::sans, 10, 0, TextRole::desk, Turn::none};
  for (NoteValue beat : {NoteValue::eighth, NoteValue::quarter, NoteValue::half}) {
    for (bool dotted : {false, true}) {
      RecordingCanvas canvas(typefaces());
      canvas.begin_page(kA4);
      const double foretold = tempo_mark_width(typefaces(), beat, dotted, "66", style);
      const Box box{40, 40, foretold, 7};
      CHECK(draw_tempo_mark(canvas, box, beat, dotted, "66", style) == Approx(foretold));
      CHECK(faults(canvas, Margins{}).empty());
      CHECK(canvas.pages()[0].words() == "= 66\n");
      const Box note = extent(canvas.pages()[0].items.at(0));
      CHECK(box.contains(note, 0.05));
      const Box figures = canvas.pages()[0].texts().at(0).ink;
      CHECK(note.right() < figures.x);
      CHECK(note.bottom() == Approx(figures.bottom()).margin(0.1));
    }
  }
}
