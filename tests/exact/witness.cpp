#include "witness.h"

#include <algorithm>
#include <istream>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>

#include "../judges/plan_rules.h"
#include "model_data.h"

namespace exact {
namespace {

// The variables of rules.mzn by name; tables row by row.
std::map<std::string, std::vector<int>> read_answer(std::istream& answer) {
  std::map<std::string, std::vector<int>> variables;
  for (std::string line; std::getline(answer, line) && line[0] != '-';) {
    std::istringstream words(line);
    std::string name;
    words >> name;
    for (int value = 0; words >> value;) variables[name].push_back(value);
  }
  if (variables["learn"].empty()) throw std::runtime_error("the answer holds no plan");
  return variables;
}

class Writer {
 public:
  Writer(std::istream& answer, judge::Plan& plan, const SmallWork& work, const CutWork& cut,
         const TaskMinutes& minutes)
      : variables_(read_answer(answer)),
        plan_(plan),
        piece_(plan.pieces.at(0)),
        work_(work),
        cut_(cut),
        minutes_(minutes) {}

  void write() {
    write_chunks();
    write_cues();
    plan_.fits = true;
    plan_.unplaced = 0;
    plan_.minutes_total = 0;
    for (judge::Day& day : plan_.days) day.tasks.clear();
    const std::vector<int> days = practice_days(work_);
    for (std::size_t at = 0; at < days.size(); ++at)
      write_day(static_cast<int>(at), plan_.days.at(static_cast<std::size_t>(days[at])));
    for (judge::Day& day : plan_.days) {
      day.minutes = 0;
      for (const judge::Task& task : day.tasks) day.minutes += task.minutes;
      day.has_note = true;
      plan_.minutes_total += day.minutes;
    }
  }

 private:
  bool is_set(const char* table, int day, std::size_t column, std::size_t columns) {
    return variables_[table].at(static_cast<std::size_t>(day) * columns + column) != 0;
  }

  void write_chunks() {
    piece_.chunks.clear();
    for (std::size_t chunk = 0; chunk < cut_.chunks.size(); ++chunk)
      for (const judge::Section& section : piece_.sections)
        if (section.bars.holds(cut_.chunks[chunk].last))
          piece_.chunks.push_back({"c" + std::to_string(chunk + 1), cut_.chunks[chunk],
                                   section.name, cut_.levels[chunk]});
  }

  // Those of the program, one for each passage, and one before each fork.
  void write_cues() {
    std::set<int> bars;
    for (const judge::Cue& cue : piece_.cues) bars.insert(cue.bar);
    for (const Passage& passage : cut_.passages) bars.insert(passage.bars.first);
    for (const Alike& alike : work_.alikes)
      for (const Bars& passage : alike.passages) bars.insert(passage.first);
    piece_.cues.clear();
    judge::Dice dice{
        "1d" + std::to_string(bars.size()), static_cast<int>(bars.size()), 1, true, {}, {}};
    for (const int bar : bars) {
      const int number = static_cast<int>(piece_.cues.size()) + 1;
      piece_.cues.push_back({number, bar, 1});
      dice.rows.push_back({number, {{number}}});
    }
    piece_.dice = {dice};
  }

  // Run-throughs and recalls cold, then what is new, its joins, and starts.
  void write_day(int at, judge::Day& day) {
    const std::size_t count = cut_.passages.size();
    if (const int runs = variables_["runs"].at(static_cast<std::size_t>(at)); runs > 0)
      add(day, "prove", "run_through", {work_.first_bar(), work_.bars}, runs,
          runs * minutes_.run_through());
    add_stretches(at, day, "recall");
    for (std::size_t chunk = 0; chunk < cut_.chunks.size(); ++chunk)
      if (variables_["learn"].at(chunk) == at + 1) add_learning(day, static_cast<int>(chunk));
    add_stretches(at, day, "join");
    std::set<int> bars;
    for (std::size_t passage = 0; passage < count; ++passage)
      if (is_set("start", at, passage, count)) bars.insert(cut_.passages[passage].bars.first);
    const std::size_t leads = 2 * work_.alikes.size();
    for (std::size_t lead = 0; lead < leads; ++lead)
      if (is_set("lead", at, lead, leads))
        bars.insert(work_.alikes[lead / 2].passages[lead % 2].first);
    if (bars.empty()) return;
    const int starts = static_cast<int>(bars.size());
    judge::Task& task = add(day, "prove", "cue_starts", {*bars.begin(), *bars.rbegin()}, starts,
                            minutes_.starts(starts));
    for (const judge::Cue& cue : piece_.cues)
      if (bars.count(cue.bar) > 0) task.cues.push_back(cue.number);
  }

  void add_stretches(int at, judge::Day& day, const std::string& drill) {
    const std::size_t count = cut_.passages.size();
    for (std::size_t first = 0; first < count; ++first) {
      const int length = variables_[drill].at(static_cast<std::size_t>(at) * count + first);
      if (length == 0) continue;
      const int begin = static_cast<int>(first);
      const Bars bars = cut_.bars(begin, length);
      judge::Task& task =
          add(day, "build", drill, bars, 1,
              minutes_.from_memory(bars, cut_.level(begin, length), drill + " tempo"));
      for (int passage = begin; passage < begin + length; ++passage)
        task.chunks.push_back(cut_.passages[passage].chunk);
    }
  }

  void add_learning(judge::Day& day, int chunk) {
    const Bars& bars = cut_.chunks[chunk];
    const int repetitions = work_.repetitions;
    judge::Task& task =
        add(day, "build", "learn", bars, repetitions, minutes_.learn(bars, cut_.levels[chunk]));
    task.chunks = {chunk};
    if (piece_.parts.size() == 1) return;
    for (const std::string& part : piece_.parts)
      task.steps.insert(task.steps.begin(), {{part}, repetitions, {}});
  }

  judge::Task& add(judge::Day& day, const char* stage, const std::string& drill, const Bars& bars,
                   int times, int halves) {
    judge::Task task;
    task.id = std::to_string(++tasks_);
    task.stage = stage;
    task.drill = drill;
    task.bars = bars;
    task.steps = {{piece_.parts, times, {}}};
    task.has_tempo = true;
    task.minutes = halves / 2.0;
    day.tasks.push_back(task);
    return day.tasks.back();
  }

  std::map<std::string, std::vector<int>> variables_;
  judge::Plan& plan_;
  judge::Piece& piece_;
  const SmallWork& work_;
  const CutWork& cut_;
  const TaskMinutes& minutes_;
  int tasks_ = 0;
};

}  // namespace

std::vector<std::string> breaches_of_answer(std::istream& answer, judge::Plan plan,
                                            const SmallWork& work, const CutWork& cut,
                                            const TaskMinutes& minutes) {
  Writer(answer, plan, work, cut, minutes).write();
  judge::Asked asked;
  asked.temper = "no";
  asked.repetitions = work.repetitions;
  asked.chunk_least = 1;  // the plan does not say which phrases are shorter than two bars
  asked.runs = static_cast<int>(
      minutes.number(work.new_to_performing ? "run throughs for a new performer" : "run throughs"));
  return judge::breaches(plan, asked);
}

}  // namespace exact
