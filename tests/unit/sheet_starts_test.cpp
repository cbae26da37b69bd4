// The sheet of cue starts: what a throw brings, which starts have come, how each went.
#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <utility>
#include <vector>

#include "catch.h"
#include "drawn_sheet.h"
#include "hostile_plans.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::count_of;
using sample::DrawnSheet;
using sample::kStudy;

namespace {

constexpr Throw kThrows[] = {Throw::two_dice, Throw::one_die, Throw::d20, Throw::coins};

bool says(const DrawnSheet& sheet, const std::string& what) {
  std::string words = sheet.words();
  std::replace(words.begin(), words.end(), '\n', ' ');
  return words.find(what) != std::string::npos;
}

std::string label(int cue) { return "no.\u00a0" + std::to_string(cue); }

// A plan without days, of a piece with a start at every bar.
Plan plan_with(int starts, Throw thrown = Throw::two_dice) {
  Plan plan = sound_plan();
  for (Day& day : plan.days) day.tasks.clear();
  PlannedPiece& piece = plan.pieces.front();
  piece.piece.bars = starts;
  piece.piece.look_alikes.clear();
  piece.sections = {{"All", {1, starts}, {}}};
  piece.chunks = {{"A1", {1, starts}, 0, 2}};
  piece.cues.clear();
  for (int start = 1; start <= starts; ++start) piece.cues.push_back({start, start, 0});
  std::vector<int> numbers(starts);
  std::iota(numbers.begin(), numbers.end(), 1);
  piece.dice = dice_tables(numbers, thrown);
  return plan;
}

// The middle of each start's first cell in the table.
std::map<int, Point> cells_of(const DrawnSheet& sheet, int starts) {
  std::map<int, Point> cells;
  for (const DrawnPage& page : sheet.canvas().pages())
    for (const DrawnText& text : page.texts())
      for (int start = 1; start <= starts; ++start)
        if (text.text == label(start)) cells.emplace(start, text.within.centre());
  return cells;
}

// The boxes of starts that the plan asks for, and where each stands.
struct Asked {
  int page;
  Box box;
};
std::vector<Asked> asked_boxes(const DrawnSheet& sheet) {
  constexpr double kSide = 3.6;
  std::vector<Asked> boxes;
  for (std::size_t page = 0; page < sheet.canvas().pages().size(); ++page)
    for (const DrawnItem& item : sheet.canvas().pages()[page].items)
      if (const auto* rectangle = std::get_if<DrawnRectangle>(&item);
          rectangle && rectangle->box.width == Approx(kSide) &&
          rectangle->box.height == Approx(kSide))
        boxes.push_back({static_cast<int>(page), rectangle->box});
  return boxes;
}

// A text by itself on a page, the last one drawn with these words.
Box place_of(const DrawnPage& page, const std::string& words) {
  Box place;
  for (const DrawnText& text : page.texts())
    if (text.text == words) place = text.within;
  REQUIRE(place.width > 0);
  return place;
}

// A4 magnifies such a page by the square root of two.
const Print kLargePrint{{148.5, 210}, 8, false, {14.1, 8.5, 8.5, 8.5}};
const Print kLargeLetter{{152.7, 197.6}, 8, false, {14.1, 8.5, 8.5, 8.5}};

std::string faults_in_large_print(const Plan& plan) {
  std::string all;
  for (const Print* print : {&kLargePrint, &kLargeLetter})
    for (const Words* words : {&english_words(), &sample::wordy()}) {
      const DrawnSheet sheet(draw_cue_starts, plan, *print, *words);
      for (const std::string& fault : faults(sheet.canvas(), print->margins)) all += fault + "\n";
    }
  return all;
}

}  // namespace

TEST_CASE("Whatever is thrown, the sheet of cue starts keeps its layout") {
  for (const Throw thrown : kThrows)
    for (const int starts : {1, 2, 3, 5, 6, 7, 13, 17, 20, 21, 36, 37, 64, 65, 130}) {
      INFO("throw " << static_cast<int>(thrown) << " for " << starts << " starts");
      const Plan plan = plan_with(starts, thrown);
      sample::require_faultless(draw_cue_starts, plan);
      CHECK(faults_in_large_print(plan) == "");
    }
}

TEST_CASE("The sheet of cue starts keeps its layout in large print and with crowded pieces") {
  for (const char* thrown : {"two dice", "one die", "d20", "coins"}) {
    const std::string practice = std::string("practice: {minutes: 90, dice: ") + thrown + "}\n";
    const Plan plan = sample::plan(sample::crowded_piece() + practice, "2027-01-04", "2027-06-20");
    sample::require_faultless(draw_cue_starts, plan);
    CHECK(faults_in_large_print(plan) == "");
  }
}

TEST_CASE("Over eleven weeks sixteen starts take two pages, twenty take three") {
  std::string cues;
  for (int bar = 5; bar < 80; bar += 4) cues += std::to_string(bar) + ", ";
  const std::string twenty =
      "{title: Twenty, bars: 80, tempo: 100, practice: {minutes: 40}, cues: [" + cues + "79]}";
  const Plan plan = sample::plan(twenty);
  REQUIRE(plan.pieces.front().cues.size() >= 20);
  CHECK(DrawnSheet(draw_cue_starts, plan).pages() == 3);
  const Plan sixteen =
      sample::plan("{title: Sixteen, bars: 128, tempo: 100, practice: {minutes: 40}}");
  REQUIRE(sixteen.pieces.front().cues.size() == 16);
  CHECK(DrawnSheet(draw_cue_starts, sixteen).pages() == 2);
}

TEST_CASE("The table shows every cue start as often as a throw brings it") {
  for (const Throw thrown : kThrows) {
    Plan plan = sample::plan(kStudy);
    PlannedPiece& piece = plan.pieces.front();
    std::vector<int> numbers;
    for (const CueStart& cue : piece.cues) numbers.push_back(cue.number);
    piece.dice = dice_tables(numbers, thrown);
    const DrawnSheet sheet(draw_cue_starts, plan);
    int again = 0;
    for (const DiceTable& table : piece.dice) {
      again += static_cast<int>(table.again.size());
      for (const DiceTable::Row& row : table.rows)
        CHECK(count_of(sheet.words(), "\n" + label(row.cue) + "\n") ==
              static_cast<int>(row.outcomes.size()));
    }
    CHECK(count_of(sheet.words(), "\nagain\n") == again);
  }
}

TEST_CASE("The first throw gives the row, the second the column") {
  // 36 starts have a cell each: start 6 (first - 1) + second.
  const std::map<int, Point> cells = cells_of(DrawnSheet(draw_cue_starts, plan_with(36)), 36);
  REQUIRE(cells.size() == 36);
  for (int start = 1; start <= 36; ++start) {
    INFO(start);
    const int first = (start - 1) / 6;
    const int second = (start - 1) % 6;
    CHECK(cells.at(start).y == Approx(cells.at(first * 6 + 1).y));
    CHECK(cells.at(start).x == Approx(cells.at(second + 1).x));
    if (second > 0) CHECK(cells.at(start).x > cells.at(start - 1).x + 5);
    if (first > 0) CHECK(cells.at(start).y > cells.at(start - 6).y + 5);
  }
}

TEST_CASE("Of coins the first half give the row, the others the column") {
  // Sixteen starts and four coins: 4 (first two) + (last two), heads before tails.
  const DrawnSheet sheet(draw_cue_starts, plan_with(16, Throw::coins));
  const std::map<int, Point> cells = cells_of(sheet, 16);
  REQUIRE(cells.size() == 16);
  for (int start = 2; start <= 16; ++start) {
    INFO(start);
    const bool same_row = (start - 1) % 4 != 0;
    CHECK((cells.at(start).x > cells.at(start - 1).x) == same_row);
    CHECK((cells.at(start).y > cells.at(start - 1).y + 5) == !same_row);
  }
  // Two coins beside each of four rows, two above each of four columns: half of them heads.
  CHECK(count_of(sheet.words(), "\nH\n") == 8);
  CHECK(count_of(sheet.words(), "\nT\n") == 8);
}

TEST_CASE("A die of twenty faces has its numbers in order, down the columns") {
  const DrawnSheet sheet(draw_cue_starts, plan_with(20, Throw::d20));
  const std::map<int, Point> cells = cells_of(sheet, 20);
  REQUIRE(cells.size() == 20);
  for (int start = 1; start <= 20; ++start) {
    INFO(start);
    CHECK(cells.at(start).x == Approx(cells.at((start - 1) / 5 * 5 + 1).x));
    CHECK(cells.at(start).y == Approx(cells.at((start - 1) % 5 + 1).y));
  }
  CHECK(cells.at(6).x > cells.at(1).x + 10);
  CHECK(cells.at(2).y > cells.at(1).y + 5);
}

TEST_CASE("One die has a table for each stretch of the piece, on one page") {
  const DrawnSheet sheet(draw_cue_starts, plan_with(16, Throw::one_die));
  const std::string first_page = sheet.canvas().pages().front().words();
  for (const char* stretch : {"\nbars 1–5\n", "\nbars 6–10\n", "\nbars 11–16\n"})
    CHECK(count_of(first_page, stretch) == 1);
  CHECK(says(sheet, "Take the tables in turn"));
  CHECK_FALSE(says(DrawnSheet(draw_cue_starts, plan_with(6, Throw::one_die)), "in turn"));
}

TEST_CASE("A start to be thrown is read from the music desk") {
  for (const Throw thrown : kThrows) {
    const DrawnSheet sheet(draw_cue_starts, plan_with(5, thrown));
    std::set<std::string> large;
    for (const DrawnText& text : sheet.canvas().pages().front().texts())
      if (text.style.role == TextRole::stand && text.style.size_pt == style::kSize4)
        large.insert(text.text);
    CHECK(large == std::set<std::string>{"1", "2", "3", "4", "5"});
  }
}

TEST_CASE("Every cue start has a box on each date it is set, and no circle beside it") {
  const Plan plan = sample::plan(kStudy);
  std::set<std::pair<Date, int>> assigned;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      for (const int cue : task.cues) assigned.insert({day.date, cue});
  REQUIRE(assigned.size() > 5);
  const DrawnSheet sheet(draw_cue_starts, plan);
  CHECK(sheet.circles_to_tick() == 0);
  CHECK(asked_boxes(sheet).size() == assigned.size());
}

TEST_CASE("The box of an assigned cue start stands in its row, below its date") {
  // The plan made by hand sets cue starts 1 and 2, at bars 1 and 5, on 6 January.
  const DrawnSheet sheet(draw_cue_starts, sound_plan());
  const std::vector<Asked> boxes = asked_boxes(sheet);
  REQUIRE(boxes.size() == 2);
  const DrawnPage& page = sheet.canvas().pages().at(boxes[0].page);
  const Box date = place_of(page, "6 Jan");
  CHECK(boxes[0].box.centre().x == Approx(date.centre().x));
  CHECK(boxes[1].box.centre().x == Approx(date.centre().x));
  CHECK(boxes[0].box.y > date.bottom());
  CHECK(boxes[0].box.centre().y == Approx(place_of(page, "1").centre().y));
  CHECK(boxes[1].box.centre().y == Approx(place_of(page, "5").centre().y));
}

TEST_CASE("Where the days are too many for the paper, the player writes the dates") {
  Plan plan = sound_plan();
  const Day day = plan.days[2];
  const auto sheet_with = [&](int count) {
    plan.days.clear();
    for (int at = 0; at < count; ++at) {
      plan.days.push_back(day);
      plan.days.back().date += days{at};
    }
    return DrawnSheet(draw_cue_starts, plan);
  };
  const DrawnSheet dated = sheet_with(60);
  CHECK(asked_boxes(dated).size() == 2 * 60);
  CHECK(says(dated, "A small box"));
  const DrawnSheet undated = sheet_with(2000);
  CHECK(asked_boxes(undated).empty());
  CHECK_FALSE(says(undated, "A small box"));
  CHECK(says(undated, "Write the day above a column"));
  CHECK(undated.pages() <= 2);
  CHECK(undated.faults() == "");
}

TEST_CASE("The sheet of cue starts says what chance does") {
  // Twelve equal starts: 1.00 throws each, and (11/12)^12 = .352 unseen after twelve throws, 4.2
  // of twelve (worked out by hand); thirteen take 36 / (2 * 13) = 1.3846 throws each, nineteen
  // 1.8947; four of six faces 1.5.
  const auto told = [](int starts, Throw thrown, const std::string& what) {
    return says(DrawnSheet(draw_cue_starts, plan_with(starts, thrown)), what);
  };
  CHECK(told(12, Throw::two_dice, "miss about 4 starts"));
  CHECK_FALSE(told(12, Throw::two_dice, "throw again"));
  CHECK(told(13, Throw::two_dice, "Ten starts take about 14\u00a0throws"));
  CHECK(told(19, Throw::two_dice, "Ten starts take about 19\u00a0throws"));
  CHECK(told(4, Throw::one_die, "Ten starts take about 15\u00a0throws"));
  CHECK_FALSE(told(4, Throw::one_die, "have not come"));
}

TEST_CASE("Every cue start has a line to write what it is, and says what is in force there") {
  const std::string long_note =
      "new manual: Swell, with tremulant; close the box before the second beat, and take the 16 "
      "foot "
      "off in the pedal";
  const Plan plan = sample::plan(
      "title: Marks\nbars: 48\npickup: 1\ntempo: 90\n"
      "sections: [{name: A, bars: 1-16}, {name: B, bars: 17-32}, {name: C, bars: 33-48}]\n"
      "marks:\n  - {bar: 1, note: Great, holds: yes}\n  - {bar: 33, note: \"" +
      long_note + "\", holds: yes}\n  - {bar: 20, note: look up}\n");
  const auto& cues = plan.pieces.front().cues;
  const auto before =
      std::count_if(cues.begin(), cues.end(), [](const CueStart& cue) { return cue.bar < 33; });
  for (const PageSize paper : {kA4, kA5}) {
    const DrawnSheet sheet(draw_cue_starts, plan, Print{paper, 8, false});
    const std::string words = sheet.words();
    CHECK(count_of(words, "\nGreat\n") == static_cast<int>(before));
    CHECK(count_of(words, "\nnew manual: Swell") == static_cast<int>(cues.size()) - before);
    CHECK(count_of(sample::one_line(words), "foot off in the pedal") ==
          static_cast<int>(cues.size()) - before);
    CHECK(count_of(words, "look up") == 0);
    int lines = 0;
    for (const DrawnPage& page : sheet.canvas().pages())
      for (const DrawnItem& item : page.items)
        if (const auto* line = std::get_if<DrawnLine>(&item);
            line != nullptr && line->stroke.grey == style::kWritingLine.grey &&
            line->stroke.width == style::kWritingLine.width)
          ++lines;
    CHECK(lines == static_cast<int>(cues.size()));
  }
}
