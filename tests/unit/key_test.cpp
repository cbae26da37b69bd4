#include "piece/key.h"

#include <map>

#include "catch.h"

using namespace cahier;

// The circle of fifths (common practice).
TEST_CASE("every key of at most seven sharps or flats has its signature") {
  const std::map<std::string, int> majors = {
      {"C", 0},       {"G", 1},       {"D", 2},       {"A", 3},       {"E", 4},
      {"B", 5},       {"F sharp", 6}, {"C sharp", 7}, {"F", -1},      {"B flat", -2},
      {"E flat", -3}, {"A flat", -4}, {"D flat", -5}, {"G flat", -6}, {"C flat", -7}};
  const std::map<std::string, int> minors = {
      {"A", 0},       {"E", 1},       {"B", 2},       {"F sharp", 3}, {"C sharp", 4},
      {"G sharp", 5}, {"D sharp", 6}, {"A sharp", 7}, {"D", -1},      {"G", -2},
      {"C", -3},      {"F", -4},      {"B flat", -5}, {"E flat", -6}, {"A flat", -7}};
  for (const auto& [tonic, fifths] : majors) {
    CAPTURE(tonic);
    REQUIRE(parse_key(tonic + " major"));
    CHECK(parse_key(tonic + " major")->fifths == fifths);
  }
  for (const auto& [tonic, fifths] : minors) {
    CAPTURE(tonic);
    REQUIRE(parse_key(tonic + " minor"));
    CHECK(parse_key(tonic + " minor")->fifths == fifths);
  }
}

TEST_CASE("a key may be spelled with signs or words, and prints with signs") {
  for (const char* text :
       {"B flat major", "B♭ major", "Bb major", "b flat major", "B-flat major", "Bflat major"}) {
    CAPTURE(text);
    if (std::string(text) == "Bflat major") {
      CHECK_FALSE(parse_key(text));
      continue;
    }
    REQUIRE(parse_key(text));
    CHECK(parse_key(text)->fifths == -2);
    CHECK(parse_key(text)->text == "B♭ major");
  }
  CHECK(parse_key("F# minor")->text == "F♯ minor");
  CHECK(parse_key("F♯ minor")->fifths == 3);
  CHECK(parse_key("A Minor")->text == "A minor");
}

TEST_CASE("a key given as a count says no mode") {
  CHECK(parse_key("2 flats") == Key{-2, "2 flats"});
  CHECK(parse_key("1 sharp") == Key{1, "1 sharp"});
  CHECK(parse_key("7 sharps") == Key{7, "7 sharps"});
  CHECK(parse_key("no sharps or flats") == Key{0, "no sharps or flats"});
}

TEST_CASE("a hyphen joins the words of a key, and is no minus sign") {
  CHECK(parse_key("B-flat major")->fifths == -2);
  for (const char* text : {"-1 flats", "- 1 flat", "1 -flat", "A - minor", "2 flats-", "A-"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_key(text));
  }
}

TEST_CASE("a key is never guessed") {
  for (const char* text :
       {"", "A", "Am", "a", "H minor", "B", "G sharp major", "F flat minor", "8 flats", "flats",
        "A dorian", "A major minor", "A sharp flat major", "-2", "2", "A♮ minor", "Bb"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_key(text));
  }
}
