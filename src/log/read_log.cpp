#include "log/read_log.h"

#include <fmt/format.h>

#include <algorithm>

#include "log/read_log_values.h"

namespace cahier {
namespace {

constexpr std::string_view kEntryHint =
    "begin each entry with a hyphen, as in - {date: 2027-01-05, done: [1, 2], minutes: 14}";

class DayReader {
 public:
  explicit DayReader(YamlFields& fields) : fields_(fields) {}

  std::optional<LoggedDay> read() {
    const auto date = read_log_date(fields_, "date");
    if (fields_.lacks("date"))
      fields_.missing("date", "write the day this entry is about, as in date: 2027-01-05");
    LoggedDay day;
    read_piece(day);
    read_done(day, date ? std::optional(date->value) : std::nullopt);
    day.minutes = read_log_minutes(fields_);
    read_slips(day);
    read_starts(day);
    read_runs(day);
    day.learned = read_logged_bars(fields_, "learned", true);
    day.recalled = read_logged_bars(fields_, "recalled", false);
    fields_.refuse_unknown();
    if (!date) return std::nullopt;
    day.date = *date;
    return day;
  }

 private:
  void read_piece(LoggedDay& day) {
    const YamlNode* node = fields_.node("piece");
    if (!node || is_blank(*node)) return;
    if (const auto piece = fields_.text("piece")) day.piece = {*piece, node->at};
  }

  void read_done(LoggedDay& day, std::optional<Date> date) {
    const YamlNode* node = fields_.node("done");
    if (!node || is_blank(*node)) return;
    if (node->kind == YamlNode::Kind::scalar && node->text == "all") {
      day.all = node->at;
      return;
    }
    // Without a date, a number alone is not another error.
    const Date some_day = date.value_or(Date{});
    for (const YamlNode* item : fields_.list("done"))
      if (const auto code = read_code(fields_.source(), *item, some_day, fields_.diagnostics()))
        day.done.push_back(*code);
  }

  // What was mended had slipped, and stands in the same entry among the slips.
  void read_slips(LoggedDay& day) {
    const int errors_before = fields_.diagnostics().error_count();
    day.slips = read_bars_or_none(fields_, "slips", "the bar of a slip");
    day.mended = read_bars_or_none(fields_, "mended", "a mended bar").value_or(day.mended);
    if (fields_.diagnostics().error_count() > errors_before) return;
    const std::vector<Written<int>> slips = day.slips.value_or(std::vector<Written<int>>());
    for (const Written<int>& bar : day.mended)
      if (std::ranges::count(slips, bar.value, &Written<int>::value) == 0)
        fields_.diagnostics().error(
            fields_.source(), bar.at,
            fmt::format("bar {} is mended here, but is not among the slips of this entry",
                        bar.value),
            fmt::format("what is mended had slipped: write it in both, as in slips: [{0}], "
                        "mended: [{0}]",
                        bar.value));
  }

  void read_starts(LoggedDay& day) {
    const YamlNode* node = fields_.node("starts");
    if (!node || is_blank(*node)) return;
    YamlFields inner(fields_.source(), *node, fields_.diagnostics());
    constexpr std::string_view kWhat = "the number of a cue start";
    day.hit = read_numbers(inner.source(), inner.node("hit"), kWhat, inner.diagnostics());
    day.missed = read_numbers(inner.source(), inner.node("miss"), kWhat, inner.diagnostics());
    inner.refuse_unknown();
  }

  void read_runs(LoggedDay& day) {
    const YamlNode* node = fields_.node("run");
    if (!node || is_blank(*node)) return;
    for (const YamlNode* item : fields_.list("run")) {
      if (is_blank(*item)) continue;
      YamlFields inner(fields_.source(), *item, fields_.diagnostics());
      LoggedRun run;
      run.at = item->at;
      run.slips = read_bars_or_none(inner, "slips", "the bar of a slip");
      run.rejoined = read_numbers(inner.source(), inner.node("rejoined"), "the bar of a rejoin",
                                  inner.diagnostics());
      run.recorded = read_told(inner, "recorded");
      run.listener = read_told(inner, "listener");
      inner.refuse_unknown();
      if (run.told()) day.runs.push_back(std::move(run));
    }
  }

  YamlFields& fields_;
};

// False when it is an edition line with an error.
bool read_entry(const YamlNode& entry, Log& log, Diagnostics& diagnostics) {
  if (is_blank(entry)) return true;
  YamlFields fields(log.source, entry, diagnostics);
  if (!fields.is_map()) return true;
  if (entry.find("edition") && !entry.find("date")) {
    const Diagnostics::Within link(diagnostics, "while reading an edition line");
    const int errors_before = diagnostics.error_count();
    if (auto edition = read_logged_edition(fields)) log.editions.push_back(std::move(*edition));
    return diagnostics.error_count() == errors_before;
  } else if (auto day = DayReader(fields).read()) {
    log.days.push_back(std::move(*day));
  }
  return true;
}

// Nothing but blank lines and comments.
bool is_empty(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::size_t first = text.substr(0, end).find_first_not_of(" \t\r");
    if (first != std::string_view::npos && text[first] != '#') return false;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return true;
}

}  // namespace

bool is_log(const YamlNode& root) { return root.kind == YamlNode::Kind::list; }

std::optional<Log> read_log_in_part(const Source& source, Diagnostics& diagnostics) {
  const int errors_before = diagnostics.error_count();
  const std::size_t said_before = diagnostics.all().size();
  if (is_empty(source.text())) {
    // Without its line: a file of comments may be anybody's.
    Diagnostic empty;
    empty.file = source.name();
    empty.message = "the log is empty";
    empty.hint = kEntryHint;
    diagnostics.add(empty);
    return std::nullopt;
  }
  const std::optional<YamlNode> root = parse_yaml(source, diagnostics);
  if (!root) return std::nullopt;
  if (!is_log(*root)) {
    diagnostics.error(source, root->at, "a log is a list of entries", std::string(kEntryHint));
    return std::nullopt;
  }
  Log log{source, {}, {}};
  bool editions_are_known = true;
  for (const YamlNode& entry : root->items)
    editions_are_known = read_entry(entry, log, diagnostics) && editions_are_known;
  diagnostics.sort_by_place(said_before);
  log.unread = diagnostics.error_count() - errors_before;
  return editions_are_known ? std::optional(std::move(log)) : std::nullopt;
}

std::optional<Log> read_log(const Source& source, Diagnostics& diagnostics) {
  std::optional<Log> log = read_log_in_part(source, diagnostics);
  if (log && log->unread > 0) log.reset();
  return log;
}

}  // namespace cahier
