#include "paper/recording_canvas.h"

#include <stdexcept>

#include "catch.h"

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

}  // namespace

TEST_CASE("boxes divide evenly and keep their gaps") {
  const Box box{10, 20, 100, 50};
  const auto rows = box.rows(3, 4);
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].height == Approx(14));
  CHECK(rows[1].y == Approx(38));
  CHECK(rows[2].bottom() == Approx(70));
  const auto columns = box.columns(4);
  CHECK(columns[3].right() == Approx(110));
  const auto shares = box.columns_by_share({1, 3}, 20);
  CHECK(shares[0].width == Approx(20));
  CHECK(shares[1].x == Approx(50));
  CHECK(shares[1].right() == Approx(110));
  CHECK(box.inset(5) == Box{15, 25, 90, 40});
  CHECK(box.contains(box));
  CHECK_FALSE(box.contains(box.moved(1, 0)));
  CHECK(box.overlaps(box.moved(99, 0)));
  CHECK_FALSE(box.overlaps(box.moved(100, 0)));
  CHECK(box.top(5).bottom() == Approx(25));
  CHECK(box.bottom(5).y == Approx(65));
}

TEST_CASE("a recording keeps pages, texts, ink and outline in the order they came") {
  RecordingCanvas canvas(typefaces());
  CHECK_THROWS_AS(canvas.line({0, 0}, {1, 1}, {}), std::logic_error);
  CHECK_THROWS_AS(canvas.page_size(), std::logic_error);
  canvas.begin_page(kA4);
  canvas.text({20, 30}, "Hx", {Face::sans, 72}, {20, 0, 100, 100});
  canvas.begin_page(kA5);
  canvas.outline_entry("second", 1, 2);
  TextStyle upwards{Face::sans, 72};
  upwards.turn = Turn::upwards;
  canvas.text({50, 90}, "Hx", upwards, {0, 0, 100, 100});
  REQUIRE(canvas.page_count() == 2);
  CHECK(canvas.page_size() == kA5);
  CHECK(canvas.outline_entries().at(0).page == 2);
  const Box level = canvas.pages()[0].texts().at(0).ink;
  CHECK(level.bottom() == Approx(30));
  CHECK(level.height == Approx(0.714 * 25.4).margin(0.01));
  const Box turned = canvas.pages()[1].texts().at(0).ink;
  CHECK(turned.width == Approx(level.height));
  CHECK(turned.height == Approx(level.width));
  CHECK(turned.right() == Approx(50));
  CHECK(turned.bottom() == Approx(90 - (level.x - 20)));
  CHECK(canvas.pages()[0].words() == "Hx\n");
}

TEST_CASE("a line covers its width, a stroked shape half of it on each side") {
  const Stroke stroke{2, 0, 0, 0, false};
  CHECK(extent(DrawnLine{{10, 10}, {30, 10}, stroke}) == Box{10, 9, 20, 2});
  CHECK(extent(DrawnLine{{10, 10}, {10, 30}, stroke}) == Box{9, 10, 2, 20});
  CHECK(extent(DrawnRectangle{{10, 10, 5, 5}, {stroke, {}}}) == Box{9, 9, 7, 7});
  CHECK(extent(DrawnCircle{{10, 10}, 6, {stroke, {}}, CircleUse::tick}) == Box{6, 6, 8, 8});
}
