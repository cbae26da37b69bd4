#include "text/line_breaks.h"

#include <string>

#include "catch.h"
#include "text/utf8.h"
#include "text/wrap.h"

using namespace cahier;

namespace {

// The text with a bar where a line may begin.
std::string marked(std::string_view text) {
  const std::vector<char32_t> characters = decode_utf8(text);
  std::string result;
  for (std::size_t at = 0; at < characters.size(); ++at) {
    const bool begins = at > 0 && characters[at] != U' ' && may_break_before(characters, at);
    result += (begins ? "|" : "") + encode_utf8(characters[at]);
  }
  return result;
}

}  // namespace

TEST_CASE("a line may begin after a space, and after a hyphen, dash or slash between words") {
  CHECK(marked("play it  slow") == "play |it  |slow");
  CHECK(marked("left-hand, clean/slips") == "left-|hand, |clean/|slips");
  CHECK(marked("Prelude–Fugue") == "Prelude–|Fugue");
  CHECK(marked("Prelude — Fugue") == "Prelude — |Fugue");
  CHECK(marked("one--two") == "one--|two");
}

TEST_CASE("figures that are joined stay on one line, and so does what follows a sign") {
  CHECK(marked("bars 16–24 in 3/4") == "bars |16–24 |in |3/4");
  CHECK(marked("110–/120") == "110–/120");
  CHECK(marked("2027-01-04") == "2027-01-04");
  CHECK(marked("bars 16–end") == "bars |16–|end");
  CHECK(marked("add --minutes 22 or -5") == "add |--minutes |22 |or |-5");
  CHECK(marked("see bar\u00A017, 12\u202Fmm") == "see |bar\u00A017, |12\u202Fmm");
}

TEST_CASE("a line never begins with what belongs to the word before") {
  CHECK(marked("50 % slower") == "50 % |slower");
  CHECK(marked("« le soir » (again)") == "« |le |soir » |(again)");
  CHECK(marked("4 January – 2 May") == "4 |January – |2 |May");
  CHECK(marked("A e\u0301 -\u0301x") == "A |e\u0301 |-\u0301x");
}

TEST_CASE("in a terminal, too, no line begins badly, and what is typed stays whole") {
  CHECK(wrap("", {"it is then 50 % slower"}, "", 0, 12) == "it is then\n50 % slower\n");
  CHECK(wrap("", {"from 4 May – 2 June"}, "", 0, 10) == "from 4\nMay – 2\nJune\n");
  CHECK(wrap("", {"try --min-gap 22"}, "", 0, 10) == "try\n--min-gap\n22\n");
}
