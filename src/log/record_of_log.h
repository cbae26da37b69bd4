// What was really done, from the logs of one piece or programme.
#pragma once

#include <vector>

#include "log/written_log.h"
#include "plan/terms.h"
#include "text/diagnostics.h"

namespace cahier {

// What becomes of entries and editions that are not before the first day of the new workbook.
enum class LaterEntries { refused, left_out };

// Reads the logs as one. The line of its edition says what a code, a cue start or a chunk was; else
// the planner works it out again from `terms`. Adds every contradiction to `diagnostics`; the
// record may be used only when no error was added. An edition that begins on terms.from is the new
// workbook itself. What an edition keeps was learned before it, whatever the log says.
Record record_of(const std::vector<Log>& logs, const std::vector<Piece>& pieces, const Terms& terms,
                 Diagnostics& diagnostics, LaterEntries later = LaterEntries::refused);

}  // namespace cahier
