#include "judged_plan.h"

#include <algorithm>
#include <cstdio>
#include <istream>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>
#include <utility>

namespace judge {
namespace {

using Json = nlohmann::json;

// The library keeps the last of several values of one name.
Json parse_strictly(std::istream& input) {
  std::vector<std::set<std::string>> names;  // met so far, in each object that is open
  const auto refuse_twice = [&](int, Json::parse_event_t event, const Json& parsed) {
    if (event == Json::parse_event_t::object_start) names.emplace_back();
    if (event == Json::parse_event_t::object_end) names.pop_back();
    if (event == Json::parse_event_t::key && !names.back().insert(parsed).second)
      throw std::runtime_error("a name given twice: " + parsed.dump());
    return true;
  };
  return Json::parse(input, refuse_twice);
}

// get<int>() would take true for 1 and 1.5 for 1.
int whole(const Json& json) {
  if (!json.is_number_integer()) throw std::runtime_error("no whole number: " + json.dump());
  return json.get<int>();
}

double number(const Json& json) { return json.get<double>(); }
std::string text(const Json& json) { return json.get<std::string>(); }

// A loop over the JSON itself would take a single value for a list of one.
const Json::array_t& list(const Json& json) { return json.get_ref<const Json::array_t&>(); }

template <typename Item>
auto read_list(const Json& json, Item read) {
  std::vector<decltype(read(json))> items;
  for (const Json& item : list(json)) items.push_back(read(item));
  return items;
}

std::vector<std::string> texts(const Json& json) { return read_list(json, text); }
std::vector<int> wholes(const Json& json) { return read_list(json, whole); }

Date read_date(const std::string& text) {
  int year = 0;
  unsigned month = 0;
  unsigned day = 0;
  if (std::sscanf(text.c_str(), "%4d-%2u-%2u", &year, &month, &day) != 3 || text.size() != 10)
    throw std::runtime_error("no date: " + text);
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(day)};
  if (!date.ok()) throw std::runtime_error("no day of the calendar: " + text);
  return date;
}

Bars read_bars(const Json& json) { return {whole(json.at("first")), whole(json.at("last"))}; }

Bars read_pair(const Json& json) { return {whole(json.at(0)), whole(json.at(1))}; }

Dice read_dice(const Json& json) {
  Dice dice;
  dice.name = text(json.at("dice"));
  dice.faces = whole(json.at("faces"));
  dice.count = whole(json.at("count"));
  dice.order_matters = json.at("order_matters").get<bool>();
  for (const Json& row : list(json.at("rows")))
    dice.rows.push_back({whole(row.at("cue")), read_list(row.at("outcomes"), wholes)});
  dice.again = read_list(json.at("again"), wholes);
  return dice;
}

Piece read_piece(const Json& json) {
  Piece piece;
  piece.title = text(json.at("title"));
  piece.bars = whole(json.at("bars"));
  piece.first_bar = whole(json.at("first_bar"));
  piece.parts = texts(json.at("parts"));
  for (const Json& each : list(json.at("sections"))) {
    const Json& same_as = each.at("same_as");
    piece.sections.push_back(
        {text(each.at("name")), read_bars(each),
         same_as.is_null() ? std::nullopt : std::optional(read_pair(same_as))});
  }
  for (const Json& each : list(json.at("chunks")))
    piece.chunks.push_back(
        {text(each.at("id")), read_bars(each), text(each.at("section")), whole(each.at("level"))});
  for (const Json& each : list(json.at("cues")))
    piece.cues.push_back({whole(each.at("number")), whole(each.at("bar")),
                          each.contains("weight") ? whole(each.at("weight")) : 1,
                          each.contains("new") && each.at("new").get<bool>()});
  for (const Json& each : list(json.at("look_alikes")))
    piece.look_alikes.push_back({read_list(each.at("ranges"), read_pair), wholes(each.at("fork"))});
  for (const Json& each : list(json.at("forks"))) {
    const std::vector<int> at = wholes(each.at("at"));
    const std::vector<int> to = wholes(each.at("to"));
    if (at.size() != to.size() || at.empty()) throw std::runtime_error("a fork without its ways");
    for (std::size_t way = 0; way < at.size(); ++way) piece.ways_on.push_back({at[way], to[way]});
  }
  piece.rejoin = wholes(json.at("rejoin"));
  const Json& dice = json.at("dice");
  piece.dice = dice.is_array() ? read_list(dice, read_dice) : std::vector{read_dice(dice)};
  return piece;
}

Task read_task(const Json& json, const std::vector<Piece>& pieces) {
  Task task;
  task.id = text(json.at("id"));
  task.piece = whole(json.at("piece"));
  const Piece& piece = pieces.at(static_cast<std::size_t>(task.piece));
  task.stage = text(json.at("stage"));
  task.drill = text(json.at("drill"));
  task.bars = read_bars(json);
  for (const std::string& id : texts(json.at("chunks")))
    task.chunks.push_back(piece.chunk_called(id));
  for (const Json& step : list(json.at("steps")))
    task.steps.push_back({texts(step.at("parts")), whole(step.at("times")),
                          step.contains("say") ? text(step.at("say")) : std::string()});
  task.has_tempo = !json.at("tempo").is_null();
  if (task.has_tempo) task.tempo = number(json.at("tempo"));
  if (json.contains("tempi"))
    for (const Json& from : list(json.at("tempi")))
      task.tempi.emplace_back(whole(from.at(0)), number(from.at(1)));
  task.minutes = number(json.at("minutes"));
  if (json.contains("cues")) task.cues = wholes(json.at("cues"));
  if (json.contains("ways"))
    for (const Json& each : list(json.at("ways"))) {
      const std::vector<int> way = wholes(each);
      if (way.size() != 2) throw std::runtime_error("a way that is no pair of bars");
      task.ways.push_back({way[0], way[1]});
    }
  return task;
}

// The days before the plan, from the first on which something was done; none has any minutes.
std::vector<Day> read_past(const Json& past, const Plan& plan) {
  std::vector<Day> days;
  const auto grow_to = [&](Date last) {
    while (!days.empty() && days.back().date < last) {
      Day next;
      next.date = days.back().date + std::chrono::days(1);
      days.push_back(next);
    }
  };
  for (const Json& each : list(past.at("tasks"))) {
    const Date date = read_date(text(each.at("date")));
    if (!(date < plan.from) || (!days.empty() && date < days.back().date))
      throw std::runtime_error("what is past is not past, or in no order");
    grow_to(date);
    if (days.empty()) {
      days.emplace_back();
      days.back().date = date;
    }
    Task task;
    task.id = "done " + text(each.at("date"));
    task.piece = whole(each.at("piece"));
    task.drill = text(each.at("drill"));
    task.bars = read_bars(each);
    const Piece& piece = plan.pieces.at(static_cast<std::size_t>(task.piece));
    for (const std::string& id : texts(each.at("chunks")))
      task.chunks.push_back(piece.chunk_called(id));
    if (each.contains("cues")) task.cues = wholes(each.at("cues"));
    days.back().tasks.push_back(task);
  }
  grow_to(plan.from - std::chrono::days(1));
  return days;
}

std::vector<Date> read_dates(const Json& json) {
  return read_list(json, [](const Json& date) { return read_date(text(date)); });
}

Spacing read_spacing(const Json& json, const std::vector<Piece>& pieces) {
  Spacing spacing;
  spacing.near_share = number(json.at("near_share"));
  spacing.forced_by_days_off = whole(json.at("forced_by_days_off"));
  for (const Json& each : list(json.at("chunks"))) {
    const int piece = whole(each.at("piece"));
    spacing.chunks.push_back(
        {piece, pieces.at(static_cast<std::size_t>(piece)).chunk_called(text(each.at("chunk"))),
         read_dates(each.at("recalls")), read_dates(each.at("ideal")), whole(each.at("near")),
         whole(each.at("gaps"))});
  }
  return spacing;
}

}  // namespace

int Piece::learned_as(int bar) const {
  for (std::size_t hops = 0; hops <= sections.size(); ++hops) {
    bool moved = false;
    for (const Section& section : sections) {
      if (!section.same_as || !section.bars.holds(bar)) continue;
      bar = section.same_as->first + (bar - section.bars.first);
      moved = true;
      break;
    }
    if (!moved) return bar;
  }
  throw std::runtime_error("returns in a circle");
}

int Piece::chunk_of(int bar) const {
  const int learned = learned_as(bar);
  for (std::size_t index = 0; index < chunks.size(); ++index)
    if (chunks[index].bars.holds(learned)) return static_cast<int>(index);
  return -1;
}

bool Piece::opens_at(int bar) const {
  if (bar == first_bar || learned_as(bar) != learned_as(bar - 1) + 1) return true;
  if (chunk_of(bar) != chunk_of(bar - 1)) return true;
  for (const Section& section : sections)
    if (section.bars.first == bar) return true;
  return false;
}

int Piece::end_of_start(int bar) const {
  const auto to_end = [&](int from) {
    while (from < bars && !opens_at(from + 1)) ++from;
    return from;
  };
  int end = to_end(bar);
  if (!opens_at(bar) && end < bars) end = to_end(end + 1);
  for (const LookAlikes& alike : look_alikes)
    for (std::size_t at = 0; at < alike.passages.size(); ++at) {
      int leads = -1;  // the bar of the start that leads past this fork
      const int fork = alike.forks[at];
      for (const Cue& cue : cues) {
        if (!alike.passages[at].holds(cue.bar) || cue.bar > fork) continue;
        const bool only_on_fork = leads < 0 || leads == fork;
        if (cue.bar < fork ? only_on_fork || cue.bar > leads : only_on_fork) leads = cue.bar;
      }
      if (leads == bar) end = std::max(end, to_end(fork));
    }
  return end;
}

int Piece::chunk_called(const std::string& id) const {
  for (std::size_t index = 0; index < chunks.size(); ++index)
    if (chunks[index].id == id) return static_cast<int>(index);
  throw std::runtime_error("no chunk " + id);
}

Plan read_plan(std::istream& input) {
  const Json json = parse_strictly(input);
  if (text(json.at("format")) != "cahier-plan-1") throw std::runtime_error("another format");
  Plan plan;
  plan.from = read_date(text(json.at("from")));
  plan.by = read_date(text(json.at("by")));
  plan.fits = json.at("fits").get<bool>();
  plan.minutes_total = number(json.at("minutes_total"));
  plan.pieces = read_list(json.at("pieces"), read_piece);
  if (json.contains("past")) plan.days = read_past(json.at("past"), plan);
  plan.first = static_cast<int>(plan.days.size());
  for (const Json& each : list(json.at("days"))) {
    Day day;
    day.date = read_date(text(each.at("date")));
    day.allowance = number(each.at("allowance"));
    day.minutes = number(each.at("minutes"));
    day.has_note = each.contains("note") && !text(each.at("note")).empty();
    for (const Json& task : list(each.at("tasks")))
      day.tasks.push_back(read_task(task, plan.pieces));
    plan.days.push_back(std::move(day));
  }
  for (const Json& each : list(json.at("unplaced"))) {
    whole(each.at("piece"));
    text(each.at("drill"));
    read_bars(each);
    text(each.at("why"));
    ++plan.unplaced;
  }
  if (json.contains("edition")) plan.edition = whole(json.at("edition"));
  plan.spacing = read_spacing(json.at("spacing"), plan.pieces);
  return plan;
}

std::string iso(Date date) {
  const std::chrono::year_month_day day = date;
  char text[16];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(day.year()) % 10000,
                static_cast<unsigned>(day.month()) % 100, static_cast<unsigned>(day.day()) % 100);
  return text;
}

}  // namespace judge
