// What was typed becomes a request.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cli/request.h"
#include "cli/typed_line.h"

namespace cahier {

// Options as typed; empty when not given.
struct TypedOptions {
  std::string piece;
  std::vector<std::string> files;
  std::string student, teacher, jobs;
  std::string report_to, week, keep;
  std::vector<std::string> logs;
  std::string by, from, today, output, packet = "full", format = "pdf", paper = "a4", staff,
                                       punched = "inner", weeks;
  std::string minutes, days_off, temper, order, blocks, lesson, new_to_performing, repetitions,
      chunk_bars, dice, part;
  std::string templates, language = "en", method = "steady";
  bool json = false, why = false, spacing = false, traps = false, anyway = false;
  bool clear_print = false, large_print = false, booklet = false, replace = false;
  bool allow_outside = false;
};

// The request of a command, "print". Throws InputError that names every wrong value.
Request read_request(std::string_view name, const TypedOptions& typed, const TypedLine& line);

}  // namespace cahier
