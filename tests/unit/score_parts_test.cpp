// Which part is the player's, what each hand plays, and the words of the others.

#include "catch.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

TEST_CASE("the hands are the staves of one part") {
  const auto hands = [](const std::string& name, int staves) {
    std::string text;
    for (const ScoreHand& hand :
         read(
             partwise({{"P1", name, measure("1", attributes("4/4", "0", staves) + note("C4", 4))}}))
             .hands) {
      text += hand.name + ":";
      for (const int staff : hand.staves) text += std::to_string(staff);
      text += " ";
    }
    return text;
  };
  CHECK(hands("Piano", 2) == "right hand:1 left hand:2 ");
  CHECK(hands("Piano", 3) == "right hand:1 left hand:23 ");
  CHECK(hands("Organ", 3) == "right hand:1 left hand:2 pedals:3 ");
  CHECK(hands("Violin", 1) == "Violin:1 ");
}

TEST_CASE("two parts of one staff that are one keyboard are two hands") {
  const std::string xml = partwise({{"P1", "Voice", measure("1", attributes() + note("C5", 4))},
                                    {"P2", "Piano", measure("1", attributes() + note("C4", 4))},
                                    {"P3", "Piano", measure("1", attributes() + note("C3", 4))}});
  const Score score = read(xml);
  CHECK(score.part == "P2+P3");
  REQUIRE(score.measures.front().notes.size() == 2);
  CHECK(score.measures.front().notes[0].staff == 1);
  CHECK(score.measures.front().notes[1].staff == 2);
  CHECK(score.hands.size() == 2);
  CHECK(read(xml, "piano").part == "P2+P3");
  CHECK(read(xml, "P3").part == "P3");
  CHECK(read(xml, "P2+P3").part == "P2+P3");
  CHECK(read(xml, "P3+P1").measures.front().notes[0].pitch.octave == 3);
  CHECK_THAT(refusal(xml, "P2+P9").message, Catch::Contains("no part is called"));
  const std::string one = measure("1", attributes() + note("C4", 4));
  CHECK(read(partwise({{"P1", "Piano RH", one}, {"P2", "Piano LH", one}})).part == "P1+P2");
  CHECK(read(partwise({{"P1", "Rechte Hand", one}, {"P2", "Linke Hand", one}})).part == "P1+P2");
}

TEST_CASE("a voice is left out beside a keyboard, and can be asked for by id or name") {
  const std::string xml =
      partwise({{"P1", "Voice", measure("1", attributes() + note("C5", 4))},
                {"P2", "Piano", measure("1", attributes("4/4", "0", 2) + note("C4", 4))}});
  CHECK(read(xml).part == "P2");
  CHECK_THAT(read(xml).part_reason, Catch::Contains("more than one staff"));
  CHECK(read(xml, "P1").part == "P1");
  CHECK(read(xml, "voice").part == "P1");
  const Diagnostic refused = refusal(xml, "Vioce");
  CHECK(refused.message == "no part is called \"Vioce\"; did you mean \"Voice\"?");
  CHECK(refused.hint == "the parts are P1 (Voice), P2 (Piano)");
}

TEST_CASE("where several parts could be meant, the choice is a warning") {
  const std::string grand = measure("1", attributes("4/4", "0", 2) + note("C4", 4));
  const Score two = read(partwise({{"P1", "Harp", grand}, {"P2", "Piano", grand}}));
  CHECK(two.part == "P2");
  CHECK(warns(two, 0, "2 parts have more than one staff"));
  const std::string one = measure("1", attributes() + note("C4", 4));
  const Score none = read(partwise({{"P1", "Violin", one}, {"P2", "Viola", one}}));
  CHECK(none.part == "P1");
  CHECK(warns(none, 0, "no part has more than one staff"));
}

TEST_CASE("syllables are joined bar by bar and verse by verse") {
  const auto sung = [](const std::string& verse, const std::string& syllabic,
                       const std::string& text) {
    return "<lyric number=\"" + verse + "\"><syllabic>" + syllabic + "</syllabic><text>" + text +
           "</text></lyric>";
  };
  const Score score = read(piano(measure(
      "1",
      attributes() +
          note({"C4", 1, 1, sung("1", "begin", "lan") + sung("2", "single", "low"), false, false}) +
          note({"D4", 1, 1, sung("1", "end", "tern"), false, false}) +
          note({"E4", 2, 1, sung("1", "single", "light"), false, false}))));
  REQUIRE(score.lyrics.size() == 2);
  CHECK(score.lyrics[0].text == "lan-tern light");
  CHECK(score.lyrics[1].text == "low");
  CHECK(score.lyrics[1].verse == "2");
}

TEST_CASE("very many verses of a bar are not all kept") {
  std::string sung;
  for (int verse = 0; verse < 200; ++verse)
    sung += fmt::format("<lyric number=\"{}\"><text>la</text></lyric>", verse);
  const Score score =
      read(piano(measure("1", attributes() + note({"C4", 4, 1, sung, false, false}))));
  CHECK(score.lyrics.size() == 64);
}

TEST_CASE("a part that ends early is silent from there on, with a warning") {
  const Score score = read(partwise(
      {{"P1", "Piano", measure("1", attributes() + note("C4", 4)) + measure("2", note("C4", 4))},
       {"P2", "Bell", measure("1", attributes() + note("C4", 4))}}));
  CHECK(score.measures.size() == 2);
  CHECK(warns(score, 2, "part P2 (Bell) ends here"));
}
