#include "piece/short_title.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "text/utf8.h"

namespace cahier {
namespace {

constexpr std::array<std::string_view, 17> kEnds = {
    ", ",    ": ",   "; ",    " (",   " [",     " – ",    " — ",   " - ",  " in ",
    " op. ", " op.", " Op. ", " Op.", " opus ", " Opus ", " no. ", " No. "};
// A title does not end with one of these.
constexpr std::array<std::string_view, 14> kOpenWords = {
    "a", "an", "the", "of", "for", "and", "in", "on", "to", "at", "by", "with", "from", "or"};

std::size_t length(std::string_view text) { return decode_utf8(text).size(); }

std::string_view before_the_first_end(std::string_view title) {
  std::size_t end = title.size();
  for (const std::string_view sign : kEnds)
    if (const std::size_t at = title.find(sign); at > 0) end = std::min(end, at);
  return title.substr(0, end);
}

std::string first_letters(std::string_view word) {
  const std::vector<char32_t> letters = decode_utf8(word);
  std::size_t end = std::min(letters.size(), kLongestShortTitle);
  while (end > 1 && end < letters.size() && is_combining(letters[end])) --end;
  std::string text;
  for (std::size_t at = 0; at < end; ++at) text += encode_utf8(letters[at]);
  return text;
}

}  // namespace

std::string shortened_title(std::string_view title) {
  if (length(title) <= kLongestShortTitle) return std::string(title);
  std::string_view text = before_the_first_end(title);
  while (length(text) > kLongestShortTitle) {
    const std::size_t blank = text.rfind(' ');
    if (blank == std::string_view::npos || blank == 0) return first_letters(text);
    text = text.substr(0, blank);
  }
  for (std::size_t blank = text.rfind(' ');
       blank != std::string_view::npos && blank > 0 &&
       std::ranges::find(kOpenWords, text.substr(blank + 1)) != kOpenWords.end();
       blank = text.rfind(' '))
    text = text.substr(0, blank);
  return std::string(text);
}

std::string short_title(const Piece& piece) {
  return piece.short_title.empty() ? shortened_title(piece.title) : piece.short_title;
}

std::vector<std::string> short_titles(const std::vector<const Piece*>& pieces) {
  std::vector<std::string> plain;
  for (const Piece* piece : pieces) plain.push_back(short_title(*piece));
  std::vector<std::string> titles = plain;
  for (std::size_t at = 0; at < plain.size(); ++at)
    if (std::ranges::count(plain, plain[at]) > 1)
      titles[at] = fmt::format("{}. {}", at + 1, plain[at]);
  return titles;
}

}  // namespace cahier
