#include <fmt/format.h>

#include <algorithm>

#include "log/read_log_values.h"
#include "piece/read_bars.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

constexpr int kMostEditions = 9999;
constexpr int kMostPieces = 12;
constexpr int kMostThrows = 100;
constexpr Extent kAnyBars{0, 0};  // the pieces are not known yet

std::string drill_words() {
  std::string words;
  for (const DrillFacts& facts : every_drill())
    words.append(words.empty() ? "" : ", ").append(facts.word);
  return words;
}

// Reads {recall: 1-4}: what the task was, and of which bars.
bool read_drill(YamlFields& fields, LoggedTask& task) {
  int found = 0;
  for (const DrillFacts& facts : every_drill()) {
    const YamlNode* node = fields.node(facts.word);
    if (!node) continue;
    ++found;
    task.drill = facts.drill;
    if (facts.covers == Covers::starts) {
      task.cues =
          read_numbers(fields.source(), node, "the number of a cue start", fields.diagnostics());
      continue;
    }
    const auto bars = read_bars(fields.source(), *node, fmt::format("\"{}\"", facts.word), kAnyBars,
                                fields.diagnostics());
    if (!bars) return false;
    task.bars = {*bars, node->at};
  }
  if (found == 1 || !fields.is_map()) return found == 1;
  fields.diagnostics().error(
      fields.source(), fields.at(),
      found == 0 ? "this task has no drill" : "this task has more than one drill",
      fmt::format("write for example recall: 1-4; the drills are {}", drill_words()));
  return false;
}

std::optional<LoggedTask> read_task(const Source& source, const YamlNode::Entry& entry,
                                    Diagnostics& diagnostics) {
  const auto code = read_code(source, entry.key, std::nullopt, diagnostics);
  YamlFields fields(source, entry.value, diagnostics);
  LoggedTask task;
  const bool sound = read_drill(fields, task);
  if (const auto piece = fields.whole("piece", 1, kMostPieces))
    task.piece = {*piece, fields.node("piece")->at};
  task.chunk = fields.text("chunk", 60).value_or("");
  task.throws = fields.whole("throws", 0, kMostThrows).value_or(0);
  if (const auto minutes = read_log_minutes(fields)) task.minutes = minutes->value;
  fields.refuse_unknown();
  if (!code || !sound) return std::nullopt;
  task.code = *code;
  return task;
}

// [1, 9, 17], or a list of such lists in a programme.
std::vector<std::vector<Written<int>>> read_of_cues(YamlFields& fields, const YamlNode* node,
                                                    std::string_view what) {
  std::vector<std::vector<Written<int>>> cues;
  if (!node || is_blank(*node)) return cues;
  const bool by_piece =
      std::any_of(node->items.begin(), node->items.end(),
                  [](const YamlNode& item) { return item.kind == YamlNode::Kind::list; });
  if (!by_piece) return {read_numbers(fields.source(), node, what, fields.diagnostics())};
  for (const YamlNode& item : node->items)
    cues.push_back(read_numbers(fields.source(), &item, what, fields.diagnostics()));
  return cues;
}

// Every start has a share, and no share is more than a table holds.
void check_shares(YamlFields& fields, const LoggedEdition& edition) {
  bool sound = edition.shares.empty() || edition.shares.size() == edition.cues.size();
  for (std::size_t piece = 0; sound && piece < edition.shares.size(); ++piece) {
    sound = edition.shares[piece].size() == edition.cues[piece].size();
    for (const Written<int>& share : edition.shares[piece])
      sound = sound && share.value >= 1 && share.value <= numbers::kWeakFaces;
  }
  if (!sound)
    fields.diagnostics().error(
        fields.source(), fields.node("shares")->at, "the shares do not go with the cue starts",
        fmt::format("write a number from 1 to {} for each of the cues, as report does",
                    numbers::kWeakFaces));
}

void read_dice(YamlFields& fields, LoggedEdition& edition) {
  const std::optional<std::string> text = fields.text("dice", 20);
  if (!text) return;
  if (const auto dice = parse_throw(*text))
    edition.dice = *dice;
  else
    fields.diagnostics().error(fields.source(), fields.node("dice")->at,
                               fmt::format("\"{}\" is nothing to throw", *text),
                               "write two dice, one die, d20 or coins");
}

}  // namespace

std::optional<LoggedEdition> read_logged_edition(YamlFields& fields) {
  LoggedEdition edition;
  const auto number = fields.whole("edition", 1, kMostEditions);
  const auto from = read_log_date(fields, "from");
  if (fields.lacks("from"))
    fields.missing("from", "write the first day of that workbook, as in from: 2027-01-04");
  edition.by = read_log_date(fields, "by");
  if (from && edition.by && edition.by->value <= from->value)
    fields.diagnostics().error(
        fields.source(), edition.by->at,
        fmt::format("this workbook ends before it begins, on {}", iso(from->value)),
        "write the dates on its cover: from: for the first day, by: for the date");
  if (const auto minutes = read_log_minutes(fields)) edition.minutes = minutes->value;
  edition.keep = read_told(fields, "keep").value_or(false);
  edition.cues = read_of_cues(fields, fields.node("cues"), "the bar of a cue start");
  edition.shares = read_of_cues(fields, fields.node("shares"), "the share of a cue start");
  check_shares(fields, edition);
  read_dice(fields, edition);
  if (const YamlNode* tasks = fields.node("tasks"); tasks && !is_blank(*tasks)) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"tasks\"");
    const YamlFields map(fields.source(), *tasks, fields.diagnostics());
    for (const YamlNode::Entry& entry : tasks->entries)
      if (auto task = read_task(fields.source(), entry, fields.diagnostics()))
        edition.tasks.push_back(std::move(*task));
  }
  fields.refuse_unknown();
  if (!number || !from) return std::nullopt;
  edition.number = {*number, fields.node("edition")->at};
  edition.from = *from;
  return edition;
}

}  // namespace cahier
