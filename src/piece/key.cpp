#include "piece/key.h"

#include <fmt/core.h>

#include <array>
#include <vector>

namespace cahier {
namespace {

constexpr std::array<std::string_view, 8> kCounts = {"no",   "one",  "two", "three",
                                                     "four", "five", "six", "seven"};

bool is_letter(char each) { return (each >= 'a' && each <= 'z') || (each >= 'A' && each <= 'Z'); }

// Words in lower case, with the signs ♯ ♭ and their stand-ins # and b spelled out; the letter of
// the key stays in front. Empty when there is a character no key has.
std::vector<std::string> words_of(std::string_view text) {
  std::string spelled;
  for (std::size_t at = 0; at < text.size();) {
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("♯") || rest.starts_with("♭")) {
      spelled += rest.starts_with("♯") ? " sharp " : " flat ";
      at += std::string_view("♯").size();
      continue;
    }
    const char letter = text[at++];
    // A hyphen joins words, as in B-flat; it is no minus sign.
    const bool joins =
        at >= 2 && at < text.size() && is_letter(text[at - 2]) && is_letter(text[at]);
    if (letter == '#') {
      spelled += " sharp ";
    } else if (letter == ' ' || (letter == '-' && joins)) {
      spelled += ' ';
    } else if (letter >= 'A' && letter <= 'Z') {
      spelled += static_cast<char>(letter - 'A' + 'a');
    } else if ((letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9')) {
      spelled += letter;
    } else {
      return {};
    }
  }
  std::vector<std::string> words(1);
  for (const char letter : spelled) {
    if (letter != ' ') {
      words.back() += letter;
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::optional<int> count_of(std::string_view word) {
  for (std::size_t count = 0; count < kCounts.size(); ++count) {
    if (word == kCounts[count] || word == std::to_string(count)) return static_cast<int>(count);
  }
  return std::nullopt;
}

std::optional<Key> counted(const std::vector<std::string>& words) {
  if (words.size() == 4 && words[0] == "no" && words[2] == "or" &&
      ((words[1] == "sharps" && words[3] == "flats") ||
       (words[1] == "flats" && words[3] == "sharps"))) {
    return Key{0, "no sharps or flats"};
  }
  if (words.size() != 2) return std::nullopt;
  const auto count = count_of(words[0]);
  const bool sharps = words[1] == "sharp" || words[1] == "sharps";
  const bool flats = words[1] == "flat" || words[1] == "flats";
  if (!count || (!sharps && !flats)) return std::nullopt;
  if (*count == 0) return Key{0, "no sharps or flats"};
  return Key{sharps ? *count : -*count,
             fmt::format("{} {}{}", *count, sharps ? "sharp" : "flat", *count == 1 ? "" : "s")};
}

std::optional<Key> named(std::vector<std::string> words) {
  if (words.empty()) return std::nullopt;
  // "bb minor" is the B flat of someone without a flat sign; "b minor" is B.
  if (words[0].size() == 2 && words[0][1] == 'b') {
    words[0].pop_back();
    words.insert(words.begin() + 1, "flat");
  }
  const bool altered = words.size() == 3 && (words[1] == "sharp" || words[1] == "flat");
  if (words[0].size() != 1 || (words.size() != 2 && !altered)) return std::nullopt;
  const std::string& mode = words.back();
  if (mode != "major" && mode != "minor") return std::nullopt;
  constexpr std::string_view kByFifths = "fcgdaeb";  // F major has one flat
  const std::size_t place = kByFifths.find(words[0][0]);
  if (place == std::string_view::npos) return std::nullopt;
  int fifths = static_cast<int>(place) - 1 - (mode == "minor" ? 3 : 0);
  std::string sign;
  if (altered) {
    fifths += words[1] == "sharp" ? 7 : -7;
    sign = words[1] == "sharp" ? "♯" : "♭";
  }
  if (fifths < -7 || fifths > 7) return std::nullopt;
  return Key{fifths,
             fmt::format("{}{} {}", static_cast<char>(words[0][0] - 'a' + 'A'), sign, mode)};
}

}  // namespace

std::optional<Key> parse_key(std::string_view text) {
  const std::vector<std::string> words = words_of(text);
  if (const auto key = counted(words)) return key;
  return named(words);
}

}  // namespace cahier
