// Which texts of a drawn book are told to be too long for their places.
#include "workbook/unfit_texts.h"

#include "catch.h"
#include "drawn_sheet.h"

using namespace cahier;

namespace {

const TextStyle kStyle{Face::sans, 10};
const Margins kMargins = style::kMargins;

class Drawn {
 public:
  Drawn() : canvas_(sample::typefaces()) { next_page(); }

  void next_page() { canvas_.begin_page(kA4); }
  void line(double x, double y, const std::string& text, bool cut = false) {
    TextStyle text_style = kStyle;
    text_style.cut = cut;
    canvas_.text({x, y}, text, text_style, {0, 0, 210, 297});
  }
  std::vector<UnfitText> unfit() const { return unfit_texts(canvas_, kMargins); }

 private:
  RecordingCanvas canvas_;
};

}  // namespace

TEST_CASE("a text between the margins is no unfit text") {
  Drawn drawn;
  drawn.line(60, 100, "Bars 5 to 8");
  drawn.line(60, 110, "so far … and farther");
  CHECK(drawn.unfit().empty());
}

TEST_CASE("a text that was cut is told once, with the first page it is on") {
  Drawn drawn;
  drawn.next_page();
  drawn.line(60, 100, "A title that was too", true);
  drawn.next_page();
  drawn.line(60, 100, "A title that was too", true);
  const std::vector<UnfitText> unfit = drawn.unfit();
  REQUIRE(unfit.size() == 1);
  CHECK(unfit[0].kind == UnfitText::Kind::cut);
  CHECK(unfit[0].line == "A title that was too");
  CHECK(unfit[0].page == 2);
}

TEST_CASE("of texts beyond the margins the longest of each page is told") {
  Drawn drawn;
  drawn.line(60, 299, "farther below");
  drawn.line(60, 296, "below");
  drawn.next_page();
  drawn.line(60, 100, "inside");
  drawn.next_page();
  drawn.line(206, 100, "over the right edge");
  const std::vector<UnfitText> unfit = drawn.unfit();
  REQUIRE(unfit.size() == 2);
  CHECK(unfit[0].kind == UnfitText::Kind::beyond_page);
  CHECK(unfit[0].line == "farther below");
  CHECK(unfit[0].page == 1);
  CHECK(unfit[1].line == "over the right edge");
  CHECK(unfit[1].page == 3);
}

TEST_CASE(
    "a cut text beyond the margins is told as beyond the page, and half a millimetre as rounding") {
  Drawn drawn;
  drawn.line(60, 299, "cut and below", true);
  const Box inside = kMargins.inside(kA4, 2);
  drawn.next_page();
  drawn.line(inside.x - 0.7, 100, "Hardly");
  const std::vector<UnfitText> unfit = drawn.unfit();
  REQUIRE(unfit.size() == 1);
  CHECK(unfit[0].kind == UnfitText::Kind::beyond_page);
}
