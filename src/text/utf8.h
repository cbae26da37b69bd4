// UTF-8: validity, decoding and counting of characters (Unicode code points).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cahier {

// Byte offset of the first byte that does not begin a well-formed character (overlong forms,
// surrogates and values past U+10FFFF are not well-formed; The Unicode Standard, table 3-7);
// nullopt when all of `text` is valid.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);

// The characters of `text`; each ill-formed byte becomes U+FFFD.
std::vector<char32_t> decode_utf8(std::string_view text);

// One character as UTF-8; U+FFFD for what is no character.
std::string encode_utf8(char32_t character);
std::string encode_utf8(const std::vector<char32_t>& characters);

// Number of characters, each ill-formed byte counting as one.
std::size_t count_characters(std::string_view text);

// C0 and C1 controls, DEL, the line and paragraph separators and the invisible marks that turn the
// direction of text: nothing that belongs in a title or a name.
bool is_control(char32_t character);

// Accents that stand on the letter before them (Combining Diacritical Marks, U+0300 to U+036F).
bool is_combining(char32_t character);

}  // namespace cahier
