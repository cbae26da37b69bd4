#include "piece/short_title.h"

#include "catch.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "workbook/parts/week_words.h"

using namespace cahier;

TEST_CASE("a long title is shortened by rule, not cut") {
  CHECK(shortened_title("Small Serenade") == "Small Serenade");
  CHECK(shortened_title("Sonata in C minor, first movement") == "Sonata");
  CHECK(shortened_title("Three Evening Songs, second book") == "Three Evening Songs");
  CHECK(shortened_title("Harbour Suite: the lamps are lit") == "Harbour Suite");
  CHECK(shortened_title("Harbour Suite – the lamps are lit") == "Harbour Suite");
  CHECK(shortened_title("Impromptu op. 12 for the left hand") == "Impromptu");
  CHECK(shortened_title("Variations on a Theme of the Old Harbour Master") ==
        "Variations on a Theme");
  CHECK(shortened_title(std::string(60, 'W')) == std::string(24, 'W'));
}

TEST_CASE("the piece file's short title stands before the rule, and equal ones are numbered") {
  const Piece given = sample::piece(
      "{title: \"Sonata in C minor, first movement\", short title: Great Sonata, bars: 8}");
  const Piece other = sample::piece("{title: \"Sonata in D major, last movement\", bars: 8}");
  const Piece same = sample::piece("{title: \"Sonata in E major, slow movement\", bars: 8}");
  CHECK(short_title(given) == "Great Sonata");
  CHECK(short_titles({&given, &other}) == std::vector<std::string>{"Great Sonata", "Sonata"});
  CHECK(short_titles({&given, &other, &same}) ==
        std::vector<std::string>{"Great Sonata", "2. Sonata", "3. Sonata"});
}
