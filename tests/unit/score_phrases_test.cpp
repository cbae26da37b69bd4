// Phrases of a score. That a phrase ends where a slur ends in a rest or a long note, at a fermata,
// a breath mark or where all rest, and where a singer breathes, that four bars are its usual length
// and that an upbeat belongs to what comes: common practice. What counts as long is our choice.

#include <algorithm>
#include <map>

#include "catch.h"
#include "import/write_piece.h"
#include "piece/read_piece.h"
#include "score/phrase_ends.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

std::string with(const std::string& pitch_name, int duration, const std::string& notations,
                 int staff = 1, const std::string& more = "") {
  return note(Xml{pitch_name, duration, staff, more + "<notations>" + notations + "</notations>"});
}

const std::string kBegin = "<slur type=\"start\"/>";
const std::string kEnd = "<slur type=\"stop\"/>";
const std::string kStep = note("E4", 1) + note("F4", 1) + note("G4", 1) + note("A4", 1);
const std::string kOpen = with("C4", 1, kBegin) + note("D4", 1) + note("E4", 1) + note("F4", 1);
// Under it the left hand goes on.
const std::string kLeft = backup(4) + note("C3", 2, 2) + note("G3", 2, 2);

// What ends a bar after the slur's last note: none of them alone is more than two beats.
const std::string kEndsInRest = note("F4", 1) + with("G4", 1, kEnd) + rest(2);
const std::string kEndsLong = note("F4", 1) + note("E4", 1) + with("G4", 2, kEnd);
const std::string kEndsAtOnce = note("F4", 1) + note("E4", 1) + note("D4", 1) + with("G4", 1, kEnd);

// Bars in 4/4, which a left hand fills where it is asked to.
std::string piano_of(const std::vector<std::string>& bars, bool has_left = true,
                     const std::string& meter = "4/4") {
  std::string measures;
  for (std::size_t at = 0; at < bars.size(); ++at)
    measures += measure(std::to_string(at + 1), (at == 0 ? attributes(meter, "0", 2) : "") +
                                                    bars[at] + (has_left ? kLeft : ""));
  return piano(measures);
}

// "4r 8f": bars by number after which a phrase ends, with the sign.
std::string ends_of(const Score& score) {
  std::string text;
  for (const PhraseEnd& end : phrase_ends(score))
    text += fmt::format("{}{}{}", text.empty() ? "" : " ",
                        score.bars[static_cast<std::size_t>(end.bar)].number,
                        "lrksh"[static_cast<int>(end.sign)]);
  return text;
}

std::string ends_in(const std::vector<std::string>& bars, bool has_left = true) {
  return ends_of(read(piano_of(bars, has_left)));
}

// "1-4 5-8 | 9-12": of each section of the written piece, which must be read without an error.
std::string phrases_in(const std::string& xml) {
  const std::string piece_file = write_piece(read(xml));
  CAPTURE(piece_file);
  Diagnostics diagnostics;
  const auto piece = read_piece(Source("piece.yaml", piece_file), diagnostics);
  CHECK(diagnostics.error_count() == 0);
  REQUIRE(piece);
  std::string text;
  for (const Section& section : piece->sections) {
    text += text.empty() ? "" : " | ";
    std::string list;
    for (const BarRange& phrase : section.phrases)
      list += fmt::format("{}{}-{}", list.empty() ? "" : " ", phrase.first, phrase.last);
    text += list.empty() ? "-" : list;
  }
  return text;
}

// Bars of which each differs from the others, so that nothing returns; a breath mark after those
// named. The signs stand in the bar of that place, before its notes.
std::string breaths(int count, const std::vector<int>& after,
                    const std::map<int, std::string>& signs = {}, int pickup = 0) {
  const std::string breath = "<articulations><breath-mark/></articulations>";
  std::string measures;
  for (int bar = 1 - (pickup > 0); bar <= count; ++bar) {
    const std::string pitch_name =
        std::string(1, static_cast<char>('A' + bar % 7)) + std::to_string(2 + bar / 7);
    const auto sign = signs.find(bar);
    const bool has_breath = std::ranges::find(after, bar) != after.end();
    measures +=
        measure(std::to_string(bar),
                (measures.empty() ? attributes() : "") + (sign == signs.end() ? "" : sign->second) +
                    with(pitch_name, bar == 0 ? pickup : 4, has_breath ? breath : ""));
  }
  return piano(measures);
}

// A song: what is sung, and a piano that rests at the end of every second bar.
std::string song(const std::vector<std::string>& sung) {
  std::string voice;
  std::string hands;
  for (std::size_t at = 0; at < sung.size(); ++at) {
    const std::string number = std::to_string(at + 1);
    voice += measure(number, (at == 0 ? attributes() : "") + sung[at]);
    hands += measure(number, (at == 0 ? attributes("4/4", "0", 2) : "") +
                                 (at % 2 == 1 ? note("C4", 2) + rest(2) : note("C4", 4)));
  }
  return partwise({{"P1", "Voice", voice}, {"P2", "Piano", hands}});
}

const std::string kSyllable = "<lyric number=\"1\"><text>la</text></lyric>";
const std::string kSung =
    note(Xml{"E4", 1, 1, kSyllable}) + note("F4", 1) + note("G4", 1) + note("A4", 1);
const std::string kSungToRest = note(Xml{"E4", 1, 1, kSyllable}) + note("F4", 1) + rest(2);
const std::string kSungLong = note(Xml{"E4", 1, 1, kSyllable}) + note("F4", 1) + note("G4", 2);

}  // namespace

TEST_CASE("a phrase ends where a slur ends in a rest or a long note") {
  CHECK(ends_in({kOpen, kEndsInRest, kStep}) == "2r");
  CHECK(ends_in({kOpen, kEndsLong, kStep}) == "2l");
  CHECK(ends_in({kOpen, kEndsAtOnce, kStep}).empty());
  // Without a slur a rest or a long note of one hand says nothing.
  CHECK(ends_in({kStep, note("F4", 2) + rest(2), kStep}).empty());
  CHECK(ends_in({kStep, note("F4", 1) + note("E4", 1) + note("G4", 2), kStep}).empty());
  // Nor does a slur over a figure, or one of the left hand.
  CHECK(ends_in({kStep, with("C4", 1, kBegin) + with("D4", 1, kEnd) + rest(2), kStep}).empty());
  const std::string left = backup(4) + with("C3", 2, kBegin, 2) + with("G3", 1, kEnd, 2);
  CHECK(ends_in({kStep + left, kStep + kLeft}, false).empty());
}

TEST_CASE("a slur that another takes up from the same note does not end a phrase") {
  CHECK(ends_in({kOpen, note("F4", 1) + note("E4", 1) + with("G4", 2, kEnd + kBegin), kStep})
            .empty());
}

TEST_CASE("a note tied over the end of its slur is one note") {
  const std::string tied = note("F4", 2) + with("G4", 2, kEnd, 1, "<tie type=\"start\"/>");
  const std::string held = note(Xml{"G4", 2, 1, "<tie type=\"stop\"/>"}) + rest(2);
  CHECK(ends_in({kOpen, tied, held, kStep}) == "3r");
}

TEST_CASE("a note is long beside the others of its slur") {
  const std::string slow = with("C4", 2, kBegin) + note("D4", 2);
  CHECK(ends_in({slow, note("F4", 2) + with("G4", 2, kEnd), kStep}).empty());
  CHECK(ends_in({slow, with("G4", 4, kEnd), kStep}) == "2l");
  // Beside all of them, not beside the last.
  CHECK(ends_in({slow, kEndsLong, kStep}).empty());
}

TEST_CASE("a phrase ends where all hands rest for a beat, an upbeat going with the next") {
  const std::string both = note("C4", 3) + rest(1) + backup(4) + note("C3", 3, 2) + rest(1, 2);
  CHECK(ends_in({kStep, both, kStep}, false) == "2s");
  CHECK(ends_in({kStep, note("C4", 3) + rest(1) + kLeft, kStep}, false).empty());
  // The upbeat in the second half of the bar begins the phrase that begins with the next one.
  CHECK(ends_in({kStep, note("C4", 1) + rest(1) + note("D4", 2), kStep}, false) == "2s");
  // A beat late is still with its bar; in the middle there is no saying.
  CHECK(ends_in({kStep, kStep, rest(1) + note("D4", 3), kStep}, false) == "2s");
  const std::string triple = note("D4", 6);
  const Score middle = read(piano_of({triple, rest(2) + note("D4", 4), triple}, false, "6/4"));
  CHECK(ends_of(middle).empty());
}

TEST_CASE("a phrase ends at a fermata, a breath mark and a caesura, of whichever hand") {
  CHECK(ends_in({kStep, with("C4", 4, "<fermata/>"), kStep}) == "2h");
  CHECK(ends_in({kStep, kStep + backup(4) + with("C3", 4, "<fermata/>", 2), kStep}, false) == "2h");
  for (const char* mark : {"breath-mark", "caesura"})
    CHECK(ends_in({kStep, with("C4", 4, fmt::format("<articulations><{}/></articulations>", mark)),
                   kStep}) == "2h");
  // At the end of the piece it ends no phrase that another follows.
  CHECK(ends_in({kStep, with("C4", 4, "<fermata/>")}).empty());
}

TEST_CASE("a phrase ends where the page shows that something new begins") {
  const std::string meter =
      "<attributes><time><beats>2</beats><beat-type>2</beat-type></time></attributes>";
  CHECK(ends_in({kStep, meter + kStep, kStep}) == "1k");
  const std::string bar_line =
      "<barline location=\"right\"><bar-style>light-light</bar-style></barline>";
  CHECK(ends_in({kStep, kStep + bar_line, kStep}) == "2k");
}

TEST_CASE("where words are sung the singer's rests and long notes lead, not those of the piano") {
  CHECK(ends_of(read(song({kSung, kSung, kSung, kSungToRest, kSung, kSung, kSung, kSung}))) ==
        "4r");
  CHECK(ends_of(read(song({kSung, kSung, kSung, kSungLong, kSung, kSung}))) == "4l");
  // The singer's own part.
  CHECK(ends_of(read(song({kSung, kSungLong, kSung, kSung}), "P1")) == "2l");
  // Nobody sings: the piano's rests count.
  CHECK(ends_of(read(song({kStep, kStep, kStep, kStep}))) == "2s");
}

TEST_CASE("phrases cover their section, four bars each where they can") {
  CHECK(phrases_in(breaths(8, {4})) == "1-4 5-8");
  CHECK(phrases_in(breaths(8, {2, 4, 6})) == "1-4 5-8");
  CHECK(phrases_in(breaths(13, {4, 9})) == "1-4 5-9 10-13");
  // A pickup does not count.
  CHECK(phrases_in(breaths(8, {4}, {}, 1)) == "0-4 5-8");
  CHECK(phrases_in(breaths(16, {8}, {}, 1)) == "0-8 9-16");
}

TEST_CASE("phrases that are not clear are not written") {
  CHECK(phrases_in(breaths(8, {})).empty());
  CHECK(phrases_in(breaths(8, {1})).empty());
  CHECK(phrases_in(breaths(8, {7})).empty());
  // More than eight bars without a sign.
  CHECK(phrases_in(breaths(13, {4})).empty());
  // A sign at more than half of the bar lines is a way of playing.
  CHECK(phrases_in(breaths(8, {2, 4, 5, 6})).empty());
  // A long piece that no mark divides is divided by the planner.
  CHECK(phrases_in(breaths(17, {4, 8, 12})).empty());
  CHECK(phrases_in(breaths(16, {4, 8, 12})) == "1-4 5-8 9-12 13-16");
}

TEST_CASE("each section has phrases of its own, or none") {
  const std::string mark =
      "<direction><direction-type><rehearsal>B</rehearsal></direction-type></direction>";
  CHECK(phrases_in(breaths(16, {4}, {{9, mark}})) == "1-4 5-8 | -");
  CHECK(phrases_in(breaths(16, {4, 8, 12}, {{9, mark}})) == "1-4 5-8 | 9-12 13-16");
}
