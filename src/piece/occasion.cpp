#include "piece/occasion.h"

#include <fmt/format.h>

namespace cahier {
namespace {

std::optional<Date> read_day(YamlFields& fields, std::string_view key) {
  const auto text = fields.text(key);
  if (!text) return std::nullopt;
  const std::optional<Date> date = parse_date(*text);
  if (!date)
    fields.diagnostics().error(fields.source(), fields.node(key)->at,
                               fmt::format("\"{}\" is not a valid date", *text),
                               "write year, month and day, as in 2027-03-20");
  return date;
}

}  // namespace

Occasion Occasion::over(const Occasion& fallback) const {
  Occasion both = *this;
  if (!both.by) {
    both.by = fallback.by;
    both.by_at = fallback.by_at;
  }
  if (!both.from) both.from = fallback.from;
  if (both.student.empty()) both.student = fallback.student;
  if (both.teacher.empty()) both.teacher = fallback.teacher;
  return both;
}

Occasion read_shared_occasion(YamlFields& fields) {
  Occasion occasion;
  occasion.by = read_day(fields, "by");
  if (occasion.by) occasion.by_at = fields.node("by")->at;
  occasion.from = read_day(fields, "from");
  occasion.teacher = fields.text("teacher", kLongestName).value_or("");
  return occasion;
}

Occasion read_occasion(YamlFields& fields) {
  Occasion occasion = read_shared_occasion(fields);
  occasion.student = fields.text("student", kLongestName).value_or("");
  return occasion;
}

}  // namespace cahier
