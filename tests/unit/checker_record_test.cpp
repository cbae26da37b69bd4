// The checker reads the record itself: what the plan makes of it must be the same.
#include <algorithm>

#include "broken_rules.h"
#include "played.h"
#include "sample_pieces.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

// The second edition after six weeks; the second chunk slipped three times, and every chunk of
// level 4 once. It was begun from bar 3, which is no cue start.
const Plan& slipping() {
  static const Plan made = [] {
    const std::vector<Piece> pieces = {sample::piece(sample::kStudy)};
    const Date from = sample::date("2027-01-04");
    Terms terms = settle(from, sample::date("2027-03-20"), pieces[0].practice, sample::steady());
    const Plan first = make_plan(pieces, terms);
    terms.from = from + days{42};
    terms.record = sample::played(first, terms.from);
    const BarRange weak = first.pieces[0].chunks[1].bars;
    int told = 0;
    for (Done& done : terms.record.done)
      if (done.slips && done.drill != Drill::learn && done.bars.contains(weak) && told++ < 8)
        done.slips->push_back(weak.first);
    for (auto done = terms.record.done.rbegin(); done != terms.record.done.rend(); ++done)
      if (done->drill == Drill::cue_starts) {
        done->starts.push_back(3);
        break;
      }
    return make_plan(pieces, terms);
  }();
  return made;
}

Rules broken_after(const std::function<void(Plan&)>& change) {
  Plan plan = slipping();
  change(plan);
  return broken_rules(plan);
}

bool found_after(const std::function<void(Plan&)>& change, Kind kind) {
  Plan plan = slipping();
  change(plan);
  return finds(plan, kind);
}

Chunk& weak_chunk(Plan& plan) { return plan.pieces[0].chunks[1]; }

}  // namespace

TEST_CASE("the checker decides anew from the record which chunks are weak") {
  REQUIRE(broken_after([](Plan&) {}).empty());
  Plan plan = slipping();
  REQUIRE(weak_chunk(plan).raised);
  REQUIRE(weak_chunk(plan).level > 2);
  REQUIRE_FALSE(plan.pieces[0].chunks[0].raised);
  const Kind kind = Kind::weakness_not_of_record;
  CHECK(found_after([](Plan& p) { weak_chunk(p).raised = false; }, kind));
  CHECK(found_after([](Plan& p) { p.pieces[0].chunks[0].raised = true; }, kind));
  CHECK(found_after([](Plan& p) { --weak_chunk(p).level; }, kind));
  CHECK(found_after([](Plan& p) { ++p.pieces[0].chunks[0].level; }, kind));
  CHECK(found_after([](Plan& p) { ++weak_chunk(p).slips.trials; }, kind));
  CHECK(found_after([](Plan& p) { --weak_chunk(p).slips.slips; }, kind));
  CHECK(found_after([](Plan& p) { weak_chunk(p).last_slip.reset(); }, kind));
  // More tries that held, and it would be weak no more.
  CHECK(found_after(
      [](Plan& p) {
        Done held = p.record.done.back();
        held.drill = Drill::recall;
        held.bars = weak_chunk(p).bars;
        held.slips.emplace();
        for (int times = 0; times < 200; ++times) p.record.done.push_back(held);
      },
      kind));
}

TEST_CASE("the share of a start goes by what the record tells of its chunk", "[numbers]") {
  const auto own = [](Plan& plan) {
    auto& cues = plan.pieces[0].cues;
    return std::find_if(cues.begin(), cues.end(), [&](const CueStart& cue) {
      return cue.bar == weak_chunk(plan).bars.first;
    });
  };
  Plan plan = slipping();
  REQUIRE(own(plan) != plan.pieces[0].cues.end());
  REQUIRE(own(plan)->weight == 2);
  CHECK(found_after([&](Plan& p) { own(p)->weight = 1; }, Kind::start_share));
  CHECK(found_after([&](Plan& p) { own(p)->weight = 3; }, Kind::start_share));
  CHECK(found_after([](Plan& p) { p.pieces[0].cues.front().weight = 2; }, Kind::start_share));
  // Though the plan says the same of its chunk.
  CHECK(found_after(
      [&](Plan& p) {
        own(p)->weight = 1;
        weak_chunk(p).raised = false;
      },
      Kind::start_share));
}

TEST_CASE("rule 9 goes by the levels of the record, not by those of the plan") {
  // The plan tempers the chunk that slips; without its slips it is not weak.
  const auto forgotten = [](Plan& plan) {
    for (Done& done : plan.record.done)
      if (done.slips) done.slips->clear();
  };
  CHECK(found_after(forgotten, Kind::temper_not_weak));
}

TEST_CASE("what counts as done is what the record tells") {
  const Kind kind = Kind::past_not_of_record;
  REQUIRE(slipping().past.size() > 1);
  CHECK(found_after([](Plan& p) { p.past.front().tasks.pop_back(); }, kind));
  CHECK(found_after([](Plan& p) { p.past.pop_back(); }, kind));
  CHECK(found_after(
      [](Plan& p) {
        Task again = p.past[1].tasks.front();
        p.past.back().tasks.push_back(again);
      },
      kind));
  CHECK(found_after(
      [](Plan& p) {
        Drill& drill = p.past.back().tasks.back().drill;
        drill = drill == Drill::join ? Drill::recall : Drill::join;
      },
      kind));
  const auto with_starts = [](Plan& plan, const std::function<void(Task&)>& change) {
    for (auto day = plan.past.rbegin(); day != plan.past.rend(); ++day)
      for (Task& task : day->tasks)
        if (task.drill == Drill::cue_starts) return change(task);
  };
  CHECK(found_after([&](Plan& p) { with_starts(p, [](Task& t) { t.from_starts.pop_back(); }); },
                    kind));
  CHECK(found_after(
      [&](Plan& p) { with_starts(p, [](Task& t) { ++t.from_starts.front().first; }); }, kind));
}
