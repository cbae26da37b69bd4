#include "paper/staff.h"

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "paper/layout_check.h"

using namespace cahier;

namespace {

using Positions = std::vector<int>;

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

constexpr Box kBox{20, 20, 180, 60};

// Draws one system on an A4 page and proves the page sound.
DrawnPage drawn(const StaffSystem& system, const StaffMeasures& measures = {}) {
  RecordingCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  draw_system(canvas, kBox, system, measures);
  const auto found = faults(canvas, Margins{});
  CAPTURE(found);
  CHECK(found.empty());
  return canvas.pages().at(0);
}

std::vector<DrawnLine> lines(const DrawnPage& page, bool upright) {
  std::vector<DrawnLine> result;
  for (const DrawnItem& item : page.items) {
    const auto* line = std::get_if<DrawnLine>(&item);
    if (line != nullptr && (line->from.x == line->to.x) == upright) result.push_back(*line);
  }
  return result;
}

std::vector<Box> shapes(const DrawnPage& page) {
  std::vector<Box> result;
  for (const DrawnItem& item : page.items) {
    if (std::holds_alternative<DrawnOutline>(item)) result.push_back(extent(item));
  }
  return result;
}

StaffSystem single(StaffClef clef) {
  StaffSystem system;
  system.staves = {clef};
  system.braced = 0;
  return system;
}

}  // namespace

TEST_CASE("accidentals stand where the published orders of sharps and flats put them") {
  // Computed from the published sharp and flat orders, half-spaces from the middle line.
  CHECK(key_signature_positions(StaffClef::treble, 7) == Positions{4, 1, 5, 2, -1, 3, 0});
  CHECK(key_signature_positions(StaffClef::treble, -7) == Positions{0, 3, -1, 2, -2, 1, -3});
  CHECK(key_signature_positions(StaffClef::bass, 7) == Positions{2, -1, 3, 0, -3, 1, -2});
  CHECK(key_signature_positions(StaffClef::bass, -7) == Positions{-2, 1, -3, 0, -4, -1, -5});
  CHECK(key_signature_positions(StaffClef::alto, 7) == Positions{3, 0, 4, 1, -2, 2, -1});
  CHECK(key_signature_positions(StaffClef::alto, -7) == Positions{-1, 2, -2, 1, -3, 0, -4});
  CHECK(key_signature_positions(StaffClef::tenor, 7) == Positions{-2, 2, -1, 3, 0, 4, 1});
  CHECK(key_signature_positions(StaffClef::tenor, -7) == Positions{1, 4, 0, 3, -1, 2, -2});
  CHECK(key_signature_positions(StaffClef::treble_8_below, 3) == Positions{4, 1, 5});
  CHECK(key_signature_positions(StaffClef::treble_8_above, -2) == Positions{0, 3});
  CHECK(key_signature_positions(StaffClef::bass_8_below, 3) == Positions{2, -1, 3});
  CHECK(key_signature_positions(StaffClef::treble, 0).empty());
  CHECK(key_signature_positions(StaffClef::percussion, 5).empty());
}

TEST_CASE("each position is the pitch that the order of sharps or flats names") {
  // F C G D A E B and B E A D G C F, as steps of the scale from C; the middle lines are B4, D3,
  // C4 and A3 (clefs: G on line 2, F on line 4, C on line 3 or 4).
  const Positions sharps{3, 0, 4, 1, 5, 2, 6};
  const Positions flats{6, 2, 5, 1, 4, 0, 3};
  const std::vector<std::pair<StaffClef, int>> middles{
      {StaffClef::treble, 6}, {StaffClef::bass, 1}, {StaffClef::alto, 0}, {StaffClef::tenor, 5}};
  for (const auto& [clef, middle] : middles) {
    for (std::size_t i = 0; i < 7; ++i) {
      const auto step = [of = middle](int position) { return ((of + position) % 7 + 7) % 7; };
      CHECK(step(key_signature_positions(clef, 7)[i]) == sharps[i]);
      CHECK(step(key_signature_positions(clef, -7)[i]) == flats[i]);
    }
  }
}

TEST_CASE("staff lines are 2 mm apart and .26 mm thick at a staff height of 8 mm") {
  // SMuFL 1.4 engraving defaults: staff line .13 of a space, thin bar line .16.
  const DrawnPage page = drawn(single(StaffClef::treble));
  const auto staff = lines(page, false);
  REQUIRE(staff.size() == 5);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(staff[i].from.y - staff[0].from.y == Approx(2.0 * double(i)));
    CHECK(staff[i].stroke.width == Approx(0.26));
    CHECK(staff[i].stroke.backdrop);
    CHECK(staff[i].to.x == Approx(kBox.right()));
  }
  const auto bars = lines(page, true);
  REQUIRE(bars.size() == 1);  // a single staff has no line at its left
  CHECK(bars[0].stroke.width == Approx(0.32));
}

TEST_CASE("a final bar line is thin and thick, .4 of a space apart, at the right edge") {
  // SMuFL 1.4: thick .5, separation .4, thin .16 staff spaces.
  StaffSystem system = single(StaffClef::bass);
  system.final_bar_line = true;
  auto bars = lines(drawn(system), true);
  REQUIRE(bars.size() == 2);
  std::sort(bars.begin(), bars.end(),
            [](const auto& one, const auto& other) { return one.from.x < other.from.x; });
  CHECK(bars[1].stroke.width == Approx(1.0));
  CHECK(bars[1].from.x + 0.5 == Approx(kBox.right()));
  CHECK((bars[1].from.x - 0.5) - (bars[0].from.x + 0.16) == Approx(0.8));
}

TEST_CASE("bar lines go through the braced staves, and past the pedal staff apart from them") {
  StaffSystem system;
  system.staves = {StaffClef::treble, StaffClef::bass, StaffClef::bass};
  system.braced = 2;
  system.bars = {{1, 1, {}, {}}, {1, 2, {}, {}}};
  const StaffMeasures measures;
  const DrawnPage page = drawn(system);
  const auto staff = lines(page, false);
  REQUIRE(staff.size() == 15);
  CHECK(staff[5].from.y - staff[4].from.y == Approx(measures.gap));
  CHECK(measures.gap > measures.height);
  const double top = staff[0].from.y;
  const double grand_bottom = staff[9].from.y;
  const double bottom = staff[14].from.y;
  auto bars = lines(page, true);
  REQUIRE(bars.size() == 5);
  CHECK(bars[0].from.y == Approx(top - 0.13));
  CHECK(bars[0].to.y == Approx(bottom + 0.13));
  CHECK(bars[1].to.y == Approx(grand_bottom + 0.13));
  CHECK(bars[2].from.y == Approx(staff[10].from.y - 0.13));
  const Box brace = shapes(page).at(0);
  CHECK(brace.y == Approx(top));
  CHECK(brace.bottom() == Approx(grand_bottom));
  CHECK(brace.right() < bars[0].from.x);
  CHECK(system_height(system, measures) == Approx(measures.number_room + bottom - top));
}

TEST_CASE("staves of an instrument that is none of the keyboards are joined by a bracket") {
  StaffSystem system;
  system.staves = {StaffClef::alto, StaffClef::bass, StaffClef::bass};
  system.braced = 0;
  system.bracketed = 3;
  system.bars = {{1, 1, {}, {}}, {1, 2, {}, {}}};
  const DrawnPage page = drawn(system);
  const auto staff = lines(page, false);
  const auto bars = lines(page, true);
  REQUIRE(bars.size() == 3);  // at the left, between and at the end: through all three staves
  for (const DrawnLine& bar : bars) {
    CHECK(bar.from.y == Approx(staff[0].from.y - 0.13));
    CHECK(bar.to.y == Approx(staff[14].from.y + 0.13));
  }
  // SMuFL 1.4: .5 of a space thick; its hooks reach above and below.
  const MusicGlyph bracket = bracket_glyph(40, 2);
  double thick = 100;
  for (const OutlineStep& step : bracket.outline.steps())
    if (step.kind == OutlineStep::Kind::line) thick = std::min(thick, step.to.x);
  CHECK(thick == Approx(1.0));
  CHECK(bracket.outline.bounds().y < -1);
  const Box shape = shapes(page).at(0);
  CHECK(shape.y < staff[0].from.y - 1);
  CHECK(shape.bottom() > staff[14].from.y + 1);
  // Its straight part keeps away from the line at the left of the staves.
  CHECK(shape.x + thick < bars[0].from.x - bars[0].stroke.width / 2);
  CHECK(shape.x >= kBox.x - 0.01);
}

TEST_CASE("a repeat is thick, thin and two dots about the middle line") {
  // SMuFL 1.4: thick .5, thin .16, separation .4; dots .4 wide and .16 away (values from memory).
  StaffSystem system = single(StaffClef::treble);
  system.bars = {{1, 1, {}, {}}, {1, 2, {}, {}}, {1, 3, {}, {}}, {1, 4, {}, {}}};
  system.bars[1].opens_repeat = true;
  system.bars[1].closes_repeat = true;
  system.bars[2].opens_repeat = true;
  system.bars[3].closes_repeat = true;
  const DrawnPage page = drawn(system);
  auto bars = lines(page, true);
  std::sort(bars.begin(), bars.end(),
            [](const auto& one, const auto& other) { return one.from.x < other.from.x; });
  std::vector<double> widths;
  for (const DrawnLine& bar : bars) widths.push_back(bar.stroke.width);
  REQUIRE(widths.size() == 8);
  const std::vector<double> wanted{1.0, 0.32, 0.32, 1.0, 0.32, 0.32, 0.32, 1.0};
  for (std::size_t i = 0; i < 8; ++i) CHECK(widths[i] == Approx(wanted[i]));
  CHECK(bars[1].from.x - 0.16 - (bars[0].from.x + 0.5) == Approx(0.8));
  CHECK(bars[7].from.x + 0.5 == Approx(kBox.right()));

  std::vector<Box> dots;
  for (const Box& shape : shapes(page))
    if (shape.width < 1 && shape.height < 1) dots.push_back(shape);
  REQUIRE(dots.size() == 8);
  const double middle = lines(page, false)[2].from.y;
  for (const Box& dot : dots) {
    CHECK(std::abs(dot.centre().y - middle) == Approx(1.0));
    CHECK(dot.width == Approx(0.8));
  }
  CHECK(dots[0].x - (bars[1].from.x + 0.16) == Approx(0.32));  // behind what opens
  const auto before_end = std::max_element(
      dots.begin(), dots.end(), [](const Box& one, const Box& other) { return one.x < other.x; });
  CHECK(bars[6].from.x - 0.16 - before_end->right() == Approx(0.32));
}

TEST_CASE("a repeat opens behind a signature, and takes room from its bar") {
  StaffSystem system = single(StaffClef::treble);
  system.bars = {{1, 1, {}, {}}, {1, 2, 3, {}}};
  const std::size_t plain = lines(drawn(system), true).size();
  system.bars[0].opens_repeat = true;
  system.bars[1].opens_repeat = true;
  const DrawnPage page = drawn(system);
  CHECK(lines(page, true).size() == plain + 4);
  const auto items = shapes(page);
  // Clef, dots of bar 1, key of bar 2, dots of bar 2.
  REQUIRE(items.size() == 6);
  CHECK(items[1].x > items[0].right());
  CHECK(items[4].x > items[3].right());
  system.bars.assign(20, StaffBar{});
  const StaffMeasures measures;
  const double width = system_head_width(typefaces(), system, measures) + 4 * measures.least_bar;
  CHECK(bars_that_fit(typefaces(), system, measures, width + 0.01) == 4);
  system.bars[2].opens_repeat = true;
  CHECK(bars_that_fit(typefaces(), system, measures, width + 0.01) == 3);
}

TEST_CASE("a pickup is narrower than a whole bar") {
  StaffSystem system = single(StaffClef::bass);
  system.bars = {{1, 0, {}, {}}, {4, 1, {}, {}}, {4, 2, {}, {}}};
  const auto bars = lines(drawn(system), true);
  REQUIRE(bars.size() == 3);
  const double head = system_head_width(typefaces(), system, {});
  const double pickup = bars[0].from.x + 0.16 - (kBox.x + head);
  CHECK(pickup == Approx((bars[1].from.x - bars[0].from.x) / 2));
}

TEST_CASE("the room for numbers clears the clef, and grows with an 8 above it or a bracket") {
  StaffSystem system = single(StaffClef::bass);
  system.bars.front().number = 12;
  const StaffMeasures measures;
  const double plain = number_room_for(typefaces(), system, measures);
  system.staves = {StaffClef::treble};
  const double treble = number_room_for(typefaces(), system, measures);
  CHECK(treble > plain);
  CHECK(treble <= measures.number_room);
  system.staves = {StaffClef::treble_8_above};
  CHECK(number_room_for(typefaces(), system, measures) > treble);
  system.staves = {StaffClef::bass, StaffClef::bass};
  CHECK(number_room_for(typefaces(), system, measures) == Approx(plain));
  system.bracketed = 2;
  system.braced = 0;
  CHECK(number_room_for(typefaces(), system, measures) > plain);
  system.bars.front().number.reset();
  CHECK(number_room_for(typefaces(), system, measures) < plain);
}

TEST_CASE("each accidental of a key stands on its own line or space, without touching the next") {
  for (StaffClef clef : {StaffClef::treble, StaffClef::bass, StaffClef::alto, StaffClef::tenor}) {
    for (int fifths : {-7, 7}) {
      const MusicGlyph glyph = signature_glyph(typefaces(), clef, {fifths, 0, {}}, 2);
      const std::size_t parts = glyph.outline.contours().size() / 7;
      const auto contours = glyph.outline.contours();
      const auto positions = key_signature_positions(clef, fifths);
      const MusicGlyph one = accidental_glyph(fifths > 0 ? Accidental::sharp : Accidental::flat, 2);
      double last_right = -1;
      for (std::size_t i = 0; i < 7; ++i) {
        Box box = contours[i * parts].bounds();
        for (std::size_t part = 1; part < parts; ++part) {
          box = box.around(contours[i * parts + part].bounds());
        }
        CHECK(box.y - one.outline.bounds().y == Approx(-positions[i]));
        CHECK(box.x > last_right);
        last_right = box.right();
      }
    }
  }
}

TEST_CASE("naturals cancel what the new key has not") {
  const auto parts = [](int from, int to) {
    return signature_glyph(typefaces(), StaffClef::treble, {to, from, {}}, 2)
        .outline.contours()
        .size();
  };
  const std::size_t natural = accidental_glyph(Accidental::natural, 2).outline.contours().size();
  const std::size_t sharp = accidental_glyph(Accidental::sharp, 2).outline.contours().size();
  const std::size_t flat = accidental_glyph(Accidental::flat, 2).outline.contours().size();
  CHECK(parts(3, 0) == 3 * natural);
  CHECK(parts(3, 1) == 2 * natural + sharp);
  CHECK(parts(1, 3) == 3 * sharp);
  CHECK(parts(3, -2) == 3 * natural + 2 * flat);
  CHECK(parts(-2, -4) == 4 * flat);
  CHECK(parts(0, 0) == 0);
}

TEST_CASE("a change inside a system takes room from its bar and a double line announces a key") {
  StaffSystem system = single(StaffClef::treble);
  system.fifths = 2;
  system.bars = {{1, 1, {}, {}}, {1, 2, -3, {}}, {1, 3, {}, StaffMeter{"2+3", 8}}};
  const auto bars = lines(drawn(system), true);
  CHECK(bars.size() == 4);  // single before bar 3, double before bar 2, single at the end
  StaffSystem plain = single(StaffClef::treble);
  plain.fifths = 2;
  CHECK(system_tail_width(typefaces(), plain, {}) == 0);
  plain.next_fifths = -3;
  CHECK(system_tail_width(typefaces(), plain, {}) > 10);
  CHECK(lines(drawn(plain), true).size() == 2);
  StaffSystem drums = single(StaffClef::percussion);
  drums.next_fifths = -3;
  CHECK(system_tail_width(typefaces(), drums, {}) == 0);
  CHECK(lines(drawn(drums), true).size() == 1);
}

TEST_CASE("as many bars fit as leave each its least width") {
  StaffSystem system;
  system.bars.assign(20, StaffBar{});
  const StaffMeasures measures;
  const double head = system_head_width(typefaces(), system, measures);
  for (int count = 1; count <= 8; ++count) {
    const double width = head + count * measures.least_bar;
    CHECK(bars_that_fit(typefaces(), system, measures, width + 0.01) == count);
    CHECK(bars_that_fit(typefaces(), system, measures, width - 0.01) == std::max(1, count - 1));
  }
  StaffSystem mixed;
  mixed.bars = {{1, {}, {}, {}}, {2, {}, {}, {}}};  // of lengths as frequent the longer is usual
  CHECK(bars_that_fit(typefaces(), mixed, measures,
                      system_head_width(typefaces(), mixed, measures) + 1.5 * measures.least_bar +
                          0.01) == 2);
  system.bars.front().length = 0.1;  // a pickup takes half a bar
  CHECK(bars_that_fit(typefaces(), system, measures, head + 1.5 * measures.least_bar + 0.01) == 2);
  system.bars[1].length = 2;
  CHECK(bars_that_fit(typefaces(), system, measures, head + 2.4 * measures.least_bar) == 1);
  CHECK(bars_that_fit(typefaces(), system, measures, 0) == 1);
}

TEST_CASE("bar widths go by length and the bar numbers stand at their bars") {
  StaffSystem system;
  system.fifths = 4;
  system.bars = {{1, 8, {}, {}}, {1, 9, {}, {}}, {2, 10, {}, {}}};
  const DrawnPage page = drawn(system);
  const auto bars = lines(page, true);
  REQUIRE(bars.size() == 4);
  CHECK(bars[3].from.x - bars[2].from.x == Approx(2 * (bars[2].from.x - bars[1].from.x)));
  const auto texts = page.texts();
  REQUIRE(texts.size() == 3);
  CHECK(page.words() == "8\n9\n10\n");
  CHECK(texts[1].baseline.x == Approx(bars[1].from.x).margin(0.2));
  CHECK(texts[1].baseline.y == texts[0].baseline.y);
}

TEST_CASE("every clef with every key, meter and change is sound, with numbers of four figures") {
  for (StaffClef clef :
       {StaffClef::treble, StaffClef::treble_8_below, StaffClef::treble_8_above, StaffClef::bass,
        StaffClef::bass_8_below, StaffClef::alto, StaffClef::tenor, StaffClef::percussion}) {
    for (int fifths = -7; fifths <= 7; ++fifths) {
      StaffSystem system = single(clef);
      system.fifths = fifths;
      system.meter = StaffMeter{"12", 16};
      system.bars = {{1, 1998, {}, {}}, {1, 1999, -fifths, {}}, {1, 2000, {}, StaffMeter{"3", 4}}};
      system.next_fifths = fifths > 0 ? -1 : 1;
      system.next_meter = StaffMeter{"2+2+3", 8};
      system.bars[1].opens_repeat = system.bars[2].closes_repeat = true;
      StaffMeasures measures;
      measures.number_room = number_room_for(typefaces(), system, measures);
      drawn(system, measures);
    }
  }
}
