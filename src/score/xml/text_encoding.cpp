#include "score/xml/text_encoding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "score/xml/score_text.h"
#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::string_view kSaveHint = "save it again as UTF-8, which every notation program can";

bool is_utf16(std::string_view bytes, bool& big_end_first) {
  big_end_first = bytes.starts_with("\xFE\xFF") || bytes.starts_with(std::string_view("\0<", 2));
  return big_end_first || bytes.starts_with("\xFF\xFE") ||
         bytes.starts_with(std::string_view("<\0", 2));
}

std::string from_utf16(const std::string& file, std::string_view bytes, bool big_end_first) {
  const auto refuse = [&] {
    refuse_score_file(file, "this file begins as UTF-16 and is not UTF-16 throughout",
                      std::string(kSaveHint));
  };
  if (bytes.size() % 2 != 0) refuse();
  const auto unit = [&](std::size_t at) {
    const auto one = static_cast<unsigned char>(bytes[at]);
    const auto two = static_cast<unsigned char>(bytes[at + 1]);
    return static_cast<char32_t>(big_end_first ? one << 8 | two : two << 8 | one);
  };
  std::string text;
  text.reserve(bytes.size() / 2 + bytes.size() / 8);
  for (std::size_t at = 0; at < bytes.size(); at += 2) {
    char32_t character = unit(at);
    if (at == 0 && character == 0xFEFF) continue;
    if (character >= 0xD800 && character < 0xE000) {
      const char32_t low = at + 2 < bytes.size() ? unit(at + 2) : 0;
      if (character >= 0xDC00 || low < 0xDC00 || low >= 0xE000) refuse();
      character = 0x10000 + ((character - 0xD800) << 10) + (low - 0xDC00);
      at += 2;
    }
    if (character < 0x80)
      text += static_cast<char>(character);
    else
      text += encode_utf8(character);
  }
  return text;
}

// 0x80 to 0x9F (WHATWG Encoding Standard, index windows-1252); ISO-8859-1 has controls there, which
// no score means.
constexpr std::array<char32_t, 32> kWindows1252 = {
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

std::string from_windows_1252(std::string_view bytes) {
  std::string text;
  text.reserve(bytes.size() + bytes.size() / 16);
  for (const char byte : bytes) {
    const auto value = static_cast<unsigned char>(byte);
    if (value < 0x80)
      text += byte;
    else
      text += encode_utf8(value < 0xA0 ? kWindows1252[value - 0x80] : value);
  }
  return text;
}

// What <?xml … encoding="…"?> says, in small letters; empty when it says nothing.
std::string declared(std::string_view bytes) {
  if (!bytes.starts_with("<?xml")) return {};
  const std::string_view head = bytes.substr(0, std::min<std::size_t>(bytes.find("?>"), 200));
  const std::size_t key = head.find("encoding");
  if (key == std::string_view::npos) return {};
  const std::size_t open = head.find_first_of("\"'", key);
  if (open == std::string_view::npos) return {};
  const std::size_t close = head.find(head[open], open + 1);
  if (close == std::string_view::npos) return {};
  std::string name(head.substr(open + 1, close - open - 1));
  for (char& letter : name)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return name;
}

}  // namespace

std::string to_utf8(const std::string& file, std::string bytes) {
  bool big_end_first = false;
  if (is_utf16(bytes, big_end_first)) return from_utf16(file, bytes, big_end_first);
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.erase(0, 3);
  if (const std::size_t first = bytes.find_first_not_of(" \t\r\n");
      first != std::string::npos && bytes[first] != '<')
    refuse_score_file(file, "this file is not a MusicXML score",
                      "export the score from the notation program as MusicXML: .musicxml, .xml or "
                      ".mxl");
  const std::string name = declared(bytes);
  constexpr std::array<std::string_view, 7> kOneByte = {
      "windows-1252", "cp1252", "iso-8859-1", "latin1", "iso_8859-1", "x-cp1252", "l1"};
  if (std::ranges::find(kOneByte, name) != kOneByte.end()) return from_windows_1252(bytes);
  constexpr std::array<std::string_view, 6> kUtf8 = {"",         "utf-8", "utf8",
                                                     "us-ascii", "ascii", "utf-16"};
  if (std::ranges::find(kUtf8, name) == kUtf8.end())
    refuse_score_file(file, "the encoding this file declares is none that cahier reads",
                      std::string(kSaveHint));
  if (const auto bad = first_invalid_utf8(bytes))
    ScoreText(file, "", std::move(bytes))
        .refuse(*bad, "this byte is not UTF-8", std::string(kSaveHint));
  return bytes;
}

}  // namespace cahier
