// Whether a PDF is one of this program's own.
#pragma once

#include <string>
#include <string_view>

namespace cahier {

// True when the document information names this program as the creator and nothing was appended
// since: what another program changes is somebody's work.
bool is_own_pdf(std::string_view bytes);

// True where the document information of such a PDF names a packet, and not this one.
bool is_of_other_packet(std::string_view bytes, std::string_view packet);

// As which the document information names a packet.
std::string packet_keyword(std::string_view packet);

}  // namespace cahier
