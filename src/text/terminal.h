// The one gate to a terminal: nothing that passes it moves the cursor, rings, or turns text around.
#pragma once

#include <string>
#include <string_view>

namespace cahier {

// Any text for a terminal: line ends stay, tabs become spaces, and every other control character
// (see is_control) and every byte that is not UTF-8 becomes U+FFFD.
std::string for_terminal(std::string_view text);

// The same for what must stay on one line, such as the name of a file: line ends become U+FFFD.
std::string line_for_terminal(std::string_view text);

}  // namespace cahier
