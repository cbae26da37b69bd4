#include "report/spacing_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "plan/chunk_labels.h"
#include "plan/spacing_report.h"
#include "report/plan_words.h"
#include "text/phrasing.h"
#include "text/utf8.h"
#include "text/wrap.h"

namespace cahier {
namespace {

// "5, 9, 18 Jan" for each month.
std::vector<std::string> by_month(const Words& words, const std::vector<Date>& dates) {
  std::vector<std::string> months;
  std::string numbers;
  for (std::size_t at = 0; at < dates.size(); ++at) {
    numbers += (numbers.empty() ? "" : ", ") + std::to_string(day_of_month(dates[at]));
    const std::string month = month_short(words, dates[at]);
    if (at + 1 < dates.size() && month_short(words, dates[at + 1]) == month) continue;
    months.push_back(words.say("dates.day_month", {{"day", numbers}, {"month", month}}));
    numbers.clear();
  }
  return months;
}

class SpacingText {
 public:
  SpacingText(const Plan& plan, const Words& words)
      : plan_(plan),
        words_(words),
        label_width_(std::max(count_characters(words.say("recall_days.planned")),
                              count_characters(words.say("recall_days.best")))) {}

  std::string of_chunk(const ChunkSpacing& line) const {
    const Chunk& chunk = plan_.pieces[line.piece].chunks[line.chunk];
    const BarRange& bars = chunk.bars;
    const bool by_bars = ChunkLabels(plan_.pieces[line.piece]).by_bars(chunk);
    const std::string name =
        words_.count(by_bars ? "places.bars" : "recall_days.chunk", bars.last - bars.first + 1,
                     {{"chunk", chunk.id}, {"bars", bar_range(bars.first, bars.last)}});
    std::string text = wrap("  " + piece_mark(plan_, line.piece), {name, near_of(line)}, " · ", 4);
    if (line.recalls.empty()) return text;
    return text + dates("recall_days.planned", line.recalls) +
           dates("recall_days.best", line.ideal);
  }

 private:
  std::string near_of(const ChunkSpacing& line) const {
    if (line.recalls.empty()) return words_.say("recall_days.never");
    if (line.gaps == 0) return words_.say("recall_days.once");
    return words_.count("recall_days.near", line.gaps, {{"near", line.near}});
  }

  std::string dates(std::string_view key, const std::vector<Date>& days_named) const {
    const std::string label = words_.say(key);
    const std::string pad(label_width_ - count_characters(label) + 2, ' ');
    return wrap("    " + label + pad, by_month(words_, days_named), " · ",
                static_cast<int>(label_width_) + 6);
  }

  const Plan& plan_;
  const Words& words_;
  std::size_t label_width_;
};

}  // namespace

std::string spacing_figure(const Plan& plan, const Words& words) {
  const SpacingReport report = spacing_report(plan);
  if (report.gaps == 0) return {};
  // Rounded down, so that 100 % means all.
  const auto percent = 100LL * report.near / report.gaps;
  std::string text = wrap("  ", {words.say("plan.near_gaps", {{"percent", percent}})}, "", 4);
  if (report.forced_by_days_off > 0)
    text += wrap("  ", {words.count("plan.forced_gaps", report.forced_by_days_off)}, "", 4);
  return text;
}

std::string spacing_by_chunk(const Plan& plan, const Words& words) {
  const SpacingReport report = spacing_report(plan);
  if (report.chunks.empty()) return {};
  std::string text = "\n" + words.say("recall_days.heading") + "\n";
  for (const std::string& sentence : words.list("recall_days.how"))
    text += wrap("  ", {sentence}, "", 2);
  text += "\n";
  const SpacingText chunks(plan, words);
  for (const ChunkSpacing& line : report.chunks) text += chunks.of_chunk(line);
  return text;
}

}  // namespace cahier
