// The sheet of look-alikes and forks.
#include <cmath>

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "hostile_plans.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;
using sample::kStudy;

namespace {

Plan with_groups(int groups, int passages = 2) {
  Plan plan = sample::plan(kStudy);
  LookAlikes group;
  for (int at = 0; at < passages; ++at) {
    group.passages.push_back({1 + 4 * at, 4 + 4 * at});
    group.forks.push_back(3 + 4 * at);
  }
  plan.pieces[0].piece.look_alikes.assign(static_cast<std::size_t>(groups), group);
  plan.pieces[0].piece.sections.clear();  // nor any fork but these
  plan.pieces[0].forks = forks_of(plan.pieces[0].piece);
  return plan;
}

Plan programme() {
  Plan plan = with_groups(1);
  plan.pieces.push_back(plan.pieces.front());
  plan.pieces.back().piece.title = "Second";
  return plan;
}

int drills_in(const Plan& plan) {
  int drills = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) drills += task.fork ? 1 : 0;
  return drills;
}

}  // namespace

TEST_CASE("Look-alikes keep their layout on every paper, for few and many passages") {
  Plan long_title = programme();
  long_title.pieces.front().piece.title = std::string(200, 'M');
  const std::vector<Plan> plans = {
      sound_plan(),
      sample::plan(kStudy),
      sample::plan(sample::crowded_piece() + "practice: {minutes: 90, temper: yes}\n", "2027-01-04",
                   "2027-06-20"),
      with_groups(5),
      with_groups(2, 12),
      long_title};
  for (const Plan& plan : plans) sample::require_faultless_everywhere(draw_look_alikes, plan);
}

TEST_CASE("Look-alikes stand side by side with their forks, what follows, and drills") {
  const Plan plan = sample::plan(kStudy);
  const DrawnSheet sheet(draw_look_alikes, plan);
  const std::string words = sheet.words();
  CHECK(has(words, "\n4 bars\nalike\n"));
  CHECK(has(words, "\n9–16\nA to its end, then B\nFrom bar 13 on:\n"));
  CHECK(has(words, "\n41–48\nA again\nFrom bar 45 on:\n"));
  const int drills = drills_in(plan);
  REQUIRE(drills > 0);
  // A circle for each passage on every row, and at least two rows for more drills.
  CHECK(sheet.circles_to_tick() % 2 == 0);
  CHECK(sheet.circles_to_tick() >= 2 * (drills + 2));
}

TEST_CASE("The branches of a fork point at the words of their passages") {
  const DrawnSheet sheet(draw_look_alikes, sample::plan(kStudy));
  const DrawnPage& page = sheet.canvas().pages().front();
  std::vector<double> tips;
  for (const DrawnItem& item : page.items)
    if (const auto* shape = std::get_if<DrawnOutline>(&item))
      tips.push_back(extent(*shape).centre().y);
  std::vector<double> words;
  for (const DrawnText& text : page.texts())
    if (text.text.starts_with("From bar")) words.push_back(text.baseline.y - text.x_height / 2);
  REQUIRE(tips.size() == 2);
  REQUIRE(words.size() == 2);
  for (std::size_t at = 0; at < 2; ++at) CHECK(std::abs(tips[at] - words[at]) < 0.7);
}

TEST_CASE("Bars alike are counted only where every passage has as many") {
  Plan plan = with_groups(1);
  plan.pieces[0].piece.look_alikes[0].forks = {3, 8};
  plan.pieces[0].forks = forks_of(plan.pieces[0].piece);
  const std::string words = DrawnSheet(draw_look_alikes, plan).words();
  CHECK_FALSE(has(words, "\n2 bars\n"));
  CHECK(has(words, "\nalike\n"));
  CHECK(has(DrawnSheet(draw_look_alikes, with_groups(1)).words(), "\n2 bars\n"));
}

TEST_CASE("The most dangerous forks stand first, with what differs and what else meets them") {
  Plan plan =
      sample::plan(std::string(kStudy) + "practice: {temper: yes}\n", "2027-01-04", "2027-05-20");
  Piece& piece = plan.pieces[0].piece;
  piece.look_alikes.insert(piece.look_alikes.begin(), {{{2, 4}, {18, 20}}, {3, 19}});
  plan.pieces[0].forks = forks_of(piece);
  piece.partings = {
      {13, 45, 4, 4, 0.5, 2, {{HandChange::Kind::instead, "right hand", {"F♯"}, {"F"}}}}};
  const std::string words = sample::one_line(DrawnSheet(draw_look_alikes, plan).words());
  CHECK(words.find("From bar 13 on:") < words.find("From bar 3 on:"));
  CHECK(has(words, "Bar 45, beat 2: right hand: F♯ instead of F."));
  CHECK(has(words, "Begin beyond it: cue start "));
  CHECK(has(words, "Spoken over it: "));
  CHECK(has(words, "Written out: "));
}

TEST_CASE("In large print the words at the head of the sheet share their page with a fork") {
  for (const PageSize paper : {kA4, kLetter}) {
    const DrawnSheet sheet(draw_look_alikes, sample::plan(kStudy),
                           large_print(paper, PunchedEdge::inner));
    const std::string first = sheet.canvas().pages().front().words();
    CHECK(has(sample::one_line(first), "Fork drill: begin"));
    CHECK(has(first, "\nFrom bar 13 on:\n"));
    CHECK(has(first, "\nFrom bar 45 on:\n"));
  }
}

TEST_CASE("Two groups share a page, also of two pieces") {
  for (const PageSize paper : {kA4, kLetter}) {
    CHECK(DrawnSheet(draw_look_alikes, with_groups(2), Print{paper, 8, false}).pages() == 1);
    const DrawnSheet sheet(draw_look_alikes, programme(), Print{paper, 8, false});
    CHECK(sheet.pages() == 1);
    CHECK(has(sheet.words(), "\nSecond\n"));
  }
  CHECK(DrawnSheet(draw_look_alikes, with_groups(4)).pages() == 2);
}

TEST_CASE("A piece without look-alikes has no sheet of them") {
  const Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 90}");
  CHECK(DrawnSheet(draw_look_alikes, plan).pages() == 0);
}
