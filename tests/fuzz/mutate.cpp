#include "mutate.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace fuzz {
namespace {

using std::string_view_literals::operator""sv;

// Numbers at the edges, signs of YAML, and words that stand for something else elsewhere.
constexpr std::array kUnlikely = {"0"sv,
                                  "-1"sv,
                                  "1"sv,
                                  "16"sv,
                                  "17"sv,
                                  "4294967296"sv,
                                  "1e9"sv,
                                  "0.0001"sv,
                                  "nan"sv,
                                  "inf"sv,
                                  "~"sv,
                                  "\"\""sv,
                                  "''"sv,
                                  "[]"sv,
                                  "{}"sv,
                                  "[["sv,
                                  "}"sv,
                                  "&a"sv,
                                  "*a"sv,
                                  "!!int 3"sv,
                                  "<<"sv,
                                  "|"sv,
                                  ">-"sv,
                                  "? "sv,
                                  "- "sv,
                                  ": "sv,
                                  "# "sv,
                                  "---\n"sv,
                                  "\t"sv,
                                  "\r"sv,
                                  "\0"sv,
                                  "\xff"sv,
                                  "\xc3"sv,
                                  "\xe2\x80\xae"sv,
                                  "é"sv,
                                  "𝄞"sv,
                                  "1-16"sv,
                                  "16-1"sv,
                                  "0-0"sv,
                                  "1-99999"sv,
                                  "3/0"sv,
                                  "64/4"sv,
                                  "1+1+1+1/8"sv,
                                  "mon"sv,
                                  "2027-02-30"sv,
                                  "2027-02-20..2027-02-10"sv,
                                  "yes"sv,
                                  "no"sv,
                                  "same as: 1-8"sv,
                                  "phrases: 1"sv,
                                  "times: 99"sv,
                                  "level: 5"sv,
                                  "bars: 10000"sv,
                                  "pickup: 0.5"sv,
                                  "{number}"sv,
                                  "{{"sv,
                                  "{"sv};

std::size_t line_start(const std::string& text, std::size_t at) {
  const std::size_t before = at == 0 ? std::string::npos : text.rfind('\n', at - 1);
  return before == std::string::npos ? 0 : before + 1;
}

std::size_t line_end(const std::string& text, std::size_t at) {
  const std::size_t end = text.find('\n', at);
  return end == std::string::npos ? text.size() : end + 1;
}

bool in_word(char letter) {
  return (letter >= '0' && letter <= '9') || (letter >= 'a' && letter <= 'z') || letter == '-' ||
         letter == '/';
}

void change(std::string& text, const std::string& other, Chance& chance) {
  if (text.empty()) {
    text = kUnlikely[chance.below(kUnlikely.size())];
    return;
  }
  const std::size_t at = chance.below(text.size());
  const std::size_t begin = line_start(text, at);
  const std::size_t end = line_end(text, at);
  switch (chance.below(9)) {
    case 0:
      text[at] = static_cast<char>(static_cast<unsigned char>(text[at]) ^ (1u << chance.below(8)));
      break;
    case 1:
      text.erase(at, 1 + chance.below(8));
      break;
    case 2:
      text.erase(begin, end - begin);
      break;
    case 3:
      text.insert(begin, text.substr(begin, end - begin));
      break;
    case 4: {
      const std::string line = text.substr(begin, end - begin);
      text.erase(begin, end - begin);
      text.insert(line_start(text, chance.below(text.size() + 1)), line);
      break;
    }
    case 5: {
      if (other.empty()) break;
      const std::size_t from = chance.below(other.size());
      const std::size_t start = line_start(other, from);
      text.insert(begin, other.substr(start, line_end(other, from) - start));
      break;
    }
    case 6:
      text.insert(at, kUnlikely[chance.below(kUnlikely.size())]);
      break;
    default: {  // a number or a word by another
      std::size_t first = at;
      while (first > 0 && in_word(text[first - 1])) --first;
      std::size_t last = at;
      while (last < text.size() && in_word(text[last])) ++last;
      text.replace(first, last - first, kUnlikely[chance.below(kUnlikely.size())]);
    }
  }
}

}  // namespace

std::uint64_t Chance::next() {
  state_ += 0x9E3779B97F4A7C15u;
  std::uint64_t mixed = state_;
  mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9u;
  mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBu;
  return mixed ^ (mixed >> 31);
}

std::string damaged(const std::string& text, const std::string& other, Chance& chance) {
  std::string result = text;
  for (std::size_t changes = 1 + chance.below(6); changes > 0; --changes)
    change(result, other, chance);
  return result;
}

}  // namespace fuzz
