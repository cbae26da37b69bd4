#include "paper/layout_check.h"

#include <functional>

#include "catch.h"

using namespace cahier;

namespace {

const Typefaces& typefaces() {
  static const Typefaces loaded;
  return loaded;
}

constexpr Box kBox{30, 30, 100, 20};
constexpr TextStyle kDesk{Face::sans, 10, 0, TextRole::desk, Turn::none};
constexpr Stroke kLine{0.2, 0, 0, 0, false};
constexpr Stroke kBackdrop{0.2, 0, 0, 0, true};

std::vector<std::string> faults_of(const std::function<void(Canvas&)>& draw) {
  RecordingCanvas canvas(typefaces());
  canvas.begin_page(kA4);
  draw(canvas);
  return faults(canvas, Margins{});
}

// A text "practice" in its box, and what else is drawn before or after it.
std::vector<std::string> with_text(const std::function<void(Canvas&)>& before,
                                   const std::function<void(Canvas&)>& after) {
  return faults_of([&](Canvas& canvas) {
    if (before) before(canvas);
    canvas.text({40, 40}, "practice", kDesk, kBox);
    if (after) after(canvas);
  });
}

}  // namespace

TEST_CASE("a sound page has no faults") {
  CHECK(with_text({}, {}).empty());
  CHECK(faults_of([](Canvas&) {}).empty());
}

TEST_CASE("a text that leaves its box is found") {
  const auto found = faults_of([](Canvas& canvas) {
    canvas.text({40, 40}, "too long for its box", kDesk, {30, 30, 20, 20});
  });
  REQUIRE(found.size() == 1);
  CHECK_THAT(found[0],
             Catch::StartsWith("page 1: the text \"too long") && Catch::Contains("leaves its box"));
}

TEST_CASE("two texts that meet are found once, turned texts too") {
  const auto found = with_text(
      [](Canvas& canvas) {
        canvas.text({45, 41}, "again", kDesk, kBox);
      },
      {});
  REQUIRE(found.size() == 1);
  CHECK_THAT(found[0], Catch::Contains("meets the text"));
  const auto turned = with_text(
      [](Canvas& canvas) {
        TextStyle upwards = kDesk;
        upwards.turn = Turn::upwards;
        canvas.text({45, 48}, "turned", upwards, kBox);
      },
      {});
  CHECK(turned.size() == 1);
  CHECK(with_text([](Canvas& canvas) { canvas.text({80, 40}, "apart", kDesk, kBox); }, {}).empty());
}

TEST_CASE("a line through a text is found unless it is a backdrop") {
  const auto line = [](const Stroke& stroke, Point from, Point to) {
    return [=](Canvas& canvas) { canvas.line(from, to, stroke); };
  };
  CHECK(with_text(line(kLine, {30, 39}, {100, 39}), {}).size() == 1);
  CHECK(with_text({}, line(kLine, {30, 39}, {100, 39})).size() == 1);
  CHECK(with_text(line(kLine, {30, 30}, {60, 48}), {}).size() == 1);  // slanted
  CHECK(with_text(line(kLine, {44, 31}, {44, 48}), {}).size() == 1);  // upright
  CHECK(with_text(line(kBackdrop, {30, 39}, {100, 39}), {}).empty());
  CHECK(with_text(line(kLine, {30, 41.5}, {100, 41.5}), {}).empty());  // below it
  CHECK(with_text(line(kLine, {30, 30}, {38, 48}), {}).empty());       // beside it
}

TEST_CASE("the edge of a rectangle or circle through a text is found, a frame is not") {
  const auto rectangle = [](Box box, Paint paint) {
    return [=](Canvas& canvas) { canvas.rectangle(box, paint); };
  };
  CHECK(with_text(rectangle(kBox, {kLine, {}}), {}).empty());
  CHECK(with_text(rectangle({30, 30, 15, 20}, {kLine, {}}), {}).size() == 1);
  CHECK(with_text(rectangle({30, 30, 15, 20}, {{}, Fill{0.8, false}}), {}).size() == 1);
  CHECK(with_text(rectangle({30, 30, 15, 20}, {{}, Fill{0.8, true}}), {}).empty());
  CHECK(with_text(rectangle(kBox, {{}, Fill{0.8, false}}), {}).empty());
  const auto circle = [](Point centre, double diameter) {
    return [=](Canvas& canvas) { canvas.circle(centre, diameter, {kLine, {}}, CircleUse::tick); };
  };
  CHECK(with_text(circle({45, 39}, 5), {}).size() == 1);
  CHECK(with_text(circle({46.5, 39}, 30), {}).empty());  // around it
  CHECK(with_text(circle({70, 39}, 5), {}).empty());
}

TEST_CASE("a text painted over or met by a shape is found") {
  CHECK(with_text({}, [](Canvas& canvas) {
          canvas.rectangle(kBox, {{}, Fill{1, true}});
        }).size() == 1);
  const auto shape = [](bool backdrop) {
    return [=](Canvas& canvas) { canvas.fill(Outline::ellipse({45, 39}, 2, 2), {0, backdrop}); };
  };
  CHECK(with_text(shape(false), {}).size() == 1);
  CHECK(with_text(shape(true), {}).empty());
}

TEST_CASE("the punched edge is kept clear, on the left of odd pages and the right of even ones") {
  // ISO 838: holes 12 mm from the edge; 20 mm keep clear of them.
  RecordingCanvas canvas(typefaces());
  for (int page = 1; page <= 2; ++page) {
    canvas.begin_page(kA4);
    canvas.rectangle({15, 100, 10, 10}, {{}, Fill{0.5, false}});
  }
  canvas.begin_page(kA4);
  canvas.begin_page(kA4);
  canvas.rectangle({185, 100, 10, 10}, {{}, Fill{0.5, false}});
  const auto found = faults(canvas, Margins{});
  REQUIRE(found.size() == 2);
  CHECK_THAT(found[0],
             Catch::StartsWith("page 1: the rectangle") && Catch::Contains("outside the margins"));
  CHECK_THAT(found[1], Catch::StartsWith("page 4: "));
}

TEST_CASE("every kind of item is held to the margins") {
  const Stroke stroke = kLine;
  CHECK(faults_of([&](Canvas& c) { c.line({5, 50}, {50, 50}, stroke); }).size() == 1);
  CHECK(faults_of([&](Canvas& c) {
          c.circle({20, 50}, 6, {stroke, {}}, CircleUse::tick);
        }).size() == 1);
  CHECK(faults_of([&](Canvas& c) { c.fill(Outline::ellipse({20, 50}, 3, 3), {}); }).size() == 1);
  CHECK(faults_of([&](Canvas& c) { c.text({15, 50}, "x", kDesk, {0, 0, 210, 297}); }).size() == 1);
  CHECK(faults_of([&](Canvas& c) { c.link({5, 50, 10, 10}, 1); }).size() == 1);
}

TEST_CASE("a text has the x-height that its reading distance needs") {
  // x-heights of 1.4, 2.4 and 3.5 mm at 40, 70 and 100 cm, .2 degrees of visual angle: Legge,
  // Bigelow 2011, Journal of Vision 11(5):8 (value from memory).
  CHECK(least_x_height(TextRole::desk) == 1.4);
  CHECK(least_x_height(TextRole::stand) == 2.4);
  CHECK(least_x_height(TextRole::wall) == 3.5);
  for (TextRole role : {TextRole::desk, TextRole::stand, TextRole::wall, TextRole::fine_print}) {
    for (Face face : {Face::sans, Face::serif_italic}) {
      const double size = least_size(typefaces(), face, role);
      const auto at = [&](double size_pt) {
        return faults_of([&](Canvas& canvas) {
          canvas.text({40, 60}, "xx", {face, size_pt, 0, role, Turn::none}, {30, 30, 100, 60});
        });
      };
      CHECK(at(size).empty());
      CHECK(at(size * 0.99).size() == 1);
    }
  }
  // Noto Sans has .536 em: 1.4 mm are reached at 1.4 / .536 mm of type.
  CHECK(least_size(typefaces(), Face::sans, TextRole::desk) ==
        Approx(1.4 / 0.536 * 72 / 25.4).margin(0.01));
}

TEST_CASE("pale text, small tick circles and links to nowhere are found") {
  CHECK(faults_of([](Canvas& canvas) {
          TextStyle pale = kDesk;
          pale.grey = 0.7;
          canvas.text({40, 40}, "pale", pale, kBox);
        }).size() == 1);
  const auto circle = [](double diameter, CircleUse use) {
    return faults_of([=](Canvas& canvas) { canvas.circle({60, 60}, diameter, {kLine, {}}, use); });
  };
  CHECK(circle(3.9, CircleUse::tick).size() == 1);
  CHECK(circle(4, CircleUse::tick).empty());
  CHECK(circle(2, CircleUse::ornament).empty());
  CHECK(faults_of([](Canvas& canvas) { canvas.link(kBox, 2); }).size() == 1);
  CHECK(faults_of([](Canvas& canvas) { canvas.link(kBox, 1); }).empty());
}
