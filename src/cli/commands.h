// The commands, one function each; they return the exit code: 0 done, 1 the work does not fit.
// They throw InputError (exit code 2) and FileError (exit code 3).
#pragma once

#include "cli/request.h"
#include "text/date.h"

namespace cahier {

int print_workbook(const Request& request, const TypedLine& typed, Date today);
int show_plan(const Request& request, const TypedLine& typed, Date today);
int write_week_log(const Request& request, const TypedLine& typed, Date today);
int check_files(const Request& request, const TypedLine& typed);
int import_score(const Request& request);
int write_starter(const Request& request);

}  // namespace cahier
