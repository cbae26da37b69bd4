#include "text/yaml.h"

#include <chrono>

#include "catch.h"
#include "text/utf8.h"

using namespace cahier;

namespace {

struct Parsed {
  std::optional<YamlNode> root;
  Diagnostics diagnostics;
  std::string first() const {
    return diagnostics.all().empty() ? "" : diagnostics.all().front().message;
  }
  Place at() const {
    return diagnostics.all().empty() ? Place{0, 0} : diagnostics.all().front().at;
  }
};

Parsed parse(std::string text) {
  const Source source("t.yaml", std::move(text));
  Parsed parsed;
  parsed.root = parse_yaml(source, parsed.diagnostics);
  // Musicians do not know the technical terms of YAML.
  for (const Diagnostic& each : parsed.diagnostics.all()) {
    for (const char* word : {"scalar", "node", "sequence", "yaml-cpp", "token"}) {
      CHECK_THAT(each.message + each.hint, !Catch::Contains(word));
    }
  }
  return parsed;
}

}  // namespace

TEST_CASE("a tree remembers where everything stood, in characters") {
  const Parsed parsed = parse("title: Dvořák\nhard: [{né: 1-2, level: 5}]\r\ncues:\n  - 25\n");
  REQUIRE(parsed.root);
  CHECK(parsed.diagnostics.all().empty());
  const YamlNode* hard = parsed.root->find("hard");
  REQUIRE(hard);
  const YamlNode* level = hard->items.at(0).find("level");
  REQUIRE(level);
  CHECK(level->text == "5");
  CHECK(level->at.line == 2);
  CHECK(level->at.column == 25);
  CHECK(parsed.root->find("cues")->items.at(0).at.line == 4);
  CHECK(parsed.root->find("cues")->items.at(0).at.column == 5);
  CHECK_FALSE(parsed.root->find("Title"));
}

TEST_CASE("a byte order mark and any line ends are no fault") {
  const Parsed parsed = parse("\xEF\xBB\xBFtitle: A\r\nbars: 4\r\n");
  REQUIRE(parsed.root);
  CHECK(parsed.root->find("title")->text == "A");
  CHECK(parsed.root->find("title")->at.column == 8);
  CHECK(parse("title: A\rbars: 4\r").root->find("bars"));
}

TEST_CASE("an empty file is said to be empty") {
  for (const char* text : {"", "\n\n", "# only a comment\n", "---\n", "~\n", "\xEF\xBB\xBF"}) {
    CAPTURE(text);
    const Parsed parsed = parse(text);
    CHECK_FALSE(parsed.root);
    CHECK(parsed.first() == "the file is empty");
    CHECK(parsed.at().line == 1);
    CHECK(parsed.at().column == 1);
  }
}

TEST_CASE("a tab as indentation is named as such, where it stands") {
  const Parsed parsed = parse("title: A\npractice:\n\tminutes: 4\n");
  CHECK_FALSE(parsed.root);
  CHECK(parsed.first() == "a tab where spaces are needed");
  CHECK(parsed.at().line == 3);
  CHECK(parsed.at().column == 1);
}

TEST_CASE("a quotation mark that is never closed is reported where it is opened") {
  for (const char* text : {"title: \"Waltz\nbars: 4\n", "title: 'Waltz\nbars: 4\n",
                           "title: \"a\\\"\nbars: 4\n", "title: 'it''s\nbars: 4\n"}) {
    CAPTURE(text);
    const Parsed parsed = parse(text);
    CHECK_FALSE(parsed.root);
    CHECK_THAT(parsed.first(), Catch::Contains("quotation mark"));
  }
  CHECK(parse("title: 'it''s'\nb: \"a\\\"\"\n").diagnostics.all().empty());
}

TEST_CASE("an unquoted colon in a title is explained") {
  const Parsed parsed = parse("title: Waltz: the second\n");
  CHECK_FALSE(parsed.root);
  CHECK_THAT(parsed.diagnostics.all().at(0).hint, Catch::Contains("in quotes"));
  CHECK(parsed.at().column == 13);
}

TEST_CASE("what is not UTF-8 is refused with its line and column") {
  const Parsed latin = parse("title: \xC3\xA9tude\ncomposer: Dvo\xF8\xE1k\n");
  CHECK_FALSE(latin.root);
  CHECK_THAT(latin.first(), Catch::Contains("F8") && Catch::Contains("not UTF-8"));
  CHECK(latin.at().line == 2);
  CHECK(latin.at().column == 14);
  for (const std::string& text :
       {std::string("\xFF\xFEt\0i\0", 6), std::string("\xFE\xFF\0t\0i", 6),
        std::string("t\0i\0t\0l\0e\0:\0", 12)}) {
    const Parsed wide = parse(text);
    CHECK_FALSE(wide.root);
    CHECK_THAT(wide.first(), Catch::Contains("UTF-16"));
    CHECK(wide.diagnostics.all().at(0).hint == "save the file as UTF-8");
  }
  const Parsed zero = parse(std::string("title: Etude\0\nbars: 4\n", 22));
  CHECK_FALSE(zero.root);
  CHECK(zero.at().column == 13);
}

TEST_CASE("anchors, references, tags and merging are refused, and the rest is still read") {
  const Parsed parsed =
      parse("a: &x 1\nb: *x\nc: !!int 4\nd: {<<: 3}\ne: ! x\nf: &y [1]\ng: !z {h: 1}\nlast: 1\n");
  REQUIRE(parsed.root);
  CHECK(parsed.diagnostics.all().size() == 7);
  CHECK(parsed.root->find("last"));
  CHECK(parse("a: *unknown\n").first() == "references (a name after \"*\") are not allowed here");
}

TEST_CASE("a name given twice is an error that names the first line") {
  const Parsed parsed = parse("bars: 4\ntitle: A\nbars: 5\n");
  REQUIRE(parsed.root);
  CHECK(parsed.first() == "\"bars\" is given twice; the other is on line 1");
  CHECK(parsed.at().line == 3);
  CHECK(parsed.root->find("bars")->text == "4");
}

TEST_CASE("a second document is refused") {
  const Parsed parsed = parse("title: A\n---\ntitle: B\n");
  CHECK_FALSE(parsed.root);
  CHECK(parsed.at().line == 2);
}

TEST_CASE("hostile texts end quickly with a message") {
  const auto repeated = [](const std::string& part, int times) {
    std::string text;
    for (int count = 0; count < times; ++count) text += part;
    return text;
  };
  const std::vector<std::string> texts = {repeated("[", 100000),
                                          repeated("{a: ", 100000),
                                          repeated("- ", 100000),
                                          repeated("? ", 100000),
                                          repeated("a: ", 100000),
                                          repeated("&a ", 100000),
                                          repeated("!", 100000),
                                          repeated("\"", 100001),
                                          "\"" + repeated("\\", 100000),
                                          "[" + repeated("1,", 300000) + "]",
                                          "a: |\n" + repeated(" x\n", 100000),
                                          "t: " + std::string(1000000, 'x'),
                                          std::string(3u << 20, 'x'),
                                          "a: [1, 2\nb: {c: 1]\n",
                                          "%YAML 9.9\n---\na: 1\n",
                                          "a: \"\\q\"\n",
                                          "a: @b\n",
                                          ": a\n",
                                          "{a: b}: c\n",
                                          "a: b\n- c\n",
                                          "a:\n  b: 1\n c: 2\n",
                                          "]\n",
                                          "a: 'b' c\n"};
  for (const std::string& text : texts) {
    CAPTURE(text.substr(0, 20));
    const auto begin = std::chrono::steady_clock::now();
    const Parsed parsed = parse(text);
    CHECK(parsed.diagnostics.has_errors());
    CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(5));
  }
}

TEST_CASE("depth is limited to 32 levels") {
  const auto nested = [](int depth) {
    return "a: " + std::string(static_cast<std::size_t>(depth), '[') +
           std::string(static_cast<std::size_t>(depth), ']');
  };
  CHECK_FALSE(parse(nested(31)).diagnostics.has_errors());
  CHECK(parse(nested(32)).first() == "lists are nested too deeply here");
}

TEST_CASE("fields read what was asked for and say what was expected") {
  const Source source(
      "f.yaml",
      "title: ' A '\ncount: 5\nratio: 0.5\nflag: off\nquoted: '5'\nhex: 0x10\n"
      "huge: 99999999999999999999\nexp: 1e3\nnan: .nan\nempty:\none: 3\ntilte: x\n");
  Diagnostics diagnostics;
  const auto root = parse_yaml(source, diagnostics);
  REQUIRE(root);
  YamlFields fields(source, *root, diagnostics);
  CHECK(fields.text("title") == "A");
  CHECK(fields.text("count") == "5");
  CHECK(fields.whole("count", 1, 5) == 5);
  CHECK(fields.number("ratio", 0, 1) == 0.5);
  CHECK(fields.yes_no("flag") == false);
  CHECK(fields.list("one").size() == 1);
  CHECK_FALSE(fields.whole("absent", 1, 5));
  CHECK(diagnostics.all().empty());
  CHECK_FALSE(fields.whole("count", 1, 4));
  CHECK_FALSE(fields.whole("quoted", 1, 9));
  CHECK_FALSE(fields.whole("hex", 0, 99));
  CHECK_FALSE(fields.whole("huge", 0, 99));
  CHECK_FALSE(fields.whole("ratio", 0, 99));
  CHECK_FALSE(fields.number("exp", 0, 9999));
  CHECK_FALSE(fields.number("nan", 0, 9999));
  CHECK_FALSE(fields.text("empty"));
  CHECK_FALSE(fields.yes_no("title"));
  CHECK(diagnostics.all().size() == 9);
  CHECK(diagnostics.all()[0].message ==
        "\"count\" must be a whole number from 1 to 4, found \"5\"");
  fields.refuse_unknown();
  REQUIRE(diagnostics.all().size() == 10);
  CHECK(diagnostics.all()[9].message == "unknown key \"tilte\"; did you mean \"title\"?");
}

TEST_CASE("an empty value is pointed at by its own line") {
  const Source source("e.yaml", "title:\nbars: 4\n");
  Diagnostics diagnostics;
  const auto root = parse_yaml(source, diagnostics);
  YamlFields fields(source, root.value(), diagnostics);
  CHECK_FALSE(fields.text("title"));
  REQUIRE(diagnostics.all().size() == 1);
  CHECK(diagnostics.all()[0].at.line == 1);
}

TEST_CASE("a control character is refused where it stands, whatever way it is written") {
  for (const char* code : {"\\0", "\\a", "\\b", "\\v", "\\f", "\\r", "\\e", "\\N", "\\L", "\\P",
                           "\\x1b", "\\u202e", "\\U0000009b", "\xC2\x9B", "\xE2\x80\xAE"}) {
    CAPTURE(code);
    const Parsed parsed = parse("title: \"é\\\"b" + std::string(code) + "c\"\n");
    CHECK(parsed.diagnostics.all().size() == 1);
    CHECK(parsed.at().column == 13);
    REQUIRE(parsed.root);
    CHECK(parsed.root->find("title")->refused);
  }
}

TEST_CASE("every text of the tree is UTF-8") {
  for (const char* code : {"\\_", "\\ ", "\\\"", "\\\\", "\\/", "\\xe9", "\\u00e9", "\\t", "\\n"}) {
    CAPTURE(code);
    const Parsed parsed = parse("title: \"a" + std::string(code) + "b\"\n");
    REQUIRE(parsed.root);
    CHECK(parsed.diagnostics.all().empty());
    CHECK_FALSE(first_invalid_utf8(parsed.root->find("title")->text));
    CHECK(count_characters(parsed.root->find("title")->text) == 3);
  }
  CHECK(parse("title: \"a\\_b\"\n").root->find("title")->text == "a\u00A0b");
}
