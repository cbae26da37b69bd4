// What tests look for in the words of a sheet.
#pragma once

#include <algorithm>
#include <string>

namespace cahier::sample {

inline bool has(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

inline int count_of(const std::string& text, const std::string& what) {
  int number = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++number;
  return number;
}

// A paragraph that was broken into lines.
inline std::string one_line(std::string words) {
  std::replace(words.begin(), words.end(), '\n', ' ');
  return words;
}

}  // namespace cahier::sample
