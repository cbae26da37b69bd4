#include "import/yaml_quoted.h"

#include <vector>

#include "text/utf8.h"

namespace cahier {

std::string plain_line(std::string_view text, std::size_t most) {
  constexpr char32_t kNoCharacter = 0xFFFD;
  std::vector<char32_t> kept;
  for (char32_t character : decode_utf8(text)) {
    if (character == '\n' || character == '\t' || character == '\r') character = ' ';
    if (is_control(character) || character == kNoCharacter || character >= 0xFFFE) continue;
    if (character == ' ' && (kept.empty() || kept.back() == ' ')) continue;
    kept.push_back(character);
    if (kept.size() == most) break;
  }
  while (!kept.empty() && kept.back() == ' ') kept.pop_back();
  return encode_utf8(kept);
}

std::string yaml_quoted(std::string_view text, std::size_t most) {
  std::string quoted = "\"";
  for (const char letter : plain_line(text, most)) {
    if (letter == '"' || letter == '\\') quoted += '\\';
    quoted += letter;
  }
  return quoted + "\"";
}

}  // namespace cahier
