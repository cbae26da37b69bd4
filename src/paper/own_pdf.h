// Whether a PDF is one of this program's own.
#pragma once

#include <string_view>

namespace cahier {

// True when the document information names this program as the creator and nothing was appended
// since: what another program changes is somebody's work.
bool is_own_pdf(std::string_view bytes);

}  // namespace cahier
