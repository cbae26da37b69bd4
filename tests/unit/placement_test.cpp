#include "paper/placement.h"

#include "catch.h"
#include "drawn_sheet.h"

using namespace cahier;

namespace {

const auto kSamePage = [](int page) { return page; };

// One of everything, the text well inside the page.
DrawnPage page_of_everything(PageSize size) {
  RecordingCanvas canvas(sample::typefaces());
  canvas.begin_page(size);
  canvas.text({30, 40}, "Hx", {Face::sans, 20}, {28, 30, 40, 20});
  TextStyle upwards{Face::sans, 20};
  upwards.turn = Turn::upwards;
  canvas.text({90, 80}, "Hx", upwards, {80, 40, 20, 50});
  canvas.line({10, 12}, {60, 12}, {0.4, 0.2, 1, 0.5, false});
  canvas.rectangle({20, 60, 30, 10}, {Stroke{0.4, 0, 0, 0, false}, {}});
  canvas.circle({60, 70}, 6, {Stroke{}, {}}, CircleUse::tick);
  canvas.fill(Outline::rectangle({70, 20, 5, 8}), {});
  canvas.link({30, 30, 10, 10}, 1);
  return canvas.pages().front();
}

bool same(const Box& a, const Box& b) {
  return a.x == Approx(b.x) && a.y == Approx(b.y) && a.width == Approx(b.width) &&
         a.height == Approx(b.height);
}

}  // namespace

TEST_CASE("everything on a page grows from its top left corner") {
  const DrawnPage drawn = page_of_everything(kA5);
  RecordingCanvas paper(sample::typefaces());
  paper.begin_page(kA4);
  draw_placed(paper, drawn, {1.4, false, {3, 5}}, kSamePage);
  const auto& before = drawn.items;
  const auto& after = paper.pages().front().items;
  REQUIRE(after.size() == before.size());
  for (std::size_t at = 0; at < before.size(); ++at) {
    const Box from = extent(before[at]);
    const Box wanted{3 + from.x * 1.4, 5 + from.y * 1.4, from.width * 1.4, from.height * 1.4};
    INFO("item " << at);
    CHECK(same(extent(after[at]), wanted));
  }
  CHECK(paper.pages().front().texts().front().style.size_pt == Approx(28));
  CHECK(std::get<DrawnLine>(after[2]).stroke.dash == Approx(1.4));
}

TEST_CASE("a page turned lies with its top at the left") {
  const PageSize wide = kA5.landscape();
  const DrawnPage drawn = page_of_everything(wide);
  RecordingCanvas paper(sample::typefaces());
  paper.begin_page(kA4.landscape());
  draw_placed(paper, drawn, {1, true, {kA5.width, 0}}, kSamePage);
  const auto& before = drawn.items;
  const auto& after = paper.pages().front().items;
  REQUIRE(after.size() == before.size());
  for (std::size_t at = 0; at < before.size(); ++at) {
    const Box from = extent(before[at]);
    const Box wanted{kA5.width + from.y, wide.width - from.right(), from.height, from.width};
    INFO("item " << at);
    CHECK(same(extent(after[at]), wanted));
  }
  CHECK(paper.pages().front().texts()[0].style.turn == Turn::upwards);
  CHECK(paper.pages().front().texts()[1].style.turn == Turn::over);
}

TEST_CASE("a link leads to where its page has come") {
  const DrawnPage drawn = page_of_everything(kA5);
  RecordingCanvas paper(sample::typefaces());
  paper.begin_page(kA5);
  draw_placed(paper, drawn, {}, [](int page) { return page + 6; });
  CHECK(std::get<DrawnLink>(paper.pages().front().items.back()).page == 7);
}
