#include "plan_rules.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace judge {
namespace {

constexpr double kHair = 0.051;  // numbers are printed with one decimal

bool joins(const std::string& drill) {
  return drill == "join" || drill == "recall" || drill == "slow_pass" || drill == "counted_pass";
}

std::string stage_of(const std::string& drill) {
  if (drill == "learn" || drill == "join" || drill == "recall") return "build";
  if (drill == "spoken_part" || drill == "write_out") return "temper";
  if (drill == "cue_starts" || drill == "slow_pass" || drill == "counted_pass" ||
      drill == "run_through" || drill == "silent_run")
    return "prove";
  return "no drill";
}

// Each from its bar on, inside the task, in order, the first that of the task.
bool names_tempi(const Task& task) {
  if (task.tempi.empty()) return true;
  if (task.tempi.size() < 2 || task.tempi[0].second != task.tempo) return false;
  int before = -1;
  for (const auto& [bar, tempo] : task.tempi) {
    if (bar <= before || !task.bars.holds(bar) || tempo <= 0) return false;
    before = bar;
  }
  return true;
}

}  // namespace

std::vector<std::string> breaches(const Plan& plan, const Asked& asked) {
  return Judge(plan, asked).all();
}

void Judge::say(int rule, const std::string& what) {
  breaches_.push_back("rule " + std::to_string(rule) + ": " + what);
}

std::string Judge::at(const Placed& placed) const {
  return iso(plan_.days[placed.when.first].date) + " " + placed.task->drill + " " +
         std::to_string(placed.task->bars.first) + "-" + std::to_string(placed.task->bars.last);
}

int Judge::day_of(int chunk) const { return learned_[chunk].first; }

std::set<int> Judge::chunks_in(const Piece& piece, Bars bars) const {
  std::set<int> chunks;
  for (int bar = bars.first; bar <= bars.last; ++bar) chunks.insert(piece.chunk_of(bar));
  chunks.erase(-1);
  return chunks;
}

std::vector<std::string> Judge::all() {
  judge_calendar();
  for (std::size_t index = 0; index < plan_.pieces.size(); ++index) {
    const Piece& piece = plan_.pieces[index];
    tasks_.clear();
    learned_.assign(piece.chunks.size(), {-1, -1});
    judge_learning(piece, static_cast<int>(index));
    judge_chunks(piece);
    if (plan_.fits) judge_joins(piece);
    judge_recalls(piece);
    judge_runs(piece);
    judge_cues(piece);
    judge_dice(piece);
    judge_look_alikes(piece);
    judge_ways(piece);
    judge_rejoin(piece);
    judge_temper(piece);
  }
  if (plan_.fits != (plan_.unplaced == 0)) say(10, "\"fits\" and \"unplaced\" disagree");
  return breaches_;
}

void Judge::judge_calendar() {
  double longest = 0;
  double total = 0;
  for (const Day& day : plan_.days) longest = std::max(longest, day.allowance);
  if (static_cast<long>(plan_.days.size()) - plan_.first != (plan_.by - plan_.from).count())
    say(3, "not every day from the first to the last is listed");
  std::set<std::string> ids;
  for (std::size_t index = plan_.first; index < plan_.days.size(); ++index) {
    const Day& day = plan_.days[index];
    if (day.date != plan_.from + std::chrono::days(index - plan_.first))
      say(3, iso(day.date) + " is not in its place");
    double minutes = 0;
    for (const Task& task : day.tasks) {
      minutes += task.minutes;
      if (task.minutes <= 0) say(3, task.id + " takes no time");
      if (!ids.insert(task.id).second) say(3, task.id + " is given twice");
      if (task.stage != stage_of(task.drill)) say(3, task.id + " is of another stage");
      if (task.has_tempo != (task.drill != "write_out" && task.drill != "silent_run"))
        say(3, task.id + ": tempo");
      if (!names_tempi(task)) say(3, task.id + ": tempi");
    }
    total += minutes;
    if (std::abs(minutes - day.minutes) > kHair) say(3, iso(day.date) + " adds up to another sum");
    if (day.allowance <= 0 && !day.tasks.empty()) say(3, iso(day.date) + " is a day off");
    if (minutes <= day.allowance + kHair) continue;
    const bool run_alone = day.tasks.size() == 1 && day.tasks[0].drill == "run_through" &&
                           day.tasks[0].steps.at(0).times == 1 && day.allowance > 0 &&
                           day.tasks[0].minutes > longest && day.has_note;
    if (!run_alone) say(3, iso(day.date) + " holds more than its allowance");
  }
  if (std::abs(total - plan_.minutes_total) > kHair) say(3, "the days add up to another total");
}

void Judge::judge_chunks(const Piece& piece) {
  for (int bar = piece.first_bar; bar <= piece.bars; ++bar) {
    int sections = 0;
    bool is_return = false;
    for (const Section& section : piece.sections) {
      if (!section.bars.holds(bar)) continue;
      ++sections;
      is_return = section.same_as.has_value();
    }
    const auto chunks = std::count_if(piece.chunks.begin(), piece.chunks.end(),
                                      [&](const Chunk& chunk) { return chunk.bars.holds(bar); });
    if (sections != 1) say(1, "bar " + std::to_string(bar) + " is not in one section");
    if (chunks != (is_return ? 0 : 1))
      say(1, "bar " + std::to_string(bar) + " lies in " + std::to_string(chunks) + " chunks");
  }
  for (const Chunk& chunk : piece.chunks) {
    const auto section =
        std::find_if(piece.sections.begin(), piece.sections.end(),
                     [&](const Section& each) { return each.name == chunk.section; });
    if (section == piece.sections.end() || !section->bars.holds(chunk.bars.first) ||
        !section->bars.holds(chunk.bars.last))
      say(1, chunk.id + " does not lie in its section");
    else if (chunk.bars.size() > asked_.chunk_most ||
             (!beside_what_was_learned(piece, chunk) &&
              chunk.bars.size() < std::min(asked_.chunk_least, section->bars.size())))
      say(1, chunk.id + " has " + std::to_string(chunk.bars.size()) + " bars");
  }
}

// What was learned before the plan may leave less than a chunk between.
bool Judge::beside_what_was_learned(const Piece& piece, const Chunk& chunk) const {
  for (std::size_t index = 0; index < piece.chunks.size(); ++index) {
    const Bars& other = piece.chunks[index].bars;
    const bool near = other.last + 1 >= chunk.bars.first && other.first <= chunk.bars.last + 1;
    if (near && day_of(static_cast<int>(index)) >= 0 &&
        day_of(static_cast<int>(index)) < plan_.first)
      return true;
  }
  return false;
}

void Judge::judge_learning(const Piece& piece, int index) {
  for (int day = 0; day < static_cast<int>(plan_.days.size()); ++day)
    for (int place = 0; place < static_cast<int>(plan_.days[day].tasks.size()); ++place)
      if (plan_.days[day].tasks[place].piece == index)
        tasks_.push_back({{day, place}, &plan_.days[day].tasks[place]});
  const int length = static_cast<int>(plan_.days.size());
  for (const Placed& placed : tasks_) {
    const Task& task = *placed.task;
    if (task.bars.first < piece.first_bar || task.bars.last > piece.bars ||
        task.bars.first > task.bars.last)
      say(2, at(placed) + " lies outside the piece");
    if (task.drill != "learn") continue;
    if (task.chunks.size() != 1) {
      say(2, at(placed) + " does not learn one chunk");
      continue;
    }
    const int chunk = task.chunks[0];
    if (day_of(chunk) >= 0) say(2, piece.chunks[chunk].id + " is learned twice");
    learned_[chunk] = placed.when;
    if (is_past(placed)) continue;
    if (length - placed.when.first <= asked_.quiet_days) say(6, at(placed) + " is too late");
    std::vector<std::string> alone;
    for (const Step& step : task.steps) {
      if (step.times != asked_.repetitions) say(2, at(placed) + ": repetitions");
      if (step.parts.size() == 1) alone.push_back(step.parts[0]);
    }
    std::vector<std::string> parts = piece.parts;
    std::sort(parts.begin(), parts.end());
    std::sort(alone.begin(), alone.end());
    if (alone != parts || task.steps.back().parts.size() != parts.size() ||
        task.steps.size() != parts.size() + (parts.size() > 1 ? 1 : 0))
      say(2, at(placed) + ": not each part alone and then all");
  }
  for (std::size_t chunk = 0; plan_.fits && chunk < piece.chunks.size(); ++chunk)
    if (day_of(static_cast<int>(chunk)) < 0) say(2, piece.chunks[chunk].id + " is never learned");
}

void Judge::judge_joins(const Piece& piece) {
  for (int bar = piece.first_bar; bar < piece.bars; ++bar) {
    const int left = piece.chunk_of(bar);
    const int right = piece.chunk_of(bar + 1);
    if (left < 0 || right < 0) continue;
    const bool runs_on = left == right && piece.learned_as(bar) + 1 == piece.learned_as(bar + 1);
    if (runs_on) continue;
    const When learned = std::max(learned_[left], learned_[right]);
    const bool joined = std::any_of(tasks_.begin(), tasks_.end(), [&](const Placed& placed) {
      if (placed.when <= learned || !joins(placed.task->drill)) return false;
      for (int first = placed.task->bars.first; first < placed.task->bars.last; ++first)
        if (piece.learned_as(first) == piece.learned_as(bar) &&
            piece.learned_as(first + 1) == piece.learned_as(bar + 1))
          return true;
      return false;
    });
    if (!joined)
      say(4,
          "bars " + std::to_string(bar) + " and " + std::to_string(bar + 1) + " are never joined");
  }
}

void Judge::judge_runs(const Piece& piece) {
  const bool all_learned = std::all_of(learned_.begin(), learned_.end(),
                                       [](const When& when) { return when.first >= 0; });
  const When last = learned_.empty() ? When{} : *std::max_element(learned_.begin(), learned_.end());
  int runs = 0;
  std::map<int, int> by_day;
  std::map<int, int> past_runs;
  for (const Placed& placed : tasks_) {
    const Task& task = *placed.task;
    if (task.drill != "run_through") continue;
    if (!all_learned || placed.when < last) say(6, at(placed) + " before everything is learned");
    if (task.bars.first != piece.first_bar || task.bars.last != piece.bars)
      say(6, at(placed) + " is not the whole piece");
    if (is_past(placed)) {
      ++runs;
      ++past_runs[placed.when.first];
      continue;
    }
    if (task.steps.size() != 1 || task.steps[0].parts.size() != piece.parts.size()) {
      say(6, at(placed) + " is not one step with all parts");
      continue;
    }
    runs += task.steps[0].times;
    by_day[placed.when.first] += task.steps[0].times;
  }
  for (const auto& [day, times] : by_day)
    if (times > 2) say(6, iso(plan_.days[day].date) + " has " + std::to_string(times) + " runs");
  if (!plan_.fits) return;
  if (runs < asked_.runs) say(6, "only " + std::to_string(runs) + " run-throughs");
  if (static_cast<int>(by_day.size() + past_runs.size()) < asked_.run_days)
    say(6, "run-throughs on too few days");
}

}  // namespace judge
