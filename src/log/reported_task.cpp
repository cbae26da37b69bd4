#include "log/reported_task.h"

#include <algorithm>

#include "piece/read_bars.h"

namespace cahier {

bool from_memory(Drill drill) {
  const Slips slips = facts_of(drill).slips;
  return slips == Slips::with_the_day || slips == Slips::on_start_sheet;
}

std::string beginning(const std::string& code, Drill drill, BarRange bars) {
  const bool starts = covers(drill, Covers::starts);
  std::string text = code.empty() ? "this " : code + ", a ";
  text += facts_of(drill).noun;
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
