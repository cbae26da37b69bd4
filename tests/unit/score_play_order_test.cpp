// Repeats, endings and jumps.

#include "catch.h"
#include "score/notation/navigation_words.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

const std::string kForward = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>";
const std::string kBack = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";

std::string back(int times) {
  return fmt::format(
      "<barline location=\"right\"><repeat direction=\"backward\" times=\"{}\"/>"
      "</barline>",
      times);
}

// An ending of one bar.
std::string words(const std::string& text) {
  return "<direction><direction-type><words>" + text + "</words></direction-type></direction>";
}

std::string order_of(const Score& score) {
  std::string text;
  for (const ElementRun& run : score.play_order.runs)
    text += fmt::format("{}{}-{}", text.empty() ? "" : " ", run.first, run.last);
  return text;
}

std::string order(const std::vector<std::string>& signs) {
  return order_of(read(bars_with(signs)));
}

}  // namespace

TEST_CASE("without signs a score is played once") { CHECK(order({"", "", ""}) == "1-3"); }

TEST_CASE("a repeat is played twice, or as often as it says") {
  CHECK(order({"", kForward, kBack, ""}) == "1-3 2-3 4-4");
  CHECK(order({"", kForward, back(4), ""}) == "1-3 2-3 2-3 2-3 4-4");
  CHECK(order({"", kForward, back(1), ""}) == "1-3 4-4");
  CHECK(order({kForward + kBack, kForward + kBack}) == "1-1 1-1 2-2 2-2");
}

TEST_CASE("a repeat without a beginning goes back to the start, or to after the repeat before") {
  const Score score = read(bars_with({"", kBack, "", kBack, ""}));
  CHECK(order_of(score) == "1-2 1-2 3-4 3-4 5-5");
  CHECK_FALSE(warns(score, 2, "nothing says"));
  CHECK(warns(score, 4, "taken to begin at bar 3"));
  // Marked right after another repeat, it is no guess.
  const Score marked = read(bars_with({"", kBack, kForward, kBack}));
  CHECK(order_of(marked) == "1-2 1-2 3-4 3-4");
  CHECK(marked.warnings.empty());
}

TEST_CASE("a repeat without an end is played once, with a warning") {
  const Score score = read(bars_with({"", kForward, "", kForward, kBack}));
  CHECK(order_of(score) == "1-5 4-5");
  CHECK(warns(score, 2, "no repeat sign ends"));
}

TEST_CASE("endings are for their passes") {
  CHECK(order({"", ending("1", kBack), ending("2"), ""}) == "1-2 1-1 3-4");
  CHECK(order({kForward, ending("1, 2, 3", back(4)), ending("4"), ""}) == "1-2 1-2 1-2 1-1 3-4");
  CHECK(order({kForward, ending("1,2", kBack), ending("3"), ""}) == "1-2 1-2 1-1 3-4");
  CHECK(order({kForward, ending("1", kBack), ending("2", kBack), ending("3"), ""}) ==
        "1-2 1-1 3-3 1-1 4-5");
  CHECK(order({kForward, ending("1-2", kBack), ending("3"), ""}) == "1-2 1-2 1-1 3-4");
}

TEST_CASE("a lone first ending still means two passes") {
  CHECK(order({"", ending("1", kBack), "", ""}) == "1-2 1-1 3-4");
  CHECK(order({"", ending("1, 2", kBack), "", ""}) == "1-2 1-2 1-1 3-4");
  // After it a new repeat begins.
  CHECK(order({"", ending("1", kBack), "", kBack, ""}) == "1-2 1-1 3-4 3-4 5-5");
}

TEST_CASE("an ending without numbers is for the next pass") {
  CHECK(order({"", ending("", kBack), ending(""), ""}) == "1-2 1-1 3-4");
}

TEST_CASE("an ending without an end goes as far as the sign, with a warning") {
  const std::string open =
      "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>";
  const Score score = read(bars_with({"", open, kBack, ending("2"), ""}));
  CHECK(order_of(score) == "1-3 1-1 4-5");
  CHECK(warns(score, 2, "the end of this ending is not given"));
}

TEST_CASE("endings without a repeat sign are played as they stand, with a warning") {
  const Score score = read(bars_with({"", ending("1"), ending("2"), ""}));
  CHECK(order_of(score) == "1-4");
  CHECK(warns(score, 2, "played as they stand"));
  // One that stands apart from its repeat loses no bar.
  CHECK(order({"", ending("1", kBack), "", ending("2"), ""}) == "1-2 1-1 3-5");
  // A D.C. can stand for the repeat sign.
  CHECK(order({"", ending("1", sound("dacapo=\"yes\"")), ending("2")}) == "1-2 1-1 3-3");
}

TEST_CASE("a last ending with a repeat sign ends the repeat, with a warning") {
  const Score score = read(bars_with({"", ending("1", kBack), ending("2", kBack), ""}));
  CHECK(order_of(score) == "1-2 1-1 3-3 4-4");
  CHECK(warns(score, 3, "the last ending has a repeat sign"));
}

TEST_CASE("D.C. al Fine: no repeats, the last ending, and Fine only after the jump") {
  CHECK(order({"", sound("fine=\"yes\""), kBack, sound("dacapo=\"yes\"")}) == "1-3 1-3 4-4 1-2");
  CHECK(order({"", ending("1", kBack), ending("2"), sound("fine=\"yes\""),
               sound("dacapo=\"yes\"")}) == "1-2 1-1 3-5 1-1 3-4");
  CHECK(order({"", kBack, sound("fine=\"yes\""), sound("dacapo=\"yes\"")}) == "1-2 1-2 3-4 1-3");
  // A lone first ending is passed over.
  CHECK(order({"", ending("1", kBack), sound("fine=\"yes\""), sound("dacapo=\"yes\"")}) ==
        "1-2 1-1 3-4 1-1 3-3");
}

TEST_CASE("D.S. goes back to its sign, with or without a name") {
  CHECK(order({"", sound("segno=\"a\""), sound("fine=\"yes\""), sound("dalsegno=\"a\"")}) ==
        "1-4 2-3");
  CHECK(order({sound("segno=\"b\""), sound("segno=\"a\""), sound("fine=\"yes\""),
               sound("dalsegno=\"a\"")}) == "1-4 2-3");
  const std::string sign = "<direction><direction-type><segno/></direction-type></direction>";
  CHECK(order({"", sign, sound("fine=\"yes\""), sound("dalsegno=\"\"")}) == "1-4 2-3");
}

TEST_CASE("D.C. and D.S. al Coda go on with the coda") {
  CHECK(order({"", sound("tocoda=\"c\""), "", sound("dacapo=\"yes\""), sound("coda=\"c\""), ""}) ==
        "1-4 1-2 5-6");
  CHECK(order({"", sound("tocoda=\"c\""), "", sound("coda=\"c\"")}) == "1-4");
  CHECK(order({"", sound("segno=\"s\""), sound("tocoda=\"c\""), sound("dalsegno=\"s\""),
               sound("coda=\"c\"")}) == "1-4 2-3 5-5");
}

TEST_CASE("a jump with nothing to end it is played on to the last bar, once, with a warning") {
  const Score score = read(bars_with({"", sound("segno=\"a\""), sound("dalsegno=\"a\""), ""}));
  CHECK(order_of(score) == "1-3 2-4");
  CHECK(warns(score, 3, "no Fine and no coda"));
}

TEST_CASE("signs that lead nowhere are passed over, with a warning") {
  const Score no_sign = read(bars_with({"", sound("dalsegno=\"a\""), ""}));
  CHECK(order_of(no_sign) == "1-3");
  CHECK(warns(no_sign, 2, "no segno is marked"));
  const Score no_coda = read(bars_with({sound("tocoda=\"c\""), sound("dacapo=\"yes\"")}));
  CHECK(order_of(no_coda) == "1-2 1-2");
  CHECK(warns(no_coda, 1, "no coda is marked"));
  const Score stray = read(bars_with({"", sound("fine=\"yes\""), sound("tocoda=\"c\"")}));
  CHECK(order_of(stray) == "1-3");
  CHECK(warns(stray, 2, "Fine, and no D.C."));
  CHECK(warns(stray, 3, "To Coda, and no D.C."));
}

TEST_CASE("where two signs could be meant, the choice is a warning") {
  const Score score = read(bars_with({"", sound("segno=\"a\""), sound("segno=\"a\""),
                                      sound("fine=\"yes\""), sound("dalsegno=\"a\"")}));
  CHECK(order_of(score) == "1-5 3-4");
  CHECK(warns(score, 5, "that of bar 3 is taken"));
}

TEST_CASE("bars that the signs never reach are named") {
  const Score score = read(bars_with({sound("fine=\"yes\""), sound("dacapo=\"yes\""), "", ""}));
  CHECK(order_of(score) == "1-2 1-1");
  CHECK(warns(score, 3, "never played (2 in all are not)"));
}

TEST_CASE("words count where there is no sound element, with a warning") {
  const Score score = read(bars_with({"", words("Fine"), words("D. C. al Fine")}));
  CHECK(order_of(score) == "1-3 1-2");
  CHECK(warns(score, 3, "\"D. C. al Fine\" is taken from the words alone"));
}

TEST_CASE("words are read without tags, full stops and line ends") {
  CHECK(navigation_word("<b>Da Capo\nal Fine.</b>") == NavigationWord::dacapo);
  CHECK(navigation_word("D.S. al Coda") == NavigationWord::dalsegno);
  CHECK(navigation_word("To Coda") == NavigationWord::to_coda);
  CHECK(navigation_word("FINE") == NavigationWord::fine);
  for (const char* other : {"al Fine", "fine voice", "dolce", "dc3", "Decisive", ""})
    CHECK(navigation_word(other) == NavigationWord::none);
}

TEST_CASE("signs may stand in one part only, and count for all") {
  const auto part = [](const std::string& in_two) {
    return measure("1", attributes() + note("C4", 4)) + measure("2", in_two + note("C4", 4)) +
           measure("3", note("C4", 4));
  };
  CHECK(order_of(read(partwise({{"P1", "Violin", part("")}, {"P2", "Piano", part(kBack)}}))) ==
        "1-2 1-2 3-3");
  const Score unequal =
      read(partwise({{"P1", "Violin", part(back(2))}, {"P2", "Piano", part(back(3))}}));
  CHECK(order_of(unequal) == "1-2 1-2 1-2 3-3");
  CHECK(warns(unequal, 2, "different number of times"));
}

TEST_CASE("repeats beyond reason are refused with their line") {
  for (const int times : {0, -1, 100, 1000000000}) {
    const Diagnostic refused = refusal(bars_with({"", back(times)}));
    CHECK_THAT(refused.message, Catch::Contains("a repeat cannot be played"));
    CHECK(refused.at.line > 1);
  }
  CHECK_THAT(refusal(bars_with({"", ending("1, 100", kBack)})).message,
             Catch::Contains("beyond 99"));
}

TEST_CASE("no more than 100,000 bars are unfolded") {
  std::vector<std::string> signs(1011);
  signs.back() = back(99);
  CHECK_THAT(refusal(bars_with(signs)).message, Catch::Contains("more than 100000 bars"));
  signs.resize(1010);
  signs.back() = back(99);
  CHECK(read(bars_with(signs)).play_order.runs.size() == 99);
}
