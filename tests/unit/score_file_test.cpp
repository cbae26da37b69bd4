// What kinds of file are taken for a score, and what is refused before it is read as music.

#include "catch.h"
#include "score/xml/compressed_score.h"
#include "score/xml/score_limits.h"
#include "written_score.h"
#include "zipped.h"

using namespace cahier;
using namespace cahier::written;

namespace {

const std::string kTwoBars =
    measure("1", attributes() + note("C4", 4)) + measure("2", note("D4", 4));

Entries sound_entries() {
  return {{"META-INF/container.xml", container("score.xml")}, {"score.xml", piano(kTwoBars)}};
}

std::string in_utf16(const std::string& ascii, bool big_end_first, bool mark) {
  std::string bytes;
  const auto put = [&](unsigned unit) {
    const char low = static_cast<char>(unit & 0xFF);
    const char high = static_cast<char>(unit >> 8);
    bytes += big_end_first ? high : low;
    bytes += big_end_first ? low : high;
  };
  if (mark) put(0xFEFF);
  for (const char letter : ascii) {
    if (letter == '~') {  // U+1D11E, beyond the basic plane
      put(0xD834);
      put(0xDD1E);
    } else {
      put(static_cast<unsigned char>(letter));
    }
  }
  return bytes;
}

std::string titled(const std::string& title) {
  return partwise({{"P1", "Piano", kTwoBars}}, "<movement-title>" + title + "</movement-title>");
}

std::string with_declaration(const std::string& encoding, const std::string& xml) {
  return "<?xml version=\"1.0\" encoding=\"" + encoding + "\"?>\n" + xml;
}

}  // namespace

TEST_CASE("a score is read partwise, timewise and compressed, and is the same score") {
  const std::string timewise =
      "<score-timewise>" + part_list({{"P1", "Piano", ""}}) +
      measure("1", "<part id=\"P1\">" + attributes() + note("C4", 4) + "</part>") +
      measure("2", "<part id=\"P1\">" + note("D4", 4) + "</part>") + "</score-timewise>";
  for (const std::string& bytes : {piano(kTwoBars), timewise, zipped(sound_entries())}) {
    const Score score = read(bytes);
    REQUIRE(score.measures.size() == 2);
    CHECK(score.measures[1].number == "2");
    CHECK(score.measures[1].notes.front().pitch.step == 'D');
    CHECK(score.measures[1].length == Quarters(4, 1));
  }
}

TEST_CASE("the encodings of scores are read") {
  CHECK(read("\xEF\xBB\xBF" + titled("F\xC3\xBCr")).title == "F\xC3\xBCr");
  CHECK(read(with_declaration("windows-1252", titled("F\xFCr \x93"
                                                     "E\x94")))
            .title ==
        "F\xC3\xBCr \xE2\x80\x9C"
        "E\xE2\x80\x9D");
  for (const bool big : {true, false})
    for (const bool mark : {true, false})
      CHECK(read(in_utf16(with_declaration("UTF-16", titled("a ~")), big, mark)).title ==
            "a \xF0\x9D\x84\x9E");
}

TEST_CASE("an encoding that is none, or is not kept to, is refused") {
  CHECK(refusal(titled("F\xFCr")).message == "this byte is not UTF-8");
  CHECK(refusal(titled("F\xFCr")).at.line == 2);
  CHECK_THAT(refusal(with_declaration("EBCDIC-CP-US", titled("x"))).message,
             Catch::Contains("none that cahier reads"));
  const std::string utf16 = in_utf16(titled("x"), false, true);
  CHECK_THAT(refusal(utf16.substr(0, utf16.size() - 1)).message, Catch::Contains("UTF-16"));
  // A lone half of a pair.
  CHECK_THAT(refusal(std::string("\xFF\xFE<\0", 4) + std::string("\x34\xD8", 2)).message,
             Catch::Contains("UTF-16"));
}

TEST_CASE("a DOCTYPE that names an outside file is passed over; entities of its own are refused") {
  const std::string outside =
      "<!DOCTYPE score-partwise PUBLIC \"-//X//DTD\" \"http://example.invalid/partwise.dtd\">\n";
  CHECK(read(outside + piano(kTwoBars)).measures.size() == 2);
  CHECK(read("<!DOCTYPE score-partwise [<!ELEMENT x ANY>]>\n" + piano(kTwoBars)).measures.size() ==
        2);
  const Diagnostic refused = refusal(
      "<!DOCTYPE score-partwise [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>\n" + titled("&x;"));
  CHECK(refused.message == "this file declares entities of its own");
  CHECK(refused.at.line == 1);
  CHECK(read(titled("a &amp; b &lt; &#65;")).title == "a & b < A");
  CHECK(read(titled("&unknown;")).title == "&unknown;");
}

TEST_CASE("a file that is no score is named and never quoted") {
  for (const std::string& bytes :
       {std::string("root:x:0:0"), std::string("<html><body>secret</body></html>"),
        std::string("<!-- secret -->"), std::string("\0\1\2secret", 9), std::string("<"),
        std::string("<score"), std::string("%PDF-1.4")}) {
    const Diagnostic refused = refusal(bytes);
    CAPTURE(bytes);
    CHECK(refused.message == "this file is not a MusicXML score");
    CHECK(refused.source_line.empty());
    CHECK(refused.file == "a.musicxml");
  }
  CHECK(refusal("").message == "this file is empty");
  CHECK(refusal(" \n ").message == "this file is empty");
}

TEST_CASE("a damaged score is refused at its line, which is quoted") {
  const std::string whole = piano(kTwoBars);
  for (std::size_t size = 20; size + 2 < whole.size(); ++size) {
    CAPTURE(size);
    CHECK_FALSE(refusal(whole.substr(0, size)).message.empty());
  }
  std::string crossed = whole;
  crossed.replace(crossed.find("</pitch>"), 8, "</bitch>");
  const Diagnostic refused = refusal(crossed);
  CHECK(refused.message == "this is not well-formed XML");
  CHECK(refused.at.line == 8);
  CHECK_THAT(refused.source_line, Catch::Contains("</bitch>"));
}

TEST_CASE("what would fill the memory is refused before a tree is built") {
  const std::string deep = [] {
    std::string text;
    for (int depth = 0; depth < 64; ++depth) text += "<x>";
    return text;
  }();
  CHECK_THAT(refusal("<score-partwise>" + deep).message, Catch::Contains("more than 64 deep"));
  CHECK_THAT(refusal(titled(std::string(4097, 'A'))).message,
             Catch::Contains("longer than 4096 bytes"));
  CHECK(read(titled(std::string(4096, 'A'))).title.size() == 4096);
  CHECK_THAT(refusal("<score-partwise a=\"" + std::string(5000, 'A') + "\"/>").message,
             Catch::Contains("longer than 4096 bytes"));
  CHECK_THAT(refusal(titled("<![CDATA[" + std::string(5000, 'A') + "]]>")).message,
             Catch::Contains("longer than 4096 bytes"));
  // Blanks between elements are no text.
  CHECK(read(piano(std::string(5000, ' ') + kTwoBars)).measures.size() == 2);
  std::string many = "<score-partwise>";
  for (std::size_t count = 0; count < kMostXmlElements; ++count) many += "<x/>";
  CHECK_THAT(refusal(many).message, Catch::Contains("more than 2000000 XML elements"));
}

TEST_CASE("a compressed score is refused where it is not what it should be") {
  const auto message = [](const Entries& entries) { return refusal(zipped(entries)).message; };
  const std::string score = piano(kTwoBars);
  CHECK_THAT(message({{"score.xml", score}}), Catch::Contains("no META-INF/container.xml"));
  CHECK_THAT(message({{"META-INF/container.xml", container("gone.xml")}, {"score.xml", score}}),
             Catch::Contains("has no score"));
  for (const char* path : {"../score.xml", "/etc/passwd", "a\\b"})
    CHECK_THAT(message({{"META-INF/container.xml", container(path)}, {"score.xml", score}}),
               Catch::Contains("outside itself"));
  CHECK_THAT(message({{"META-INF/container.xml", "<container/>"}, {"score.xml", score}}),
             Catch::Contains("does not say which"));
  CHECK_THAT(message({{"META-INF/container.xml", container("score.xml", "application/pdf")},
                      {"score.xml", score}}),
             Catch::Contains("does not say which"));
  Entries many = sound_entries();
  for (int count = 0; count < 1000; ++count) many.emplace_back(std::to_string(count), "");
  CHECK_THAT(message(many), Catch::Contains("more than 1000 files"));
  const std::string sound = zipped(sound_entries());
  for (std::size_t size = 4; size < sound.size(); size += 7)
    CHECK_FALSE(refusal(sound.substr(0, size)).message.empty());
}

TEST_CASE("a compressed score that holds a name twice is refused") {
  Entries entries = sound_entries();
  entries.emplace_back("scorf.xml", "not it");
  std::string bytes = zipped(entries);
  for (std::size_t at = bytes.find("scorf.xml"); at != std::string::npos;
       at = bytes.find("scorf.xml", at))
    bytes[at + 4] = 'e';
  CHECK_THAT(refusal(bytes).message, Catch::Contains("two files of one name"));
}

TEST_CASE("an error in a compressed score names the file and what is inside") {
  Entries entries = sound_entries();
  entries[1].second = piano(measure("1", attributes("0/4") + note("C4", 4)));
  const Diagnostic refused = refusal(zipped(entries));
  CHECK(refused.file == "a.musicxml");
  CHECK(refused.at.line > 1);
  REQUIRE(refused.chain.size() == 2);
  CHECK(refused.chain[0] == "in bar 1 of part P1 (Piano)");
  CHECK(refused.chain[1] == "in score.xml, which it holds");
}

TEST_CASE("an archive that lies about a size is refused, however much it unpacks to") {
  Entries entries = sound_entries();
  entries[1].second += std::string(1 << 20, ' ');
  std::string bytes = zipped(entries);
  // The sizes as they stand in the headers, little end first.
  const std::size_t size = entries[1].second.size();
  const std::string told = {static_cast<char>(size & 0xFF), static_cast<char>(size >> 8 & 0xFF),
                            static_cast<char>(size >> 16 & 0xFF), '\0'};
  int changed = 0;
  for (std::size_t at = bytes.find(told); at != std::string::npos; at = bytes.find(told, at + 4)) {
    bytes.replace(at, 4, std::string("\x64\0\0\0", 4));
    ++changed;
  }
  REQUIRE(changed >= 1);
  CHECK_FALSE(refusal(bytes).message.empty());
  CHECK(read(zipped(entries)).measures.size() == 2);
}
