// From the encodings that scores are written in to UTF-8.
#pragma once

#include <string>

namespace cahier {

// The bytes of an XML file as UTF-8 without a byte order mark. Read are UTF-8 and UTF-16 in either
// order of bytes, each with or without its mark (XML 1.0, appendix F), and by declaration US-ASCII,
// ISO-8859-1 and windows-1252. Throws InputError that names `file` for any other encoding and for
// bytes that are not what is declared.
std::string to_utf8(const std::string& file, std::string bytes);

}  // namespace cahier
