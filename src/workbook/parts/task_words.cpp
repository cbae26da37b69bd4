#include "workbook/parts/task_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "plan/spoken_steps.h"
#include "practice/time_model.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

std::string parts_label(const Words& words, const PlannedPiece& piece,
                        const std::vector<std::string>& parts) {
  if (parts.size() == 1) return short_part(words, parts.front());
  if (parts.size() < piece.piece.parts().size()) {
    std::vector<std::string> names;
    for (const std::string& part : parts) names.push_back(short_part(words, part));
    return list_text(words, names);
  }
  return words.say(parts.size() == 2 ? "task.both" : "task.all");
}

std::string cue_numbers(const Words& words, const Task& task) {
  std::vector<std::string> numbers;
  for (const int cue : task.cues) numbers.push_back(std::to_string(cue));
  return list_text(words, numbers);
}

bool jumps(const Task& task) {
  return std::ranges::any_of(task.ways, [](const PlayedWay& way) { return way.to != way.at + 1; });
}

// "14 → 15, 16 → 1; 14 → 17": what is played in one go between commas.
std::string ways_text(const Words& words, const Task& task) {
  std::string text;
  for (const PlayedWay& way : task.ways) {
    const std::string next = words.say("task.way", {{"at", way.at}, {"to", way.to}});
    text = text.empty() ? next
                        : words.say(way.goes_on ? "task.way_goes_on" : "task.way_then",
                                    {{"before", text}, {"next", next}});
  }
  return text;
}

// Where each start leads, by start: "16 → 1" and "16 → 17", the last way of those played in one go.
std::vector<std::string> ways_by_start(const Words& words, const Task& task) {
  std::vector<std::string> last;
  for (const PlayedWay& way : task.ways) {
    if (!way.goes_on) last.emplace_back();
    if (!last.empty()) last.back() = words.say("task.way", {{"at", way.at}, {"to", way.to}});
  }
  return last;
}

std::string cue_starts_title(const Words& words, const Task& task) {
  if (task.fork) return words.say("task.fork");
  if (task.cues.empty()) return words.say("task.cue_starts_dice");
  return words.count("task.cue_starts", static_cast<int>(task.cues.size()),
                     {{"cues", cue_numbers(words, task)}});
}

bool has_short_name(const std::vector<std::string>& parts) {
  return parts.size() == 1 && (parts.front() == "right hand" || parts.front() == "left hand");
}

}  // namespace

std::string fork_stop(const Words& words, const Task& task) {
  if (jumps(task)) return words.say("task.stop_past");
  std::string bars;
  for (const BarRange& played : task.from_starts)
    bars += (bars.empty() ? "" : ", ") + std::to_string(played.last);
  return words.say("task.stop_after", {{"bars", bars}});
}

std::string thrown_name(const Words& words, const PlannedPiece& piece) {
  const bool coins = !piece.dice.empty() && piece.dice.front().faces == 2;
  return words.say(coins ? "task.coins" : "task.dice");
}

std::string short_part(const Words& words, const std::string& part) {
  if (part == "right hand") return words.say("task.right_hand");
  if (part == "left hand") return words.say("task.left_hand");
  return part;
}

std::string step_label(const Words& words, const PlannedPiece& piece, const Step& step) {
  if (!step.spoken.empty()) {
    const std::string spoken = parts_label(words, piece, step.spoken);
    // "LH, say RH"; where names are long only what is said: the drill's meaning tells the rest.
    if (has_short_name(step.parts) && has_short_name(step.spoken))
      return words.say("task.play_say",
                       {{"played", parts_label(words, piece, step.parts)}, {"spoken", spoken}});
    return words.say(says_what_is_played(step) ? "task.say_own_part" : "task.say_part",
                     {{"part", spoken}});
  }
  if (piece.piece.parts().size() < 2 || step.parts.empty()) return {};
  return parts_label(words, piece, step.parts);
}

std::vector<TickRow> tick_rows(const Words& words, const PlannedPiece& piece, const Task& task) {
  std::vector<TickRow> rows;
  if (covers(task.drill, Covers::starts)) {
    std::vector<std::string> ways;
    if (jumps(task)) ways = ways_by_start(words, task);
    ways.resize(task.cues.size());
    for (const std::string& way : ways) rows.push_back({way, 1});
    // Left all to chance, the task has the word in the place of its bars.
    if (task.throws > 0)
      rows.push_back({task.cues.empty() ? "" : thrown_name(words, piece), task.throws});
    return rows;
  }
  const bool one_way = task.steps.size() == 1;
  for (const Step& step : task.steps)
    rows.push_back(
        {one_way && task.drill != Drill::learn ? "" : step_label(words, piece, step), step.times});
  if (task.drill == Drill::slow_pass && !rows.empty()) rows.back().more = words.say("task.again");
  return rows;
}

std::vector<std::string> task_bars(const Words& words, const PlannedPiece& piece,
                                   const Task& task) {
  std::vector<std::string> bars;
  const bool starts = covers(task.drill, Covers::starts);
  if (starts)
    for (const int cue : task.cues)
      bars.push_back(words.say("task.from_bar", {{"bar", piece.cues[cue - 1].bar}}));
  if (bars.empty())
    bars.push_back(starts ? thrown_name(words, piece) : bar_range(task.bars.first, task.bars.last));
  return bars;
}

std::string drill_title(const Words& words, const Task& task) {
  if (covers(task.drill, Covers::starts)) return cue_starts_title(words, task);
  return words.say(fmt::format("task.{}", drill_word(task.drill)));
}

std::string drill_meaning(const Words& words, const Task& task) {
  if (task.fork)
    return jumps(task) ? words.say("task.means_ways", {{"ways", ways_text(words, task)}})
                       : words.say("task.means_fork");
  const bool one_part =
      facts_of(task.drill).manner == Manner::apart_then_together && task.steps.size() < 2;
  if (one_part) return words.say("task.means_learn_one_part");
  return words.say(fmt::format("task.means_{}", drill_word(task.drill)));
}

std::vector<std::string> marks_in(const Words& words, const PlannedPiece& piece, BarRange bars) {
  std::vector<std::string> marks;
  for (const Mark& mark : piece.piece.marks)
    if (bars.contains(mark.bar))
      marks.push_back(words.say("task.mark", {{"bar", mark.bar}, {"note", mark.note}}));
  return marks;
}

std::string mark_in_force(const PlannedPiece& piece, const Task& task) {
  const bool begins_cold = task.drill == Drill::join || task.drill == Drill::recall;
  return begins_cold ? piece.piece.in_force_at(task.bars.first) : std::string();
}

int times_of(const Task& task) { return task.steps.empty() ? 1 : task.steps.front().times; }

std::string minutes_phrase(const Words& words, double minutes) {
  return words.say("task.minutes", {{"minutes", minutes_text(minutes)}});
}

Tempo tempo_of(const Task& task) { return {task.tempo.value(), task.beat}; }

bool shows_tempo(const Task& task) {
  if (!task.tempo || task.drill == Drill::run_through) return false;
  return !covers(task.drill, Covers::starts) || !task.cues.empty();
}

bool shows_tempo(const PlannedPiece& piece, const Task& task) {
  return shows_tempo(task) || throws_below_tempo(piece, task);
}

bool throws_below_tempo(const PlannedPiece& piece, const Task& task) {
  return task.throws > 0 && task.tempo &&
         tempo_of(task).quarters_per_minute() <
             tempo_or_usual(piece.piece, task.bars.first).quarters_per_minute();
}

std::vector<TempoFrom> thrown_tempi(const PlannedPiece& piece, const Method& method,
                                    const Task& task) {
  const TimeModel time(piece.piece, method);
  Tempo before = tempo_or_usual(piece.piece, task.bars.first);
  const double share = tempo_of(task).quarters_per_minute() / before.quarters_per_minute();
  std::vector<TempoFrom> tempi;
  for (const Change& change : piece.piece.changes) {
    const Tempo full = tempo_or_usual(piece.piece, change.bar);
    if (full != before) tempi.push_back({change.bar, time.mark(change.bar, share, task.beat)});
    before = full;
  }
  return tempi;
}

Tempo tempo_at(const Task& task, int bar) { return {task.tempo_at(bar), task.beat}; }

std::vector<TempoFrom> later_tempi(const Task& task, StartTempi tempi) {
  std::map<int, double> later;
  if (!covers(task.drill, Covers::starts) || tempi == StartTempi::below) {
    for (std::size_t at = 1; at < task.tempi.size(); ++at)
      later[task.tempi[at].bar] = task.tempi[at].per_minute;
  } else {
    for (const BarRange& played : task.from_starts) {
      double before = task.tempo_at(played.first);
      for (const TempoFrom& from : task.tempi)
        if (played.first < from.bar && played.contains(from.bar) && from.per_minute != before)
          later[from.bar] = before = from.per_minute;
    }
    for (const PlayedWay& way : task.ways) {
      const bool begins = std::ranges::any_of(
          task.from_starts, [&](const BarRange& played) { return played.first == way.to; });
      if (!begins && task.tempo_at(way.to) != task.tempo_at(way.at))
        later[way.to] = task.tempo_at(way.to);
    }
  }
  for (const TempoFrom& from : task.tempi_after_jumps) later[from.bar] = from.per_minute;
  std::vector<TempoFrom> all;
  for (const auto& [bar, per_minute] : later) all.push_back({bar, per_minute});
  return all;
}

}  // namespace cahier
