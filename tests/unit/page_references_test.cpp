// The pages that the day panels of a programme name: those of the task's own piece.
#include <algorithm>
#include <cctype>
#include <map>
#include <set>

#include "catch.h"
#include "drawn_sheet.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "text/phrasing.h"
#include "text/templates.h"
#include "workbook/packet.h"
#include "workbook/workbook.h"

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

namespace {

std::vector<DrawnLink> links_on(const DrawnPage& page) {
  std::vector<DrawnLink> links;
  for (const DrawnItem& item : page.items)
    if (const auto* link = std::get_if<DrawnLink>(&item)) links.push_back(*link);
  return links;
}

// "p. 12", "on page 12", "(page 12)": the page that a text names; 0 when it names none.
int page_named_in(const std::string& text) {
  for (const std::string& before :
       {std::string("page "), std::string("p.\u00a0"), std::string("page\u00a0")}) {
    const std::size_t at = text.find(before);
    if (at == std::string::npos) continue;
    const std::string number = text.substr(at + before.size());
    if (!number.empty() && std::isdigit(static_cast<unsigned char>(number.front())))
      return std::stoi(number);
  }
  return 0;
}

// The title that the named page has at its head, by what names it.
std::string title_named_by(const std::string& text) {
  for (const char* card : {"ejoin card", "ejoin\u00a0card"})
    if (text.find(card) != std::string::npos) return english_words().say("rejoin_card.title");
  if (text.find("left out") != std::string::npos) return english_words().say("left_out.title");
  return "";
}

// References in texts, each checked against the page it names. Where a short one ("p. 12") stands
// alone, a link under it leads to the same page.
int checked_references(const Plan& plan, const Packet& packet) {
  const DrawnBook book =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        return draw_workbook(canvas, plan, packet, english_words(), {}, known);
      });
  int references = 0;
  for (const DrawnPage& page : book.canvas->pages())
    for (const DrawnText& text : page.texts()) {
      const int number = page_named_in(text.text);
      if (number == 0) continue;
      INFO(text.text << " on a page that begins " << page.words().substr(0, 40));
      ++references;
      REQUIRE(number <= book.canvas->page_count());
      const std::string named = "\n" + book.canvas->pages()[number - 1].words();
      if (const std::string title = title_named_by(text.text); !title.empty()) {
        CHECK(has(named, "\n" + title + "\n"));
        continue;
      }
      const std::vector<DrawnLink> links = links_on(page);
      CHECK(std::ranges::any_of(links, [&](const DrawnLink& link) {
        return link.page == number && link.area.overlaps(text.within);
      }));
    }
  return references;
}

Packet full_packet() {
  Diagnostics diagnostics;
  return read_packet(Templates().read("packets", "full"), diagnostics);
}

}  // namespace

TEST_CASE("The first two sessions of starts within a fortnight of the date end with a jump") {
  const Plan plan = programme();
  const DrawnBook book =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        return draw_workbook(canvas, plan, full_packet(), english_words(), {}, known);
      });
  int told = 0;
  for (const DrawnPage& page : book.canvas->pages())
    for (const DrawnText& text : page.texts()) told += has(text.text, "break off anywhere") ? 1 : 0;
  CHECK(told == 2);
  Packet no_card = full_packet();
  std::erase_if(no_card.sheets,
                [](const Sheet& sheet) { return sheet.kind == SheetKind::rejoin_card; });
  const DrawnBook without =
      draw_until_settled(sample::typefaces(), [&](Canvas& canvas, const Contents& known) {
        return draw_workbook(canvas, plan, no_card, english_words(), {}, known);
      });
  for (const DrawnPage& page : without.canvas->pages())
    CHECK_FALSE(has(page.words(), "break off anywhere"));
}

TEST_CASE("Every page that a text of a book names is the one that it means") {
  CHECK(checked_references(programme(), full_packet()) > 60);
  CHECK(checked_references(sample::plan("{title: T, bars: 48, tempo: 120, level: 4}"),
                           full_packet()) > 20);
  Plan plan =
      sample::plan("{title: T, bars: 60, tempo: 100, level: 5}", "2027-01-04", "2027-01-12");
  REQUIRE_FALSE(plan.fits);
  CHECK(checked_references(plan, full_packet()) >= 2);
}
