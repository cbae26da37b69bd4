#include "judged_plan.h"

#include <algorithm>
#include <cstdio>
#include <stdexcept>

namespace judge {
namespace {

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

Bars read_bars(const Json& json) { return {json.at("first").whole(), json.at("last").whole()}; }

Bars read_pair(const Json& json) { return {json.list().at(0).whole(), json.list().at(1).whole()}; }

std::vector<std::string> read_texts(const Json& json) {
  std::vector<std::string> texts;
  for (const Json& item : json.list()) texts.push_back(item.text());
  return texts;
}

Piece read_piece(const Json& json) {
  Piece piece;
  piece.title = json.at("title").text();
  piece.bars = json.at("bars").whole();
  piece.first_bar = json.at("first_bar").whole();
  piece.parts = read_texts(json.at("parts"));
  for (const Json& each : json.at("sections").list()) {
    const Json& same_as = each.at("same_as");
    piece.sections.push_back(
        {each.at("name").text(), read_bars(each),
         same_as.is_null() ? std::nullopt : std::optional(read_pair(same_as))});
  }
  for (const Json& each : json.at("chunks").list())
    piece.chunks.push_back({each.at("id").text(), read_bars(each), each.at("section").text(),
                            each.at("level").whole()});
  for (const Json& each : json.at("cues").list())
    piece.cues.push_back({each.at("number").whole(), each.at("bar").whole(),
                          each.has("weight") ? each.at("weight").whole() : 1});
  for (const Json& each : json.at("look_alikes").list()) {
    LookAlikes alike;
    for (const Json& range : each.at("ranges").list()) alike.passages.push_back(read_pair(range));
    for (const Json& fork : each.at("fork").list()) alike.forks.push_back(fork.whole());
    piece.look_alikes.push_back(alike);
  }
  const Json& dice = json.at("dice");
  piece.dice = dice.kind() == Json::Kind::list ? dice.list() : std::vector<Json>{dice};
  return piece;
}

Task read_task(const Json& json, const std::vector<Piece>& pieces) {
  Task task;
  task.id = json.at("id").text();
  task.piece = json.at("piece").whole();
  const Piece& piece = pieces.at(static_cast<std::size_t>(task.piece));
  task.stage = json.at("stage").text();
  task.drill = json.at("drill").text();
  task.bars = read_bars(json);
  for (const std::string& id : read_texts(json.at("chunks")))
    task.chunks.push_back(piece.chunk_called(id));
  for (const Json& step : json.at("steps").list())
    task.steps.push_back({read_texts(step.at("parts")), step.at("times").whole()});
  task.has_tempo = !json.at("tempo").is_null();
  task.minutes = json.at("minutes").number();
  if (json.has("cues"))
    for (const Json& cue : json.at("cues").list()) task.cues.push_back(cue.whole());
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
  for (const Json& each : past.at("tasks").list()) {
    const Date date = read_date(each.at("date").text());
    if (!(date < plan.from) || (!days.empty() && date < days.back().date))
      throw std::runtime_error("what is past is not past, or in no order");
    grow_to(date);
    if (days.empty()) {
      days.emplace_back();
      days.back().date = date;
    }
    Task task;
    task.id = "done " + each.at("date").text();
    task.piece = each.at("piece").whole();
    task.drill = each.at("drill").text();
    task.bars = read_bars(each);
    const Piece& piece = plan.pieces.at(static_cast<std::size_t>(task.piece));
    for (const std::string& id : read_texts(each.at("chunks")))
      task.chunks.push_back(piece.chunk_called(id));
    if (each.has("cues"))
      for (const Json& cue : each.at("cues").list()) task.cues.push_back(cue.whole());
    days.back().tasks.push_back(task);
  }
  grow_to(plan.from - std::chrono::days(1));
  return days;
}

std::vector<Date> read_dates(const Json& json) {
  std::vector<Date> dates;
  for (const std::string& text : read_texts(json)) dates.push_back(read_date(text));
  return dates;
}

Spacing read_spacing(const Json& json, const std::vector<Piece>& pieces) {
  Spacing spacing;
  spacing.near_share = json.at("near_share").number();
  spacing.forced_by_days_off = json.at("forced_by_days_off").whole();
  for (const Json& each : json.at("chunks").list()) {
    const int piece = each.at("piece").whole();
    spacing.chunks.push_back(
        {piece, pieces.at(static_cast<std::size_t>(piece)).chunk_called(each.at("chunk").text()),
         read_dates(each.at("recalls")), read_dates(each.at("ideal")), each.at("near").whole(),
         each.at("gaps").whole()});
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
      int leads = 0;  // the bar of the start that leads past this fork
      bool before = false;
      for (const Cue& cue : cues) {
        if (!alike.passages[at].holds(cue.bar) || cue.bar > alike.forks[at]) continue;
        if (cue.bar == alike.forks[at] && before) continue;
        before = before || cue.bar < alike.forks[at];
        leads = cue.bar;
      }
      if (leads == bar) end = std::max(end, to_end(alike.forks[at]));
    }
  return end;
}

int Piece::chunk_called(const std::string& id) const {
  for (std::size_t index = 0; index < chunks.size(); ++index)
    if (chunks[index].id == id) return static_cast<int>(index);
  throw std::runtime_error("no chunk " + id);
}

Plan read_plan(const Json& json) {
  if (json.at("format").text() != "cahier-plan-1") throw std::runtime_error("another format");
  Plan plan;
  plan.from = read_date(json.at("from").text());
  plan.by = read_date(json.at("by").text());
  plan.fits = json.at("fits").truth();
  plan.minutes_total = json.at("minutes_total").number();
  for (const Json& each : json.at("pieces").list()) plan.pieces.push_back(read_piece(each));
  if (json.has("past")) plan.days = read_past(json.at("past"), plan);
  plan.first = static_cast<int>(plan.days.size());
  for (const Json& each : json.at("days").list()) {
    Day day;
    day.date = read_date(each.at("date").text());
    day.allowance = each.at("allowance").number();
    day.minutes = each.at("minutes").number();
    day.has_note = each.has("note") && !each.at("note").text().empty();
    for (const Json& task : each.at("tasks").list())
      day.tasks.push_back(read_task(task, plan.pieces));
    plan.days.push_back(std::move(day));
  }
  for (const Json& each : json.at("unplaced").list()) {
    each.at("piece").whole();
    each.at("drill").text();
    read_bars(each);
    each.at("why").text();
    ++plan.unplaced;
  }
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
