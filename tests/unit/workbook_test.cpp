#include "workbook/workbook.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "catch.h"
#include "hostile_plans.h"
#include "long_checks.h"
#include "workbook/parts/week_words.h"

namespace cahier {
namespace {

Packet packet(const std::string& name) {
  Diagnostics diagnostics;
  Packet read = read_packet(Templates().read("packets", name), diagnostics);
  REQUIRE_FALSE(diagnostics.has_errors());
  return read;
}

// Every sheet there is, in turn.
Packet every_sheet() {
  Packet all;
  all.sheets.assign(all_sheets().begin(), all_sheets().end());
  return all;
}

// A book drawn as it is printed, its page numbers known, then put on paper as it is printed.
struct PaperBook {
  PaperBook(const Plan& plan, const Packet& sheets, const Print& print, const Words& words)
      : drawn(sample::typefaces()), paper(sample::typefaces()) {
    RecordingCanvas first(sample::typefaces());
    const Contents known = draw_workbook(first, plan, sheets, words, print, {});
    contents = draw_workbook(drawn, plan, sheets, words, print, known);
    RecordingCanvas printed(sample::typefaces());  // what is put on paper leaves its canvas
    draw_workbook(printed, plan, sheets, words, print, known);
    put_on_paper(std::move(printed), print, paper);
  }

  RecordingCanvas drawn;
  RecordingCanvas paper;
  Contents contents;
};

std::string joined(const std::vector<std::string>& faults) {
  std::string all;
  for (const std::string& fault : faults) all += fault + "\n";
  return all;
}

// Every fault of a book: as it is printed, a booklet page by page.
std::string faults_of_book(const Plan& plan, const Print& print, const Packet& sheets,
                           const Words& words = english_words()) {
  const PaperBook book(plan, sheets, print, words);
  if (print.booklet) return joined(faults(book.drawn, print.margins));
  return joined(faults(book.paper, print.margins.scaled(print.magnification)));
}

struct NamedPrint {
  const char* name;
  Print print;
};

std::vector<NamedPrint> every_print() {
  return {{"A4", usual_print(kA4, PunchedEdge::inner)},
          {"Letter", usual_print(kLetter, PunchedEdge::left)},
          {"A5", usual_print(kA5, PunchedEdge::right)},
          {"A4, clear", clear_print(kA4, PunchedEdge::inner)},
          {"Letter, clear", clear_print(kLetter, PunchedEdge::inner)},
          {"A4, large", large_print(kA4, PunchedEdge::inner)},
          {"Letter, large", large_print(kLetter, PunchedEdge::right)},
          {"A4, booklet", booklet_print(kA4)},
          {"Letter, booklet", booklet_print(kLetter)}};
}

std::string many_bars(int bars, const std::string& title) {
  return "title: " + title + "\nbars: " + std::to_string(bars) +
         "\nmeter: 2/4\ntempo: 160\nkey: D major\nlevel: 1\npractice: {minutes: 60}\n";
}

}  // namespace

TEST_CASE("every sheet keeps its layout on every paper, with 1 to 500 bars") {
  const std::string long_title(200, 'n');
  for (const std::string& yaml :
       {many_bars(1, "One Bar"), many_bars(5, "Five Bars"), many_bars(300, long_title),
        many_bars(500, "All of It"),
        sample::crowded_piece() + "practice: {minutes: 90, blocks: 2, temper: yes}\n"}) {
    const Plan plan = sample::plan(yaml, "2027-01-04", "2027-05-10");
    // Of a long piece every tenth way of printing, except in the long checks.
    const bool all = plan.pieces.front().piece.bars < 300 || sample::in_long_checks();
    int turn = 0;
    for (const NamedPrint& named : every_print()) {
      if (turn++ % 10 != 0 && !all) continue;
      INFO(plan.pieces.front().piece.bars << " bars, " << named.name);
      CHECK(faults_of_book(plan, named.print, every_sheet()) == "");
    }
  }
}

TEST_CASE("every sheet keeps its layout with words 40 % longer than English") {
  const Plan plan =
      sample::plan(sample::crowded_piece() + "practice: {minutes: 90, blocks: 2, temper: yes}\n");
  int turn = 0;
  for (NamedPrint named : every_print()) {
    if (turn++ % 2 != 0 && !sample::in_long_checks()) continue;
    INFO(named.name);
    named.print.teacher = true;
    CHECK(faults_of_book(plan, named.print, every_sheet(), sample::wordy()) == "");
  }
}

TEST_CASE("a book is set in the sizes of one scale, in black and one grey") {
  const std::set<double> scale = {style::kSize1, style::kSize2, style::kSize3, style::kSize4,
                                  style::kSize5, style::kSize6, style::kSize7, style::kSizeChild};
  const Plan plan = sample::plan(many_bars(48, "Study"));
  const PaperBook book(plan, every_sheet(), {}, english_words());
  int texts = 0;
  std::multiset<double> squeezed;  // set smaller because it is too long for its place
  std::set<double> greys;
  std::set<std::string> feet;  // grey is only what every foot repeats
  for (const DrawnPage& page : book.drawn.pages())
    for (const DrawnText& text : page.texts()) {
      // Bar numbers over staves are engraved.
      if (text.style.face == Face::serif_italic) continue;
      ++texts;
      if (!scale.contains(text.style.size_pt)) squeezed.insert(text.style.size_pt);
      greys.insert(text.style.grey);
      if (text.style.grey == style::kGrey) feet.insert(text.text);
    }
  REQUIRE(texts > 1000);
  CHECK(static_cast<double>(squeezed.size()) <= texts * 0.016);
  CHECK(greys == std::set<double>{style::kDark, style::kGrey});
  CHECK(feet.size() == 1);
}

TEST_CASE("a large print is 1.8 times the size on the same paper") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  const PaperBook book(plan, packet("full"), large_print(kA4, PunchedEdge::inner), english_words());
  REQUIRE(book.paper.page_count() == book.drawn.page_count());
  for (int at = 0; at < book.paper.page_count(); ++at) {
    const PageSize size = book.paper.pages()[at].size.portrait();
    CHECK(size.width == Approx(kA4.width));
    CHECK(size.height == Approx(kA4.height));
    const auto before = book.drawn.pages()[at].texts();
    const auto after = book.paper.pages()[at].texts();
    REQUIRE(before.size() == after.size());
    for (std::size_t text = 0; text < before.size(); ++text)
      CHECK(after[text].style.size_pt == Approx(before[text].style.size_pt * 1.8));
  }
}

TEST_CASE("a booklet holds every page once, and its outline and links lead to their sides") {
  const Plan plan = sample::plan(many_bars(48, "Study"));
  const PaperBook book(plan, packet("full"), booklet_print(kA4), english_words());
  REQUIRE(book.paper.page_count() == (book.drawn.page_count() + 3) / 4 * 2);
  std::multiset<std::string> drawn;
  std::multiset<std::string> printed;
  for (const DrawnPage& page : book.drawn.pages())
    for (const DrawnText& text : page.texts()) drawn.insert(text.text);
  for (const DrawnPage& page : book.paper.pages()) {
    CHECK(page.size == PageSize{297, 210});
    for (const DrawnText& text : page.texts()) printed.insert(text.text);
  }
  CHECK(drawn == printed);
  REQUIRE(book.paper.outline_entries().size() == book.drawn.outline_entries().size());
  for (std::size_t at = 0; at < book.drawn.outline_entries().size(); ++at) {
    const DrawnOutlineEntry& entry = book.drawn.outline_entries()[at];
    const int side = book.paper.outline_entries()[at].page;
    // The side holds what the page holds: its last text is the page's number.
    CHECK_THAT(book.paper.pages()[side - 1].words(),
               Catch::Contains(book.drawn.pages()[entry.page - 1].words()));
  }
}

TEST_CASE("a week that nearly fits a page is made to fit") {
  const Plan plan = sample::plan("{title: Five, bars: 5, meter: 3/4, tempo: 96, key: G major}");
  const PaperBook book(plan, packet("full"), usual_print(kLetter, PunchedEdge::inner),
                       english_words());
  const PlanWeek week = weeks_of(plan).front();
  CHECK(book.contents.days.at(week.first()) == book.contents.days.at(week.last()));
}

TEST_CASE("the days end with the day itself and the page of its own sheet") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  const PaperBook book(plan, packet("full"), {}, english_words());
  const int last = book.contents.days.at(plan.days.back().date);
  const std::string words = book.drawn.pages()[last - 1].words();
  CHECK_THAT(words, Catch::Contains("\n20 March\nThe day itself\n"));
  CHECK_THAT(words,
             Catch::Contains("\nThe day itself\np.\u00a0" +
                             std::to_string(book.contents.sheets.at(SheetKind::the_day)) + "\n"));
}

TEST_CASE("without a sheet of its own the day itself names the page of the rejoin card") {
  Packet sheets;
  for (const SheetKind kind : {SheetKind::day_panels, SheetKind::rejoin_card})
    sheets.sheets.push_back(sheet_of(kind));
  const PaperBook book(sample::plan(many_bars(16, "Study")), sheets, {}, english_words());
  std::string words;
  for (const DrawnPage& page : book.drawn.pages()) words += page.words();
  CHECK_THAT(words,
             Catch::Contains("The rejoin card is on page " +
                             std::to_string(book.contents.sheets.at(SheetKind::rejoin_card))));
}

TEST_CASE("on the other side of the rejoin card is never the page of the day") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  const Sheet cover = sheet_of(SheetKind::cover);
  const Sheet day = sheet_of(SheetKind::the_day);
  struct Case {
    std::vector<Sheet> before;
    int card;    // its page
    int day_on;  // the page of the day; 0 where it is left out
  };
  for (const auto& [before, card, day_on] :
       {Case{{}, 1, 0}, Case{{cover}, 2, 0}, Case{{day}, 3, 1}, Case{{cover, day}, 3, 2},
        Case{{cover, cover, day}, 4, 2}, Case{{cover, cover, cover, day}, 5, 4}}) {
    Packet sheets;
    sheets.sheets = before;
    sheets.sheets.push_back(sheet_of(SheetKind::rejoin_card));
    const PaperBook book(plan, sheets, {}, english_words());
    INFO(before.size() << " sheets before the card");
    CHECK(book.contents.sheets.at(SheetKind::rejoin_card) == card);
    CHECK(book.drawn.page_count() == card);
    CHECK_THAT(book.drawn.pages().back().words(), Catch::Contains("Always forward."));
    if (day_on > 0) CHECK(book.contents.sheets.at(SheetKind::the_day) == day_on);
    const PaperBook one_side(plan, sheets, usual_print(kA4, PunchedEdge::left), english_words());
    CHECK(one_side.drawn.page_count() == static_cast<int>(sheets.sheets.size()));
  }
}

TEST_CASE("a touch on a day of the wall week leads to the day's panel") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  Packet both;
  both.sheets = {sheet_of(SheetKind::weeks), sheet_of(SheetKind::day_panels)};
  const PaperBook book(plan, both, {}, english_words());
  std::set<int> pages;
  for (const DrawnPage& page : book.drawn.pages())
    if (page.size.width > page.size.height)
      for (const DrawnItem& item : page.items)
        if (const auto* link = std::get_if<DrawnLink>(&item)) pages.insert(link->page);
  std::set<int> panels;
  for (const Day& day : plan.days)
    if (!day.tasks.empty()) panels.insert(book.contents.days.at(day.date));
  for (const int page : panels) CHECK(pages.contains(page));
}

TEST_CASE("the outline has every sheet and every week") {
  const Plan plan = sample::plan(many_bars(48, "Study"));
  const PaperBook book(plan, packet("full"), {}, english_words());
  std::set<std::string> titles;
  for (const DrawnOutlineEntry& entry : book.drawn.outline_entries()) titles.insert(entry.title);
  for (std::size_t week = 1; week <= weeks_of(plan).size(); ++week)
    CHECK(titles.contains("Week " + std::to_string(week)));
  for (const auto& [sheet, first] : book.contents.sheets)
    CHECK(std::any_of(book.drawn.outline_entries().begin(), book.drawn.outline_entries().end(),
                      [page = first](const DrawnOutlineEntry& entry) {
                        return entry.level == 1 && entry.page == page;
                      }));
}

TEST_CASE("every packet is laid out without a fault") {
  const Plan plan = sample::plan(many_bars(48, "Study"));
  for (const std::string& name : Templates().names("packets"))
    for (const double staff : {8.0, 12.0}) {
      INFO(name);
      CHECK(faults_of_book(plan, {kA4, staff, packet(name).teacher}, packet(name)) == "");
    }
}

TEST_CASE("the packets together draw every sheet that needs no log") {
  const Plan plan = sample::plan(
      "title: All\nmeter: 4/4\ntempo: 120\nlevel: 4\nsections: [{name: A, bars: 1-16}, {name: B, "
      "bars: 17-32}]\n"
      "look-alikes: [{bars: [1-4, 17-20], fork: [3, 19]}]\npractice: {minutes: 30}\n");
  REQUIRE(plan.fits);
  std::set<SheetKind> missing;
  for (const Sheet& sheet : all_sheets()) missing.insert(sheet.kind);
  for (const std::string& name : Templates().names("packets")) {
    RecordingCanvas canvas(sample::typefaces());
    const Contents contents = draw_workbook(canvas, plan, packet(name), english_words(), {}, {});
    for (const auto& [sheet, page] : contents.sheets) missing.erase(sheet);
    CHECK(canvas.outline_entries().size() >= contents.sheets.size());
    CHECK(canvas.info().title == "All");
  }
  CHECK(missing == std::set<SheetKind>{SheetKind::left_out});
}

TEST_CASE("a sheet opens its pages under its own name, and all sheets have different names") {
  Plan plan = sample::plan(many_bars(32, "Study"));
  plan.fits = false;
  plan.unplaced = {{0, Drill::learn, {1, 4}, 5, Why::no_room_to_learn}};
  std::set<std::string_view> names;
  for (const Sheet& sheet : all_sheets()) {
    INFO(sheet.name);
    CHECK(names.insert(sheet.name).second);
    CHECK(&sheet_of(sheet.kind) == &sheet);
    Packet alone;
    alone.sheets = {sheet};
    RecordingCanvas canvas(sample::typefaces());
    const Contents contents = draw_workbook(canvas, plan, alone, english_words(), {}, {});
    for (const auto& [kind, page] : contents.sheets) CHECK(kind == sheet.kind);
    CHECK(contents.sheets.size() == (canvas.page_count() > 0 ? 1 : 0));
  }
}

TEST_CASE("a sheet that the packet leaves out is referred to without a page") {
  Plan plan = sample::plan(many_bars(16, "Study"));
  const auto words_of = [&](const std::vector<SheetKind>& kinds) {
    Packet packet;
    for (const SheetKind kind : kinds) packet.sheets.push_back(sheet_of(kind));
    const PaperBook book(plan, packet, {}, english_words());
    std::string words;
    for (const DrawnPage& page : book.drawn.pages()) words += page.words() + "\n";
    for (const DrawnPage& page : book.drawn.pages())
      for (const DrawnItem& item : page.items)
        if (const auto* link = std::get_if<DrawnLink>(&item)) CHECK(link->page > 0);
    return words;
  };
  using enum SheetKind;
  const std::string with = words_of({day_panels, cue_starts, run_throughs, rejoin_card});
  CHECK_THAT(with, Catch::Contains("p.\u00a0") && Catch::Contains("The rejoin card is on page"));
  const std::string without = words_of({day_panels});
  CHECK_THAT(without, !Catch::Contains("p.\u00a0") && !Catch::Contains("rejoin card"));
  CHECK_THAT(without, Catch::Contains("Always forward, never back."));
  plan.fits = false;
  plan.unplaced = {{0, Drill::learn, {1, 4}, 5, Why::no_room_to_learn}};
  CHECK_THAT(words_of({cover, left_out}), Catch::Contains("is listed on page"));
  CHECK_THAT(words_of({cover}), !Catch::Contains("is listed on page"));
}

TEST_CASE("every day with work has a panel, and its page is known") {
  const Plan plan = sample::plan(many_bars(32, "Study"));
  RecordingCanvas canvas(sample::typefaces());
  const Contents contents = draw_workbook(canvas, plan, packet("full"), english_words(), {}, {});
  for (const Day& day : plan.days)
    if (!day.tasks.empty()) CHECK(contents.days.contains(day.date));
}

TEST_CASE("a student's name stands on every page of every packet, on every paper") {
  const std::string yaml = many_bars(24, "Study of a Title That Is Rather Long");
  const Plan plan = sample::plan(yaml);
  const PrintedNames of_usual{"Mia", "A. Ott", "sing the left hand"};
  // As long as names and notes may be.
  const PrintedNames of_longest{
      "Maximiliane von Hohenstein-Sonderburg II", "Wilhelmina Mary Montgomery-Wommersley II",
      "Begin each day with the left hand alone, and count the rests aloud. Whatever "
      "slips is marked in the score in pencil. Bring this book to every lesson, the "
      "panels of the days signed, and questions."};
  int turn = 0;
  for (NamedPrint named : every_print())
    for (const PrintedNames& names : {of_usual, of_longest}) {
      if (turn++ % 3 != 0 && !sample::in_long_checks()) continue;
      named.print.names = names;
      for (const char* name : {"full", "student", "wall", "child"}) {
        const Packet sheets = packet(name);
        named.print.teacher = sheets.teacher;
        INFO(named.name << ", " << name << ", " << names.student);
        CHECK(faults_of_book(plan, named.print, sheets) == "");
        const PaperBook book(plan, sheets, named.print, english_words());
        for (const DrawnPage& page : book.drawn.pages()) {
          INFO(page.words());
          std::string words = page.words();  // of a long name perhaps on two lines
          std::ranges::replace(words, '\n', ' ');
          CHECK(words.find(names.student) != std::string::npos);
        }
        for (const UnfitText& unfit : unfit_texts(book.drawn, named.print.margins))
          CHECK(unfit.line.find(names.student.substr(0, 3)) == std::string::npos);
      }
    }
}

TEST_CASE("on a page for the wall the name is as large as the title") {
  const Plan plan = sample::plan(many_bars(24, "Study"));
  Print print = usual_print(kA4, PunchedEdge::inner);
  print.names.student = "Mia";
  const PaperBook book(plan, packet("wall"), print, english_words());
  for (const SheetKind sheet : {SheetKind::weeks, SheetKind::progress_chart}) {
    double size = 0;
    for (const DrawnItem& item :
         book.drawn.pages().at(static_cast<std::size_t>(book.contents.sheets.at(sheet) - 1)).items)
      if (const auto* text = std::get_if<DrawnText>(&item); text && text->text.starts_with("Mia"))
        size = std::max(size, text->style.size_pt);
    CHECK(size == style::kHeading.size_pt);
  }
}

TEST_CASE("where names are known the cover has no line to write them on") {
  const Plan plan = sample::plan(many_bars(24, "Study"));
  const auto lines_of = [&](const PrintedNames& names) {
    Print print = usual_print(kA4, PunchedEdge::inner);
    print.teacher = true;
    print.names = names;
    const PaperBook book(plan, packet("student"), print, english_words());
    const auto& items = book.drawn.pages().front().items;
    return std::ranges::count_if(items, [](const DrawnItem& item) {
      const auto* line = std::get_if<DrawnLine>(&item);
      return line && line->stroke.width == style::kWritingLine.width;
    });
  };
  CHECK(lines_of({}) - lines_of({"Mia", "A. Ott", ""}) == 2);
  CHECK(lines_of({}) - lines_of({"Mia", "", ""}) == 1);
}

TEST_CASE("the same plan gives the same bytes") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  const auto once = print_book(sample::typefaces(), plan, packet("full"), english_words(), {});
  const auto again = print_book(sample::typefaces(), plan, packet("full"), english_words(), {});
  CHECK(once.pdf == again.pdf);
  CHECK(once.pages == again.pages);
}

}  // namespace cahier

TEST_CASE("panels for the first weeks alone leave every other sheet as it is") {
  const Plan plan = sample::plan(many_bars(16, "Study"));
  Print some;
  some.most_weeks = 2;
  const PaperBook part(plan, packet("full"), some, english_words());
  const PaperBook whole(plan, packet("full"), {}, english_words());
  const PlanWeek second = weeks_of(plan)[1];
  CHECK(part.contents.days.contains(second.last()));
  CHECK_FALSE(part.contents.days.contains(second.last() + days{1}));
  CHECK(part.contents.sheets.size() == whole.contents.sheets.size());
  const std::string cover = part.drawn.pages().front().words();
  CHECK_THAT(cover, Catch::Contains("Day panels for 4–17 January 2027"));
  CHECK_THAT(cover, Catch::Contains("before Monday 18 January"));
  CHECK_THAT(whole.drawn.pages().front().words(), !Catch::Contains("Day panels for"));
  for (const DrawnPage& page : part.drawn.pages())
    CHECK_THAT(page.words(), !Catch::Contains("The day itself\nThe rejoin card"));
  const PaperBook wall(plan, packet("wall"), some, english_words());
  CHECK(std::ranges::count_if(wall.drawn.pages(), [](const DrawnPage& page) {
          return page.words().find("The week at a glance") != std::string::npos;
        }) == 2);
  // More weeks than the plan has are all of it.
  some.most_weeks = 50;
  const PaperBook all(plan, packet("full"), some, english_words());
  CHECK(all.contents == whole.contents);
}
