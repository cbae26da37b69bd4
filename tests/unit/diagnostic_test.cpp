#include "catch.h"
#include "text/diagnostics.h"
#include "text/errors.h"

#include <algorithm>

#include "text/terminal.h"
#include "text/utf8.h"

using namespace cahier;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char letter : text) {
    if (letter == '\n') {
      lines.emplace_back();
    } else {
      lines.back() += letter;
    }
  }
  return lines;
}

}  // namespace

TEST_CASE("a message has place, line, caret, hint and chain, in this order") {
  const Source source("study.yaml", "title: A\nbars: x\n");
  Diagnostics diagnostics;
  {
    const Diagnostics::Within outer(diagnostics, "while reading \"sections\"");
    const Diagnostics::Within inner(diagnostics, "while reading section \"B\"");
    diagnostics.error(source, {2, 7}, "this is wrong", "write a number");
  }
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(compose(diagnostics.all()[0]) ==
        "study.yaml:2:7: error: this is wrong\n"
        "    bars: x\n"
        "          ^\n"
        "  write a number\n"
        "  while reading section \"B\"\n"
        "  while reading \"sections\"\n");
  diagnostics.error(source, {1, 1}, "later");
  CHECK(diagnostics.all()[1].chain.empty());
}

TEST_CASE("the caret counts characters, and a tab is as wide as a space") {
  Diagnostic diagnostic;
  diagnostic.source_line = "\tDvořák: ♭x";
  diagnostic.at = {1, 11};
  const auto lines = lines_of(compose(diagnostic));
  CHECK(lines[1] == "     Dvořák: ♭x");
  CHECK(lines[2] == "              ^");
}

TEST_CASE("a long line is cut around the caret") {
  const std::string long_line = std::string(5000, 'a') + "!" + std::string(5000, 'b');
  const Source source("long.yaml", long_line);
  Diagnostics diagnostics;
  diagnostics.error(source, {1, 5001}, "here");
  const auto lines = lines_of(compose(diagnostics.all()[0]));
  REQUIRE(lines.size() >= 3);
  CHECK(count_characters(lines[1]) <= 84);
  CHECK(lines[1].find("…") != std::string::npos);
  const auto shown = decode_utf8(lines[1]);
  CHECK(shown.at(lines[2].find('^')) == U'!');
  CHECK(diagnostics.all()[0].source_line.size() < 1000);
}

TEST_CASE("control characters of the input never reach the terminal") {
  const Source source("a\x1b.yaml",
                      "a\x1b[31mb\xE2\x80\xAE"
                      "c\xC2\x9B");
  Diagnostics diagnostics;
  diagnostics.error(source, {1, 1}, "found \"\x1b[0m\"", "hint\r");
  for (const char32_t character : decode_utf8(compose(diagnostics.all()[0]))) {
    if (character != U'\n') CHECK_FALSE(is_control(character));
  }
}

TEST_CASE("one gate keeps control characters from a terminal") {
  for (char32_t character = 0; character < 0x3000; ++character) {
    if (!is_control(character) || character == U'\n' || character == U'\t') continue;
    CAPTURE(static_cast<unsigned>(character));
    CHECK(for_terminal("a" + encode_utf8(character) + "b\n") == "a\uFFFDb\n");
  }
  CHECK(for_terminal("a\x9B\xFF") == "a\uFFFD\uFFFD");
  CHECK(for_terminal("a\tb\nDvořák “♭”\n") == "a b\nDvořák “♭”\n");
  CHECK(line_for_terminal("a\nb\r") == "a\uFFFDb\uFFFD");
  for (const char32_t turning : {0x061C, 0x200E, 0x200F, 0x202A, 0x202E, 0x2066, 0x2069})
    CHECK(is_control(turning));
}

TEST_CASE("of each kind of message the first ten are shown, in their order, and the rest counted") {
  const Source source("many.yaml", "x");
  Diagnostics diagnostics;
  const auto blame = [&](int line) { diagnostics.error(source, {line, 1}, "e"); };
  for (int line = 1000; line > 0; --line) {
    blame(line);
    diagnostics.warning(source, {line, 2}, "w");
  }
  diagnostics.error(source, {1000, 3}, "another");
  diagnostics.sort_by_place();
  CHECK(diagnostics.error_count() == 1001);
  CHECK(diagnostics.all().size() == 2 * Diagnostics::kMostKept + 1);
  const std::vector<Diagnostic> shown = first_of_each_kind(diagnostics.all());
  REQUIRE(shown.size() == 2 * kMostShown + 1);
  CHECK(shown.front().message == "e");
  CHECK(shown[1].message == "w");
  CHECK(std::ranges::is_sorted(shown, {}, [](const Diagnostic& one) { return one.at.line; }));
  int more = 0;
  for (const Diagnostic& one : shown) more += one.more;
  CHECK(more == 2 * (1000 - kMostShown));
  CHECK(shown[2 * kMostShown - 2].more == 1000 - kMostShown);
  CHECK_THAT(compose(shown[2 * kMostShown - 2]), Catch::EndsWith("\n  and 990 more like this\n"));
}

TEST_CASE("messages are of one kind by where they are made, in each file by itself") {
  const Source one("one.yaml", "x");
  const Source other("other.yaml", "x");
  Diagnostics diagnostics;
  for (int count = 0; count < 12; ++count)
    for (const Source* source : {&one, &other})
      diagnostics.error(*source, {1, 1}, "bar " + std::to_string(count));
  for (int count = 0; count < 12; ++count) diagnostics.error(one, {1, 1}, "bar");
  const std::vector<Diagnostic> shown = first_of_each_kind(diagnostics.all());
  CHECK(shown.size() == 3 * kMostShown);
  CHECK(std::ranges::count(shown, 2, &Diagnostic::more) == 3);
}

TEST_CASE("what is handed from one collection to another is counted whole") {
  const Source source("many.yaml", "x");
  Diagnostics first;
  for (int count = 0; count < 250; ++count) first.error(source, {1, 1}, "e");
  Diagnostics all;
  for (const Diagnostic& one : first.all()) all.add(one);
  CHECK(all.error_count() == 250);
  CHECK(first_of_each_kind(all.all()).back().more == 250 - kMostShown);
}

TEST_CASE("a source knows its lines whatever ends them") {
  const Source source("s",
                      "\xEF\xBB\xBF"
                      "one\r\ntwo\rthree\n\nfive♭x");
  CHECK(source.line(1) == "one");
  CHECK(source.line(2) == "two");
  CHECK(source.line(3) == "three");
  CHECK(source.line(4).empty());
  CHECK(source.line(5) == "five♭x");
  CHECK(source.line(6).empty());
  CHECK(source.line(0).empty());
  const Place end = source.place(source.text().size());
  CHECK(end.line == 5);
  CHECK(end.column == 7);
}

TEST_CASE("a file that is not there or is a folder is named with the reason") {
  CHECK_THROWS_WITH(Source::from_file("no/such/file.yaml"),
                    Catch::Contains("no/such/file.yaml") && Catch::Contains("No such file"));
  CHECK_THROWS_AS(Source::from_file("."), FileError);
}
