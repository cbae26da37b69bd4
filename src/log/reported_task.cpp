#include "log/reported_task.h"

#include <algorithm>

#include "piece/read_bars.h"

namespace cahier {
namespace {

std::string_view noun(Drill drill) {
  switch (drill) {
    case Drill::learn:
      return "learning";
    case Drill::join:
      return "join";
    case Drill::recall:
      return "recall";
    case Drill::cue_starts:
      return "cue start";
    case Drill::slow_pass:
      return "slow pass";
    case Drill::counted_pass:
      return "counted pass";
    case Drill::run_through:
      return "run-through";
    case Drill::spoken_part:
      return "spoken part";
    case Drill::write_out:
      return "write-out";
  }
  return "task";
}

}  // namespace

bool from_memory(Drill drill) {
  return drill == Drill::recall || drill == Drill::join || drill == Drill::cue_starts ||
         drill == Drill::slow_pass || drill == Drill::counted_pass;
}

std::string beginning(const std::string& code, Drill drill, BarRange bars) {
  const bool starts = drill == Drill::cue_starts;
  std::string text = code.empty() ? "this " : code + ", a ";
  text += noun(drill);
  if (!starts) text += " of " + bars_phrase(bars, "", "");
  while (text.ends_with(' ')) text.pop_back();
  return text + (code.empty() ? " " : ", ") + (starts ? "begins at" : "includes");
}

bool earlier_in_day(const ReportedTask& a, const ReportedTask& b) {
  if (a.code.empty() || b.code.empty()) return !a.code.empty() && b.code.empty();
  if (a.code.size() != b.code.size()) return a.code.size() < b.code.size();
  return a.code < b.code;
}

BarRange around(const std::vector<int>& bars, BarRange otherwise) {
  if (bars.empty()) return otherwise;
  const auto [least, most] = std::minmax_element(bars.begin(), bars.end());
  return {*least, *most};
}

}  // namespace cahier
