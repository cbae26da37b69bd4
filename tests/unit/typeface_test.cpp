#include "paper/typeface.h"

#include <cmath>
#include <stdexcept>

#include "catch.h"
#include "paper/page_size.h"
#include "text/errors.h"

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

}  // namespace

TEST_CASE("a text is as wide as the sum of its letters' advances") {
  // Noto Sans: the advance of every figure is 572 thousandths of an em (read from the font).
  CHECK(typefaces().width("0123456789", Face::sans, 10) ==
        Approx(millimetres(10) * 0.572 * 10).margin(1e-9));
  CHECK(typefaces().width("", Face::sans, 10) == 0);
  const double both = typefaces().width("Dvořák", Face::serif, 12);
  CHECK(both == Approx(typefaces().width("Dvo", Face::serif, 12) +
                       typefaces().width("řák", Face::serif, 12)));
  CHECK(typefaces().width("Dvořák", Face::serif, 24) == Approx(2 * both));
}

TEST_CASE("Noto Sans has an x-height of .536 em") {
  // Published legibility figures: Noto Sans .536 em (computed from the font).
  const FaceMetrics metrics = typefaces().metrics(Face::sans, 72);
  CHECK(metrics.x_height / 25.4 == Approx(0.536).margin(0.0005));
  CHECK(metrics.cap_height / 25.4 == Approx(0.714).margin(0.0005));
  CHECK(metrics.ascent > metrics.cap_height);
  CHECK(metrics.descent > 0);
}

TEST_CASE("ink is measured where it is, not where the letters advance") {
  const Box x = typefaces().ink("x", Face::sans, 72);
  CHECK(x.bottom() == Approx(0).margin(1e-9));
  CHECK(-x.y / 25.4 == Approx(0.536));
  CHECK(typefaces().ink("p", Face::sans, 72).bottom() > 3);
  CHECK(typefaces().ink("É", Face::sans, 72).y < typefaces().ink("E", Face::sans, 72).y - 2);
  CHECK(typefaces().ink("   ", Face::sans, 72) == Box{});
  const double lead = typefaces().width("  ", Face::sans, 72);
  CHECK(typefaces().ink("  x", Face::sans, 72).x == Approx(lead + x.x));
}

TEST_CASE("musical signs are borrowed from another face, larger, in a run of their own") {
  const auto runs = typefaces().runs("E♭ major", Face::serif);
  REQUIRE(runs.size() == 3);
  CHECK(runs[0].text == "E");
  CHECK(runs[1].text == "♭");
  CHECK(runs[1].face == Face::symbols);
  CHECK(runs[1].scale > 1);
  CHECK(runs[2].text == " major");
  CHECK(runs[2].face == Face::serif);
  CHECK(typefaces().missing("♩ ♪ ♭ ♮ ♯ → “” – … №", Face::sans).empty());
}

TEST_CASE("characters that cannot be printed are named, and drawing them is refused") {
  using Missing = std::vector<char32_t>;
  CHECK(typefaces().missing("Étude 𝄞 𝄞", Face::sans) == Missing{U'𝄞'});
  CHECK(typefaces().missing("練習", Face::sans) == Missing{U'練', U'習'});
  CHECK(typefaces().missing("שיר", Face::serif).size() == 3);
  CHECK(typefaces().missing("राग", Face::sans).size() == 3);
  CHECK(typefaces().missing("a\nb", Face::sans) == Missing{U'\n'});
  CHECK(typefaces().missing("a\u202Eb", Face::sans) == Missing{U'\u202E'});
  CHECK(typefaces().missing("\xFF", Face::sans) == Missing{U'\uFFFD'});
  CHECK(typefaces().missing("Łódź Ёлка Ωδή ǰ", Face::sans_bold).empty());
  CHECK_THROWS_AS(typefaces().width("𝄞", Face::sans, 10), std::logic_error);
  CHECK_THROWS_AS(typefaces().ink("練", Face::sans, 10), std::logic_error);
  CHECK(code_point_name(U'𝄞') == "U+1D11E");
  CHECK(code_point_name(U'A') == "U+0041");
}

TEST_CASE("outlines reach beyond the basic plane") {
  // Noto Music draws to staff lines 250 units apart; its five-line staff is 1000 units high.
  const Box staff = typefaces().glyph(U'\U0001D11A', Face::music, 100).bounds();
  CHECK(staff.height == Approx(100).margin(0.5));
  const Box clef = typefaces().glyph(U'\U0001D11E', Face::music, 100).bounds();
  CHECK(clef.height == Approx(173.2).margin(0.5));
  CHECK_THROWS_AS(typefaces().glyph(U'\U0001D11E', Face::sans, 100), std::logic_error);
  CHECK_FALSE(typefaces().has(U'\U0001D11E', Face::sans));
}

TEST_CASE("a missing font says which package brings it") {
  CHECK_THROWS_WITH(Typefaces("no-such-directory"),
                    Catch::Contains("fonts-noto-core") && Catch::Contains("no-such-directory"));
  CHECK_THROWS_AS(Typefaces("no-such-directory"), FileError);
}

TEST_CASE("the bounds of a curve are those of the curve, not of its handles") {
  const Box circle = Outline::ellipse({10, 20}, 3, 2).bounds();
  CHECK(circle.x == Approx(7));
  CHECK(circle.width == Approx(6));
  CHECK(circle.height == Approx(4));
  Outline arch;
  arch.move_to({0, 0});
  arch.curve_to({0, -4}, {4, -4}, {4, 0});  // a cubic arch rises to three quarters of its handles
  arch.close();
  CHECK(arch.bounds().y == Approx(-3));
  Outline bow;
  bow.move_to({0, 0});
  bow.quadratic_to({2, 4}, {4, 0});  // a quadratic one to a half
  CHECK(bow.bounds().bottom() == Approx(2));
}
