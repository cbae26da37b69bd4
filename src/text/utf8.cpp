#include "text/utf8.h"

#include <algorithm>

namespace cahier {
namespace {

struct Decoded {
  char32_t character;
  std::size_t length;  // bytes used, at least one
  bool valid;
};

constexpr char32_t kReplacement = 0xFFFD;

bool is_surrogate(char32_t character) { return character >= 0xD800 && character <= 0xDFFF; }

// REQUIRES: `at` lies inside `text`.
Decoded decode_one(std::string_view text, std::size_t at) {
  const Decoded broken{kReplacement, 1, false};
  const auto byte = [&](std::size_t index) { return static_cast<unsigned char>(text[index]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) return {lead, 1, true};
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || at + length > text.size()) return broken;
  char32_t character = lead & (0x7Fu >> length);
  for (std::size_t index = 1; index < length; ++index) {
    if ((byte(at + index) & 0xC0) != 0x80) return broken;
    character = (character << 6) | (byte(at + index) & 0x3Fu);
  }
  constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  if (character < kLeast[length] || character > 0x10FFFF || is_surrogate(character)) return broken;
  return {character, length, true};
}

}  // namespace

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Decoded decoded = decode_one(text, at);
    if (!decoded.valid) return at;
    at += decoded.length;
  }
  return std::nullopt;
}

std::vector<char32_t> decode_utf8(std::string_view text) {
  std::vector<char32_t> characters;
  characters.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Decoded decoded = decode_one(text, at);
    characters.push_back(decoded.character);
    at += decoded.length;
  }
  return characters;
}

std::string encode_utf8(char32_t character) {
  if (character > 0x10FFFF || is_surrogate(character)) character = kReplacement;
  const auto tail = [&](int shift) {
    return static_cast<char>(0x80 | ((character >> shift) & 0x3F));
  };
  if (character < 0x80) return {static_cast<char>(character)};
  if (character < 0x800) return {static_cast<char>(0xC0 | (character >> 6)), tail(0)};
  if (character < 0x10000) {
    return {static_cast<char>(0xE0 | (character >> 12)), tail(6), tail(0)};
  }
  return {static_cast<char>(0xF0 | (character >> 18)), tail(12), tail(6), tail(0)};
}

std::string encode_utf8(const std::vector<char32_t>& characters) {
  std::string text;
  for (const char32_t character : characters) text += encode_utf8(character);
  return text;
}

std::size_t count_characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) at += decode_one(text, at).length;
  return count;
}

bool is_control(char32_t character) {
  return character < 0x20 || (character >= 0x7F && character < 0xA0) ||
         (character >= 0x200E && character <= 0x200F) ||
         (character >= 0x2028 && character <= 0x202E) ||
         (character >= 0x2066 && character <= 0x2069) || character == 0xFEFF;
}

}  // namespace cahier
