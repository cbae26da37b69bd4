// The sheets on which memory is tempered: staves to write bars out on, spoken parts.
#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <vector>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "paths.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/phrasing.h"
#include "workbook/parts/spread.h"
#include "workbook/sheets/write_outs/write_out_staves.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::kStudy;

namespace {

constexpr const char* kChanging = R"(
title: Everything changes
bars: 16
pickup: 1
meter: 4/4
key: E flat major
tempo: 96
level: 5
changes:
  - {bar: 3, key: C# major}
  - {bar: 7, key: C flat major, meter: 3/4}
  - {bar: 8, meter: 2+3/8}
  - {bar: 10, key: C major, meter: 4/4}
repeats: [{bars: 1-4, times: 2}, {bars: 5-8, times: 2}, {bars: 10-16, times: 2}]
practice: {temper: yes, minutes: 60}
)";

std::string example(const std::string& name) {
  std::ifstream file(std::string(EXAMPLES) + "/" + name + ".yaml");
  std::ostringstream text;
  text << file.rdbuf();
  REQUIRE_FALSE(text.str().empty());
  return text.str();
}

int tasks_of(const Plan& plan, Drill drill) {
  int number = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == drill) ++number;
  return number;
}

// The y of every staff line on a page, from the top; `thickness` in millimetres.
std::vector<double> staff_lines(const DrawnPage& page, double thickness = 0.26) {
  std::vector<double> heights;
  for (const DrawnItem& item : page.items)
    if (const auto* line = std::get_if<DrawnLine>(&item);
        line && line->stroke.backdrop && line->from.y == line->to.y &&
        std::abs(line->stroke.width - thickness) < 1e-9)
      heights.push_back(line->from.y);
  std::sort(heights.begin(), heights.end());
  REQUIRE(heights.size() % 5 == 0);
  return heights;
}

int staves_on(const DrawnPage& page) { return static_cast<int>(staff_lines(page).size()) / 5; }

// "large print": a page of A4 or Letter through the square root of two, its margins likewise.
constexpr PageSize kHalfLetter{152.7, 197.6};
constexpr PageSize kSmallest{148, 197};
constexpr Margins kSmallMargins{14.1, 8.5, 8.5, 8.5};

void require_sound(void (*draw)(Book&), const Plan& plan) {
  for (const double height : {6.0, 8.0, 12.0, 20.0})
    for (const PageSize paper : {kA4, kLetter, kA5, kHalfLetter, kSmallest})
      for (const Words* words : {&english_words(), &sample::wordy()}) {
        Print print{paper, height, false};
        if (paper.width != kA4.width && paper.width != kLetter.width && paper.height < 200)
          print.margins = kSmallMargins;
        INFO("staves of " << height << " mm on paper " << paper.width << " mm wide");
        const DrawnSheet sheet(draw, plan, print, *words);
        CHECK(cahier::faults(sheet.canvas(), print.margins) == std::vector<std::string>{});
      }
}

}  // namespace

TEST_CASE("Write-outs and spoken parts keep their layout at every size, on every paper") {
  std::vector<Plan> plans = {
      sound_plan(), sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}"),
      sample::plan(kChanging), sample::plan(example("chapel-toccata")),
      sample::plan(
          "{title: Quartet, bars: 9, level: 5, tempo: 60, instrument: violin, key: 7 sharps, "
          "staves: [treble 8 above, treble 8 below, alto, bass 8 below], "
          "practice: {temper: yes}}")};
  plans.push_back(sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n",
                               "2027-01-04", "2027-06-20"));
  for (const Plan& plan : plans) {
    INFO(plan.pieces.front().piece.title);
    require_sound(draw_write_outs, plan);
    require_sound(draw_spoken_parts, plan);
  }
}

TEST_CASE("Write-outs have numbered staves, bars, date and a check for every task") {
  const Plan plan = sample::plan(kStudy);
  const int tasks = tasks_of(plan, Drill::write_out);
  REQUIRE(tasks > 0);
  const DrawnSheet sheet(draw_write_outs, plan);
  const std::string words = sheet.words();
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::write_out) {
        const std::string bars = bar_range(task.bars.first, task.bars.last);
        CHECK(count_of(words, "\nbars " + bars + "\n" + weekday_short(english_words(), day.date) +
                                  " " + day_month(english_words(), day.date) + "\n") == 1);
      }
  CHECK(count_of(words, "Checked against the score: notes missing\n") >= tasks);
  for (int bar = 17; bar <= 32; ++bar) {
    INFO(bar);
    CHECK(count_of(words, "\n" + std::to_string(bar) + "\n") == 1);
  }
}

TEST_CASE("Six write-outs of a piano piece take two pages of music paper") {
  // Ten to sixteen staves a page, twelve usual, the gap larger than the staff: a university
  // manuscript hand-out. The first page begins with an explanation.
  const Plan plan = sample::plan(example("winter-fantasy"));
  REQUIRE(tasks_of(plan, Drill::write_out) == 6);
  const DrawnSheet sheet(draw_write_outs, plan);
  REQUIRE(sheet.pages() == 2);
  CHECK(staves_on(sheet.canvas().pages()[0]) == 8);
  CHECK(staves_on(sheet.canvas().pages()[1]) == 10);
}

TEST_CASE("Single staves are ten to sixteen a page") {
  // The same hand-out.
  const Plan plan = sample::plan("{title: Solo, bars: 9, tempo: 90, instrument: violin}");
  const DrawnSheet sheet(draw_write_outs, plan);
  REQUIRE(sheet.pages() == 2);
  CHECK(staves_on(sheet.canvas().pages()[1]) >= 10);
  CHECK(staves_on(sheet.canvas().pages()[1]) <= 16);
}

TEST_CASE("More than a staff's height lies between any two staves") {
  for (const char* piece : {"winter-fantasy", "chapel-toccata"}) {
    const DrawnSheet sheet(draw_write_outs, sample::plan(example(piece)));
    for (const DrawnPage& page : sheet.canvas().pages()) {
      const auto lines = staff_lines(page);
      for (std::size_t at = 5; at < lines.size(); at += 5) CHECK(lines[at] - lines[at - 1] > 8);
    }
  }
}

TEST_CASE("Systems are spread evenly down the page, and reach its end") {
  const DrawnSheet sheet(draw_write_outs, sample::plan(example("winter-fantasy")));
  for (const DrawnPage& page : sheet.canvas().pages()) {
    const auto lines = staff_lines(page);
    for (std::size_t at = 20; at < lines.size(); at += 10)
      CHECK(lines[at] - lines[at - 10] == Approx(lines[10] - lines[0]).margin(0.01));
    // Less than half a system is left above the foot.
    CHECK(kA4.height - 12 - lines.back() < 25);
  }
}

TEST_CASE("Write-outs without a task are two pages of staves for the hardest bars first") {
  Plan plan = sample::plan(kStudy);
  for (Day& day : plan.days)
    day.tasks.erase(std::remove_if(day.tasks.begin(), day.tasks.end(),
                                   [](const Task& task) { return task.drill == Drill::write_out; }),
                    day.tasks.end());
  for (const Temper temper : {Temper::weak, Temper::no}) {
    plan.temper = temper;
    const DrawnSheet sheet(draw_write_outs, plan);
    CHECK(sheet.pages() == 2);
    const std::string words = sheet.words();
    // Section B is of level 4; the first section comes after it.
    CHECK(words.find("bars 17–") < words.find("bars 29–"));
    CHECK(words.find("bars 29–") < words.find("bars 1–"));
    CHECK(words.find("bars 1–") != std::string::npos);
    CHECK(words.find("asks for no write-outs") != std::string::npos);
  }
  plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  const DrawnSheet five(draw_write_outs, plan);
  CHECK(five.pages() == 2);
  CHECK(count_of(five.words(), "\nbars 1–3\n") == 1);
  CHECK(staves_on(five.canvas().pages()[1]) == 10);
}

TEST_CASE("A programme without write-outs has a page of staves for each piece, explained once") {
  Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  plan.pieces.push_back(plan.pieces.front());
  plan.pieces.back().piece.title = "The other";
  const DrawnSheet sheet(draw_write_outs, plan);
  CHECK(sheet.pages() == 2);
  CHECK(count_of(sheet.words(), "Away from the instrument") == 1);
}

TEST_CASE("Staves are set smaller where a page cannot hold a system, and the page says so") {
  Plan plan = sound_plan();
  plan.pieces.front().piece.instrument =
      with_staves(*find_instrument("organ"), {Clef::treble, Clef::treble, Clef::bass, Clef::bass});
  const Print print{kA5, 20, false};
  CHECK(count_of(DrawnSheet(draw_write_outs, plan, print).words(), "Staves of 20\u00a0mm do") == 1);
  for (Day& day : plan.days) day.tasks.clear();
  CHECK(DrawnSheet(draw_write_outs, plan, print).faults() == "");
  const DrawnSheet roomy(draw_write_outs, plan, {kA4, 8, false});
  CHECK(count_of(roomy.words(), "Staves of") == 0);
}

TEST_CASE("The space between staves gives way before their height does") {
  const Piece organ = sample::piece("{title: Five, bars: 5, instrument: organ}");
  const Typefaces& faces = sample::typefaces();
  const StaffMeasures wished = writing_measures(faces, organ, 12);
  CHECK(wished.gap > 12);
  const double whole = system_height(organ, wished) + below_system(wished);
  CHECK(fitting_measures(faces, organ, 12, whole).gap == wished.gap);
  const StaffMeasures closer = fitting_measures(faces, organ, 12, whole - 3);
  CHECK(closer.height == 12);
  CHECK(closer.gap == Approx(wished.gap - 1.5));
  CHECK(closer.gap > 12);
  const StaffMeasures smaller = fitting_measures(faces, organ, 12, whole - 12);
  CHECK(smaller.height < 12);
  CHECK(smaller.gap > smaller.height);
  CHECK(system_height(organ, smaller) + below_system(smaller) <= whole - 12);
  CHECK(fitting_measures(faces, organ, 12, 0).height == 4);
}

TEST_CASE("Larger staves leave room for fewer bars in a system") {
  const Piece piece = sample::piece("{title: Twelve, bars: 12, meter: 4/4}");
  const auto systems = [&](double height) {
    return systems_for(sample::typefaces(), piece, {1, 12},
                       writing_measures(sample::typefaces(), piece, height), 178)
        .size();
  };
  CHECK(systems(8) == 3);  // four bars in each, 36 mm wide at least
  CHECK(systems(12) > systems(8));
  CHECK(systems(20) == 12);
}

TEST_CASE("Repeats, changes and the end stand at their bars") {
  const Piece piece = sample::piece(kChanging);
  const auto systems = systems_for(sample::typefaces(), piece, {0, 16},
                                   writing_measures(sample::typefaces(), piece, 8), 178);
  std::map<int, StaffBar> bars;
  for (const StaffSystem& system : systems)
    for (const StaffBar& bar : system.bars) bars[bar.number.value()] = bar;
  REQUIRE(bars.size() == 17);
  const std::set<int> opening = {1, 5, 10};
  const std::set<int> closing = {4, 8, 16};
  for (const auto& [number, bar] : bars) {
    INFO(number);
    CHECK(bar.opens_repeat == (opening.count(number) == 1));
    CHECK(bar.closes_repeat == (closing.count(number) == 1));
  }
  CHECK(bars[0].length == 1);
  CHECK(bars[1].length == 4);
  CHECK(bars[8].length == 2.5);
  CHECK(bars[3].fifths == 7);
  CHECK(bars[7].fifths == -7);
  CHECK(bars[8].meter == StaffMeter{"2+3", 8});
  for (std::size_t at = 0; at + 1 < systems.size(); ++at) {
    CHECK(systems[at].next_fifths == systems[at + 1].bars.front().fifths);
    CHECK(systems[at].next_meter == systems[at + 1].bars.front().meter);
    CHECK_FALSE(systems[at].final_bar_line);
  }
  CHECK(systems.back().final_bar_line);
  // Without a pickup a repeat from the first bar has no sign there (common practice).
  const Piece plain = sample::piece("{title: I, bars: 4, repeats: [{bars: 1-4, times: 2}]}");
  const auto first = systems_for(sample::typefaces(), plain, {1, 4},
                                 writing_measures(sample::typefaces(), plain, 8), 178);
  CHECK_FALSE(first.front().bars.front().opens_repeat);
  CHECK(first.front().bars.back().closes_repeat);
}

TEST_CASE("Six spoken parts for two hands stand on one page, bars first, no circles") {
  const Plan plan = sample::plan(example("winter-fantasy"));
  REQUIRE(tasks_of(plan, Drill::spoken_part) == 6);
  const DrawnSheet sheet(draw_spoken_parts, plan);
  REQUIRE(sheet.pages() == 1);
  const DrawnPage& page = sheet.canvas().pages().front();
  CHECK(sheet.circles_to_tick() == 0);  // they are on the panels
  const auto texts = page.texts();
  const auto bars = std::find_if(texts.begin(), texts.end(),
                                 [](const DrawnText& text) { return text.text == "25–26"; });
  REQUIRE(bars != texts.end());
  // Set larger than what is to be done.
  CHECK(bars[1].baseline.x == bars->baseline.x);
  const auto step = std::find_if(texts.begin(), texts.end(), [](const DrawnText& text) {
    return text.text == "play left hand, say right hand";
  });
  REQUIRE(step != texts.end());
  CHECK(step->style.size_pt < bars->style.size_pt);
  CHECK(step->baseline.x > bars->ink.right());
}

TEST_CASE("Spoken parts have two lines for each step where one page holds them all") {
  const Plan plan = sound_plan();
  const DrawnSheet sheet(draw_spoken_parts, plan);
  CHECK(sheet.pages() == 1);
  CHECK(count_of(sheet.words(), "play left hand, say right hand") == 2);
  CHECK(count_of(sheet.words(), "play right hand, say left hand") == 2);
  CHECK(sheet.circles_to_tick() == 0);
  int lines = 0;
  for (const DrawnItem& item : sheet.canvas().pages().front().items)
    if (const auto* line = std::get_if<DrawnLine>(&item))
      lines += line->stroke.width == style::kWritingLine.width ? 1 : 0;
  CHECK(lines == 2 * 2 * 2);
}

TEST_CASE(
    "Spoken parts without a task are one page to fill in, and none where they make no sense") {
  Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  REQUIRE(tasks_of(plan, Drill::spoken_part) == 0);
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 1);
  plan.temper = Temper::no;
  CHECK(DrawnSheet(draw_spoken_parts, plan).pages() == 0);
  const Plan violin =
      sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90, instrument: violin}");
  CHECK(DrawnSheet(draw_spoken_parts, violin).pages() == 0);
}

TEST_CASE("Blocks are spread over pages, and split only to save a third of one") {
  std::vector<std::pair<int, double>> drawn;
  int page = 0;
  Spread spread([&] { return ++page, Box{0, 0, 100, 90}; }, 30);
  const auto strip = [&](double height) {
    return Strip{height, [&](const Box& box) { drawn.push_back({page, box.y}); }};
  };
  spread.add({strip(30)});
  CHECK_FALSE(spread.fits(61.5));
  CHECK(spread.fits(60));
  spread.add({strip(30)});
  spread.add({strip(30), strip(15)});  // does not fit; only 30 mm are left
  spread.add({strip(30), strip(30)});  // 45 mm are left: begins here
  spread.finish();
  using Places = std::vector<std::pair<int, double>>;
  // On the first page 30 mm are left: 22.5 between, a third of that below.
  CHECK(drawn == Places{{1, 0}, {1, 52.5}, {2, 0}, {2, 36}, {2, 57}, {3, 0}});
  CHECK(spread.pages() == 3);
}
