#include "paper/text_fitting.h"

#include <cmath>

#include "catch.h"
#include "paper/layout_check.h"
#include "text/utf8.h"

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

constexpr TextStyle kStyle{Face::sans, 10, 0, TextRole::desk, Turn::none};

double width(std::string_view text, const TextStyle& style = kStyle) {
  return typefaces().width(text, style.face, style.size_pt);
}

std::string joined(const std::vector<std::string>& lines) {
  std::string result;
  for (const std::string& line : lines) result += (result.empty() ? "" : "|") + line;
  return result;
}

// Wrapped to lines just wide enough for `widest`.
std::string wrapped(std::string_view text, std::string_view widest) {
  return joined(wrap(typefaces(), text, kStyle, width(widest) + 0.1));
}

}  // namespace

TEST_CASE("a line keeps its size when it fits, shrinks when it must, and is cut at last") {
  const std::string text = "Étude in E♭ major";
  const double natural = width(text);
  const Fitted whole = fit_line(typefaces(), text, kStyle, natural, 7);
  CHECK(whole.text == text);
  CHECK(whole.style.size_pt == 10);
  const Fitted small = fit_line(typefaces(), text, kStyle, natural * 0.8, 7);
  CHECK(small.text == text);
  CHECK(small.style.size_pt == Approx(8));
  CHECK(small.width <= natural * 0.8);
  CHECK(small.width == Approx(width(text, small.style)));
  const Fitted cut = fit_line(typefaces(), text, kStyle, natural * 0.5, 7);
  CHECK(cut.cut);
  CHECK(cut.style.size_pt == 7);
  CHECK(cut.width <= natural * 0.5);
  CHECK_THAT(cut.text, Catch::StartsWith("Étude") && !Catch::Contains("…"));
  // Whole words, without what promises more.
  const double two = width("Seven lanterns, ", kStyle);
  CHECK(fit_line(typefaces(), "Seven lanterns, lit", kStyle, two, 10).text == "Seven lanterns");
  CHECK(fit_line(typefaces(), text, kStyle, 0.5, 7).text.empty());
}

TEST_CASE("a cut falls between characters, whatever the width") {
  for (double room = 0.5; room < 30; room += 0.37) {
    const Fitted cut = fit_line(typefaces(), "Dvořák ♭ žluťoučký", kStyle, room, 10);
    CHECK_FALSE(first_invalid_utf8(cut.text).has_value());
    CHECK(cut.width <= room);
  }
}

TEST_CASE("lines break at spaces and leave none at their ends") {
  CHECK(wrapped("play it slow", "play it") == "play it|slow");
  CHECK(wrapped("play  it   slow", "play it") == "play|it|slow");
  CHECK(wrapped("one\ntwo\n\nthree", "one two three") == "one|two||three");
  CHECK(wrapped("", "x").empty());
  CHECK(wrapped("short", "much longer") == "short");
}

TEST_CASE("lines break after hyphens, dashes and slashes, but not between figures") {
  CHECK(wrapped("left-hand", "left-h") == "left-|hand");
  CHECK(wrapped("clean/slips", "clean/s") == "clean/|slips");
  CHECK(wrapped("bars 16–24", "bars 16–") == "bars|16–24");
  CHECK(wrapped("in 3/4", "in 3/") == "in|3/4");
  CHECK(wrapped("take -5", "take -") == "take|-5");
}

TEST_CASE("no-break spaces hold words together") {
  CHECK(wrapped("see bar\u00A017", "see bar") == "see|bar\u00A017");
  CHECK(wrapped("to see 12\u202Fmm", "to see 12") == "to see|12\u202Fmm");
}

TEST_CASE("no line begins with closing punctuation") {
  CHECK(wrapped("play on!", "play on") == "play|on!");
  CHECK(wrapped("(play on)", "(play on") == "(play|on)");
  CHECK(wrapped("what ?", "what") == "wha|t ?");
  const std::string text =
      "Stop at once, if it hurts; rest (five minutes), drink: then go on… “quietly”, please!";
  for (double room = 8; room < 80; room += 0.9) {
    for (const std::string& line : wrap(typefaces(), text, kStyle, room)) {
      CAPTURE(room, line);
      const char32_t first = decode_utf8(line).at(0);
      CHECK(std::u32string_view(U",;:!?).…”").find(first) == std::u32string_view::npos);
      CHECK(width(line) <= room + 1e-6);
    }
  }
}

TEST_CASE("a word longer than the line is cut, and nothing of it is lost") {
  const std::string word = "Donaudampfschifffahrtsgesellschaft";
  std::string together;
  const auto lines = wrap(typefaces(), word, kStyle, 20);
  CHECK(lines.size() > 2);
  for (const std::string& line : lines) {
    CHECK(width(line) <= 20);
    together += line;
  }
  CHECK(together == word);
  CHECK(wrap(typefaces(), "abc", kStyle, 0.1).size() == 3);
}

TEST_CASE("a block is as high as its lines and its ink stays within") {
  for (Face face : {Face::sans, Face::serif_bold, Face::serif_italic}) {
    const TextStyle style{face, 11, 0, TextRole::desk, Turn::none};
    const TextBlock block(typefaces(), "Ågren plays É and Ǻ, gently jumping quickly (again)", style,
                          35);
    REQUIRE(block.lines().size() > 1);
    CHECK(block.height() == Approx(block.line_height() * double(block.lines().size())));
    for (Align align : {Align::left, Align::centre, Align::right}) {
      RecordingCanvas canvas(typefaces());
      canvas.begin_page(kA4);
      const Box box{40, 40, 35, block.height()};
      CHECK(block.draw(canvas, box, align) == Approx(box.bottom()));
      CHECK(joined(faults(canvas, Margins{})) == "");
    }
  }
}

TEST_CASE("a line is centred in its box by its capitals, level and turned") {
  RecordingCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  const Box box{40, 40, 60, 10};
  draw_line(canvas, box, "HH", kStyle, Align::centre, 8);
  const Box level = canvas.pages()[0].texts().at(0).ink;
  CHECK(level.centre().x == Approx(70).margin(0.01));
  CHECK(level.centre().y == Approx(45).margin(0.01));
  TextStyle upwards = kStyle;
  upwards.turn = Turn::upwards;
  const Box tall{120, 40, 10, 60};
  draw_line(canvas, tall, "HH", upwards, Align::left, 8);
  const Box turned = canvas.pages()[0].texts().at(1).ink;
  CHECK(turned.centre().x == Approx(125).margin(0.01));
  CHECK(turned.bottom() == Approx(100).margin(0.5));
  CHECK(draw_line(canvas, {40, 80, 60, 10}, "HH", kStyle, Align::right, 8) == Approx(width("HH")));
  CHECK(canvas.pages()[0].texts().at(2).ink.right() == Approx(100).margin(0.5));
  CHECK(joined(faults(canvas, Margins{})) == "");
}

TEST_CASE("lines of text stand on the grid, apart but as near as they can") {
  CHECK(on_grid(0) == 0);
  CHECK(on_grid(1.5) == 1.5);
  CHECK(on_grid(0.1 + 0.2 + 1.2) == 1.5);  // a sum that comes out a little larger
  CHECK(on_grid(1.6) == 3);
  for (double size = 7; size <= 40; size += 0.25) {
    const double pitch = line_pitch(size);
    CHECK(pitch >= millimetres(size) * 1.2);
    CHECK(pitch < millimetres(size) * 1.25 + kGrid);
    CHECK(std::abs(pitch / kGrid - std::round(pitch / kGrid)) < 1e-9);
  }
}
