#include "text/utf8.h"

#include <utf8cpp/utf8.h>

#include <iterator>

namespace cahier {
namespace {

constexpr char32_t kReplacement = 0xFFFD;

bool is_character(char32_t code) { return code < 0xD800 || (code > 0xDFFF && code <= 0x10FFFF); }

}  // namespace

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
  const std::size_t at = utf8::find_invalid(text);
  return at == std::string_view::npos ? std::nullopt : std::optional(at);
}

std::vector<char32_t> decode_utf8(std::string_view text) {
  std::vector<char32_t> characters;
  characters.reserve(text.size());
  auto at = text.begin();
  while (true) {
    const auto broken = utf8::find_invalid(at, text.end());
    utf8::unchecked::utf8to32(at, broken, std::back_inserter(characters));
    if (broken == text.end()) return characters;
    characters.push_back(kReplacement);
    at = broken + 1;
  }
}

std::string encode_utf8(char32_t character) {
  std::string text;
  utf8::append(is_character(character) ? character : kReplacement, text);
  return text;
}

std::string encode_utf8(const std::vector<char32_t>& characters) {
  std::string text;
  for (const char32_t character : characters) text += encode_utf8(character);
  return text;
}

std::size_t count_characters(std::string_view text) { return decode_utf8(text).size(); }

bool is_control(char32_t character) {
  return character < 0x20 || (character >= 0x7F && character < 0xA0) || character == 0x061C ||
         (character >= 0x200E && character <= 0x200F) ||
         (character >= 0x2028 && character <= 0x202E) ||
         (character >= 0x2066 && character <= 0x2069) || character == 0xFEFF;
}

bool is_combining(char32_t character) { return character >= 0x0300 && character < 0x0370; }

}  // namespace cahier
