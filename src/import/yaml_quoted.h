// Texts of a score, made fit for a piece file.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace cahier {

// On one line, without control characters, of `most` characters at most.
std::string plain_line(std::string_view text, std::size_t most);

// That in double quotes, as YAML reads it back.
std::string yaml_quoted(std::string_view text, std::size_t most = 200);

}  // namespace cahier
