#include "text/line_breaks.h"

#include <string_view>

#include "text/utf8.h"

namespace cahier {
namespace {

bool is_joining(char32_t c) {
  return c == U'-' || c == U'\u2010' || c == U'\u2012' || c == U'\u2013' || c == U'\u2014' ||
         c == U'/';
}

bool is_closing(char32_t c) {
  constexpr std::u32string_view kClosing = U".,;:!?)]}%\u2026\u2019\u201D\u00BB\u203A\u2013\u2014/";
  return kClosing.find(c) != std::u32string_view::npos;
}

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }

}  // namespace

bool begins_badly(const std::vector<char32_t>& characters, std::size_t at) {
  while (at < characters.size() && characters[at] == U' ') ++at;
  return at < characters.size() && (is_closing(characters[at]) || is_combining(characters[at]));
}

bool may_break_before(const std::vector<char32_t>& characters, std::size_t at) {
  const char32_t after = characters[at];
  if (begins_badly(characters, at)) return false;
  if (after == U' ' || characters[at - 1] == U' ') return true;
  if (is_joining(after)) return false;
  std::size_t joined = at;  // one past what the signs before `at` join to what follows
  while (joined > 0 && is_joining(characters[joined - 1])) --joined;
  if (joined == at || joined == 0 || characters[joined - 1] == U' ') return false;
  return !(is_digit(characters[joined - 1]) && is_digit(after));
}

}  // namespace cahier
