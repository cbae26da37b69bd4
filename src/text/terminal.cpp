#include "text/terminal.h"

#include <vector>

#include "text/utf8.h"

namespace cahier {
namespace {

constexpr char32_t kShownForControls = 0xFFFD;

std::string without_controls(std::string_view text, bool keep_line_ends) {
  std::vector<char32_t> characters = decode_utf8(text);
  for (char32_t& character : characters) {
    if (keep_line_ends && character == U'\n') continue;
    if (character == U'\t') character = U' ';
    if (is_control(character)) character = kShownForControls;
  }
  return encode_utf8(characters);
}

}  // namespace

std::string for_terminal(std::string_view text) { return without_controls(text, true); }

std::string line_for_terminal(std::string_view text) { return without_controls(text, false); }

}  // namespace cahier
