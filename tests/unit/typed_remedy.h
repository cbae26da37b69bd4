// A remedy as it acts when it is typed: read by the command line, settled like any wish.
#pragma once

#include <sstream>
#include <string>
#include <vector>

#include "cli/request.h"
#include "plan/terms.h"

namespace cahier::sample {

inline Terms typed(const Terms& terms, const std::string& say) {
  std::vector<std::string> arguments = {"plan", "piece.yaml"};
  std::stringstream words(say);
  for (std::string word; words >> word;) arguments.push_back(word);
  const Request request = parse_command_line(arguments, TypedLine(arguments));
  Terms changed = terms;
  if (request.by) changed.by = *request.by;
  if (request.from) changed.from = *request.from;
  if (request.wishes.minutes) changed.minutes = *request.wishes.minutes;
  if (request.repetitions) changed.method.repetitions = *request.repetitions;
  if (request.chunk_bars) changed.method = changed.method.with_chunks_up_to(*request.chunk_bars);
  return changed;
}

// "--minutes 18 --repetitions 4" as "--minutes 18" and "--repetitions 4".
inline std::vector<std::string> options_of(const std::string& say) {
  std::vector<std::string> options;
  for (std::size_t at = 0; at < say.size();) {
    const std::size_t next = std::min(say.find(" --", at), say.size());
    options.push_back(say.substr(at, next - at));
    at = next + 1;
  }
  return options;
}

}  // namespace cahier::sample
