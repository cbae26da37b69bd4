#include "report/plan_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <vector>

#include "plan/memory_traps.h"
#include "plan/quality/gave_way.h"
#include "plan/quality/quality.h"
#include "plan/spacing_report.h"
#include "plan/standing.h"
#include "practice/time_model.h"
#include "report/fork_words.h"
#include "report/json_lines.h"
#include "report/plan_words.h"
#include "report/teacher_text.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

using Json = nlohmann::ordered_json;

// [json_of(item), …]
template <typename Items, typename JsonOf>
Json list_of(const Items& items, JsonOf json_of) {
  Json list = Json::array();
  for (const auto& item : items) list.push_back(json_of(item));
  return list;
}

// The number that a text shows, whole where nothing follows the point: 10, 14.5.
Json number(const std::string& shown) {
  double value = 0;
  std::from_chars(shown.data(), shown.data() + shown.size(), value);
  if (value == std::trunc(value)) return static_cast<std::int64_t>(value);
  return value;
}

Json minutes_json(double minutes) { return number(number_text(minutes)); }
Json range_json(const BarRange& bars) { return {bars.first, bars.last}; }
Json date_json(Date date) { return iso(date); }

Json dice_json(const DiceTable& table) {
  const auto row_json = [](const DiceTable::Row& row) -> Json {
    return {{"cue", row.cue}, {"outcomes", row.outcomes}};
  };
  return {{"dice", table.name},
          {"faces", table.faces},
          {"count", table.count},
          {"order_matters", true},
          {"rows", list_of(table.rows, row_json)},
          {"again", table.again}};
}

// Metronome marks: learned, recalled, proved, performed.
Json ladder_json(const Piece& piece, const Method& method, BarRange bars) {
  const TimeModel time(piece, method);
  const TempoLadder ladder = time.ladder(piece.hardest_level(bars));
  return list_of(std::vector{ladder.learn, ladder.recall, ladder.proved, ladder.performance},
                 [&](double share) { return number(number_text(time.mark(bars.first, share))); });
}

Json section_json(const PlannedPiece& planned, const Method& method,
                  const PlannedSection& section) {
  return {{"name", section.name},
          {"first", section.bars.first},
          {"last", section.bars.last},
          {"same_as", section.same_as ? range_json(*section.same_as) : Json()},
          {"ladder", ladder_json(planned.piece, method, section.bars)}};
}

// A way on; of all but the first what a score tells of how it differs.
Json way_json(const Piece& piece, const Fork& fork, const WayOn& way) {
  const Parting* told = piece.parting_of(fork.ways.front().to, way.to);
  const bool differs = told && !told->changes.empty();
  return {{"first", way.alike.first},
          {"at", way.at},
          {"to", way.to},
          {"beat", differs ? number(fmt::format("{:.3f}", told->beat)) : Json()},
          {"difference", differs ? Json(difference_words(english_words(), piece, *told)) : Json()}};
}

// Its forks, the most dangerous first, and what the plan has against each.
Json traps_json(const Plan& plan, int piece) {
  const PlannedPiece& planned = plan.pieces[piece];
  return list_of(memory_traps(planned), [&](const MemoryTrap& trap) -> Json {
    const Fork& fork = planned.forks[trap.fork];
    const TrapAnswers answers = answers_to(plan, piece, fork);
    const auto ids = [](const std::vector<DatedTask>& tasks) {
      return list_of(tasks, [](const DatedTask& one) -> Json { return one.task->id; });
    };
    return {
        {"from", fork_word(fork.from)},
        {"danger", number(fmt::format("{:.3f}", trap.danger))},
        {"bars_alike", trap.bars_alike},
        {"ways",
         list_of(fork.ways, [&](const WayOn& way) { return way_json(planned.piece, fork, way); })},
        {"fork_drills", ids(answers.fork_drills)},
        {"cues", list_of(answers.starts, [](const CueStart* cue) -> Json { return cue->number; })},
        {"spoken_parts", ids(answers.spoken_parts)},
        {"write_outs", ids(answers.write_outs)}};
  });
}

Json piece_json(const Plan& plan, int index, bool with_past) {
  const PlannedPiece& planned = plan.pieces[index];
  const Method& method = plan.method;
  const auto chunk_json = [&](const Chunk& chunk) {
    Json json = {{"id", chunk.id},
                 {"first", chunk.bars.first},
                 {"last", chunk.bars.last},
                 {"section", planned.sections.at(chunk.section).name},
                 {"level", chunk.level}};
    if (with_past) {
      json["slips"] = chunk.slips.slips;
      json["trials"] = chunk.slips.trials;
    }
    return json;
  };
  const bool weighted = std::any_of(planned.cues.begin(), planned.cues.end(),
                                    [](const CueStart& cue) { return cue.weight != 1; });
  const auto cue_json = [&](const CueStart& cue) {
    Json json = {{"number", cue.number},
                 {"bar", cue.bar},
                 {"section", planned.sections.at(cue.section).name}};
    if (weighted) json["weight"] = cue.weight;
    if (cue.is_new) json["new"] = true;
    return json;
  };
  const auto look_alikes_json = [](const LookAlikes& alike) -> Json {
    return {{"ranges", list_of(alike.passages, range_json)}, {"fork", alike.forks}};
  };
  const auto bars_of = [](const std::vector<WayOn>& ways, int WayOn::*bar) {
    return list_of(ways, [&](const WayOn& way) -> Json { return way.*bar; });
  };
  Json forks = Json::array();
  for (const Fork& fork : planned.forks)
    if (fork.from != ForkFrom::look_alikes)
      forks.push_back({{"at", bars_of(fork.ways, &WayOn::at)},
                       {"to", bars_of(fork.ways, &WayOn::to)},
                       {"from", fork_word(fork.from)}});
  const Piece& piece = planned.piece;
  return {{"title", piece.title},
          {"bars", piece.bars},
          {"first_bar", piece.first_bar()},
          {"parts", piece.parts()},
          {"sections", list_of(planned.sections,
                               [&](const PlannedSection& section) {
                                 return section_json(planned, method, section);
                               })},
          {"chunks", list_of(planned.chunks, chunk_json)},
          {"cues", list_of(planned.cues, cue_json)},
          {"look_alikes", list_of(piece.look_alikes, look_alikes_json)},
          {"forks", std::move(forks)},
          {"traps", traps_json(plan, index)},
          {"rejoin", planned.rejoin},
          {"short_title", piece.short_title.empty() ? Json(nullptr) : Json(piece.short_title)},
          {"dice", planned.dice.size() == 1 ? dice_json(planned.dice[0])
                                            : list_of(planned.dice, dice_json)}};
}

Json step_json(const Step& step) {
  Json json = {{"parts", step.parts}, {"times", step.times}};
  if (!step.spoken.empty()) json["say"] = step.spoken.front();
  return json;
}

Json chunk_ids(const Plan& plan, const Task& task) {
  return list_of(task.chunks,
                 [&](int chunk) { return plan.pieces.at(task.piece).chunks.at(chunk).id; });
}

Json task_json(const Plan& plan, const Task& task) {
  Json json = {{"id", task.id},
               {"piece", task.piece},
               {"stage", stage_word(stage_of(task.drill))},
               {"drill", drill_word(task.drill)},
               {"first", task.bars.first},
               {"last", task.bars.last},
               {"chunks", chunk_ids(plan, task)},
               {"steps", list_of(task.steps, step_json)},
               {"tempo", task.tempo ? number(number_text(*task.tempo)) : Json()},
               {"minutes", minutes_json(task.minutes)},
               {"beat", task.tempo ? Json(beat_name(task.beat)) : Json()},
               {"cues", task.cues},
               {"throws", task.throws},
               {"block", task.block},
               {"fork", task.fork},
               {"score", facts_of(task.drill).takes_score ? "open" : "shut"},
               {"instrument", facts_of(task.drill).needs_instrument},
               {"reason", reason_word(task.reason)}};
  if (task.fork)
    json["ways"] = list_of(task.ways, [](const PlayedWay& way) -> Json {
      return Json::array({way.at, way.to});
    });
  const auto tempo_from = [](const TempoFrom& from) -> Json {
    return {from.bar, number(number_text(from.per_minute))};
  };
  if (!task.tempi.empty()) json["tempi"] = list_of(task.tempi, tempo_from);
  if (!task.tempi_after_jumps.empty())
    json["tempi_after_jumps"] = list_of(task.tempi_after_jumps, tempo_from);
  return json;
}

Json day_json(const Plan& plan, const Day& day) {
  Json json = {
      {"date", iso(day.date)},
      {"allowance", minutes_json(day.allowance)},
      {"minutes", minutes_json(day.minutes())},
      {"tasks", list_of(day.tasks, [&](const Task& task) { return task_json(plan, task); })}};
  if (day.note != DayNote::none) json["note"] = say_note(english_words(), day.note);
  return json;
}

Json unplaced_json(const Unplaced& work) {
  return {{"piece", work.piece},
          {"drill", drill_word(work.drill)},
          {"first", work.bars.first},
          {"last", work.bars.last},
          {"why", say_why(english_words(), work.why)},
          {"minutes", minutes_json(work.minutes)}};
}

Json sensitivity_json(const Sensitivity& one) {
  return {{"learning", number(fmt::format("{:g}", one.learning))},
          {"days_late", one.days_late ? Json(*one.days_late) : Json()}};
}

// At most four decimals, rounded down, so that 1 means all.
Json share_json(double share) {
  return number(fmt::format("{:g}", std::floor(share * 10000 + 1e-9) / 10000));
}

Json spacing_json(const Plan& plan) {
  const SpacingReport report = spacing_report(plan);
  const auto chunk_json = [&](const ChunkSpacing& line) -> Json {
    return {{"piece", line.piece},
            {"chunk", plan.pieces.at(line.piece).chunks.at(line.chunk).id},
            {"recalls", list_of(line.recalls, date_json)},
            {"ideal", list_of(line.ideal, date_json)},
            {"near", line.near},
            {"gaps", line.gaps}};
  };
  return {{"near_share", share_json(report.near_share())},
          {"forced_by_days_off", report.forced_by_days_off},
          {"chunks", list_of(report.chunks, chunk_json)}};
}

Json wanted_json(const Wanted& wanted) {
  Json json = Json::object();
  const auto bound = [](double value) { return number(fmt::format("{:.6g}", value)); };
  if (wanted.at_least) json["at_least"] = bound(*wanted.at_least);
  if (wanted.at_most) json["at_most"] = bound(*wanted.at_most);
  return json;
}

// `why` is null where the figure is met.
Json quality_json(const Plan& plan) {
  return list_of(quality(plan), [&](const QualityFigure& figure) -> Json {
    std::string why;
    for (const Shortfall& shortfall : figure.why)
      why += (why.empty() ? "" : " ") + say_shortfall(english_words(), plan, shortfall);
    return {{"name", figure_word(figure.name)},
            {"figure", number(fmt::format("{:.6g}", figure.figure))},
            {"wanted", wanted_json(figure.wanted)},
            {"met", figure.met},
            {"why", why.empty() ? Json() : Json(why)}};
  });
}

Json past_json(const Plan& plan) {
  Json past = {
      {"learned", Json::array()}, {"run_throughs", Json::array()}, {"tasks", Json::array()}};
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece) {
    const auto dates = learned_before(plan, piece);
    for (std::size_t chunk = 0; chunk < dates.size(); ++chunk)
      if (dates[chunk])
        past["learned"].push_back({{"piece", piece},
                                   {"chunk", plan.pieces[piece].chunks[chunk].id},
                                   {"date", iso(*dates[chunk])}});
    for (const Done* run : runs_made(plan, piece))
      past["run_throughs"].push_back({{"piece", piece},
                                      {"date", iso(run->date)},
                                      {"slips", run->slips ? Json(*run->slips) : Json()}});
  }
  for (const Day& day : plan.past)
    for (const Task& task : day.tasks) {
      Json json = {{"date", iso(day.date)},           {"piece", task.piece},
                   {"drill", drill_word(task.drill)}, {"first", task.bars.first},
                   {"last", task.bars.last},          {"chunks", chunk_ids(plan, task)}};
      if (covers(task.drill, Covers::starts)) json["cues"] = task.cues;
      past["tasks"].push_back(std::move(json));
    }
  return past;
}

// A line for each day, for each list of a piece, and for whatever is not of one day.
const JsonLineBreaks kLineBreaks = {
    {1,
     {".minutes_total", ".pieces", ".days", ".unplaced", ".remedies", ".sensitivity", ".spacing",
      ".quality", ".edition", ".past"}},
    {2,
     {".pieces:", ".days:", ".unplaced[]", ".remedies[]", ".spacing.chunks:", ".quality[]",
      ".past.learned:", ".past.run_throughs", ".past.run_throughs:", ".past.tasks",
      ".past.tasks:"}},
    {3,
     {".pieces[]", ".days[]", ".spacing.chunks[]", ".past.learned[]", ".past.run_throughs[]",
      ".past.tasks[]"}},
    {4,
     {".pieces[].sections", ".pieces[].chunks", ".pieces[].cues", ".pieces[].look_alikes",
      ".pieces[].forks", ".pieces[].traps", ".pieces[].rejoin", ".pieces[].dice"}},
    {5, {".pieces[].dice[]", ".pieces[].traps[]"}}};

}  // namespace

std::string plan_json(const Plan& plan) {
  const bool later = has_past(plan);
  Json json = {{"format", "cahier-plan-1"},
               {"from", iso(plan.from)},
               {"by", iso(plan.by)},
               {"fits", plan.fits},
               {"minutes_total", minutes_json(plan.minutes_total())}};
  json["pieces"] = Json::array();
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    json["pieces"].push_back(piece_json(plan, piece, later));
  json["days"] = list_of(plan.days, [&](const Day& day) { return day_json(plan, day); });
  json["unplaced"] = list_of(plan.unplaced, unplaced_json);
  if (!plan.fits)
    json["remedies"] = list_of(plan.remedies, [](const Remedy& remedy) -> Json {
      return {{"say", remedy.say}};
    });
  if (!plan.sensitivity.empty()) json["sensitivity"] = list_of(plan.sensitivity, sensitivity_json);
  json["spacing"] = spacing_json(plan);
  json["quality"] = quality_json(plan);
  json["gave_way"] = list_of(plan.gave_way, [](GaveWay kind) { return gave_way_word(kind); });
  // What was done before, of which a first edition says nothing.
  if (later) {
    json["edition"] = plan.record.edition;
    json["pace"] =
        list_of(plan.method.pace, [](double pace) { return number(fmt::format("{:.4g}", pace)); });
    json["past"] = past_json(plan);
  }
  return json_lines(json, kLineBreaks) + "\n";
}

}  // namespace cahier
