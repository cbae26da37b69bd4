#include "text/utf8.h"

#include "catch.h"

using namespace cahier;

TEST_CASE("well-formed UTF-8 is accepted and counted in characters") {
  CHECK_FALSE(first_invalid_utf8("Dvořák № “B♭” 𝄞"));
  CHECK(count_characters("Dvořák") == 6);
  CHECK(count_characters("B♭") == 2);
  CHECK(count_characters("𝄞") == 1);
}

// The Unicode Standard, table 3-7 (value from memory).
TEST_CASE("ill-formed UTF-8 is found where it begins") {
  CHECK(first_invalid_utf8("ab\xF8z") == 2);
  CHECK(first_invalid_utf8("a\xC0\x80") == 1);         // overlong
  CHECK(first_invalid_utf8("\xE0\x80\x80") == 0);      // overlong
  CHECK(first_invalid_utf8("\xED\xA0\x80") == 0);      // surrogate
  CHECK(first_invalid_utf8("\xF4\x90\x80\x80") == 0);  // past U+10FFFF
  CHECK(first_invalid_utf8("a\xE2\x99") == 1);         // cut short
  CHECK(first_invalid_utf8("\x80") == 0);
}

TEST_CASE("each byte that is not UTF-8 becomes one replacement, and nothing else is lost") {
  const std::vector<char32_t> characters = {U'a', 0xFFFD, 0xFFFD, 0xFFFD, U'é', 0xFFFD};
  const std::string_view text = "a\xF8\xE2\x99é\xC3";
  CHECK(decode_utf8(text) == characters);
  CHECK(count_characters(text) == 6);
  CHECK(decode_utf8("\xED\xA0\x80") == std::vector<char32_t>(3, 0xFFFD));  // a surrogate
  CHECK(encode_utf8(0xD800) == "\uFFFD");
  CHECK(encode_utf8(0x110000) == "\uFFFD");
}

TEST_CASE("every character comes back from its encoding") {
  int lost = 0;
  for (char32_t character = 0; character <= 0x10FFFF; ++character) {
    if (character >= 0xD800 && character <= 0xDFFF) continue;
    const std::string text = encode_utf8(character);
    const auto back = decode_utf8(text);
    if (first_invalid_utf8(text) || back.size() != 1 || back[0] != character) ++lost;
  }
  CHECK(lost == 0);
}
