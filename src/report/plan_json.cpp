#include "report/plan_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>
#include <vector>

#include "plan/spacing_report.h"
#include "plan/standing.h"
#include "report/plan_words.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

// RFC 8259, section 7: quotation mark, reverse solidus and the controls must be escaped.
std::string quoted(std::string_view text) {
  std::string json = "\"";
  for (const char letter : text) {
    if (letter == '"' || letter == '\\')
      json += {'\\', letter};
    else if (letter == '\n')
      json += "\\n";
    else if (letter == '\t')
      json += "\\t";
    else if (static_cast<unsigned char>(letter) < 0x20)
      json += fmt::format("\\u{:04x}", static_cast<unsigned char>(letter));
    else
      json += letter;
  }
  return json + "\"";
}

// [say(item), …], separated by `separator`.
template <typename Items, typename Say>
std::string list_of(const Items& items, Say say, std::string_view separator = ", ") {
  std::string json = "[";
  for (auto item = items.begin(); item != items.end(); ++item) {
    if (item != items.begin()) json += separator;
    json += say(*item);
  }
  return json + "]";
}

std::string whole(int number) { return std::to_string(number); }
std::string yes_no(bool yes) { return yes ? "true" : "false"; }
std::string range_json(const BarRange& bars) {
  return fmt::format("[{}, {}]", bars.first, bars.last);
}
std::string names_json(const std::vector<std::string>& names) { return list_of(names, quoted); }
std::string outcomes_json(const std::vector<std::vector<int>>& outcomes) {
  return list_of(outcomes, [](const auto& outcome) { return list_of(outcome, whole); });
}

std::string dice_json(const DiceTable& table) {
  const auto row_json = [](const DiceTable::Row& row) {
    return fmt::format(R"({{"cue": {}, "outcomes": {}}})", row.cue, outcomes_json(row.outcomes));
  };
  return fmt::format(
      R"({{"dice": {}, "faces": {}, "count": {}, "order_matters": true, "rows": {}, "again": {}}})",
      quoted(table.name), table.faces, table.count, list_of(table.rows, row_json),
      outcomes_json(table.again));
}

std::string piece_json(const PlannedPiece& planned, bool with_past) {
  const auto section_json = [](const PlannedSection& section) {
    return fmt::format(R"({{"name": {}, "first": {}, "last": {}, "same_as": {}}})",
                       quoted(section.name), section.bars.first, section.bars.last,
                       section.same_as ? range_json(*section.same_as) : "null");
  };
  const auto section_name = [&](int section) { return quoted(planned.sections.at(section).name); };
  const auto chunk_json = [&](const Chunk& chunk) {
    const std::string told = with_past ? fmt::format(R"(, "slips": {}, "trials": {})",
                                                     chunk.slips.slips, chunk.slips.trials)
                                       : "";
    return fmt::format(R"({{"id": {}, "first": {}, "last": {}, "section": {}, "level": {}{}}})",
                       quoted(chunk.id), chunk.bars.first, chunk.bars.last,
                       section_name(chunk.section), chunk.level, told);
  };
  const bool weighted = std::any_of(planned.cues.begin(), planned.cues.end(),
                                    [](const CueStart& cue) { return cue.weight != 1; });
  const auto cue_json = [&](const CueStart& cue) {
    const std::string weight = weighted ? fmt::format(R"(, "weight": {})", cue.weight) : "";
    return fmt::format(R"({{"number": {}, "bar": {}, "section": {}{}}})", cue.number, cue.bar,
                       section_name(cue.section), weight);
  };
  const auto look_alikes_json = [](const LookAlikes& alike) {
    return fmt::format(R"({{"ranges": {}, "fork": {}}})", list_of(alike.passages, range_json),
                       list_of(alike.forks, whole));
  };
  const std::string dice = planned.dice.size() == 1 ? dice_json(planned.dice[0])
                                                    : list_of(planned.dice, dice_json, ",\n     ");
  const Piece& piece = planned.piece;
  return fmt::format(
      "{{\"title\": {}, \"bars\": {}, \"first_bar\": {}, \"parts\": {},\n"
      "    \"sections\": {},\n"
      "    \"chunks\": {},\n"
      "    \"cues\": {},\n"
      "    \"look_alikes\": {},\n"
      "    \"dice\": {}}}",
      quoted(piece.title), piece.bars, piece.first_bar(), names_json(piece.parts()),
      list_of(planned.sections, section_json), list_of(planned.chunks, chunk_json),
      list_of(planned.cues, cue_json), list_of(piece.look_alikes, look_alikes_json), dice);
}

std::string step_json(const Step& step) {
  const std::string spoken =
      step.spoken.empty() ? "" : fmt::format(R"(, "spoken": {})", names_json(step.spoken));
  return fmt::format(R"({{"parts": {}, "times": {}{}}})", names_json(step.parts), step.times,
                     spoken);
}

std::string task_json(const Plan& plan, const Task& task) {
  const auto chunk_id = [&](int chunk) {
    return quoted(plan.pieces.at(task.piece).chunks.at(chunk).id);
  };
  std::string json =
      fmt::format(R"({{"id": {}, "piece": {}, "stage": {}, "drill": {}, "first": {}, "last": {}, )",
                  quoted(task.id), task.piece, quoted(stage_word(stage_of(task.drill))),
                  quoted(drill_word(task.drill)), task.bars.first, task.bars.last);
  fmt::format_to(std::back_inserter(json),
                 R"("chunks": {}, "steps": {}, "tempo": {}, "minutes": {}, )",
                 list_of(task.chunks, chunk_id), list_of(task.steps, step_json),
                 task.tempo ? number_text(*task.tempo) : "null", number_text(task.minutes));
  fmt::format_to(std::back_inserter(json),
                 R"("beat": {}, "cues": {}, "throws": {}, "block": {}, "fork": {}, "reason": {}}})",
                 task.tempo ? quoted(beat_name(task.beat)) : "null", list_of(task.cues, whole),
                 task.throws, task.block, yes_no(task.fork), quoted(reason_word(task.reason)));
  return json;
}

std::string day_json(const Plan& plan, const Day& day) {
  const std::string note =
      day.note == DayNote::none
          ? ""
          : fmt::format(R"(, "note": {})", quoted(say_note(english_words(), day.note)));
  return fmt::format(R"({{"date": {}, "allowance": {}, "minutes": {}, "tasks": {}{}}})",
                     quoted(iso(day.date)), number_text(day.allowance), number_text(day.minutes()),
                     list_of(day.tasks, [&](const Task& task) { return task_json(plan, task); }),
                     note);
}

std::string unplaced_json(const Unplaced& work) {
  return fmt::format(
      R"({{"piece": {}, "drill": {}, "first": {}, "last": {}, "why": {}, "minutes": {}}})",
      work.piece, quoted(drill_word(work.drill)), work.bars.first, work.bars.last,
      quoted(say_why(english_words(), work.why)), number_text(work.minutes));
}

std::string dates_json(const std::vector<Date>& dates) {
  return list_of(dates, [](Date date) { return quoted(iso(date)); });
}

// At most four decimals, rounded down, so that 1 means all.
std::string share_text(double share) {
  return fmt::format("{:g}", std::floor(share * 10000 + 1e-9) / 10000);
}

std::string spacing_json(const Plan& plan) {
  const SpacingReport report = spacing_report(plan);
  const auto chunk_json = [&](const ChunkSpacing& line) {
    return fmt::format(
        R"({{"piece": {}, "chunk": {}, "recalls": {}, "ideal": {}, "near": {}, "gaps": {}}})",
        line.piece, quoted(plan.pieces.at(line.piece).chunks.at(line.chunk).id),
        dates_json(line.recalls), dates_json(line.ideal), line.near, line.gaps);
  };
  return fmt::format(
      ",\n \"spacing\": {{\"near_share\": {}, \"forced_by_days_off\": {}, \"chunks\":\n  {}}}",
      share_text(report.near_share()), report.forced_by_days_off,
      list_of(report.chunks, chunk_json, ",\n   "));
}

std::string remedies_json(const Plan& plan) {
  if (plan.fits) return {};
  const auto remedy_json = [](const Remedy& remedy) {
    return fmt::format(R"({{"say": {}}})", quoted(remedy.say));
  };
  return ",\n \"remedies\": " + list_of(plan.remedies, remedy_json, ",\n  ");
}

std::string sensitivity_json(const Plan& plan) {
  if (plan.sensitivity.empty()) return {};
  const auto one_json = [](const Sensitivity& one) {
    return fmt::format(R"({{"learning": {:g}, "days_late": {}}})", one.learning,
                       one.days_late ? whole(*one.days_late) : "null");
  };
  return ",\n \"sensitivity\": " + list_of(plan.sensitivity, one_json);
}

std::string past_json(const Plan& plan) {
  std::vector<std::string> learned;
  std::vector<std::string> runs;
  std::vector<std::string> tasks;
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece) {
    const auto dates = learned_before(plan, piece);
    for (std::size_t chunk = 0; chunk < dates.size(); ++chunk)
      if (dates[chunk])
        learned.push_back(fmt::format(R"({{"piece": {}, "chunk": {}, "date": {}}})", piece,
                                      quoted(plan.pieces[piece].chunks[chunk].id),
                                      quoted(iso(*dates[chunk]))));
    for (const Done* run : runs_made(plan, piece))
      runs.push_back(fmt::format(R"({{"piece": {}, "date": {}, "slips": {}}})", piece,
                                 quoted(iso(run->date)),
                                 run->slips ? list_of(*run->slips, whole) : "null"));
  }
  for (const Day& day : plan.past)
    for (const Task& task : day.tasks) {
      const auto chunk_id = [&](int chunk) {
        return quoted(plan.pieces.at(task.piece).chunks.at(chunk).id);
      };
      const std::string cues = task.drill == Drill::cue_starts
                                   ? fmt::format(R"(, "cues": {})", list_of(task.cues, whole))
                                   : "";
      tasks.push_back(fmt::format(
          R"({{"date": {}, "piece": {}, "drill": {}, "first": {}, "last": {}, "chunks": {}{}}})",
          quoted(iso(day.date)), task.piece, quoted(drill_word(task.drill)), task.bars.first,
          task.bars.last, list_of(task.chunks, chunk_id), cues));
    }
  const auto as_is = [](const std::string& json) { return json; };
  constexpr std::string_view kNextLine = ",\n   ";
  return fmt::format("{{\"learned\":\n  {},\n  \"run_throughs\":\n  {},\n  \"tasks\":\n  {}}}",
                     list_of(learned, as_is, kNextLine), list_of(runs, as_is, kNextLine),
                     list_of(tasks, as_is, kNextLine));
}

// What was done before; empty for a first edition.
std::string record_json(const Plan& plan) {
  if (!has_past(plan)) return {};
  const auto pace_json = [](double pace) { return fmt::format("{:.4g}", pace); };
  return fmt::format(",\n \"edition\": {}, \"pace\": {},\n \"past\": {}", plan.record.edition,
                     list_of(plan.method.pace, pace_json), past_json(plan));
}

}  // namespace

std::string plan_json(const Plan& plan) {
  constexpr std::string_view kNextLine = ",\n   ";
  std::string json = fmt::format(
      "{{\"format\": \"cahier-plan-1\", \"from\": {}, \"by\": {}, "
      "\"fits\": {},\n \"minutes_total\": {},\n",
      quoted(iso(plan.from)), quoted(iso(plan.by)), yes_no(plan.fits),
      number_text(plan.minutes_total()));
  json +=
      " \"pieces\":\n  " +
      list_of(
          plan.pieces, [&](const PlannedPiece& piece) { return piece_json(piece, has_past(plan)); },
          kNextLine);
  json += ",\n \"days\":\n  " +
          list_of(
              plan.days, [&](const Day& day) { return day_json(plan, day); }, kNextLine);
  json += ",\n \"unplaced\": " + list_of(plan.unplaced, unplaced_json, ",\n  ");
  return json + remedies_json(plan) + sensitivity_json(plan) + spacing_json(plan) +
         record_json(plan) + "}\n";
}

}  // namespace cahier
