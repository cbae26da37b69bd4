// Passages that come back, exactly or nearly.

#include <chrono>
#include <random>

#include "catch.h"
#include "score/passages/bar_parting.h"
#include "score/passages/hand_changes.h"
#include "score/passages/look_alikes.h"
#include "score/passages/repeated_passages.h"
#include "score/passages/transposed_bars.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

// What find_returns does, tried place by place: for each end the longest passage that occurred
// earlier, where nothing longer goes on, and its earliest place.
std::vector<RepeatedPassage> tried_passages(const std::vector<int>& row, int least) {
  const int count = static_cast<int>(row.size());
  std::vector<RepeatedPassage> longest;
  for (int end = 0; end < count; ++end) {
    RepeatedPassage best{end + 1, 0, 0};
    for (int source_end = 0; source_end < end; ++source_end) {
      int length = 0;
      while (length <= source_end && row[source_end - length] == row[end - length]) ++length;
      if (length > best.length) best = {end - length + 1, source_end - length + 1, length};
    }
    longest.push_back(best);
  }
  std::vector<RepeatedPassage> all;
  for (int end = 0; end < count; ++end) {
    const RepeatedPassage& one = longest[end];
    if (one.length < least || (end + 1 < count && longest[end + 1].length == one.length + 1))
      continue;
    const int period = std::min(one.first - one.source, one.length);
    for (int at = 0; at < one.length; at += period)
      if (const int length = std::min(period, one.length - at); length >= least)
        all.push_back({one.first + at, one.source, length});
  }
  return all;
}

// A bar for each letter, A to G a whole note of that name in the top staff; small letters an octave
// lower; "." a bar of rest. The left hand holds `left` likewise.
Score score_of(const std::string& right, const std::string& left) {
  const auto hand = [](char letter, int staff) {
    if (letter == '.') return rest(4, staff);
    const bool small = letter >= 'a';
    return note(std::string(1, static_cast<char>(small ? letter - 'a' + 'A' : letter)) +
                    (small ? "3" : "4"),
                4, staff);
  };
  std::string measures;
  for (std::size_t at = 0; at < right.size(); ++at)
    measures +=
        measure(std::to_string(at + 1), (at == 0 ? attributes("4/4", "0", 2) : "") +
                                            hand(right[at], 1) + backup(4) + hand(left[at], 2));
  return read(piano(measures));
}

std::string returns_of(const std::string& right, const std::string& left) {
  const Score score = score_of(right, left);
  std::string text;
  for (const ScoreReturn& one : find_returns(notes_of_bars(score))) {
    text += fmt::format("{}{}-{}={}:", text.empty() ? "" : " ", one.first + 1, one.last + 1,
                        one.source + 1);
    for (const int hand : one.hands) text += hand == 0 ? "R" : "L";
  }
  return text;
}

// Bars of four quarter notes for one hand, as "C4 D4 E4 F4".
std::string quarter_bars(const std::vector<std::vector<std::string>>& bars) {
  std::string measures;
  for (std::size_t at = 0; at < bars.size(); ++at) {
    std::string content = at == 0 ? attributes() : "";
    for (const std::string& one : bars[at]) content += note(one, 1);
    measures += measure(std::to_string(at + 1), content);
  }
  return piano(measures);
}

std::vector<ScoreLookAlikes> look_alikes_of(const std::string& xml) {
  const Score score = read(xml);
  const std::vector<BarNotes> bars = notes_of_bars(score);
  return find_look_alikes(score, bars, find_returns(bars));
}

using Bars = std::vector<std::vector<std::string>>;
const std::vector<std::string> kUp = {"C4", "D4", "E4", "F4"};
const std::vector<std::string> kDown = {"G4", "F4", "E4", "D4"};

}  // namespace

TEST_CASE("repeated passages are those that trying every place finds") {
  std::mt19937 chance(7);
  for (int round = 0; round < 400; ++round) {
    std::vector<int> row(1 + chance() % 24);
    const unsigned letters = 1 + chance() % 4;
    for (int& item : row) item = static_cast<int>(chance() % letters);
    CAPTURE(row);
    for (const int least : {1, 2, 3})
      CHECK(repeated_passages(row, least) == tried_passages(row, least));
  }
}

TEST_CASE("a passage of ten thousand bars takes no longer than its length") {
  std::vector<int> row;
  for (int at = 0; at < 10000; ++at) row.push_back(at % 5000);
  CHECK(repeated_passages(row, 2) == std::vector<RepeatedPassage>{{5000, 0, 5000}});
}

TEST_CASE("returns are the longest passages of both hands, then of one") {
  CHECK(returns_of("ABCDABCE", "abcdabce") == "5-7=1:RL");
  CHECK(returns_of("ABCDABCD", "abcdefga") == "5-8=1:R");
  CHECK(returns_of("ABCDABCD", "abcdabga") == "5-6=1:RL 5-8=1:R");
  CHECK(returns_of("ABCA", "abca") == "");
  CHECK(returns_of("AAAA", "aaaa") == "");
  CHECK(returns_of("ABABAB", "cdcdcd") == "3-4=1:RL 5-6=1:RL");
}

TEST_CASE("a return may hold silent bars, and neither begins nor ends with one") {
  CHECK(returns_of("A.BCA.BD", "abcdefga") == "5-7=1:R");
  CHECK(returns_of(".AB..AB.", "abcdefga") == "6-7=2:R");
  CHECK(returns_of("..A..", "abcde") == "");
}

TEST_CASE("passages that begin alike part in a bar, on a beat, in words") {
  Bars bars = {kUp, kDown, {"C4", "C4", "C4", "C4"}, {"A4", "A4", "B4", "B4"},
               kUp, kDown, {"C4", "C4", "B3", "C4"}, {"E4", "E4", "D4", "D4"}};
  const std::vector<ScoreLookAlikes> found = look_alikes_of(quarter_bars(bars));
  REQUIRE(found.size() == 1);
  CHECK(found[0].first == 0);
  CHECK(found[0].later == 4);
  CHECK(found[0].length == 3);
  CHECK(found[0].fork == 2);
  CHECK(found[0].beat == 3);
  CHECK(found[0].difference == "Piano: B instead of C");
  CHECK(found[0].hands == std::vector<int>{0});
  CHECK(found[0].transposed == 0);
}

TEST_CASE("a return that goes on otherwise parts in the bar after it") {
  const std::vector<ScoreLookAlikes> found = look_alikes_of(
      quarter_bars({kUp, kDown, {"A4", "A4", "B4", "B4"}, kUp, kDown, {"E4", "C4", "E4", "C4"}}));
  REQUIRE(found.size() == 1);
  CHECK(found[0].length == 3);
  CHECK(found[0].fork == 2);
  CHECK(found[0].beat == 1);
  CHECK(found[0].difference == "Piano: E instead of A");
}

TEST_CASE("beats of a pickup are the last of a bar") {
  const auto eighths = [](const std::string& last) {
    return note("C4", 1) + note("D4", 1) + note("E4", 1) + note(last, 1);
  };
  const std::string whole = note("A4", 2) + note("B4", 6);
  const std::vector<ScoreLookAlikes> found =
      look_alikes_of(piano(measure("0", attributes("4/4", "0", 1, 2) + eighths("F4")) +
                           measure("1", whole) + measure("2", note("C3", 8)) +
                           measure("X1", eighths("G4"), "implicit=\"yes\"") + measure("3", whole)));
  REQUIRE(found.size() == 1);
  CHECK(found[0].fork == 0);
  CHECK(found[0].beat == 4.5);
}

TEST_CASE("the longer two passages are alike before they part, the more dangerous") {
  const auto danger = [](int alike) {
    Bars bars;
    for (const std::string end : {"B4", "A4"}) {
      for (int bar = 0; bar < alike; ++bar)
        bars.push_back({"C4", "D4", "E4", std::string(1, static_cast<char>('A' + bar)) + "5"});
      bars.push_back({end, "C4", "D4", end});
    }
    const std::vector<ScoreLookAlikes> found = look_alikes_of(quarter_bars(bars));
    REQUIRE_FALSE(found.empty());
    CHECK(found[0].fork == alike);
    return found[0].danger;
  };
  CHECK(danger(2) < danger(3));
  CHECK(danger(3) < danger(6));
  CHECK(danger(6) < 1);
}

TEST_CASE("transposed repeats are told as such, with their interval") {
  const std::vector<ScoreLookAlikes> found = look_alikes_of(quarter_bars(
      {kUp, {"E4", "C4", "G4", "C4"}, {"D4", "E4", "F#4", "G4"}, {"F#4", "D4", "A4", "D4"}}));
  REQUIRE(found.size() == 1);
  CHECK(found[0].transposed == 2);
  CHECK(found[0].difference == "the same, a whole step higher");
  CHECK(found[0].later == 2);
  CHECK(found[0].length == 2);
  CHECK(found[0].fork == 0);
}

TEST_CASE("ten thousand bars that are nearly the same take a moment") {
  std::mt19937 chance(3);
  std::string measures;
  for (int at = 0; at < 10000; ++at) {
    std::string content = at == 0 ? attributes() : "";
    for (const char* name : {"C4", "D4", "E4", "F4", "G4", "A4", "B4", "C5"})
      content += note(name, 1);
    measures += measure(std::to_string(at + 1),
                        content + note(std::string(1, static_cast<char>('A' + chance() % 7)) +
                                           std::to_string(1 + chance() % 3),
                                       1));
  }
  const auto begin = std::chrono::steady_clock::now();
  CHECK(look_alikes_of(piano(measures)).size() == kMostLookAlikes);
  CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(8));
}

TEST_CASE("two bars part with what is alike before them and how soon they meet again") {
  const auto score_of = [](const std::vector<std::string>& pitches) {
    Bars bars;
    for (const std::string& pitch : pitches) bars.push_back({pitch, pitch, pitch, pitch});
    return read(quarter_bars(bars));
  };
  const Score score =
      score_of({"C4", "D4", "E4", "F4", "G4", "A4", "C4", "D4", "E4", "B4", "G4", "A4"});
  const Parting parting = bar_parting(score, notes_of_bars(score), 3, 9);
  CHECK(parting.one == 4);
  CHECK(parting.other == 10);
  CHECK(parting.alike == 3);
  CHECK(parting.apart == 1);
  CHECK(parting.likeness < 1);
  REQUIRE(parting.changes.size() == 1);
  CHECK(bar_parting(score, notes_of_bars(score), 0, 6).changes.empty());
  CHECK(bar_parting(score, notes_of_bars(score), 2, 9).apart == kMostApart);
  // The bars before the later place end where the earlier one begins.
  const Score repeated = score_of({"C4", "C4", "D4"});
  CHECK(bar_parting(repeated, notes_of_bars(repeated), 1, 2).alike == 0);
}

TEST_CASE("the words of a difference") {
  const std::vector<std::string> hands = {"right hand", "left hand"};
  const auto one = [](int hand, char step, int alter, int octave, int length) {
    return NoteInBar{hand, Quarters(), Quarters(length, 1), {step, alter * 100, octave, false}};
  };
  const auto words = [&](std::vector<NoteInBar> was, std::vector<NoteInBar> is) {
    return say_changes(english_words(),
                       hand_changes({Quarters(), std::move(was), std::move(is)}, hands));
  };
  CHECK(words({one(0, 'F', 0, 4, 1)}, {one(0, 'F', 1, 4, 1)}) == "right hand: F♯ instead of F");
  CHECK(words({}, {one(1, 'B', -1, 2, 1)}) == "left hand: B♭ added");
  CHECK(words({one(1, 'B', -2, 2, 1)}, {}) == "left hand: B♭♭ left out");
  CHECK(words({one(0, 'C', 0, 4, 1)}, {one(0, 'C', 0, 5, 1)}) == "right hand: C5 instead of C4");
  CHECK(words({one(0, 'C', 0, 4, 1)}, {one(0, 'C', 0, 4, 2)}) == "right hand: C4 held longer");
  CHECK(words({one(0, 'C', 0, 4, 1), one(1, 'C', 0, 3, 1)},
              {one(0, 'D', 0, 4, 1), one(0, 'F', 0, 4, 1), one(1, 'E', 0, 3, 1)}) ==
        "right hand: D and F instead of C; left hand: E instead of C");
  CHECK(transposition_words(-12) == "the same, an octave lower");
  CHECK(transposition_words(14) == "the same, 14 half steps higher");
}
