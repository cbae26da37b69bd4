// What a plan is based on besides the pieces: dates, method, wishes, and what the logs say was
// done.
#pragma once

#include <vector>

#include "cli/piece_files.h"
#include "cli/request.h"
#include "log/written_log.h"
#include "plan/terms.h"
#include "text/templates.h"

namespace cahier {

// The method that is asked for. Throws InputError.
Method read_terms_method(const Request& request, const TypedLine& typed,
                         const Templates& templates);

// For whom and for when: the command line over the studio, the studio over the piece's file.
Occasion occasion_of(const Request& request, const PieceFiles& files);

// Reads the logs as far as possible. Throws InputError when a log cannot be used at all.
std::vector<Log> read_logs(const std::vector<Source>& sources, Diagnostics& diagnostics);

// The terms of the plan that is asked for, with the record of its logs. `today` is the first day
// when nothing else is said. Adds warnings to `diagnostics`, which may hold problems of reading the
// logs; throws InputError where there are errors.
Terms read_terms(const Request& request, const TypedLine& typed, Date today,
                 const PieceFiles& files, const Method& method, const std::vector<Log>& logs,
                 Diagnostics& diagnostics);

// Whether the dates of every workbook in the logs are known: from the request, the programme or
// the logs themselves.
bool dates_are_known(const Request& request, const PieceFiles& files, const std::vector<Log>& logs);

// Reads logs with their pieces as `print` would for a workbook that begins after everything in the
// logs, or on --from: adds what contradicts the pieces or the logs themselves.
// REQUIRES: dates_are_known.
void compare_logs(const Request& request, const PieceFiles& files, const Method& method,
                  const std::vector<Log>& logs, Diagnostics& diagnostics);

}  // namespace cahier
