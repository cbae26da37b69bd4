// The form of a piece on paper: the map, its learning calendar, the progress chart, and the strip
// on the cover.
#include <array>
#include <cmath>
#include <set>

#include "catch.h"
#include "hostile_plans.h"
#include "paths.h"
#include "sample_pieces.h"
#include "sheet_words.h"
#include "workbook/parts/form_signs.h"
#include "workbook/parts/form_strip.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::kLantern;

namespace {

// 96 bars in sections of 12 to 24, with everything that a map can show.
const Plan& winter() {
  static const Plan plan =
      sample::plan(std::string(Source::from_file(EXAMPLES "/winter-fantasy.yaml").text()));
  return plan;
}

// Sections of 16 to 20 bars, 130 in all, phrases of four, two returns.
std::string long_piece() {
  std::string yaml = "title: Long\nbars: 130\nmeter: 4/4\ntempo: 90\nsections:\n";
  const std::array<int, 8> last = {16, 32, 52, 68, 84, 100, 116, 130};
  int first = 1;
  for (const int end : last) {
    yaml += "  - {name: S" + std::to_string(end) + ", bars: " + std::to_string(first) + "-" +
            std::to_string(end);
    if (end == 68 || end == 116) yaml += ", same as: 1-16";
    yaml += ", phrases: 4}\n";
    first = end + 1;
  }
  return yaml + "practice: {minutes: 40}\n";
}

std::string many_bars(int bars) {
  return "title: \"" + std::string(200, 'W') +
         "\"\npickup: 1\nmeter: 4/4\nbars: " + std::to_string(bars) +
         "\npractice: {minutes: 120}\n";
}

template <typename Item>
std::vector<Item> drawn(const DrawnPage& page) {
  std::vector<Item> found;
  for (const DrawnItem& item : page.items)
    if (const auto* of_kind = std::get_if<Item>(&item)) found.push_back(*of_kind);
  return found;
}

template <typename Item>
std::vector<Item> drawn(const DrawnSheet& sheet) {
  std::vector<Item> found;
  for (const DrawnPage& page : sheet.canvas().pages())
    for (Item& item : drawn<Item>(page)) found.push_back(item);
  return found;
}

// Where on the page, from left to right, the names of chunks and the bar numbers stand, line by
// line as they are drawn, down to a text.
std::vector<std::pair<std::string, double>> places(const DrawnSheet& sheet,
                                                   const PlannedPiece& piece,
                                                   const std::string& down_to) {
  std::set<std::string> wanted;
  for (const Chunk& chunk : piece.chunks) wanted.insert(chunk.id);
  for (const FormPart& part : form_parts(piece))
    wanted.insert(std::to_string(std::max(part.bars.first, 1)));
  std::vector<std::pair<std::string, double>> found;
  for (const DrawnText& text : sheet.canvas().pages().front().texts()) {
    if (text.text == down_to) break;
    // Not the numbers of cue starts and of bars with a mark, nor what a fork leads to.
    if (text.style.face == Face::sans && wanted.count(text.text) > 0)
      found.emplace_back(text.text, std::round(text.baseline.x * 100) / 100);
  }
  return found;
}

// The pages of the sheet, at its everyday sizes and magnified from a page smaller by root two
// (A4 and Letter, margins too), in English and in longer words.
void require_faultless_everywhere(const Plan& plan) {
  struct Format {
    PageSize paper;
    Margins margins;
  };
  const Margins large{14.1, 8.5, 8.5, 8.5};
  const std::array<Format, 5> formats = {{{kA4, style::kMargins},
                                          {kLetter, style::kMargins},
                                          {kA5, style::kMargins},
                                          {{148.5, 210}, large},
                                          {{148, 197}, large}}};
  for (const auto& draw : {draw_form_map, draw_progress_chart, draw_cover})
    for (const Format& format : formats)
      for (const Words* words : {&english_words(), &sample::wordy()}) {
        const Print print{format.paper, 8, false, format.margins};
        const DrawnSheet sheet(draw, plan, print, *words);
        INFO(sheet.words().substr(0, 60)
             << " on " << format.paper.width << " x " << format.paper.height);
        std::string faults;
        for (const std::string& fault : cahier::faults(sheet.canvas(), format.margins))
          faults += fault + "\n";
        CHECK(faults == "");
      }
}

}  // namespace

TEST_CASE("the form can be printed in every format") {
  SECTION("lantern") { require_faultless_everywhere(sample::plan(kLantern)); }
  SECTION("winter") { require_faultless_everywhere(winter()); }
  SECTION("crowded") {
    require_faultless_everywhere(
        sample::plan(sample::crowded_piece() + "practice: {minutes: 60}\n"));
  }
  SECTION("five bars") {
    require_faultless_everywhere(sample::plan("title: Five\nbars: 5\nmeter: 3/4\n"));
  }
  SECTION("one bar") {
    require_faultless_everywhere(
        sample::plan("title: One\nbars: 1\nmeter: 4/4\n", "2027-01-04", "2027-01-14"));
  }
  SECTION("accents above capitals") {
    require_faultless_everywhere(sample::plan(
        "title: Étude\nbars: 24\nmeter: 4/4\nsections: [{name: ÉÅÇ, bars: 1-12}, {name: Ŝgpj, "
        "bars: 13-24, same as: 1-12}]\n"));
  }
}

TEST_CASE("the form of 500 bars can be printed") {
  const Plan plan = sample::plan(many_bars(500), "2027-01-04", "2027-06-20");
  const DrawnSheet map(draw_form_map, plan);
  CHECK(map.faults() == "");
  CHECK(DrawnSheet(draw_progress_chart, plan).faults() == "");
  CHECK(DrawnSheet(draw_cover, plan).faults() == "");
  for (const Chunk& chunk : plan.pieces.front().chunks)
    CHECK_THAT(map.words(), Catch::Contains("\n" + chunk.id + "\n"));
}

TEST_CASE("the lines of a form hold every bar once and break where chunks end") {
  const PlannedPiece piece = sample::plan(kLantern).pieces.front();
  for (const int most : {4, 5, 7, 10, 16, 24, 32}) {
    int next = 0;
    for (const BarRange& line : form_lines(piece, most)) {
      CHECK(line.first == next);
      CHECK(line.last - std::max(line.first, 1) + 1 <= most);
      for (const Chunk& chunk : piece.chunks)
        CHECK_FALSE((chunk.bars.first <= line.last && chunk.bars.last > line.last));
      next = line.last + 1;
    }
    CHECK(next == 49);
  }
}

TEST_CASE("lines end with sections where they can, else with phrases") {
  const PlannedPiece& piece = winter().pieces.front();
  CHECK(form_lines(piece, 24) ==
        std::vector<BarRange>{{0, 16}, {17, 36}, {37, 48}, {49, 72}, {73, 96}});
  // C is longer than a line: its phrases are eight bars.
  const std::vector<BarRange> lines = form_lines(piece, 20);
  for (const BarRange& line : lines)
    CHECK((line.last < 49 || line.last >= 72 || (line.last - 48) % 8 == 0));
}

TEST_CASE("every line of a form has the same width of a bar and room on the page") {
  for (const PageSize paper : {kA4, kLetter, kA5}) {
    const Plan plan = sample::plan(long_piece());
    RecordingCanvas canvas(sample::typefaces());
    const Print print{paper, 8, false};
    const Contents known;
    const Book book(canvas, plan, english_words(), print, known);
    const FormLayout layout = form_layout(book, plan.pieces.front());
    for (const BarRange& line : layout.lines) {
      const BarScale scale = layout.scale(line, 20);
      CHECK(scale.bar_width() == layout.bar_width);
      CHECK(scale.right() <= 20 + book.upright().width);
    }
    CHECK(layout.bar_width >= 3.6);
  }
}

TEST_CASE("a part of the form is a chunk or what a return brings back of one") {
  const Plan plan = sample::plan(
      "title: Parts\nbars: 40\nmeter: 4/4\nsections:\n  - {name: A, bars: 1-16}\n"
      "  - {name: B, bars: 17-24}\n  - {name: A2, bars: 25-34, same as: 3-12}\n"
      "  - {name: C, bars: 35-40}\n");
  const PlannedPiece& piece = plan.pieces.front();
  int next = 1;
  for (const FormPart& part : form_parts(piece)) {
    CHECK(part.bars.first == next);
    next = part.bars.last + 1;
    const Chunk& chunk = piece.chunks[part.chunk];
    CHECK(part.back == (part.bars.first >= 25 && part.bars.last <= 34));
    if (!part.back) CHECK(part.bars == chunk.bars);
    for (int bar = part.bars.first; bar <= part.bars.last; ++bar)
      CHECK(chunk.bars.contains(piece.piece.learned_bar(bar)));
  }
  CHECK(next == 41);
}

TEST_CASE("only what comes back has a pattern, the same each time") {
  CHECK(form_patterns(sample::plan(kLantern).pieces.front()) == std::vector<int>{1, 0, 1, 0});
  CHECK(form_patterns(winter().pieces.front()) == std::vector<int>{1, 0, 1, 0, 1, 0});
  const Plan two = sample::plan(
      "title: Two\nbars: 32\nmeter: 4/4\nsections:\n  - {name: A, bars: 1-8}\n"
      "  - {name: B, bars: 9-16}\n  - {name: B2, bars: 17-24, same as: 9-16}\n"
      "  - {name: A2, bars: 25-32, same as: 1-8}\n");
  CHECK(form_patterns(two.pieces.front()) == std::vector<int>{1, 2, 2, 1});
}

TEST_CASE("the patterns of sections differ from one another, and none is a flat grey") {
  std::set<std::vector<std::pair<double, double>>> seen;
  for (int pattern = 0; pattern <= kFormPatterns; ++pattern) {
    RecordingCanvas canvas(sample::typefaces());
    canvas.begin_page(kA5);
    draw_form_pattern(canvas, {20, 20, 60, 9}, pattern);
    std::vector<std::pair<double, double>> lines;
    for (const DrawnLine& line : drawn<DrawnLine>(canvas.pages().front()))
      lines.emplace_back(line.from.x - line.to.x, line.from.y + line.to.x);
    CHECK(drawn<DrawnRectangle>(canvas.pages().front()).empty());
    CHECK(seen.insert(lines).second);
  }
}

TEST_CASE("the greys of hard bars are told apart when printed in black") {
  // A printer covers 1 - grey of the paper with black: the reflectance is the grey (Murray, Davies
  // 1936, value from memory), the lightness 116 Y^(1/3) - 16 (CIE 1976, value from memory). Ten
  // steps of lightness are several times what the eye can just tell apart.
  const auto lightness = [](int level) {
    const std::optional<Fill> fill = level_fill(level);
    return 116 * std::cbrt(fill ? fill->grey : 1) - 16;
  };
  CHECK(lightness(1) == Approx(100));
  CHECK(lightness(2) == Approx(100));
  for (const int level : {3, 4, 5}) CHECK(lightness(level - 1) - lightness(level) >= 10);
  // At 600 dots an inch and 100 lines a cell has 6 x 6 dots: three different numbers of them.
  std::set<long> dots;
  for (const int level : {3, 4, 5}) dots.insert(std::lround(level_fill(level)->grey * 36));
  CHECK(dots.size() == 3);
}

TEST_CASE("a pickup is half a bar wide") {
  const BarScale scale(20, 10, {0, 8});
  CHECK(scale.left(0) == Approx(20));
  CHECK(scale.left(1) == Approx(25));
  CHECK(scale.right() == Approx(20 + 10 * BarScale::units({0, 8})));
}

TEST_CASE("the form map shows sections, chunks, cue starts, forks, repeats, marks and changes") {
  const Plan plan = sample::plan(kLantern);
  const std::string words = DrawnSheet(draw_form_map, plan).words();
  for (const Chunk& chunk : plan.pieces.front().chunks)
    CHECK_THAT(words, Catch::Contains("\n" + chunk.id + "\n"));
  for (const CueStart& cue : plan.pieces.front().cues)
    CHECK_THAT(words, Catch::Contains("\n" + std::to_string(cue.number) + "\n"));
  for (const char* text :
       {"A again", "= 1–12", "\nbar 1:\n3/4 · A minor", "\nbar 25:\n2/4 · A major", "new manual",
        "to 16, 3\u00a0times", "run-throughs"})
    CHECK_THAT(words, Catch::Contains(text));
}

TEST_CASE("the key holds only the signs that the piece makes use of") {
  const std::string all = DrawnSheet(draw_form_map, winter()).words();
  const std::string few =
      DrawnSheet(draw_form_map, sample::plan("title: Few\nbars: 16\nmeter: 4/4\n")).words();
  for (const char* text : {"a section that comes back", "a chunk that comes back", "harder bars",
                           "a fork", "repeat signs"}) {
    CHECK_THAT(all, Catch::Contains(text));
    CHECK_THAT(few, !Catch::Contains(text));
  }
  for (const std::string& words : {all, few}) CHECK_THAT(words, Catch::Contains("a cue start"));
}

TEST_CASE("every chunk of the map begins under its bar number") {
  const PlannedPiece& piece = winter().pieces.front();
  const DrawnSheet sheet(draw_form_map, winter());
  for (const FormPart& part : form_parts(piece)) {
    const std::string number = std::to_string(std::max(part.bars.first, 1));
    int found = 0;
    for (const DrawnText& text : sheet.canvas().pages().front().texts())
      if (text.text == number && text.style.face == Face::sans) ++found;
    INFO("bar " << number);
    CHECK(found >= 1);
  }
}

TEST_CASE("the map of up to 130 bars is one page of A4 with its key") {
  for (const Plan& plan : {winter(), sample::plan(long_piece())}) {
    const DrawnSheet sheet(draw_form_map, plan);
    const std::string first = sheet.canvas().pages().front().words();
    const std::string last_number = std::to_string(plan.pieces.front().chunks.back().bars.first);
    CHECK_THAT(first, Catch::Contains("\n" + last_number + "\n"));
    CHECK_THAT(first, Catch::Contains("How to read it"));
    CHECK(sheet.pages() == 2);  // the calendar of learning stands on the second
  }
}

TEST_CASE("no line of a map is left alone on the last of its pages") {
  const Plan plan = sample::plan(many_bars(300), "2027-01-04", "2027-06-20");
  const DrawnSheet sheet(draw_form_map, plan);
  std::vector<int> lines;
  for (const DrawnPage& page : sheet.canvas().pages())
    if (const int here = count_of(page.words(), "\nsections\n"); here > 0) lines.push_back(here);
  REQUIRE(lines.size() >= 2);
  CHECK(*std::max_element(lines.begin(), lines.end()) -
            *std::min_element(lines.begin(), lines.end()) <=
        1);
}

TEST_CASE("what is too long for the map is said in full below it") {
  const std::string name(45, 'M');
  const std::string note =
      "long mark " + std::string(60, 'x') + " " + std::string(60, 'y') + " end";
  const std::string words =
      DrawnSheet(draw_form_map,
                 sample::plan("title: Long\nbars: 12\nmeter: 4/4\nsections: [{name: " + name +
                              ", bars: 1-4}, {name: B, bars: 5-12}]\nmarks: [{bar: 5, note: \"" +
                              note + "\"}, {bar: 6, note: short}]\n"))
          .words();
  CHECK_THAT(words, Catch::Contains("Sections in full"));
  CHECK_THAT(words, Catch::Contains("1–4: " + name));
  CHECK_THAT(words, Catch::Contains("Marks in full"));
  CHECK_THAT(words, Catch::Contains("5: long mark"));
  CHECK_THAT(words, Catch::Contains(" end\n"));
  CHECK_THAT(words, !Catch::Contains("6: short"));
}

TEST_CASE("the progress chart is drawn to the scale of the form map, line by line") {
  for (const Plan& plan : {winter(), sample::plan(kLantern)}) {
    const PlannedPiece& piece = plan.pieces.front();
    auto map = places(DrawnSheet(draw_form_map, plan), piece, "How to read it");
    auto chart = places(DrawnSheet(draw_progress_chart, plan), piece, "");
    // What a fork leads to is no bar number of its line.
    for (const Fork& fork : piece.forks)
      for (const WayOn& way : fork.ways)
        for (auto* all : {&map, &chart})
          all->erase(std::remove_if(
                         all->begin(), all->end(),
                         [&](const auto& place) { return place.first == std::to_string(way.to); }),
                     all->end());
    CHECK(map == chart);
    CHECK(map.size() >= 2 * piece.chunks.size());
  }
}

TEST_CASE("the progress chart has five boxes for each chunk and one where it comes back") {
  for (const Plan& plan : {winter(), sample::plan(kLantern), sample::plan(long_piece())})
    for (const PageSize paper : {kA4, kLetter, kA5}) {
      const PlannedPiece& piece = plan.pieces.front();
      const DrawnSheet sheet(draw_progress_chart, plan, Print{paper, 8, false});
      std::size_t wanted = 0;
      for (const FormPart& part : form_parts(piece)) wanted += part.back ? 1 : 5;
      std::size_t boxes = 0;
      for (const DrawnRectangle& box : drawn<DrawnRectangle>(sheet)) {
        if (!box.paint.stroke) continue;
        ++boxes;
        CHECK(box.box.height >= 4.5);
      }
      CHECK(boxes == wanted);
    }
}

TEST_CASE("boxes to colour are high enough for a pencil even where a page more is needed") {
  std::string yaml = "title: Six\nbars: 144\nmeter: 4/4\nsections:\n";
  for (int first = 1; first < 144; first += 24)
    yaml += "  - {name: S" + std::to_string(first) + ", bars: " + std::to_string(first) + "-" +
            std::to_string(first + 23) + "}\n";
  const DrawnSheet sheet(draw_progress_chart, sample::plan(yaml + "practice: {minutes: 40}\n"));
  CHECK(sheet.pages() == 2);
  for (const DrawnRectangle& box : drawn<DrawnRectangle>(sheet))
    if (box.paint.stroke) CHECK(box.box.height >= 4.5);
}

TEST_CASE("a chunk of a single bar has room for its name and its bar's number") {
  const Plan plan = sample::plan(
      "title: Short\nbars: 60\nmeter: 12/8\nsections:\n"
      "  - {name: S, bars: 1-30, phrases: 1}\n  - {name: T, bars: 31-60, phrases: 1}\n"
      "practice: {minutes: 60}\n");
  CHECK(plan.pieces.front().chunks.size() == 60);
  const std::string map = DrawnSheet(draw_form_map, plan).canvas().pages().front().words();
  for (const Chunk& chunk : plan.pieces.front().chunks) {
    CHECK_THAT(map, Catch::Contains("\n" + chunk.id + "\n"));
    CHECK_THAT(map, Catch::Contains("\n" + std::to_string(chunk.bars.first) + "\n"));
  }
}

TEST_CASE("96 bars to colour are one page of A4") {
  const DrawnSheet sheet(draw_progress_chart, winter());
  CHECK(sheet.pages() == 1);
  // Five lines; one of them holds a return alone, which is not learned.
  CHECK(count_of(sheet.words(), "\nlearned\n") == 4);
  CHECK(count_of(sheet.words(), "\nin a run\n") == 5);
}

TEST_CASE("the learning calendar shows each chunk's learning, its recalls and the date") {
  const Plan& plan = winter();
  const DrawnSheet sheet(draw_form_map, plan);
  const DrawnPage& page = sheet.canvas().pages().back();
  std::set<std::pair<int, int>> learned;
  std::set<std::pair<int, int>> recalled;
  std::set<std::pair<int, int>> joined;
  int off = 0;
  for (std::size_t day = 0; day < plan.days.size(); ++day) {
    off += plan.days[day].allowance <= 0 ? 1 : 0;
    for (const Task& task : plan.days[day].tasks)
      for (const int chunk : task.chunks) {
        const std::pair<int, int> at(static_cast<int>(day), chunk);
        if (task.drill == Drill::run_through || task.drill == Drill::silent_run) continue;
        (task.drill == Drill::learn ? learned
         : retrieves(task.drill)    ? recalled
                                    : joined)
            .insert(at);
      }
  }
  std::size_t runs = 0;
  for (const Day& day : plan.days)
    runs += std::any_of(day.tasks.begin(), day.tasks.end(),
                        [](const Task& task) { return task.drill == Drill::run_through; });
  for (const auto& at : learned) recalled.erase(at), joined.erase(at);
  for (const auto& at : recalled) joined.erase(at);

  std::size_t squares = 0;
  std::size_t stripes = 0;
  for (const DrawnRectangle& box : drawn<DrawnRectangle>(page))
    (box.paint.fill && !box.paint.fill->backdrop ? squares : stripes) += 1;
  std::size_t full = 0;
  std::size_t hollow = 0;
  double least_full = 9;
  double most_hollow = 0;
  for (const DrawnCircle& circle : drawn<DrawnCircle>(page)) {
    const bool is_hollow = circle.paint.stroke.has_value();
    (is_hollow ? hollow : full) += 1;
    if (is_hollow && circle.centre.y > 60) most_hollow = std::max(most_hollow, circle.diameter);
    if (!is_hollow) least_full = std::min(least_full, circle.diameter);
  }
  // And one of each in the key.
  CHECK(squares == learned.size() + 1);
  CHECK(stripes == static_cast<std::size_t>(off) + 1);
  CHECK(full == recalled.size() + runs + 1);
  CHECK(hollow == joined.size() + 1);
  CHECK(least_full > 1.5 * most_hollow);
  bool has_date = false;
  for (const DrawnText& text : page.texts())
    has_date = has_date || (text.text == "20 Mar" && text.style.face == Face::sans_bold);
  CHECK(has_date);
}

TEST_CASE("the days from a chunk's learning to the date hang on one line") {
  const Plan& plan = winter();
  const DrawnPage page = DrawnSheet(draw_form_map, plan).canvas().pages().back();
  double right = 0;
  for (const DrawnLine& line : drawn<DrawnLine>(page)) right = std::max(right, line.to.x);
  std::size_t threads = 0;
  for (const DrawnRectangle& box : drawn<DrawnRectangle>(page)) {
    if (!box.paint.fill || box.paint.fill->backdrop) continue;
    for (const DrawnLine& line : drawn<DrawnLine>(page))
      if (line.stroke.backdrop && line.from.y == line.to.y &&
          std::abs(line.from.y - box.box.centre().y) < 0.01 &&
          std::abs(line.from.x - box.box.centre().x) < 0.01 && std::abs(line.to.x - right) < 0.5)
        ++threads;
  }
  CHECK(threads == plan.pieces.front().chunks.size());
}

TEST_CASE("eleven weeks have a column for each day even on A5") {
  CHECK_THAT(DrawnSheet(draw_form_map, winter(), Print{kA5, 8, false}).words(),
             Catch::Contains("One column is one day."));
}

TEST_CASE("cue starts that would meet on the cover's strip give way to those of sections") {
  const PlannedPiece& piece = winter().pieces.front();
  const DrawnSheet sheet(draw_cover, winter(), Print{kA5, 8, false});
  std::set<std::string> shown;
  for (const DrawnText& text : sheet.canvas().pages().front().texts())
    if (text.style.size_pt == style::kSmall.size_pt && text.style.grey == style::kDark)
      shown.insert(text.text);
  std::size_t cues = 0;
  for (const CueStart& cue : piece.cues) cues += shown.count(std::to_string(cue.number));
  CHECK(cues < piece.cues.size());
  for (const PlannedSection& section : piece.sections) {
    const int bar = std::max(section.bars.first, 1);
    CHECK(shown.count(std::to_string(bar)) == 1);
    const auto cue = std::find_if(piece.cues.begin(), piece.cues.end(), [&](const CueStart& start) {
      return std::max(start.bar, 1) == bar;
    });
    REQUIRE(cue != piece.cues.end());
    CHECK(shown.count(std::to_string(cue->number)) == 1);
  }
}
