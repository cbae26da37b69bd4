// The pages that the day panels of a programme name: those of the task's own piece.
#include <algorithm>
#include <map>
#include <set>

#include "catch.h"
#include "drawn_sheet.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "text/phrasing.h"

using namespace cahier;
using sample::has;

namespace {

// Two pieces with sections and look-alikes of their own, and work of every kind.
Plan programme() {
  const std::string rest =
      "tempo: 120\nlevel: 4\n"
      "sections: [{name: A, bars: 1-8}, {name: B, bars: 9-16}, {name: C, bars: 17-24}]\n"
      "look-alikes: [{bars: [1-2, 9-10, 17-18], fork: [2, 10, 18]}, {bars: [4-6, 12-14, 20-22], "
      "fork: [6, 14, 22]}]\n";
  const std::vector<Piece> pieces = {sample::piece("title: Alder\n" + rest),
                                     sample::piece("title: Birch\n" + rest)};
  Wishes wishes;
  wishes.minutes = WeekMinutes{};
  wishes.minutes->fill(60);
  wishes.temper = Temper::yes;
  Plan plan = make_plan(pieces, settle(sample::date("2027-01-04"), sample::date("2027-03-20"),
                                       wishes, sample::steady()));
  REQUIRE(sample::faults_of(plan) == "");
  REQUIRE(plan.fits);
  plan.programme = "Two Trees";
  return plan;
}

struct DrawnProgramme {
  explicit DrawnProgramme(const Plan& plan) : canvas(sample::typefaces()) {
    Packet packet;
    packet.sheets.assign(all_sheets().begin(), all_sheets().end());
    RecordingCanvas first(sample::typefaces());
    const Contents known = draw_workbook(first, plan, packet, english_words(), {}, {});
    contents = draw_workbook(canvas, plan, packet, english_words(), {}, known);
  }

  std::string page(int number) const { return canvas.pages().at(number - 1).words(); }

  // The page that each task names, by its code. A panel draws a task's code last.
  std::map<std::string, int> named_pages(const std::set<std::string>& codes) const {
    std::map<std::string, int> named;
    const std::string on_page = english_words().say("panels.on_page", {{"page", ""}});
    for (const DrawnPage& page : canvas.pages()) {
      int last = 0;
      for (const DrawnText& text : page.texts()) {
        if (text.text.starts_with(on_page)) last = std::stoi(text.text.substr(on_page.size()));
        if (!codes.contains(text.text)) continue;
        if (last > 0) named.emplace(text.text, last);
        last = 0;
      }
    }
    return named;
  }

  RecordingCanvas canvas;
  Contents contents;
};

std::string sheet_title(const Task& task) {
  switch (task.drill) {
    case Drill::cue_starts:
      return english_words().say(task.fork ? "look_alikes.title" : "cue_starts.title");
    case Drill::run_through:
      return english_words().say("run_tally.title");
    case Drill::write_out:
      return english_words().say("write_outs.title");
    case Drill::spoken_part:
      return english_words().say("spoken_parts.title");
    case Drill::slow_pass:
    case Drill::counted_pass:
      return english_words().say("passes.title");
    default:
      return "";
  }
}

}  // namespace

TEST_CASE("In a programme each task names the page of its own piece") {
  const Plan plan = programme();
  const DrawnProgramme book(plan);
  std::set<std::string> codes;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) codes.insert(task.id);
  const std::map<std::string, int> named = book.named_pages(codes);
  std::map<std::pair<std::string, int>, std::set<int>> pages;  // by sheet and piece
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (sheet_title(task).empty()) continue;
      INFO(task.id << " of " << plan.pieces[task.piece].piece.title << ", " << sheet_title(task));
      REQUIRE(named.contains(task.id));
      const int number = named.at(task.id);
      const std::string words = "\n" + book.page(number);
      CHECK(has(words, sheet_title(task) + "\n"));
      pages[{sheet_title(task), task.piece}].insert(number);
      if (task.fork) CHECK(has(words, "\n" + weekday_day_month(english_words(), day.date) + "\n"));
      if (task.drill == Drill::run_through)
        CHECK(has(words, "\n" + plan.pieces[task.piece].piece.title + "\n"));
      if (task.drill == Drill::cue_starts && !task.fork)
        CHECK(has(words, " · " + plan.pieces[task.piece].piece.title + "\n"));
    }
  for (const char* title : {"cue_starts.title", "run_tally.title", "look_alikes.title"}) {
    const std::string sheet = english_words().say(title);
    INFO(sheet);
    REQUIRE(pages.contains({sheet, 0}));
    REQUIRE(pages.contains({sheet, 1}));
    for (const int page : pages.at({sheet, 1})) CHECK_FALSE(pages.at({sheet, 0}).contains(page));
  }
}

TEST_CASE("A cue start names the first page of its piece's sheet") {
  const Plan plan = programme();
  const DrawnProgramme book(plan);
  for (int piece = 0; piece < 2; ++piece) {
    const int first = book.contents.pieces.at({SheetKind::cue_starts, piece});
    const std::string& title = plan.pieces[piece].piece.title;
    CHECK(has(book.page(first), " · " + title + "\n"));
    CHECK_FALSE(has(book.page(first - 1), " · " + title + "\n"));
  }
}
