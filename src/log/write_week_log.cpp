#include "log/write_week_log.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "report/plan_words.h"
#include "text/phrasing.h"
#include "text/wrap.h"

namespace cahier {
namespace {

constexpr std::string_view kDot = " · ";

std::string bars_yaml(BarRange bars) {
  return bars.size() == 1 ? fmt::format("{}", bars.first)
                          : fmt::format("{}-{}", bars.first, bars.last);
}

std::string list_yaml(const std::vector<int>& numbers) {
  return fmt::format("[{}]", fmt::join(numbers, ", "));
}

std::string_view number_of(const std::string& code) {
  return std::string_view(code).substr(code.find('-') + 1);
}

class WeekLog {
 public:
  WeekLog(const Plan& plan, const Terms& terms, const Words& words, Date day)
      : plan_(plan), terms_(terms), words_(words) {
    const Date monday = day - days{weekday_index(day)};
    for (const Day& one : plan.days)
      if (one.date >= monday && one.date < monday + days{7}) week_.push_back(&one);
  }

  std::string compose() const {
    std::string text = remark("", {date_span(words_, week_.front()->date, week_.back()->date)});
    for (const std::string& paragraph : words_.list("week_log.how"))
      text += remark("", {paragraph});
    text += edition();
    for (int piece = 0; piece < static_cast<int>(plan_.pieces.size()); ++piece)
      text += starts(piece);
    for (const Day* day : week_)
      for (int piece = 0; piece < static_cast<int>(plan_.pieces.size()); ++piece)
        text += entry(*day, piece);
    return text;
  }

 private:
  static std::string remark(const std::string& lead, const std::vector<std::string>& items) {
    const std::string lines = wrap(lead, items, kDot, lead.empty() ? 0 : 2, kTerminalWidth - 2);
    std::string text;
    for (std::size_t begin = 0; begin < lines.size();) {
      const std::size_t end = lines.find('\n', begin) + 1;
      text.append("# ").append(lines, begin, end - begin);
      begin = end;
    }
    return text;
  }

  std::string edition() const {
    std::string text =
        fmt::format("- edition: {}\n  from: {}\n  by: {}\n  minutes: {:g}\n", terms_.record.edition,
                    iso(terms_.from), iso(terms_.by), longest_day(terms_));
    if (terms_.upkeep) text += "  keep: yes\n";
    text += "  cues: " + of_cues([](const CueStart& cue) { return cue.bar; }) + "\n";
    if (terms_.dice != Throw::two_dice)
      text += fmt::format("  dice: {}\n", throw_word(terms_.dice));
    const auto shares_more = [](const PlannedPiece& piece) {
      return std::ranges::any_of(piece.cues, [](const CueStart& cue) { return cue.weight > 1; });
    };
    if (std::ranges::any_of(plan_.pieces, shares_more))
      text += "  shares: " + of_cues([](const CueStart& cue) { return cue.weight; }) + "\n";
    text += "  tasks:\n";
    for (const Day* day : week_)
      for (const Task& task : day->tasks) text += fmt::format("    {}: {}\n", task.id, told(task));
    return text;
  }

  // A number of each cue start, by piece.
  template <typename Number>
  std::string of_cues(Number number) const {
    std::string lists;
    for (const PlannedPiece& piece : plan_.pieces) {
      std::vector<int> all;
      for (const CueStart& cue : piece.cues) all.push_back(number(cue));
      lists.append(lists.empty() ? "" : ", ").append(list_yaml(all));
    }
    return plan_.pieces.size() == 1 ? lists : "[" + lists + "]";
  }

  std::string told(const Task& task) const {
    const bool cues = covers(task.drill, Covers::starts);
    std::string text = fmt::format("{{{}: {}", drill_word(task.drill),
                                   cues ? list_yaml(task.cues) : bars_yaml(task.bars));
    if (task.drill == Drill::learn && !task.chunks.empty())
      text += ", chunk: " + plan_.pieces[task.piece].chunks[task.chunks.front()].id;
    if (task.throws > 0) text += fmt::format(", throws: {}", task.throws);
    if (plan_.pieces.size() > 1) text += fmt::format(", piece: {}", task.piece + 1);
    return text + fmt::format(", minutes: {:g}}}", task.minutes);
  }

  // The bars of the cue starts, where the week has some: numbers alone are easily taken for bars.
  std::string starts(int piece) const {
    const bool begun = std::any_of(week_.begin(), week_.end(), [&](const Day* day) {
      return std::any_of(day->tasks.begin(), day->tasks.end(), [&](const Task& task) {
        return task.piece == piece && covers(task.drill, Covers::starts);
      });
    });
    if (!begun) return {};
    std::vector<std::string> items;
    for (const CueStart& cue : plan_.pieces[piece].cues)
      items.push_back(words_.say("week_log.start", {{"number", cue.number}, {"bar", cue.bar}}));
    const bool programme = plan_.pieces.size() > 1;
    return remark(programme ? plan_.pieces[piece].piece.title + kDot.data() : "", items);
  }

  std::string entry(const Day& day, int piece) const {
    std::vector<std::string> items;
    bool has_starts = false;
    bool has_slow_passes = false;
    std::size_t runs = 0;
    for (const Task& task : day.tasks) {
      if (task.piece != piece) continue;
      items.push_back(fmt::format("{}: {}", number_of(task.id), say_task(words_, task)));
      has_starts = has_starts || covers(task.drill, Covers::starts);
      has_slow_passes = has_slow_passes || task.drill == Drill::slow_pass;
      runs += task.drill == Drill::run_through ? 1 : 0;
    }
    if (items.empty()) return {};
    const bool programme = plan_.pieces.size() > 1;
    const std::string date = weekday_day_month(words_, day.date);
    const std::string title = plan_.pieces[piece].piece.title;
    std::string text = remark((programme ? date + ", " + title : date) + kDot.data(), items);
    text += fmt::format("- {{date: {}", iso(day.date));
    if (programme) text += fmt::format(", piece: {}", piece + 1);
    text += ", done: [], minutes: , slips: []";
    if (has_slow_passes) text += ", mended: []";
    if (has_starts) text += ",\n   starts: {hit: [], miss: []}";
    constexpr std::string_view kRun = "{slips: , rejoined: , recorded: , listener: }";
    if (runs == 1) text += fmt::format(",\n   run: {}", kRun);
    if (runs > 1)
      text += fmt::format(",\n   run: [{}]",
                          fmt::join(std::vector<std::string_view>(runs, kRun), ",\n         "));
    return text + "}\n";
  }

  const Plan& plan_;
  const Terms& terms_;
  const Words& words_;
  std::vector<const Day*> week_;
};

}  // namespace

std::string week_log(const Plan& plan, const Terms& terms, const Words& words, Date day) {
  return WeekLog(plan, terms, words, day).compose();
}

}  // namespace cahier
