// The numbers of cue starts stay from edition to edition; new ones stand at the end.
#include <algorithm>

#include "catch.h"
#include "drawn_sheet.h"
#include "every_paper.h"
#include "laid_out.h"
#include "plan/cue_reach.h"
#include "plan/search/planner.h"
#include "plan/table_in_force.h"
#include "played.h"
#include "report/plan_json.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "workbook/all_sheets.h"
#include "workbook/text_edition/starts_in_words.h"

namespace cahier {
namespace {

using sample::has;
using Bars = std::vector<int>;

Bars bars_of(const PlannedPiece& piece) {
  Bars bars;
  for (std::size_t at = 0; at < piece.cues.size(); ++at) {
    CHECK(piece.cues[at].number == static_cast<int>(at) + 1);
    bars.push_back(piece.cues[at].bar);
  }
  return bars;
}

Record numbered(const Bars& bars) {
  Record record;
  record.edition = 2;
  record.starts = {{bars, static_cast<int>(bars.size())}};
  return record;
}

// Of 32 bars in chunks of so many, from bar 1 on.
PlannedPiece planned(const std::string& more, const Record& record, int chunk = 4) {
  const Piece piece = sample::piece("title: Numbers\nbars: 32\n" + more);
  std::vector<BarRange> chunks;
  for (int bar = 1; bar <= 32; bar += chunk) chunks.push_back({bar, std::min(32, bar + chunk - 1)});
  return analyse(piece, sample::steady(), sample::LaidOut::named(piece, chunks),
                 History(record, 0, piece))
      .planned;
}

Plan next_edition(const std::vector<Piece>& pieces, const Plan& before, Date from,
                  const Bars& slips) {
  Terms terms = settle(from, before.by, pieces.front().practice, sample::steady());
  terms.record = sample::played(before, from);
  for (Done& done : terms.record.done)
    for (const int bar : slips)
      if (done.slips && retrieves(done.drill) && done.bars.contains(bar))
        done.slips->push_back(bar);
  return make_plan(pieces, terms);
}

}  // namespace

TEST_CASE("a first edition numbers its cue starts in bar order, wished ones among them") {
  CHECK(bars_of(planned("", {})) == Bars{1, 9, 17, 25});
  CHECK(bars_of(planned("cues: [21, 5]\n", {})) == Bars{1, 5, 9, 17, 21, 25});
}

TEST_CASE("a cue start that a later edition adds stands at the end, in bar order with others") {
  const PlannedPiece piece = planned("cues: [21, 5]\n", numbered({1, 9, 17, 25}));
  CHECK(bars_of(piece) == Bars{1, 9, 17, 25, 5, 21});
  for (const CueStart& cue : piece.cues) CHECK(cue.is_new == (cue.number > 4));
  CHECK(piece.cues_by_bar()[1].number == 5);
  CHECK(piece.cues_by_bar()[5].number == 4);
}

TEST_CASE("a cue start that the piece no longer asks for stays, its number with it") {
  CHECK(bars_of(planned("", numbered({1, 5, 9, 17, 25}))) == Bars{1, 5, 9, 17, 25});
  // New since the workbook before, as the edition's own line in the log tells.
  Record record = numbered({1, 9, 17, 25, 30});
  record.starts[0].before = 4;
  const PlannedPiece piece = planned("cues: [3]\n", record);
  CHECK(bars_of(piece) == Bars{1, 9, 17, 25, 30, 3});
  CHECK_FALSE(piece.cues[3].is_new);
  CHECK(piece.cues[4].is_new);
  CHECK(piece.cues[5].is_new);
}

TEST_CASE("divided otherwise, a section keeps its start inside where it was") {
  // In chunks of three, the ninth bar lies inside one: another would stand at 7.
  CHECK(bars_of(planned("", {}, 3)) == Bars{1, 7, 17, 25});
  CHECK(bars_of(planned("", numbered({1, 9, 17, 25}), 3)) == Bars{1, 9, 17, 25});
  // One that lies farther off does not stand for it.
  CHECK(bars_of(planned("", numbered({1, 5, 17, 25}), 3)) == Bars{1, 5, 17, 25, 7});
  CHECK(planned("", numbered({1, 9, 17, 25}), 3).rejoin == planned("", {}).rejoin);
}

TEST_CASE("look-alikes keep the start before their fork where it was") {
  const std::string alike = "look-alikes: [{bars: [1-8, 17-24], fork: [7, 23]}]\n";
  CHECK(bars_of(planned(alike, {})) == Bars{1, 5, 9, 17, 21, 25});
  CHECK(bars_of(planned(alike, {}, 3)) == Bars{1, 4, 7, 17, 22, 25});
  CHECK(bars_of(planned(alike, numbered({1, 5, 9, 17, 21, 25}), 3)) == Bars{1, 5, 9, 17, 21, 25});
}

TEST_CASE("the start before a fork is the last one before it, whatever the numbers") {
  PlannedPiece piece = planned("", numbered({1, 9, 17, 25, 13, 11, 14}));
  CHECK(cue_before_fork(piece, {9, 16}, 14)->bar == 13);
  CHECK(cue_before_fork(piece, {14, 16}, 14)->bar == 14);
  CHECK(cue_before_fork(piece, {15, 16}, 16) == nullptr);
}

TEST_CASE("cue starts keep their numbers over three editions") {
  const std::vector<Piece> pieces = {
      sample::piece("title: Three\nbars: 32\npractice: {minutes: 20}\n")};
  const Date from = sample::date("2027-01-04");
  const Plan first = make_plan(
      pieces, settle(from, sample::date("2027-03-20"), pieces[0].practice, sample::steady()));
  const Bars printed = bars_of(first.pieces[0]);
  CHECK(std::is_sorted(printed.begin(), printed.end()));
  Bars before = printed;
  Plan last = first;
  int added = 0;
  for (const int week : {3, 5}) {
    const int slip = week == 3 ? 6 : 22;
    last = next_edition(pieces, last, from + days{7 * week}, {slip});
    CHECK(sample::faults_of(last) == "");
    const Bars now = bars_of(last.pieces[0]);
    REQUIRE(now.size() >= before.size());
    CHECK(std::equal(before.begin(), before.end(), now.begin()));
    for (const CueStart& cue : last.pieces[0].cues)
      CHECK(cue.is_new == (cue.number > static_cast<int>(before.size())));
    added += static_cast<int>(now.size() - before.size());
    before = now;
  }
  CHECK(added == 2);
  CHECK_FALSE(std::is_sorted(before.begin(), before.end()));
}

TEST_CASE("each dice table is for a stretch of the piece, whatever the numbers in it") {
  std::vector<ThrownCue> cues;
  for (int number = 1; number <= 40; ++number) cues.push_back({number, 1, 10 * number});
  const auto numbers_in = [&](std::size_t table) {
    Bars numbers;
    const std::vector<DiceTable> tables = weighted_dice_tables(cues);
    for (const DiceTable::Row& row : tables[table].rows) numbers.push_back(row.cue);
    return numbers;
  };
  REQUIRE(weighted_dice_tables(cues).size() == 2);
  CHECK(numbers_in(0).back() == 20);
  cues.push_back({41, 1, 15});
  cues.push_back({42, 1, 395});
  CHECK(numbers_in(0).front() == 1);
  CHECK(numbers_in(0).back() == 41);
  CHECK(numbers_in(0).size() == 21);
  CHECK(numbers_in(1).front() == 21);
  CHECK(numbers_in(1).back() == 42);
}

TEST_CASE("a table that an added start leaves as it was stays in force, by its numbers") {
  Plan plan = sound_plan();
  plan.record.edition = 3;
  PlannedPiece& piece = plan.pieces[0];
  piece.cues[1].bar = 9;
  piece.cues[2].bar = 5;
  piece.dice = weighted_dice_tables(piece.thrown_cues());
  const Bars bars = bars_of(piece);
  plan.record.thrown = {{2, Throw::two_dice, {bars}, {Bars(bars.size(), 1)}}};
  CHECK(table_in_force(plan, 0).stays == 2);
  std::swap(plan.record.thrown[0].bars[0][1], plan.record.thrown[0].bars[0][2]);
  CHECK(table_in_force(plan, 0).stays == 0);
}

TEST_CASE("the list of cue starts has new ones at the end and calls them new") {
  const std::vector<Piece> pieces = {
      sample::piece("title: New\nbars: 32\nmarks: [{bar: 5, note: \"a very long note that is in "
                    "force from here on until the end of all bars\", holds: yes}]\n"
                    "practice: {minutes: 20}\n")};
  const Date from = sample::date("2027-01-04");
  Terms terms = settle(from, sample::date("2027-03-20"), pieces[0].practice, sample::steady());
  const Plan first = make_plan(pieces, terms);
  CHECK_FALSE(has(sample::DrawnSheet(draw_cue_starts, first).words(), "new in this workbook"));
  const Plan next = next_edition(pieces, first, from + days{21}, {6});
  REQUIRE(next.pieces[0].cues.back().is_new);
  REQUIRE(next.pieces[0].cues.back().bar == 5);
  const std::string words = sample::DrawnSheet(draw_cue_starts, next).words();
  CHECK(sample::count_of(words, "new in this workbook") == 1);
  CHECK(has(words, "a very long note"));
  CHECK(sample::count_of(plan_json(next), "\"new\": true") == 1);
  CHECK(sample::count_of(plan_json(first), "\"new\"") == 0);
  sample::require_faultless_everywhere(draw_cue_starts, next);
  const std::vector<std::string> lines = starts_in_words(english_words(), next.pieces[0]);
  const std::size_t last = next.pieces[0].cues.size() - 1;
  CHECK(has(lines[last], "bar 5"));
  CHECK(has(lines[last], "New in this workbook."));
  CHECK_FALSE(has(lines[last - 1], "New in this workbook."));
}

TEST_CASE("a table's stretch is named by its bars, also where a new start lies first or last") {
  Plan plan = sound_plan();
  PlannedPiece& piece = plan.pieces[0];
  const Piece whole = sample::piece("title: Long\nbars: 400\n");
  piece.piece = whole;
  piece.sections = {{"A", {1, 400}, {}}};
  piece.chunks = {{"A1", {1, 400}, 0, 2}};
  piece.cues.clear();
  for (int number = 1; number <= 40; ++number) piece.cues.push_back({number, 10 * number, 0});
  piece.cues.push_back({41, 4, 0, 1, true});
  piece.dice = weighted_dice_tables(piece.thrown_cues());
  REQUIRE(piece.dice.size() == 2);
  const std::string words = sample::DrawnSheet(draw_cue_starts, plan).words();
  CHECK(has(words, "bars 1–199"));
  CHECK(has(words, "bars 200–400"));
  CHECK_FALSE(has(words, "bars 40–"));
}

}  // namespace cahier
