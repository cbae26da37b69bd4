#include "workbook/workbook.h"

#include <catch2/catch.hpp>
#include <set>

#include "hostile_plans.h"

namespace cahier {
namespace {

Packet packet(const std::string& name) {
  Diagnostics diagnostics;
  Packet read = read_packet(Templates().read("packets", name), diagnostics);
  REQUIRE_FALSE(diagnostics.has_errors());
  return read;
}

// Every fault of a whole book, drawn as it is printed: page numbers known.
std::string faults_of_book(const Plan& plan, const Print& print, const std::string& name = "full") {
  const Packet sheets = packet(name);
  RecordingCanvas first(sample::typefaces());
  const Contents known = draw_workbook(first, plan, sheets, english_words(), print, {});
  RecordingCanvas second(sample::typefaces());
  draw_workbook(second, plan, sheets, english_words(), print, known);
  std::string all;
  for (const std::string& fault : faults(second, style::kMargins)) all += fault + "\n";
  return all;
}

std::string many_bars(int bars, const std::string& title) {
  return "title: " + title + "\nbars: " + std::to_string(bars) +
         "\nmeter: 2/4\ntempo: 160\nkey: D major\nlevel: 1\npractice: {minutes: 60}\n";
}

}  // namespace

TEST_CASE("whole books are laid out without a fault on every paper") {
  const std::string long_title(200, 'n');
  for (const PageSize paper : {kA4, kLetter, kA5})
    for (const std::string& yaml :
         {many_bars(1, "One Bar"), many_bars(5, "Five Bars"), many_bars(300, long_title),
          sample::crowded_piece() + "practice: {minutes: 90, blocks: 2, temper: yes}\n"}) {
      const Plan plan = sample::plan(yaml);
      INFO(plan.pieces.front().piece.bars << " bars on paper " << paper.width << " mm wide");
      CHECK(faults_of_book(plan, {paper, 8, false}) == "");
    }
}

TEST_CASE("every packet is laid out without a fault") {
  const Plan plan = sample::plan(many_bars(48, "Study"));
  for (const std::string& name : Templates().names("packets"))
    for (const double staff : {8.0, 12.0}) {
      INFO(name);
      CHECK(faults_of_book(plan, {kA4, staff, packet(name).teacher}, name) == "");
    }
}

TEST_CASE("the packets together draw every sheet that needs no log") {
  const Plan plan = sample::plan(
      "title: All\nmeter: 4/4\ntempo: 120\nlevel: 4\nsections: [{name: A, bars: 1-16}, {name: B, "
      "bars: 17-32}]\n"
      "look-alikes: [{bars: [1-4, 17-20], fork: [3, 19]}]\npractice: {minutes: 30}\n");
  REQUIRE(plan.fits);
  std::set<std::string> missing;
  for (const Sheet& sheet : all_sheets()) missing.emplace(sheet.name);
  for (const std::string& name : Templates().names("packets")) {
    RecordingCanvas canvas(sample::typefaces());
    const Contents contents = draw_workbook(canvas, plan, packet(name), english_words(), {}, {});
    for (const auto& [sheet, page] : contents.sheets) missing.erase(sheet);
    CHECK(canvas.outline_entries().size() >= contents.sheets.size());
    CHECK(canvas.info().title == "All");
  }
  CHECK(missing == std::set<std::string>{"left out"});
}

TEST_CASE("every day with work has a panel, and its page is known") {
  const Plan plan = sample::plan(many_bars(32, "Study"));
  RecordingCanvas canvas(sample::typefaces());
  const Contents contents = draw_workbook(canvas, plan, packet("full"), english_words(), {}, {});
  for (const Day& day : plan.days)
    if (!day.tasks.empty()) CHECK(contents.days.contains(day.date));
}

TEST_CASE("the same plan gives the same bytes") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  const auto once = print_book(sample::typefaces(), plan, packet("full"), english_words(), {});
  const auto again = print_book(sample::typefaces(), plan, packet("full"), english_words(), {});
  CHECK(once.pdf == again.pdf);
  CHECK(once.pages == again.pages);
}

}  // namespace cahier
