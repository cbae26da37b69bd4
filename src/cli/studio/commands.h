// Commands for a studio. They return the exit code of the worst student, and throw what is wrong
// with the studio itself as those for a piece do.
#pragma once

#include <string>

#include "cli/request.h"
#include "text/date.h"

namespace cahier {

// Writes a workbook for each student into the folder of -o, whatever is wrong with the others.
int print_studio(const Request& request, const TypedLine& typed, Date today);

// Says in a line what each student's plan comes to.
int plan_studio(const Request& request, const TypedLine& typed, Date today);

// Says everything that is wrong with the studio, its pieces and its logs; writes nothing.
int check_studio(const Request& request, const TypedLine& typed, const std::string& path,
                 Date today);

}  // namespace cahier
