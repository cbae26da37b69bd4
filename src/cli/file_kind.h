// What a file is, so that a file that is none of ours is never quoted.
#pragma once

#include <string_view>

#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

enum class FileKind { piece, programme, studio, log, method, packet, words, stranger };

// What a file is, by what only its kind has: its keys, or, where it is not YAML, the beginnings of
// its lines. A file of nothing but blank lines and comments is a stranger.
FileKind kind_of(const Source& source);

// "a piece", "a log"; a stranger is "none of these".
std::string_view called(FileKind kind);

// False for a stranger, whose content the messages must not show: then it adds one error that says
// what was `expected` ("a piece or a programme"). An empty one is left to its reader.
bool admit(const Source& source, std::string_view expected, Diagnostics& diagnostics);

}  // namespace cahier
