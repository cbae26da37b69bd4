#include "score/notation/navigation_words.h"

#include <algorithm>
#include <array>

namespace cahier {
namespace {

bool is_blank(char letter) {
  return letter == ' ' || letter == '\n' || letter == '\r' || letter == '\t';
}

// Small letters, without full stops; "d. c." becomes "dc".
std::string bare(std::string_view words) {
  std::string text;
  for (const char letter : plain_words(words)) {
    if (letter == '.' || letter == ',') continue;
    text += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  }
  for (const std::string_view pair : {"d c", "d s"})
    if (text.starts_with(pair) && (text.size() == 3 || text[3] == ' ')) text.erase(1, 1);
  return text;
}

bool begins(std::string_view text, std::string_view word) {
  return text.starts_with(word) && (text.size() == word.size() || text[word.size()] == ' ');
}

}  // namespace

std::string plain_words(std::string_view words) {
  std::string text;
  bool in_tag = false;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const char letter = words[at];
    const bool opens = letter == '<' && words.find('>', at) != std::string_view::npos;
    in_tag = in_tag || opens;
    if (!in_tag) {
      if (!is_blank(letter))
        text += letter;
      else if (!text.empty() && text.back() != ' ')
        text += ' ';
    }
    if (letter == '>') in_tag = false;
  }
  while (text.ends_with(' ')) text.pop_back();
  return text;
}

NavigationWord navigation_word(std::string_view words) {
  constexpr std::size_t kLongest = 60;  // longer words are an instruction, not a sign
  const std::string text = bare(words);
  if (text.size() > kLongest) return NavigationWord::none;
  if (text == "fine" || text == "fin") return NavigationWord::fine;
  if (begins(text, "dc") || begins(text, "da capo")) return NavigationWord::dacapo;
  if (begins(text, "ds") || begins(text, "dal segno")) return NavigationWord::dalsegno;
  if (text == "to coda" || text == "al coda" || text == "alla coda") return NavigationWord::to_coda;
  return NavigationWord::none;
}

}  // namespace cahier
