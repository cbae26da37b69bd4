// The sheets that show the piece: cover, form map, progress chart (sheet_form_map_test.cpp has more
// of these two); and the two that explain.
#include <array>

#include "catch.h"
#include "drawn_sheet.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::kLantern;
#include "workbook/parts/totals.h"

namespace {

using Draw = void (*)(Book&);
constexpr std::array<Draw, 5> kSheets = {draw_cover, draw_how_to_use, draw_readiness_check,
                                         draw_form_map, draw_progress_chart};

void require_faultless(const Plan& plan, const Words& words = english_words()) {
  for (const Draw draw : kSheets)
    for (const PageSize paper : {kA4, kLetter, kA5})
      for (const bool teacher : {false, true}) {
        const DrawnSheet sheet(draw, plan, Print{paper, 8, teacher}, words);
        INFO(sheet.words().substr(0, 40) << paper.width << " mm wide");
        REQUIRE(sheet.faults() == "");
      }
}

// A catalogue whose sentences are 40 % longer than the English ones.
Words wordy() {
  const std::string english = std::string(Templates().read("words", "en").text());
  std::string text;
  std::size_t at = 0;
  while (at < english.size()) {
    std::size_t end = english.find('\n', at);
    if (end == std::string::npos) end = english.size();
    std::string line = english.substr(at, end - at);
    if (line.size() > 3 && line.back() == '"' && line.find("{") == std::string::npos) {
      const std::size_t opens = line.find('"');
      const std::size_t length = line.size() - opens - 2;
      line.insert(line.size() - 1, " " + std::string(length * 2 / 5, 'm').substr(0, 12));
      for (std::size_t more = 13; more < length * 2 / 5; more += 8)
        line.insert(line.size() - 1, " wordier");
    }
    text += line + "\n";
    at = end + 1;
  }
  Diagnostics diagnostics;
  Words words = read_words(Source("wordy.yaml", text), diagnostics);
  for (const Diagnostic& diagnostic : diagnostics.all()) UNSCOPED_INFO(compose(diagnostic));
  REQUIRE_FALSE(diagnostics.has_errors());
  return words;
}

}  // namespace

TEST_CASE("every sheet about the piece can be printed on every paper") {
  require_faultless(sample::plan(kLantern));
}

TEST_CASE("a piece of one bar and a plan of three days can be printed") {
  require_faultless(sample::plan("title: One\nbars: 1\nmeter: 4/4\ninstrument: violin\n",
                                 "2027-01-04", "2027-01-14"));
}

TEST_CASE("a language that takes 40 % more room can be printed") {
  const Plan plan = sample::plan(kLantern);
  require_faultless(plan, wordy());
}

TEST_CASE("a title of 200 characters and section names of 60 can be printed") {
  std::string yaml = "title: \"" + std::string(200, 'W') + "\"\ncomposer: \"" +
                     std::string(120, 'M') + "\"\nbars: 300\nmeter: 4/4\nsections:\n";
  for (int first = 1; first <= 300; first += 20)
    yaml += "  - {name: \"" + std::to_string(first) + std::string(57, 'M') +
            "\", bars: " + std::to_string(first) + "-" + std::to_string(first + 19) + "}\n";
  yaml += "marks: [{bar: 3, note: \"" + std::string(150, 'm') + "\"}, {bar: 4, note: \"" +
          std::string(90, 'x') + "\"}]\npractice: {minutes: 60}\n";
  require_faultless(sample::plan(yaml, "2027-01-04", "2027-06-20"));
}

TEST_CASE("the cover says what, when and how much") {
  const Plan plan = sample::plan(kLantern);
  const std::string words = DrawnSheet(draw_cover, plan).words();
  for (const char* text : {"Lantern Study", "Nobody At All", "Saturday 20 March 2027", "A again",
                           "65\npractice days", "9\nchunks to learn"})
    CHECK_THAT(words, Catch::Contains(text));
  // As many as the tally and the days hold.
  CHECK_THAT(words,
             Catch::Contains(std::to_string(totals_of(plan).runs) + "\nrun-throughs asked for"));
  CHECK_THAT(words, !Catch::Contains("Teacher"));
  CHECK_THAT(DrawnSheet(draw_cover, plan, Print{kA4, 8, true}).words(), Catch::Contains("Teacher"));
}

TEST_CASE("the check line of the cover is 100 mm long") {
  const DrawnSheet sheet(draw_cover, sample::plan(kLantern), Print{kA5, 8, false});
  int found = 0;
  for (const DrawnItem& item : sheet.canvas().pages().front().items)
    if (const auto* line = std::get_if<DrawnLine>(&item);
        line != nullptr && line->to.x - line->from.x == Approx(100).margin(1e-9) &&
        line->from.y == line->to.y)
      ++found;
  CHECK(found == 1);
}

TEST_CASE("how to use the book is one page of A4 and names the cautions") {
  const DrawnSheet sheet(draw_how_to_use, sample::plan(kLantern));
  CHECK(sheet.pages() == 1);
  for (const char* text : {"Never play in pain", "doctor", "not medical advice", "5\u00a0times"})
    CHECK_THAT(sheet.words(), Catch::Contains(text));
}

TEST_CASE("the caution about a day off says what the plan does about it") {
  const auto words = [](const std::string& practice) {
    return sample::one_line(
        DrawnSheet(draw_how_to_use, sample::plan("title: Rest\nbars: 48\nmeter: 3/4\n" + practice))
            .words());
  };
  CHECK_THAT(words("practice: {minutes: 15, days off: [sun]}\n"),
             Catch::Contains("a day off every week. Here it is Sunday."));
  CHECK_THAT(words("practice: {minutes: 15, days off: [wed, sun]}\n"),
             Catch::Contains("Every week here has at least one."));
  CHECK_THAT(words("practice: {minutes: 15}\n"),
             Catch::Contains("Some weeks here have none: leave a day out") &&
                 Catch::Contains("“days off: [sun]”"));
}

TEST_CASE("a single part is not learned hands apart, and nothing is spoken") {
  const std::string words =
      DrawnSheet(draw_how_to_use,
                 sample::plan("title: Alone\nbars: 8\nmeter: 4/4\ninstrument: violin\n"))
          .words();
  CHECK_THAT(words, !Catch::Contains("each part alone"));
  CHECK_THAT(words, !Catch::Contains("Spoken part"));
}

TEST_CASE("the readiness check goes by what the piece says") {
  const DrawnSheet sheet(draw_readiness_check, sample::plan(kLantern));
  CHECK_THAT(sheet.words(), Catch::Contains("the pickup is bar 0"));
  CHECK_THAT(sheet.words(), Catch::Contains("bar 17: new manual"));
  CHECK(sheet.circles_to_tick() == 8);
}
